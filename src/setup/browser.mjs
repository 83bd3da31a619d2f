/** Finds the browser that the tests drive, and fetches one where there is none. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const commands = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "chrome",
  "microsoft-edge",
  "msedge",
];
const places = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

/** Containers have no user namespaces and no way out, so: no sandbox, and no calls home. */
export const chromiumArguments = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Path of a browser that is there: CHROMIUM from the environment first. Undefined if none is. */
export function findBrowser() {
  const named = process.env.CHROMIUM;
  if (named) return named;
  const onPath = (process.env.PATH ?? "").split(delimiter);
  for (const command of commands) {
    for (const folder of onPath) {
      const file = join(folder, process.platform === "win32" ? `${command}.exe` : command);
      if (existsSync(file)) return file;
    }
  }
  return places.find((place) => existsSync(place)) ?? downloaded();
}

/** Installs Debian's package, or lets the test tool fetch its own. Returns the path, or undefined when neither worked. */
function installBrowser() {
  if (existsSync("/usr/bin/apt-get")) {
    console.log("Installing the browser package chromium ...");
    const asRoot = process.getuid?.() === 0 ? [] : ["sudo", "-n"];
    const apt = (...words) => {
      const [command, ...rest] = [...asRoot, "apt-get", ...words];
      return spawnSync(command, rest, {
        stdio: ["ignore", "ignore", "inherit"],
        env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
      });
    };
    apt("update");
    apt("install", "-y", "--no-install-recommends", "chromium");
    const found = findBrowser();
    if (found) return found;
  }
  console.log("Asking the test tool for its own browser ...");
  spawnSync(process.execPath, ["node_modules/playwright-core/cli.js", "install", "--with-deps", "chromium"], {
    stdio: "inherit",
  });
  return findBrowser();
}

/** The browser, fetched if there is none; says what to do and ends the command `npm ...` where that fails too. */
export function needBrowser(command) {
  const browser = findBrowser() ?? installBrowser();
  if (browser) return browser;
  console.error(
    `No browser found and none could be installed. Install Chromium, or name one: CHROMIUM=/path/to/it ${command}`,
  );
  process.exit(2);
}

function downloaded() {
  if (!existsSync("node_modules/playwright-core")) return undefined;
  const asked = spawnSync(
    process.execPath,
    [
      "--input-type=module",
      "-e",
      "import { chromium } from 'playwright-core'; process.stdout.write(chromium.executablePath())",
    ],
    { encoding: "utf8" },
  );
  return existsSync(asked.stdout) ? asked.stdout : undefined;
}
