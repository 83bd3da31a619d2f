/** The set-over sheet of an invented job, with the values that its functions would give; every state of a cell is in it. */
import type { CellFormat, SheetDocument } from "../../src/job/document.ts";
import type { FakeCell } from "./fake-job.ts";

const label: FakeCell["format"] = { role: "label" };
const note: CellFormat = { role: "note" };
const head: CellFormat = { role: "head" };
const angle: CellFormat = { as: "angle", places: 1 };
const length: CellFormat = { as: "length" };

export const setOver: Record<string, FakeCell> = {
  A1: { text: "Angle of the top slide", format: head },
  B1: { format: head },
  C1: { format: head },
  A2: { text: "Thread", format: label },
  B2: { text: "1/2-12 BSW", format: { align: "right" } },
  C2: { text: "from 10 Thread", format: note },
  A3: { text: "Trailing flank", format: label },
  B3: { text: "=55/2", value: 27.5, format: angle },
  C3: { text: "half of 55°", format: note },
  A4: { text: "Back off", format: label },
  B4: { text: "0.5", format: { ...angle, role: "input" } },
  C4: { text: "0.5 to 1 usual", format: note },
  A5: { text: "Set-over", format: label },
  B5: { text: "=B3-B4", value: 27, format: { ...angle, bold: true } },
  C5: { text: "from square", format: note },
  A6: { text: "Scale is zeroed", format: label },
  B6: {
    text: "along the bed",
    format: { role: "input" },
    choices: ["along the bed", "square to the bed", "along, far end"],
  },
  C6: { text: "or square, far end", format: note },
  A7: { text: "Flank line reads", format: label },
  B7: { text: "=90-B3", value: 62.5, format: angle },
  C7: { text: "do not set", format: note },
  A8: { text: "Set the scale to", format: { ...label, bold: true } },
  B8: { text: "=90-B5", value: 63, format: { ...angle, role: "key" } },
  C8: { text: "setting", format: note },
  A9: { text: "Travel of the top slide", format: head },
  B9: { format: head },
  C9: { format: head },
  A10: { text: "Depth of thread", format: label },
  B10: { text: "1.3554", format: length },
  C10: { text: "radial", format: note },
  A11: { text: "Slide travel", format: label },
  B11: { text: "=FLANK.INFEED(depth, setover)", value: 1.521201, format: { ...length, bold: true } },
  C11: { text: "along the slide", format: note },
  A12: { text: "Slide dial, a division", format: label },
  B12: { text: "0.02", format: { as: "length", places: 2, role: "input" } },
  C12: { text: "reads travel", format: note },
  A13: { text: "Divisions in a turn", format: label },
  B13: { text: "100", format: { role: "input", unit: "div" } },
  C13: { text: "2 mm a turn", format: note },
  A14: { text: "Spindle speed, at most", format: label },
  B14: { text: "=226", value: 226, format: { unit: "rev/min" } },
  A15: { text: "Stop for full depth", format: { ...label, bold: true } },
  B15: { text: "=DIAL.READING(B11)", value: "1 turn + 16", format: { role: "key", align: "right" } },
  A16: { text: "Prove it with an indicator", format: head },
  B16: { format: head },
  C16: { format: head },
  A17: { text: "Wind the slide by", format: label },
  B17: { text: "10", format: { as: "length", places: 2, role: "input" } },
  A18: { text: "Indicator moved", format: label },
  B18: { text: "95", format: { ...angle, role: "input" } },
  C18: { text: "your reading", format: note },
  A19: { text: "Angle found", format: label },
  B19: {
    text: "=SETOVER.FOUND(B17, B18)",
    value: 28,
    format: angle,
    caution: "0.5 degrees past the flank",
  },
  C19: { text: "asin 0.470", format: note },
  A20: { text: "Travel by it", format: label },
  B20: {
    text: "=FLANK.INFEED(B10, B18)",
    value: { error: "#NUM!", message: "setover must be under 90, got 95", from: "Tool!B18" },
    format: length,
  },
  A21: {
    text: "=IF(B19>B3, ...)",
    value: "0.5° past the flank: overcuts it by 0.011 mm",
    format: { role: "caution" },
  },
  A22: { text: "Pass", format: { role: "column" } },
  B22: { text: "Depth\nmm radial", format: { role: "column" } },
  A23: { text: "=PASSES(B10)", value: 1 },
  A24: { value: 2, spilledFrom: "A23" },
};

export const setOverSheet: Partial<SheetDocument> = {
  columns: { A: 184, B: 140, C: 120 },
  merged: ["A21:C21"],
};

export const setOverNames = { depth: "Tool!B10", setover: "Tool!B5" };
