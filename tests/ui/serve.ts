/** Builds the page once and serves it with its real headers, for every test of the `page` project. */
import { spawnSync } from "node:child_process";
import { preview } from "vite";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    /** Address of the built page, with a slash at the end. */
    pageAddress: string;
  }
}

export default async function serve(project: TestProject) {
  const built = spawnSync(
    process.execPath,
    ["node_modules/vite/bin/vite.js", "build", "--logLevel", "warn"],
    {
      encoding: "utf8",
      // The test runner's own NODE_ENV would make it a development build.
      env: { ...process.env, NODE_ENV: "production" },
    },
  );
  if (built.status !== 0) throw new Error(`the page could not be built:\n${built.stdout}${built.stderr}`);
  const server = await preview({
    root: "src",
    configFile: "vite.config.ts",
    logLevel: "warn",
    preview: { host: "127.0.0.1", port: 0 },
  });
  const address = server.httpServer.address();
  if (typeof address !== "object" || address === null) throw new Error("the page is served nowhere");
  // A service worker needs a secure context, and localhost counts as one.
  project.provide("pageAddress", `http://localhost:${address.port}/`);
  return () => server.close();
}
