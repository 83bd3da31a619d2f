import { playwright } from "@vitest/browser-playwright";
import { defineConfig } from "vitest/config";
import { chromiumArguments, findBrowser } from "./src/setup/browser.mjs";
import { offline } from "./src/setup/offline.mjs";
import { contentSecurityPolicy } from "./src/setup/policy.mjs";

const headers = { "Content-Security-Policy": contentSecurityPolicy, "X-Content-Type-Options": "nosniff" };

export default defineConfig({
  root: "src",
  publicDir: false,
  plugins: [offline()],
  base: "./",
  cacheDir: "../node_modules/.vite",
  build: {
    outDir: "../dist/page",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1500,
  },
  preview: { headers },
  test: {
    projects: [
      {
        test: {
          name: "unit",
          root: ".",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/**/*.browser.test.ts", "tests/**/*.page.test.ts"],
          environment: "node",
        },
      },
      {
        optimizeDeps: {
          include: [
            "lit",
            "lit/decorators.js",
            "lit/directives/repeat.js",
            "axe-core",
            "idb",
            "valibot",
            "hyperformula",
          ],
        },
        test: {
          name: "browser",
          root: ".",
          include: ["tests/**/*.browser.test.ts"],
          testTimeout: 20_000,
          expect: { poll: { timeout: 5_000 } },
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            viewport: { width: 1280, height: 800 },
            provider: playwright({
              launchOptions: { executablePath: findBrowser() ?? "", args: chromiumArguments },
              contextOptions: {
                locale: "en-GB",
                timezoneId: "UTC",
                permissions: ["clipboard-read", "clipboard-write"],
              },
            }),
            instances: [{ browser: "chromium" }],
          },
        },
      },
      {
        // The built page, served with its real headers and driven from outside: reloads, storage, policy.
        test: {
          name: "page",
          root: ".",
          include: ["tests/**/*.page.test.ts"],
          environment: "node",
          globalSetup: ["tests/ui/serve.ts"],
          testTimeout: 60_000,
          // A busy machine is late, not wrong.
          expect: { poll: { timeout: 10_000 } },
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
