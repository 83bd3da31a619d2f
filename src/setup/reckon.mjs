/** `npm run -s reckon -- ...`: bundles the evaluator when its sources are newer, then runs it in this process. */
import { pathToFileURL } from "node:url";
import { installPackages, isStale, mustRun, top } from "./install.mjs";

const from = process.env.INIT_CWD ?? process.cwd();
const made = "dist/reckon/reckon.js";
const sources = [
  "src/thread",
  "src/lathe",
  "src/functions",
  "src/engine",
  "src/job",
  "src/reckon.ts",
  "package-lock.json",
];

installPackages({ quiet: true });
if (isStale(made, sources)) {
  mustRun(
    process.execPath,
    [
      "node_modules/vite/bin/vite.js",
      "build",
      "--config",
      "src/setup/vite.node.config.mjs",
      "--logLevel",
      "error",
    ],
    { stdio: ["ignore", 2, 2], env: { ...process.env, ENTRY: "src/reckon.ts", NAME: "reckon" } },
  );
}
// Files named on the command line are meant from where the person stands.
process.chdir(from);
await import(pathToFileURL(`${top}/${made}`).href);
