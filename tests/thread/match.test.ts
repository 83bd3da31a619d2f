import { expect, test } from "vitest";
import { NothingFound } from "../../src/thread/failures.ts";
import { matchThread } from "../../src/thread/match.ts";

const mm = (major: number, pitch: number, more: { included?: number; tolerance?: number } = {}, rank = 1) =>
  matchThread({ major, pitch, unit: "mm", ...more }, rank);

// Basic sizes of ISO 724, ASME B1.1, BS 84, BS 93, ISO 228-1 and ISO 2904.
test.each([
  [10, 1.5, 60, "M10"],
  [12.7, 25.4 / 12, 55, "1/2 BSW"],
  [6, 1, 47.5, "0 BA"],
  [20.955, 25.4 / 14, 55, "G 1/2 or R 1/2"],
  [20, 4, 30, "Tr 20x4"],
  [25.4, 5.08, 29, "1-5 Acme"],
  [4.826, 25.4 / 32, 60, "10-32 UNF"],
])("a thread of %d mm, pitch %d mm and %d degrees is %s", (major, pitch, included, designation) => {
  expect(mm(major, pitch, { included })).toBe(designation);
});

test("a worn screw is taken for the size above it rather than the size below", () => {
  // 0.19 under M8 lies within the tolerance of its loosest class and a tenth of the pitch.
  expect(mm(7.81, 1.25, { included: 60 })).toBe("M8");
});

test("inches and millimetres give the same answer", () => {
  expect(matchThread({ major: 0.25, pitch: 0.05, unit: "in" }, 1)).toBe(mm(6.35, 1.27));
});

test("ranks go on from the nearest to the farther sizes", () => {
  expect(mm(6, 1, { included: 60 })).toBe("M6");
  expect(mm(6, 1, { included: 60 }, 2)).toBe("M7");
  expect(() => mm(6, 1, { included: 60 }, 3)).toThrow(NothingFound);
});

test("a wider tolerance lets neighbouring pitches in, the nearer pitch first", () => {
  expect(() => mm(10, 1.45, { included: 60, tolerance: 0.001 })).toThrow(NothingFound);
  expect(mm(10, 1.45, { included: 60, tolerance: 0.3 })).toBe("M10");
  expect(mm(10, 1.45, { included: 60, tolerance: 0.3 }, 2)).toBe("M10x1.25");
});

// Td of ISO 965-1 grade 8 at a pitch of 1.5 mm is 0.375 mm; a tenth of the pitch more makes 0.525 mm.
test("an undersize that wear explains counts once, any other difference twice", () => {
  // 0.51 under M25x1.5 against 0.49 over M24x1.5.
  expect(mm(24.49, 1.5, { included: 60 })).toBe("M25x1.5");
  // 0.54 under is more than a worn screw measures; 0.46 over is nearer.
  expect(mm(24.46, 1.5, { included: 60 })).toBe("M24x1.5");
});
