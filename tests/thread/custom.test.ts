import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/thread/catalogue.ts";
import { customNote } from "../../src/thread/custom.ts";
import { cutDepth } from "../../src/thread/cutdepth.ts";
import { readThread } from "../../src/thread/read.ts";
import type { Thread } from "../../src/thread/thread.ts";

/** The custom note that describes the flat-rooted screw of this thread. */
function asCustom(thread: Thread): Thread {
  const { major, pitch, loadFlank, clearanceFlank, rootFlat, starts, unit } = thread;
  return readThread(
    customNote({
      major,
      pitch,
      loadFlank,
      clearanceFlank,
      depth: (major - thread.minor.external) / 2,
      rootFlat,
      starts,
      unit,
    }),
  );
}

/** Listed threads whose screw has a flat crest, and a root flat that ends the straight flanks at its depth. */
const flatRooted = catalogue.flatMap((series) =>
  series.sizes.flatMap((size) =>
    size.pitches
      .filter((pitch) => pitch > 0)
      .map((pitch) => readThread(series.list(size, pitch)))
      .filter(({ rootFlat, rootRadius, crestFlat }) => rootFlat && crestFlat && rootRadius === undefined),
  ),
);

test("a custom note with the figures of any flat-rooted standard thread gives the figures of that thread", () => {
  expect(new Set(flatRooted.map(({ series }) => series)).size).toBeGreaterThan(8);
  for (const thread of flatRooted) {
    const custom = asCustom(thread);
    const who = thread.designation;
    const near = (a: number, b: number | undefined, what: string) =>
      expect(Math.abs(a - b!), `${who} ${what}`).toBeLessThan(1e-9 * thread.major);
    near(custom.pitchDia, thread.pitchDia, "pitch diameter");
    near(custom.minor.external, thread.minor.external, "minor diameter");
    near(custom.crestFlat!, thread.crestFlat, "crest");
    near(custom.rootFlat!, thread.rootFlat, "root");
    near(
      cutDepth(custom, thread.rootFlat!, "flat", "external"),
      cutDepth(thread, thread.rootFlat!, "flat", "external"),
      "depth of cut",
    );
    expect([custom.loadFlank, custom.clearanceFlank, custom.pitch, custom.starts, custom.unit]).toEqual([
      thread.loadFlank,
      thread.clearanceFlank,
      thread.pitch,
      thread.starts,
      thread.unit,
    ]);
  }
});

// Printed figures: ASME B1.5 tables (1-5 Acme: minor of the screw 0.7800), ASME B1.9 (2-4 Butt: D - 0.6 P, crest 0.16316 P),
// BS 84 (1/2 in: effective 0.4466, core 0.3932; the standard rounds the depth), DIN 513 (S 48x8: 42.0 = D - 0.75 P).
describe("typed from the printed proportions", () => {
  const slope = (angle: number) => Math.tan((angle * Math.PI) / 180);
  test.each([
    [
      "1-5 Acme",
      { major: 1, pitch: 0.2, loadFlank: 14.5, clearanceFlank: 14.5, depth: 0.11, rootFlat: 0.0689668 },
      { pitchDia: 0.9, minor: 0.78, crest: 0.0741 },
      0.00005,
    ],
    [
      "2-4 Butt",
      {
        major: 2,
        pitch: 0.25,
        loadFlank: 7,
        clearanceFlank: 45,
        depth: 0.66271 / 4,
        rootFlat: 0.25 * (1 - 0.163163 - 0.66271 * (slope(7) + 1)),
      },
      { pitchDia: 1.85, minor: 2 - 0.66271 / 2, crest: 0.0408 },
      0.00005,
    ],
    [
      "1/2 BSW",
      { major: 0.5, pitch: 1 / 12, loadFlank: 27.5, clearanceFlank: 27.5, depth: 0.640327 / 12 },
      { pitchDia: 0.4466, minor: 0.3932, crest: 1 / 72 },
      0.0001,
    ],
    [
      "S 48x8",
      {
        major: 48,
        pitch: 8,
        loadFlank: 3,
        clearanceFlank: 30,
        depth: 0.86777 * 8,
        rootFlat: 8 * (1 - 0.26384 - 0.86777 * (slope(3) + slope(30))),
      },
      { pitchDia: 42, minor: 48 - 2 * 0.86777 * 8, crest: 0.26384 * 8 },
      0.0005,
    ],
  ])("the form of %s has its printed figures", (_, form, printed, within) => {
    const unit = form.major > 10 ? "mm" : "in";
    const thread = readThread(customNote({ ...form, unit }));
    for (const [got, value] of [
      [thread.pitchDia, printed.pitchDia],
      [thread.minor.external, printed.minor],
      [thread.crestFlat!, printed.crest],
    ] as const)
      expect(Math.abs(got - value)).toBeLessThanOrEqual(within + 1e-12);
  });
});

test("crest, root and the flanks between them fill a pitch, and thread and groove are alike at the pitch line", () => {
  const degree = Math.PI / 180;
  const given = fc.record({
    P: fc.double({ min: 0.1, max: 20, noNaN: true }),
    load: fc.integer({ min: 0, max: 50 }),
    clearance: fc.integer({ min: 1, max: 50 }),
    share: fc.double({ min: 0.1, max: 0.95, noNaN: true }),
    starts: fc.integer({ min: 1, max: 6 }),
  });
  fc.assert(
    fc.property(given, ({ P, load, clearance, share, starts }) => {
      const slopes = Math.tan(load * degree) + Math.tan(clearance * degree);
      const depth = Math.min((share * P) / slopes, 3 * P);
      const thread = readThread(
        customNote({
          major: 10 * P,
          pitch: P,
          loadFlank: load,
          clearanceFlank: clearance,
          depth,
          starts,
          unit: "mm",
        }),
      );
      const { crestFlat, rootFlat, pitchDia, major } = thread;
      expect(crestFlat! + rootFlat! + depth * slopes).toBeCloseTo(P, 9);
      expect(crestFlat! + ((major - pitchDia) / 2) * slopes).toBeCloseTo(P / 2, 9);
      expect(thread.starts).toBe(starts);
    }),
    { seed: 20261125 },
  );
});

test("a note keeps very small and very large numbers", () => {
  for (const major of [1e-7, 0.1 + 0.2, 12345.678]) {
    const note = customNote({
      major,
      pitch: major / 10,
      loadFlank: 30,
      clearanceFlank: 30,
      depth: major / 20,
      unit: "mm",
    });
    expect(readThread(note).major).toBe(major);
    expect(readThread(note).designation).toBe(note);
  }
});
