import { expect, test } from "vitest";
import { catalogue } from "../../src/thread/catalogue.ts";
import { coverage } from "../../src/thread/coverage.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { readThread } from "../../src/thread/read.ts";

/** A custom note has commas of its own. */
const examples = coverage().flatMap((row) =>
  (row.example.startsWith("Custom") ? [row.example] : row.example.split(", ")).map(
    (example) => [example, row] as const,
  ),
);

test("the list of known threads names every series of the catalogue once", () => {
  const named = coverage().flatMap(({ names }) => names);
  expect([...named].sort()).toEqual(catalogue.map(({ name }) => name).sort());
});

test.each(examples)("%s in the list can be typed and is a thread of its row", (example, row) => {
  const { series } = readThread(example);
  if (row.names.length > 0) expect(row.names).toContain(series);
});

test("a row that says it has no limits has none, and the others have some", () => {
  for (const [example, row] of examples) {
    // One of the two has limits, the other has none.
    if (row.names[0] === "NPT") continue;
    const thread = readThread(example);
    if (row.limits.startsWith("none")) expect(() => thread.limits(), example).toThrow(NothingFound);
    else expect(Object.keys(thread.limits()).sort(), example).toEqual(["major", "minor", "pitch"]);
  }
});

test("what rests on memory in a thread is said in its row", () => {
  for (const [example, row] of examples) {
    const { note = "", limitsNote = "" } = readThread(example);
    if (`${note}${limitsNote}`.includes("from memory")) {
      expect(`${row.sizes} ${row.limits} ${row.sure}`, example).toContain("from memory");
    }
  }
});
