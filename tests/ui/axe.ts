/** What axe finds wrong with a page: rule and where. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export async function faults(page: Page): Promise<string[]> {
  await page.evaluate(`${axe};undefined`);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: typeof import("axe-core") };
    const { violations } = await axe.run(document);
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.flat().join(" ")} ${node.failureSummary}`),
    );
  });
}
