import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type SheetFunction, signature } from "../../src/functions/declare.ts";
import { sheetFunctions } from "../../src/functions/index.ts";

const start = /<!-- functions:[^>]*-->\n/;
const end = "<!-- end of functions -->";

test("the function reference in README says what the declarations say", () => {
  const readme = readFileSync("README.md", "utf8");
  const opening = start.exec(readme);
  expect(opening).not.toBeNull();
  const from = opening!.index + opening![0].length;
  const to = readme.indexOf(end);
  const wanted = reference(sheetFunctions);
  if (process.env.UPDATE) writeFileSync("README.md", readme.slice(0, from) + wanted + readme.slice(to));
  else expect(readme.slice(from, to)).toBe(wanted);
});

function reference(functions: readonly SheetFunction[]): string {
  const families = [...new Set(functions.map((fn) => fn.family))];
  const parts = families.map((family) => {
    const rows = functions
      .filter((fn) => fn.family === family)
      .map((fn) => {
        const example = fn.examples[0];
        const shown = example ? `\`${inCell(example.formula)}\` gives ${inCell(String(example.value))}` : "";
        return `| \`${signature(fn)}\` | ${inCell(fn.summary)} | ${shown} | ${inCell(fn.source)} |`;
      });
    return `### ${family[0]!.toUpperCase()}${family.slice(1)}\n\n| function | gives | example | source |\n| --- | --- | --- | --- |\n${rows.join("\n")}\n`;
  });
  return `\n${parts.join("\n")}\n`;
}

// A pipe would end the table's cell.
function inCell(text: string): string {
  return text.replaceAll("|", "\\|");
}
