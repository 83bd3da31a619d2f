/** `npm start`: installs what is missing, builds the page when its sources are newer, serves it and prints the address. */
import { createServer } from "node:net";
import { installPackages, isStale, mustRun, top } from "./install.mjs";

installPackages();
if (isStale("dist/page/index.html", ["src", "sheets", "vite.config.ts", "package-lock.json"])) {
  console.log("Building the page ...");
  mustRun(process.execPath, ["node_modules/vite/bin/vite.js", "build", "--logLevel", "warn"]);
}

const asked = process.env.PORT;
const port = asked ? Number(asked) : await firstFree(5275);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  console.error(`PORT must be a whole number from 0 to 65535, got "${asked}"`);
  process.exit(2);
}

const { preview } = await import("vite");
const server = await preview({
  root: "src",
  configFile: `${top}/vite.config.ts`,
  logLevel: "warn",
  preview: { host: "127.0.0.1", port, strictPort: true },
});
const address = server.httpServer.address();
console.log(`Halfangle is at http://localhost:${address.port}/  (Ctrl+C stops it)`);

/** The first port from `from` up that nothing else listens on. */
async function firstFree(from) {
  for (let candidate = from; candidate < from + 50; candidate++) {
    const free = await new Promise((answer) => {
      const probe = createServer();
      probe.once("error", () => answer(false));
      probe.listen(candidate, "127.0.0.1", () => probe.close(() => answer(true)));
    });
    if (free) return candidate;
  }
  return 0;
}
