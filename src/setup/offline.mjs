/** Adds the service worker to the build, with the list of files that it keeps on the device. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

const source = new URL("../service-worker.js", import.meta.url);

/** @returns {import("vite").Plugin} */
export function offline() {
  return {
    name: "halfangle-offline",
    apply: "build",
    enforce: "post",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const made = Object.values(bundle).sort((a, b) => (a.fileName < b.fileName ? -1 : 1));
        const hash = createHash("sha256");
        for (const file of made)
          hash.update(file.fileName).update(file.type === "chunk" ? file.code : file.source);
        const files = made.map((file) => `./${file.fileName}`).filter((name) => !name.endsWith(".map"));
        this.emitFile({
          type: "asset",
          fileName: "service-worker.js",
          source: readFileSync(source, "utf8")
            .replace("__VERSION__", hash.digest("hex").slice(0, 16))
            .replace("__FILES__", JSON.stringify(files)),
        });
      },
    },
  };
}
