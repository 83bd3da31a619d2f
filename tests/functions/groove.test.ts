// Triangles by hand: a flank of angle f is 1/cos f long per depth, and the half of a sharp groove has h^2 tan f / 2.
import { expect, test } from "vitest";
import { forceFunctions } from "../../src/functions/force.ts";
import { grooveFunctions } from "../../src/functions/groove.ts";
import { caller, parted } from "./call.ts";

const call = caller([...grooveFunctions, ...forceFunctions]);
const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

test("a layer tells its leading edge before its trailing one", () => {
  // 52 degrees of which 7 trail, so 45 lead; a nose of 0.2; one pass 1 deep.
  const [row] = call("GROOVE.LAYERS", [0], [1], 52, 0.2, 7) as number[][];
  expect(row![0]).toBe(1);
  [0.2 + (tan(45) + tan(7)) / 2, tan(45) * cos(45), 1, tan(7) * cos(7), 1 / cos(45), 0.2, 1 / cos(7)].forEach(
    (expected, k) => {
      expect(row![k + 1]).toBeCloseTo(expected, 9);
    },
  );
});

test("a wanted form is as the tool, but of its own angle it is symmetric unless its trailing flank is given", () => {
  const sharp = [[0], [1], 52, 0, 7] as const;
  expect(call("GROOVE.OVER", ...sharp)).toBeCloseTo(0, 12);
  expect(call("GROOVE.LEFT", ...sharp)).toBeCloseTo(0, 12);
  expect(call("GROOVE.OVER", ...sharp, "flat", undefined, 60)).toBeCloseTo((tan(45) - tan(30)) / 2, 9);
  expect(call("GROOVE.LEFT", ...sharp, "flat", undefined, 60)).toBeCloseTo((tan(30) - tan(7)) / 2, 9);
  expect(call("GROOVE.LEFT", ...sharp, "flat", undefined, 60, 15)).toBeCloseTo((tan(15) - tan(7)) / 2, 9);
});

test("more passes than anyone winds are refused", () => {
  const places = (count: number) => Array.from({ length: count }, (_, k) => (k + 1) / 1000);
  expect(() => call("GROOVE.AREA", places(401), places(401), 60)).toThrow(
    "axial must hold at most 400 passes",
  );
});

test.each<[number | readonly number[], number | readonly number[], boolean]>([
  [[0.019], [1], true],
  [[0.02], [1], false],
  [[0.5], [1], false],
  // One edge that cuts a real chip is enough; one that only slides does not count.
  [[0.01, 0.2], [1, 1], false],
  [[0.01, 0], [1, 0], true],
])(
  "a chip of %j over %j is cautioned about when even the thickest is under 0.02 mm: %s",
  (area, width, thin) => {
    const { note } = parted(call("FORCE.CUT", area, width, "mild steel", "mm"));
    expect(note.includes("a chip thinner than 0.02 mm")).toBe(thin);
  },
);
