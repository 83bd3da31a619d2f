/**
 * `npm test`: installs what is missing, the browser included, then types, lint, dead code, and the tests in Node and in
 * a real browser. Closes with the line `N passed, N failed`; types, lint and dead code count as one check each.
 *
 * Words after `--` go to vitest, and then only the tests run: `npm test -- --project unit tests/thread`.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { needBrowser } from "./browser.mjs";
import { installPackages, top } from "./install.mjs";

installPackages();
const browser = needBrowser("npm test");

const words = process.argv.slice(2);
// Absolute, as the test runner reads relative paths from the folder of the sources.
const report = `${top}/dist/test-report.json`;
let passed = 0;
let failed = 0;

if (words.length === 0) {
  check("types", "node_modules/typescript/bin/tsc", ["--noEmit"]);
  check("lint", "node_modules/@biomejs/biome/bin/biome", ["check", "--error-on-warnings", "."]);
  check("dead code", "node_modules/knip/bin/knip.js", []);
}

mkdirSync("dist", { recursive: true });
rmSync(report, { force: true });
const tests = run("node_modules/vitest/vitest.mjs", [
  "run",
  "--reporter=default",
  "--reporter=json",
  `--outputFile.json=${report}`,
  ...words,
]);
const counted = readReport();
passed += counted.passed;
failed += counted.failed;
// A run that broke down outside a test has failed, whatever it counted.
if (tests.status !== 0 && counted.failed === 0) failed += 1;

console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && counted.passed > 0 ? 0 : 1);

function check(name, file, rest) {
  const ok = run(file, rest).status === 0;
  console.log(`${name}: ${ok ? "ok" : "FAILED"}`);
  if (ok) passed += 1;
  else failed += 1;
}

function run(file, rest) {
  return spawnSync(process.execPath, [file, ...rest], {
    stdio: ["ignore", "inherit", "inherit"],
    env: { ...process.env, CHROMIUM: browser },
  });
}

function readReport() {
  try {
    const told = JSON.parse(readFileSync(report, "utf8"));
    return {
      passed: told.numPassedTests,
      failed: told.numFailedTests + told.numFailedTestSuites * (told.numFailedTests === 0 ? 1 : 0),
    };
  } catch {
    return { passed: 0, failed: 0 };
  }
}
