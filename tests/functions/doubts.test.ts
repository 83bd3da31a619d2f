/** A doubt about a thread goes beside every value that is taken from its designation, in a real sheet. */
import { describe, expect, test } from "vitest";
import { Engine } from "../../src/engine/engine.ts";
import { isErrorValue } from "../../src/engine/values.ts";
import type { SheetFunction } from "../../src/functions/declare.ts";
import { sheetFunctions } from "../../src/functions/index.ts";
import { catalogue } from "../../src/thread/catalogue.ts";
import { readThread } from "../../src/thread/read.ts";

/** Functions of a designation that answer with one value. */
const designated = sheetFunctions.filter(
  (fn) => fn.params[0]?.name === "designation" && fn.returns.type !== "block" && fn.family !== "drawing",
);

/** The first example that works with this designation in the place of its own. */
function noteOf(fn: SheetFunction, designation: string): string | undefined {
  for (const { formula } of fn.examples) {
    const tried = formula.replace(/\("[^"]*"/, `("${designation}"`);
    const engine = new Engine({ sheets: [{ name: "S", cells: { A1: tried } }], names: {} }, sheetFunctions);
    if (!isErrorValue(engine.value("S", 0, 0))) return engine.note("S", 0, 0) ?? "";
  }
  return undefined;
}

/** Without those for taper threads only. */
const ofMetric = designated.filter((fn) => noteOf(fn, "M12x1.75-6g") !== undefined);

test("there are such functions in several families", () => {
  expect(ofMetric.length).toBeGreaterThan(18);
  expect(new Set(ofMetric.map((fn) => fn.family)).size).toBeGreaterThan(2);
});

describe("a size that is in no list", () => {
  test.each(ofMetric.map((fn) => ({ name: fn.name, fn })))("is noted beside $name", ({ fn }) => {
    expect(noteOf(fn, "M12x1.7-6g")).toContain("no standard pitch for M12: 1.75, 1.5, 1.25, 1");
  });
});

/** The first size of every series with a doubt about its figures. */
const doubtful = catalogue.flatMap((series) => {
  const [size] = series.sizes;
  const pitch = size?.pitches.find((each) => each > 0);
  return series.note !== undefined && size && pitch !== undefined ? [series.list(size, pitch)] : [];
});

describe.each(doubtful)("%s, whose figures are in doubt", (designation) => {
  test("says so beside every value that there is", () => {
    const { note } = readThread(designation);
    const found = designated.map((fn) => [fn.name, noteOf(fn, designation)] as const);
    const given = found.filter(([, each]) => each !== undefined);
    expect(given.length).toBeGreaterThan(10);
    for (const [name, each] of given) expect(each, name).toContain(note);
  });
});

// ISO 965-1 takes 6g and 6H where a designation names no tolerance class; BS 84 names medium for bolts and nuts, and a
// designation that names its class leaves nothing to take.
test.each([
  ["M12", "6g"],
  ["M12 nut", "6H"],
  ["3/8 BSF", "medium"],
  ["M12-6g", undefined],
  ["3/8 BSF close", undefined],
])("the class that is taken for %s is told beside its limits: %s", (designation, taken) => {
  const said = taken === undefined ? "" : `no class given: ${taken} is taken`;
  const [limit, target] = ["THREAD.LIMIT", "THREAD.TARGET"].map((name) =>
    noteOf(designated.find((fn) => fn.name === name)!, designation),
  );
  expect([limit, target]).toEqual([said, said]);
  expect(noteOf(designated.find((fn) => fn.name === "THREAD.MAJOR")!, designation)).toBe("");
});
