import { expect, test } from "vitest";
import { catalogue } from "../../src/thread/catalogue.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { type Candidate, candidates, matchThread } from "../../src/thread/match.ts";
import { readThread } from "../../src/thread/read.ts";
import { tellApart } from "../../src/thread/tellapart.ts";
import { convertLength } from "../../src/thread/thread.ts";

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

const listed = catalogue.flatMap((series) =>
  series.sizes.flatMap((size) =>
    size.pitches.filter((pitch) => pitch > 0).map((pitch) => series.list(size, pitch)),
  ),
);

const inMm = (text: string) => {
  const thread = readThread(text);
  const mm = (value: number) => convertLength(value, thread.unit, "mm");
  return {
    major: mm(thread.major),
    bore: mm(thread.minor.internal),
    pitch: mm(thread.pitch * thread.starts),
    included: thread.loadFlank + thread.clearanceFlank,
    tapers: thread.taper > 0,
  };
};

const firstOf = (found: readonly Candidate[]) =>
  found.filter(({ rank }) => rank === 1).flatMap(({ designation, also }) => [designation, ...also]);

test("every thread of the catalogue is found first from its own diameter, lead and angle", {
  timeout: 60_000,
}, () => {
  expect(listed.length).toBeGreaterThan(1200);
  for (const text of listed) {
    const { major, bore, pitch, included, tapers } = inMm(text);
    const screw = { major, pitch, unit: "mm", included } as const;
    expect(firstOf(candidates(screw)), text).toContain(text);
    expect(firstOf(candidates({ ...screw, included: undefined, tapers })), text).toContain(text);
    expect(firstOf(candidates({ ...screw, major: bore, member: "internal" })), text).toContain(text);
    // The named thread has the same figures, whichever of its series it is named by.
    for (const name of matchThread(screw, 1).split(" or ")) {
      expect(inMm(name).major, text).toBeCloseTo(major, 6);
      expect(inMm(name).pitch, text).toBeCloseTo(pitch, 6);
      expect(inMm(name).included, text).toBe(included);
    }
  }
});

test("inch figures find every thread of the catalogue too", { timeout: 60_000 }, () => {
  for (const text of listed) {
    const { major, pitch, included } = inMm(text);
    const found = candidates({ major: major / 25.4, pitch: pitch / 25.4, unit: "in", included });
    expect(firstOf(found), text).toContain(text);
  }
});

// Wear of a tenth of the pitch, a pitch gauge or a count over ten threads that is good to 1 %.
test.each([
  ["1/2-12 BSW", 12.7, 25.4 / 12, "1/2 BSW"],
  ["1/2-13 UNC", 12.7, 25.4 / 13, "1/2-13 UNC"],
  ["M10x1", 10, 1, "M10x1"],
  ["3/8-26 BSB", 9.525, 25.4 / 26, "3/8-26 BSB"],
  ["0 BA", 6, 1, "0 BA"],
])("a worn %s is still known for what it is", (_, major, pitch, named) => {
  for (const wear of [0, 0.02, 0.05, 0.1]) {
    for (const error of [-0.009, 0, 0.009]) {
      const found = mm(major - wear * pitch, pitch * (1 + error));
      expect(found.split(" or ")[0] === named || found.includes(named), `${wear} ${error}: ${found}`).toBe(
        true,
      );
    }
  }
});

test("a worn 1/2-12 BSW is told from 1/2-13 UNC even by a poor measurement of the pitch", () => {
  const rough = { major: 12.5, unit: "mm", tolerance: 0.2 } as const;
  expect(
    candidates({ ...rough, pitch: 2.06 })
      .map((c) => c.designation)
      .slice(0, 2),
  ).toEqual(["1/2 BSW", "1/2-13 UNC"]);
  expect(
    candidates({ ...rough, pitch: 2.0 })
      .map((c) => c.designation)
      .slice(0, 2),
  ).toEqual(["1/2-13 UNC", "1/2 BSW"]);
});

test("M10x1 and 3/8-26 BSB are told apart when the pitch is poorly known", () => {
  const rough = { unit: "mm", tolerance: 0.05 } as const;
  expect(candidates({ ...rough, major: 9.85, pitch: 0.985 })[0]!.designation).toBe("M10x1");
  expect(candidates({ ...rough, major: 9.45, pitch: 0.99 })[0]!.designation).toBe("3/8-26 BSB");
});

test("a candidate says how far diameter and lead are off it, measured less basic", () => {
  const [first] = candidates({ major: 12.55, pitch: 2.1, unit: "mm", included: 55 });
  expect(first).toMatchObject({ designation: "1/2 BSW", form: "Whitworth", included: 55, rank: 1 });
  expect(first!.off).toBeCloseTo(12.55 - 12.7, 9);
  expect(first!.leadOff).toBeCloseTo(2.1 - 25.4 / 12, 9);
});

test("a taper tells R 1/2 from G 1/2", () => {
  const pipe = { major: 20.9, pitch: 25.4 / 14, unit: "mm", included: 55 } as const;
  expect(matchThread(pipe, 1)).toBe("G 1/2 or R 1/2");
  expect(matchThread({ ...pipe, tapers: false }, 1)).toBe("G 1/2");
  expect(matchThread({ ...pipe, tapers: true }, 1)).toBe("R 1/2");
});

// ISO 724: the nut of M10 has a minor diameter of 8.376, which 6H lets grow by 0.300.
test("a nut is known by its bore, which measures over the basic minor diameter", () => {
  const nut = { pitch: 1.5, unit: "mm", included: 60, member: "internal" } as const;
  expect(matchThread({ ...nut, major: 8.45 }, 1)).toBe("M10");
  expect(candidates({ ...nut, major: 8.45 })[0]!.off).toBeCloseTo(8.45 - 8.376, 3);
});

// 25.4/12 and 25.4/13 of ten pitches, 55 and 60 degrees: BS 84 and ASME B1.1.
test("what tells two threads apart is named with both figures", () => {
  const apart = (one: string, other: string, ...more: [("mm" | "in")?, number?]) =>
    tellApart(readThread(one), readThread(other), more[0] ?? "mm", more[1]);
  expect(apart("1/2-12 BSW", "1/2-13 UNC")).toBe(
    "measure 10 pitches: 21.17 against 19.54 mm; included angle 55 against 60 degrees; crests made rounded against flat",
  );
  expect(apart("1/2-12 BSW", "1/2-13 UNC", "in", 6)).toContain("measure 6 pitches: 0.5000 against 0.4615 in");
  expect(apart("M10x1", "3/8-26 BSB")).toContain("unworn crests: 10.00 against 9.53 mm across");
  expect(apart("G 1/2", "R 1/2")).toBe(
    "measure the diameter at two places: parallel against growing 1 in 16",
  );
  expect(apart("S 48x8", "2-4 Butt")).toContain("included angle 33 against 52 degrees");
  expect(apart("M20x3-P1.5", "M20x1.5")).toBe("count the starts at the end: 2 against 1");
  expect(apart("M10-6g", "M10-4h")).toContain("only the root or the class of fit differs");
  expect(() => apart("M10", "M12", "mm", 0)).toThrow("pitches must be a whole number from 1 up, got 0");
});
