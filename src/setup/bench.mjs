/** `npm run bench`: measures what the project promises about speed, as ratios within one run. */
import { pathToFileURL } from "node:url";
import { installPackages, mustRun, top } from "./install.mjs";

installPackages();
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
  { env: { ...process.env, ENTRY: "tests/bench/bench.ts", NAME: "bench" } },
);
await import(pathToFileURL(`${top}/dist/bench/bench.js`).href);
