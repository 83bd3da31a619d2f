/**
 * `npm run bench`: measures what the project promises about speed, as ratios within one run. First what is reckoned, in
 * Node, then the built page in a browser. `npm run bench -- page` runs the second part only.
 */
import { pathToFileURL } from "node:url";
import { needBrowser } from "./browser.mjs";
import { installPackages, mustRun, top } from "./install.mjs";

installPackages();
const parts = process.argv[2] === "page" ? ["page-bench"] : ["bench", "page-bench"];
process.env.CHROMIUM = needBrowser("npm run bench");
build([]);
for (const name of parts) {
  build(["--config", "src/setup/vite.node.config.mjs"], { ENTRY: `tests/bench/${name}.ts`, NAME: name });
  await import(pathToFileURL(`${top}/dist/${name}/${name}.js`).href);
}

function build(words, variables = {}) {
  mustRun(process.execPath, ["node_modules/vite/bin/vite.js", "build", ...words, "--logLevel", "error"], {
    env: { ...process.env, ...variables },
  });
}
