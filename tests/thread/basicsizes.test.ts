import { expect, test } from "vitest";
import { readThread } from "../../src/thread/read.ts";

// ASME B1.20.1 table 5 as in a machinists' handbook, 27th ed. p. 1865: NPSM, inches. The nut's pitch and minor diameter
// are basic; the screw's largest major diameter stands an allowance below basic.
test.each([
  ["1/8", 0.3736, 0.358, 0.397, 0.0011],
  ["1/4", 0.4916, 0.468, 0.526, 0.0013],
  ["3/8", 0.627, 0.603, 0.662, 0.0014],
  ["1/2", 0.7784, 0.747, 0.823, 0.0015],
  ["3/4", 0.9889, 0.958, 1.034, 0.0016],
])("%s NPSM agrees with the printed diameters", (size, pitchDia, minor, major, allowance) => {
  const thread = readThread(`${size} NPSM`);
  expect(Math.abs(thread.pitchDia - pitchDia)).toBeLessThanOrEqual(0.00011);
  expect(Math.abs(thread.minor.internal - minor)).toBeLessThanOrEqual(0.0006);
  expect(Math.abs(thread.major - allowance - major)).toBeLessThanOrEqual(0.0006);
});

// BS 84 form: the depth is 0.640327 P, half of it on either side of the pitch line.
test.each([
  ["1/4-40 ME", 0.25 - 0.640327 / 40],
  ["1/2-26 BSB", 0.5 - 0.640327 / 26],
])("%s has the pitch diameter of the Whitworth form", (text, pitchDia) => {
  expect(readThread(text).pitchDia).toBeCloseTo(pitchDia, 6);
});

// BS 811 form: D - 1.0654 P at the root, half of that at the pitch line.
test("a cycle thread has its pitch line halfway down", () => {
  expect(readThread("1/4-26 BSC").pitchDia).toBeCloseTo(0.25 - 0.5327 / 26, 5);
});

// Common proportions: thread and space half a pitch wide and deep.
test("a square thread has its pitch line halfway down", () => {
  const { pitchDia, minor, rootFlat } = readThread("Sq 1-4");
  expect([pitchDia, minor.external, rootFlat]).toEqual([0.875, 0.75, 0.125]);
});

// ASME B1.1, design profile of the external UNR thread, as drawn in a machinists' handbook, 27th ed. p. 1733: 0.6875 H deep,
// arcs of 0.108 P, flanks straight beyond 0.25 H from the sharp root, which is where the arcs must leave them.
test("a UNR root is two arcs and a flat that meet the flanks just inside the nut's crest", () => {
  const H = Math.sqrt(3) / 2;
  const { depth, rootRadius, rootFlat, pitch } = readThread("1-7 UNRS");
  expect(depth.external / pitch).toBeCloseTo(0.6875 * H, 9);
  expect(rootRadius! / pitch).toBeCloseTo(0.108, 3);
  // An arc that runs from the flat at the root to a flank of 30 degrees leaves the flank r (1 - sin 30) above the flat.
  const above = (7 / 8) * H - depth.external / pitch + (rootRadius! / pitch) * (1 - Math.sin(Math.PI / 6));
  expect(above).toBeCloseTo(0.25 * H, 9);
  // There the groove is 2 tan 30 times as wide as that height; both arcs reach r cos 30 in from the flanks.
  const flat = 2 * above * Math.tan(Math.PI / 6) - 2 * (rootRadius! / pitch) * Math.cos(Math.PI / 6);
  expect(rootFlat! / pitch).toBeCloseTo(flat, 9);
});

// DIN 405-1 in a Danish gauge maker's list: pitch diameter, mm.
test.each([
  ["8", 6.73],
  ["14", 12.412],
  ["20", 18.412],
  ["38", 36.412],
  ["40", 37.883],
  ["75", 72.883],
  ["100", 97.883],
  ["105", 101.825],
  ["200", 196.825],
])("Rd %s has a pitch diameter of %d mm", (size, printed) => {
  expect(Math.abs(readThread(`Rd ${size}`).pitchDia - printed)).toBeLessThanOrEqual(0.0005 + 1e-9);
});

// ISO 5855-1: the nut of a large-radius thread is (D - D1)/2 = 0.48714 P deep; ISO 68-1: 5H/8 = 0.54127 P.
test.each([
  ["MJ10x1.5", 0.48714],
  ["1-8 UNJC", 0.48714],
  ["M10", 0.54127],
  ["1-8 UNC", 0.54127],
  ["1-8 UNRC", 0.54127],
])("the nut of %s is %d P deep", (text, share) => {
  const { depth, pitch } = readThread(text);
  expect(depth.internal / pitch).toBeCloseTo(share, 5);
});
