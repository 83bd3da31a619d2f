/** Who may import whom, and what must not be where: read from the sources, so that the map in DEVELOPERS.md stays true. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, expect, test } from "vitest";

interface Source {
  /** Path under src. */
  readonly path: string;
  readonly text: string;
  /** Its folder, or its own name for a file at the top. */
  readonly layer: string;
  /** Paths under src, and names of packages. */
  readonly imports: readonly string[];
}

const top = join(import.meta.dirname, "../src");

const sources: readonly Source[] = readdirSync(top, { recursive: true, encoding: "utf8" })
  .map((path) => path.replaceAll("\\", "/"))
  .filter((path) => /\.tsx?$/.test(path) && !path.endsWith(".d.ts"))
  .map((path) => {
    const text = readFileSync(join(top, path), "utf8");
    return { path, text, layer: layerOf(path), imports: importsOf(path, text) };
  });

function layerOf(path: string): string {
  return path.includes("/") ? path.slice(0, path.indexOf("/")) : path;
}

function importsOf(path: string, text: string): string[] {
  // Comments show imports too.
  const found = text
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .matchAll(/(?:\bfrom|\bimport)\s*\(?\s*["']([^"']+)["']/g);
  return [...found].map(([, target]) =>
    target!.startsWith(".")
      ? relative(top, join(top, dirname(path), target!)).replaceAll("\\", "/")
      : target!,
  );
}

const isOurs = (target: string) => sources.some((source) => source.path === target);

/** What each layer may import of the others; itself always. */
const allowed: Record<string, RegExp> = {
  thread: /^$/,
  lathe: /^thread\//,
  functions: /^(thread|lathe)\//,
  engine: /^(thread\/failures\.ts|functions\/(declare|index)\.ts)$/,
  job: /^(engine|functions|lathe)\//,
  drawing: /^(thread|lathe)\//,
  ui: /^(job|drawing|functions)\/|^engine\/(values|address)\.ts$/,
  "main.ts": /^(ui|functions)\//,
  "reckon.ts": /^job\//,
  "index.ts": /^(functions|engine|thread|lathe)\//,
};

/** Packages by the layers that may use them. */
const packages: Record<string, RegExp> = {
  hyperformula: /^engine$/,
  valibot: /^job$/,
  "fraction.js": /^(thread|lathe)$/,
  lit: /^(ui|drawing|main\.ts)$/,
  idb: /^ui$/,
};

test("the sources are found", () => {
  expect(sources.length).toBeGreaterThan(40);
  expect(sources.flatMap((source) => source.imports).length).toBeGreaterThan(100);
  expect(
    importsOf("job/a.ts", 'import x from "../b.ts"; export * from "./c.ts"; await import("d"); import "e";'),
  ).toEqual(["b.ts", "job/c.ts", "d", "e"]);
});

describe("imports", () => {
  test("go one way: thread, lathe, functions, engine, job, ui, and what wires them", () => {
    const wrong = sources.flatMap(({ path, layer, imports }) =>
      imports
        .filter((target) => isOurs(target) && layerOf(target) !== layer && !allowed[layer]?.test(target))
        .map((target) => `${path} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  test("of our own files name a file that exists", () => {
    const wrong = sources.flatMap(({ path, imports }) =>
      imports
        .filter((target) => /\.tsx?$/.test(target) && !isOurs(target))
        .map((target) => `${path} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  test("of packages stay in the layers that own them", () => {
    const wrong = sources.flatMap(({ path, layer, imports }) =>
      imports.flatMap((target) => {
        const name = Object.keys(packages).find((each) => target === each || target.startsWith(`${each}/`));
        return name && !packages[name]!.test(layer) ? [`${path} imports ${target}`] : [];
      }),
    );
    expect(wrong).toEqual([]);
  });

  test("of what the machine offers are left to the command line", () => {
    const wrong = sources.filter(
      ({ path, imports }) => path !== "reckon.ts" && imports.some((target) => target.startsWith("node:")),
    );
    expect(wrong.map((source) => source.path)).toEqual([]);
  });
});

describe("what is deliberately absent", () => {
  const inLayers = (...layers: string[]) => sources.filter((source) => layers.includes(source.layer));
  const code = (source: Source) => source.text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, "");

  test("the page in thread, lathe, functions, engine and job", () => {
    const page =
      /\b(window|navigator|localStorage|sessionStorage|indexedDB|HTMLElement|customElements)\b|(?<![.\w])document\.(?:createElement|body|query|getElement|addEvent|head|cookie)/;
    const wrong = inLayers("thread", "lathe", "functions", "engine", "job").filter((source) =>
      page.test(code(source)),
    );
    expect(wrong.map((source) => source.path)).toEqual([]);
  });

  test("cells in thread and lathe", () => {
    const wrong = inLayers("thread", "lathe").filter(({ imports }) =>
      imports.some((target) => /engine|job|functions/.test(target)),
    );
    expect(wrong.map((source) => source.path)).toEqual([]);
  });

  test("arithmetic of the trade in ui: no angles, no constants of thread forms", () => {
    const trade = /Math\.(a?(sin|cos|tan)|atan2|PI)\b|25\.4|\b0\.86602|\b0\.64951|\b0\.640327/;
    const wrong = inLayers("ui").filter((source) => trade.test(code(source)));
    expect(wrong.map((source) => source.path)).toEqual([]);
  });

  test("default exports, files called utils, and evaluated text", () => {
    for (const { path, text } of sources) {
      expect([path, /^export default /m.test(text)]).toEqual([path, false]);
      expect(path).not.toMatch(/util|helper|misc|common/i);
      expect([path, /\beval\(|new Function\(/.test(text)]).toEqual([path, false]);
    }
  });
});

test("every file is under 400 lines", () => {
  const long = sources.filter(({ text }) => text.split("\n").length > 400);
  expect(long.map((source) => source.path)).toEqual([]);
});
