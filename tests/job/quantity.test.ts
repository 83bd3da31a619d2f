import Decimal from "decimal.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CellFormat, SheetDocument } from "../../src/job/document.ts";
import { createJob } from "../../src/job/job.ts";
import { inUnit, readFraction, readQuantity } from "../../src/job/quantity.ts";
import { fedText, keptAsText } from "../../src/job/readings.ts";
import { madeDocument, madeSheet } from "./made.ts";

const mm = (text: string) => {
  const found = readQuantity(text);
  return found && found.kind === "length" ? inUnit(found, "mm") : undefined;
};
const degrees = (text: string) => {
  const found = readQuantity(text);
  return found && found.kind === "angle" ? inUnit(found, "deg") : undefined;
};

describe("lengths", () => {
  // One inch is 25.4 mm by definition; the others are worked out from that by hand.
  test.each([
    ["12.7mm", 12.7],
    [" 12,7 mm ", 12.7],
    ["-3 mm", -3],
    ['1/2"', 12.7],
    ["7/16 in", 11.1125],
    ["1 3/16 in", 30.1625],
    ["1-3/16in", 30.1625],
    ["0.5 IN", 12.7],
    ["2″", 50.8],
    ["20 thou", 0.508],
    ["1.5 cm", 15],
    ["40 µm", 0.04],
    [".25in", 6.35],
    ["1 ft", 304.8],
  ])("%s is %s mm", (text, value) => {
    expect(mm(text)).toBe(value);
  });

  test("are the doubles nearest to the exact decimal, in either unit", () => {
    fc.assert(
      fc.property(fc.nat(99_999_999), fc.nat(6), (figures, places) => {
        const text = new Decimal(figures).div(new Decimal(10).pow(places)).toFixed();
        const exact = new Decimal(text);
        expect(mm(`${text} in`)).toBe(exact.mul("25.4").toNumber());
        // A decimal of 60 figures, read as the nearest double.
        const inches = new (Decimal.clone({ precision: 60 }))(text).div("25.4");
        expect(inUnit(readQuantity(`${text} mm`)!, "in")).toBe(inches.toNumber());
      }),
      { seed: 20261125 },
    );
  });
});

describe("angles", () => {
  test.each([
    ["27°30'", 27.5],
    ["27° 30′", 27.5],
    ["27°30'36\"", 27.51],
    ["-1°15'", -1.25],
    ["27.5°", 27.5],
    ["29 deg", 29],
    ["14 deg 30 min", 14.5],
  ])("%s is %s degrees", (text, value) => {
    expect(degrees(text)).toBe(value);
  });

  test("have no minute or second past 59", () => {
    expect(readQuantity("27°60'")).toBeUndefined();
    expect(readQuantity("27°0'60\"")).toBeUndefined();
  });
});

test.each([
  "12.7",
  "M12",
  "1/2-12 BSW",
  "2 BA",
  "1/4-20 UNC-2A",
  "1 2.5 mm",
  "1/0 in",
  "mm",
  "",
  "5 apples",
  "1e3 mm",
  "__proto__",
])("%s is no quantity", (text) => {
  expect(readQuantity(text)).toBeUndefined();
});

test("a bare fraction is a number without a unit", () => {
  expect(readFraction("1 1/2")).toEqual({ above: 3n, below: 2n });
  expect(readFraction("1/0")).toBeUndefined();
  expect(readFraction("1.5")).toBeUndefined();
});

describe("a quantity in a cell", () => {
  const jobOf = (
    cells: Record<string, string>,
    formats: Record<string, CellFormat>,
    more: Partial<SheetDocument> = {},
  ) =>
    createJob(madeDocument([madeSheet("A", cells, { formats, ...more })], { names: { unit: "A!A1" } }), []);
  const length: CellFormat = { as: "length" };

  test("counts in the unit of the job, stays as typed, and is read again when the unit changes", () => {
    const job = jobOf({ A1: "mm", B1: '1/2"', C1: "=B1*2", B2: "5" }, { B1: length });
    expect(job.cell("A", 0, 1)).toMatchObject({ text: '1/2"', value: 12.7 });
    expect(job.cell("A", 0, 2).value).toBe(25.4);
    job.setCells([{ sheet: "A", row: 0, column: 0, text: "in" }]);
    expect(job.unit).toBe("in");
    expect(job.cell("A", 0, 1)).toMatchObject({ text: '1/2"', value: 0.5 });
    expect(job.cell("A", 0, 2).value).toBe(1);
    job.undo();
    expect(job.cell("A", 0, 2).value).toBe(25.4);
  });

  test("opens in inches as it was typed in inches", () => {
    const job = jobOf({ A1: "in", B1: "25.4 mm", C1: "=B1" }, {});
    expect(job.cell("A", 0, 2).value).toBe(1);
  });

  test("is degrees where the cell shows an angle, inches where it shows thou or a fraction", () => {
    const job = jobOf(
      { A1: "mm", B1: "27°30'", B2: "20 thou", B3: "1/4 in" },
      { B1: { as: "dms" }, B2: { as: "thou" }, B3: { as: "fraction" } },
    );
    expect([0, 1, 2].map((row) => job.cell("A", row, 1).value)).toEqual([27.5, 0.02, 0.25]);
  });

  test("stays text where the cell is words, and where it is of the other kind, with a caution", () => {
    const job = jobOf(
      { B1: "5 mm", B2: "5 mm", B3: "5 mm" },
      { B1: { role: "note" }, B2: { as: "text" }, B3: { as: "angle" } },
    );
    expect([0, 1, 2].map((row) => job.cell("A", row, 1).value)).toEqual(["5 mm", "5 mm", "5 mm"]);
    expect(job.cell("A", 2, 1).caution).toBe("5 mm is a length, this cell takes an angle");
  });

  test("as a bare fraction needs its unit where lengths are millimetres", () => {
    const job = jobOf({ A1: "mm", B1: "7/16" }, { B1: length });
    expect(job.cell("A", 0, 1)).toMatchObject({ value: "7/16", caution: "7/16 of what: write 7/16 in" });
    job.setCells([{ sheet: "A", row: 0, column: 0, text: "in" }]);
    expect(job.cell("A", 0, 1).value).toBe(0.4375);
    expect(job.cell("A", 0, 1).caution).toBeUndefined();
  });

  test("is read again when the format of its cell changes", () => {
    const job = jobOf({ B1: "5 mm", C1: "=B1" }, {});
    expect(job.cell("A", 0, 2).value).toBe(5);
    job.setFormat("A", "B1", { as: "text" });
    expect(job.cell("A", 0, 2).value).toBe("5 mm");
    job.undo();
    expect(job.cell("A", 0, 2).value).toBe(5);
  });

  test("and a date in a cell that shows dates is its day, counted from 1899-12-30", () => {
    const job = jobOf({ B1: "1900-01-01", B2: "2026-02-30" }, { "B1:B2": { as: "date" } });
    expect(job.cell("A", 0, 1).value).toBe(2);
    expect(job.cell("A", 1, 1).value).toBe("2026-02-30");
  });
});

describe("what a number is written with", () => {
  const sheet = (formats: Record<string, CellFormat>): SheetDocument => ({
    name: "A",
    columns: {},
    rows: 200,
    columnCount: 26,
    cells: {},
    formats,
    choices: {},
    notes: {},
    merged: [],
  });
  test.each([
    ["1,5", {}, "1.5"],
    [" -0,25 ", {}, "-0.25"],
    ["1,2345", {}, "1.2345"],
    ["0,250", {}, "0.250"],
    ["1,250", {}, "1.250"],
    ["20,445", {}, "20.445"],
    ["1.234,5", {}, "1234.5"],
    ["1,234.5", {}, "1234.5"],
    ["1.234,5 mm", { as: "length" }, "1234.5"],
    ["1,250", { as: "length" }, "1.250"],
    ["27,125", { as: "angle" }, "27.125"],
    // A cell that shows text keeps a number as it is written.
    ["007", { as: "text" }, "'007"],
    ["1.50", { as: "text" }, "'1.50"],
    ["7", { as: "text" }, "7"],
    ["007", {}, "007"],
    // Words and lists stay what they are.
    ["4,8", { as: "text" }, "4,8"],
    ["4,8", { role: "note" }, "4,8"],
    ["20,40,60", {}, "20,40,60"],
  ] as const)("%s in a cell with %o is read as %s", (text, format, read) => {
    expect(fedText(sheet({ A1: format as CellFormat }), "A1", text, "mm")).toBe(read);
  });

  test.each([
    ["7/16", {}, "Kept as text; 7/16 in for a length, =7/16 for a number"],
    ["-1 1/2", {}, "Kept as text; -1 1/2 in for a length, =-(1+1/2) for a number"],
    ["1/0", {}, "Kept as text: nothing can be divided by 0"],
    // Here it is read, or the cell has a caution, or text is what belongs here.
    ["7/16", { as: "fraction" }, undefined],
    ["7/16", { as: "length" }, undefined],
    ["7/16", { as: "text" }, undefined],
    ["7/16", { role: "label" }, undefined],
    ["1/2-12 BSW", {}, undefined],
  ] as const)("%s in a cell with %o: %s", (text, format, said) => {
    const document = madeDocument([sheet({ A1: format as CellFormat })]);
    expect(keptAsText(document, { sheet: "A", row: 0, column: 0 }, text, "mm")).toBe(said);
  });
});
