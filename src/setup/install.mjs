/** What every command does first: be in the project's folder, and have the packages of the lock file. */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const top = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
process.chdir(top);

/** Runs a command, showing its output; stops this process with its status when it fails. */
export function mustRun(command, words, options = {}) {
  const done = spawnSync(command, words, { stdio: "inherit", ...options });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

/** Installs from the lock file when node_modules is missing or older than the lock file. */
export function installPackages({ quiet = false } = {}) {
  const mark = "node_modules/.package-lock.json";
  if (existsSync(mark) && statSync(mark).mtimeMs >= statSync("package-lock.json").mtimeMs) return;
  if (!quiet) console.log("Installing packages ...");
  // The output goes to stderr: `reckon` promises that stdout holds nothing but values.
  mustRun("npm", ["ci", "--include=dev", "--no-fund", "--no-audit", "--loglevel=error"], {
    stdio: ["ignore", 2, 2],
    shell: process.platform === "win32",
  });
}

/** True when `made` is missing, or when anything under `sources` is newer. */
export function isStale(made, sources) {
  if (!existsSync(made)) return true;
  const when = statSync(made).mtimeMs;
  return sources.some((source) => newestIn(source) > when);
}

function newestIn(path) {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  let newest = found.mtimeMs;
  for (const name of readdirSync(path)) newest = Math.max(newest, newestIn(join(path, name)));
  return newest;
}
