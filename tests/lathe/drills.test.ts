// Sizes are those of ASME B94.11M; tests/published/drills.test.ts compares the table.
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Series, sizeIn, stockDrills } from "../../src/lathe/drill-list.ts";
import { beyond, drillSize, nearestDrill } from "../../src/lathe/drills.ts";
import { NothingFound, Unreadable } from "../../src/thread/failures.ts";
import { between, expectClose, seeded } from "./close.ts";

test.each([
  ["#7", 0.201],
  ["# 7", 0.201],
  ["No. 7", 0.201],
  ["no 7", 0.201],
  ["NO.7", 0.201],
  ["number 7", 0.201],
  ["#07", 0.201],
  ["F", 0.257],
  ["f", 0.257],
  ["Letter F", 0.257],
  ["1/4", 0.25],
  [' 1/4" ', 0.25],
  ["1/4 in", 0.25],
  ["17/64", 0.265625],
  ["1 1/4", 1.25],
  ["1-1/4 in", 1.25],
  ["2 3/16", 2.1875],
  ["0.257 in", 0.257],
  ['.257"', 0.257],
  ["0,257 in", 0.257],
  ["1 in", 1],
])("%j is %d in", (name, inches) => {
  expect(drillSize(name, "in")).toBe(inches);
  expectClose(drillSize(name, "mm"), inches * 25.4, 1e-12);
});

test.each([
  ["6.8 mm", 6.8],
  ["6,8mm", 6.8],
  ["6.8 MM", 6.8],
  ["10 mm", 10],
])("%j is %d mm", (name, size) => {
  expect(drillSize(name, "mm")).toBe(size);
  expectClose(drillSize(name, "in"), size / 25.4, 1e-12);
});

test.each([
  ["7", "No. 7 or 7 mm?"],
  ["80", "No. 80 or 80 mm?"],
  ["81", "81 mm or 81 in?"],
  ["6.8", "6.8 mm or 6.8 in?"],
  ["0.257", "0.257 mm or 0.257 in?"],
])("a bare %s is asked back", (name, asks) => {
  expect(() => drillSize(name, "mm")).toThrow(Unreadable);
  expect(() => drillSize(name, "mm")).toThrow(asks);
});

test.each(["", "large", "AA", "#", "#7.5", "No. F", "7 cm", "1/4 mm", "-6.8 mm", "1/0", "1.2.3 mm"])(
  "%j is no drill",
  (name) => {
    expect(() => drillSize(name, "mm")).toThrow(Unreadable);
    expect(() => drillSize(name, "mm")).toThrow(`cannot read "${name}" as a drill`);
  },
);

test.each(["#0", "#81", "No. 100"])("%s is not among the number drills", (name) => {
  expect(() => drillSize(name, "mm")).toThrow(NothingFound);
  expect(() => drillSize(name, "mm")).toThrow("number drills run from No. 1 to No. 80");
});

test("a drill of no size is outside its domain", () => {
  for (const name of ["0 mm", "0/4"]) {
    expect(() => drillSize(name, "mm")).toThrow("size of the drill must be greater than 0, got 0");
  }
});

test("every stock drill has a name of its own that reads back to its size", () => {
  expect(new Set(stockDrills.map(({ name }) => name)).size).toBe(stockDrills.length);
  for (const drill of stockDrills) {
    expectClose(drillSize(drill.name, "mm"), sizeIn(drill, "mm"), 1e-12);
    expectClose(drillSize(drill.name, "in"), sizeIn(drill, "in"), 1e-12);
  }
});

test("number drills grow smaller, letters larger, fractions go by 64ths, and each series is whole", () => {
  const sizes = (series: Series) =>
    stockDrills.filter((drill) => drill.series === series).map((drill) => drill.size);
  const rising = (list: readonly number[]) => list.every((size, i) => i === 0 || size > list[i - 1]!);
  expect(sizes("number")).toHaveLength(80);
  expect(rising(sizes("number").toReversed())).toBe(true);
  expect(sizes("letter")).toHaveLength(26);
  expect(rising(sizes("letter"))).toBe(true);
  expect(sizes("fraction")).toEqual(Array.from({ length: 64 }, (_, i) => (i + 1) / 64));
  expect(rising(sizes("metric"))).toBe(true);
});

const named = (
  size: number,
  series: Series | "any",
  rounding: "nearest" | "under" | "over",
  unit: "mm" | "in",
) => nearestDrill(size, series, rounding, unit).name;

// No. 8 is 0.199 and No. 7 0.201; E 0.250, F 0.257, G 0.261.
test("the nearest drill, and the nearest that is not over or not under", () => {
  expect(named(0.2003, "number", "nearest", "in")).toBe("No. 7");
  expect(named(0.2003, "number", "under", "in")).toBe("No. 8");
  expect(named(0.1995, "number", "over", "in")).toBe("No. 7");
  expect(named(0.256, "letter", "nearest", "in")).toBe("F");
  expect(named(0.256, "letter", "under", "in")).toBe("E");
  expect(named(6.78, "metric", "nearest", "mm")).toBe("6.8 mm");
  expect(named(0.9, "fraction", "over", "in")).toBe("29/32");
});

test("a drill of just the size is under and over it", () => {
  for (const rounding of ["nearest", "under", "over"] as const) {
    expect(named(0.257, "letter", rounding, "in")).toBe("F");
    expect(named(0.257 * 25.4, "letter", rounding, "mm")).toBe("F");
    expect(named(8.5 / 25.4, "metric", rounding, "in")).toBe("8.5 mm");
  }
});

test("half way between two the smaller is named, and of one size metric, then fraction, number, letter", () => {
  expect(named(0.2, "number", "nearest", "in")).toBe("No. 8");
  expect(named(6.35, "any", "nearest", "mm")).toBe("1/4"); // letter E is 0.250 in too
  expect(named(25.4, "any", "nearest", "mm")).toBe("1 in");
  expect(named(12.7, "any", "nearest", "mm")).toBe("12.7 mm"); // 1/2 in
});

test("of all drills of a series none lies nearer on the side asked for", () => {
  const series = fc.constantFrom("any", "metric", "number", "letter", "fraction");
  const rounding = fc.constantFrom("nearest", "under", "over");
  fc.assert(
    fc.property(between(6, 10), series, rounding, fc.constantFrom("mm", "in"), (mm, from, way, unit) => {
      const size = unit === "mm" ? mm : mm / 25.4;
      const allowed = stockDrills
        .filter((drill) => from === "any" || drill.series === from)
        .map((drill) => sizeIn(drill, unit) - size)
        .filter((off) => way === "nearest" || (way === "under" ? off <= 1e-9 : off >= -1e-9));
      if (allowed.length === 0) {
        expect(() => nearestDrill(size, from, way, unit)).toThrow(NothingFound);
        return;
      }
      const found = nearestDrill(size, from, way, unit);
      expect(from === "any" || found.series === from).toBe(true);
      const off = sizeIn(found, unit) - size;
      expectClose(Math.abs(off), Math.min(...allowed.map(Math.abs)), 1e-8);
      if (way !== "nearest") expect(way === "under" ? off <= 1e-8 : off >= -1e-8).toBe(true);
    }),
    seeded,
  );
});

test("a size past the end of its series is told", () => {
  expect(beyond(6, "number", "mm")).toBe("above the largest"); // No. 1 is 5.79 mm
  expect(beyond(0.2, "number", "mm")).toBe("below the smallest"); // No. 80 is 0.343 mm
  expect(beyond(0.228, "number", "in")).toBeUndefined();
  expect(beyond(0.234 * 25.4, "letter", "mm")).toBeUndefined();
});

test("a size with no drill on that side finds nothing", () => {
  expect(() => named(12, "letter", "over", "mm")).toThrow(NothingFound);
  expect(() => named(12, "letter", "over", "mm")).toThrow("no letter drill is 12 mm or over");
  expect(() => named(0.1, "any", "under", "mm")).toThrow("no stock drill is 0.1 mm or under");
  expect(() => named(0, "any", "nearest", "mm")).toThrow("size must be greater than 0, got 0");
});
