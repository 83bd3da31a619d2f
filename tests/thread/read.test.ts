import fc from "fast-check";
import { expect, test } from "vitest";
import { catalogue } from "../../src/thread/catalogue.ts";
import { NothingFound, Unreadable } from "../../src/thread/failures.ts";
import { readThread } from "../../src/thread/read.ts";
import type { Thread } from "../../src/thread/thread.ts";

const seeded = { seed: 20261125 };

/** Every tabled size of every series. */
const designations = catalogue.flatMap((series) =>
  series.sizes.flatMap((size) =>
    size.pitches.filter((pitch) => pitch > 0).map((pitch) => series.list(size, pitch)),
  ),
);

const figures = ({ form: _, limits, classTaken, ...rest }: Thread) => rest;

// Spellings of the designations that the trade uses, and the thread each must mean.
test.each([
  ["m10 X 1,25", "M10x1.25"],
  ["M10×1.5 - 6g", "M10-6g"],
  ["M 10-6H", "M10-6H"],
  ["M20xPh3P1.5", "M20x3-P1.5"],
  ["M20x3-P1.5-6H", "M20x3-P1.5-6H"],
  ["0.250-20 unc", "1/4-20 UNC"],
  ['1/4"-20 UNC-2a', "1/4-20 UNC-2A"],
  ["1/4 in UNC", "1/4-20 UNC"],
  ["¼-20 UNC 2B", "1/4-20 UNC-2B"],
  ["10-32 UNF", "10-32 UNF"],
  ["#10-32 UNF", "10-32 UNF"],
  ["No. 10 UNF", "10-32 UNF"],
  ["1-1/8-12 UN-2B", "1 1/8-12 UNF-2B"],
  ["1/2-12 BSW", "1/2 BSW"],
  ["BSF 1/4", "1/4 BSF"],
  ["1/4 BSW close", "1/4 BSW close"],
  ["1/2 BSW medium nut", "1/2 BSW medium nut"],
  ["BA 2", "2 BA"],
  ["2ba nut", "2 BA nut"],
  ["1/4-28 UNJF-3A", "1/4-28 UNJF-3A"],
  ["3/16-40 ME", "3/16-40 ME"],
  ["3/8-26 BSB", "3/8-26 BSB"],
  ["1/4-26 BSC", "1/4-26 BSC"],
  ["MJ6x1", "MJ6x1"],
  ["g1/2a", "G 1/2 A"],
  ["G 1/2 B", "G 1/2 B"],
  ["R 3/4", "R 3/4"],
  ["rp1/2", "Rp 1/2"],
  ["Rc 1/2", "Rc 1/2"],
  ["NPT 1/4", "1/4-18 NPT"],
  ["1-1/4 NPT", "1 1/4-11.5 NPT"],
  ["1/2-14 NPSM", "1/2-14 NPSM"],
  ["1-5 acme 2g", "1-5 Acme-2G"],
  ["1-5 Acme-3G nut", "1-5 Acme-3G nut"],
  ["1-5 Stub Acme", "1-5 Stub Acme"],
  ["1-5 Acme 2 starts", "1-5 Acme 2 starts"],
  ["tr20X4", "Tr 20x4"],
  ["Tr 40x14 P7-7e", "Tr 40x14 P7-7e"],
  ["Tr40x14(P7)LH", "Tr 40x14 P7 LH"],
  ["S 48x8", "S 48x8"],
  ["2-4 Butt", "2-4 Butt"],
  ["2-4 push-butt", "2-4 Push-Butt"],
  ["Rd 40", "Rd 40x1/6"],
  ["Rd40 x 1/6", "Rd 40x1/6"],
  ["Sq 1-4", "Sq 1-4"],
  ["Sq 40x7", "Sq 40x7"],
  ["M10-LH", "M10 LH"],
  ["M20LH", "M20 LH"],
  ["B.S.W. 1/2", "1/2 BSW"],
  ["2 B.A.", "2 BA"],
  ["0.190-32 UNF", "10-32 UNF"],
  ["M10x1.5-6g 2 starts", "M10x3-P1.5-6g"],
  ["1/4-20 NC", "1/4-20 NC"],
])("%s means %s", (given, meant) => {
  expect(readThread(given).designation).toBe(meant);
});

// Diameters of ASME B1.1: number sizes are 0.060 + 0.013 n inches.
test.each([
  ["1-64 UNC", 0.073],
  ["1-8 UNC", 1],
  ["6-32 UNC", 0.138],
  ["6-12 UN", 6],
  ["1-20 UNEF", 1],
  ["2-56 UNC", 0.086],
  ["2-4.5 UNC", 2],
  ["4-40 UNC", 0.112],
  ["4-4 UNC", 4],
])("the threads per inch tell whether %s is a number or inches", (given, major) => {
  expect(readThread(given).major).toBe(major);
});

test("an internal class or the word nut makes a thread internal", () => {
  expect(
    ["M10", "M10-6g", "M10-6H", "1/4-20 UNC-2B", "2 BA nut", "M10 nut"].map(
      (text) => readThread(text).member,
    ),
  ).toEqual(["external", "external", "internal", "internal", "internal", "internal"]);
});

// ASME B1.5 designates several starts by pitch and lead in inches, such as 2.875-0.4P-0.8L-ACME-2G.
test.each([
  ["2.875-0.4P-0.8L-ACME-2G", "2 7/8-2.5 Acme-2G 2 starts", 0.4, 2],
  ["1-0.2P Acme", "1-5 Acme", 0.2, 1],
  ["1-0.2P-0.4L Acme-2C LH", "1-5 Acme-2C 2 starts LH", 0.2, 2],
  [".750-.0625P-.1875L(3 STARTS)UNF-2A", "3/4-16 UNF-2A 3 starts", 0.0625, 3],
] as const)("%s gives pitch and lead in inches", (text, designation, pitch, starts) => {
  const thread = readThread(text);
  expect([thread.designation, thread.pitch, thread.starts]).toEqual([designation, pitch, starts]);
});

test("a lead in inches that is no whole number of pitches is refused", () => {
  expect(() => readThread("1-0.2P-0.5L Acme")).toThrow("not a whole number of pitches");
  expect(() => readThread("1-0.2P-0.4L (3 starts) Acme")).toThrow("make 2 starts, not 3");
});

test("several starts give the pitch and the lead their own numbers", () => {
  const { pitch, starts } = readThread("M20x3-P1.5-6H");
  expect([pitch, starts]).toEqual([1.5, 2]);
});

test("the usual class is 6g and 6H from 1.6 mm up, 6h and 5H below, 2A and 2B, medium, normal", () => {
  expect(readThread("M10").fits).toEqual({ external: "6g", internal: "6H" });
  expect(readThread("M1.4").fits).toEqual({ external: "6h", internal: "5H" });
  expect(readThread("1/4-20 UNC").fits).toEqual({ external: "2A", internal: "2B" });
  expect(readThread("1/4 BSW").fits).toEqual({ external: "medium", internal: "medium" });
  expect(readThread("4 BA").fits).toEqual({ external: "normal", internal: "normal" });
});

test("the other member takes the class that goes with the stated one", () => {
  expect(readThread("1/4-20 UNC-3A").fits.internal).toBe("3B");
  expect(readThread("1-5 Acme-4G").fits.internal).toBe("4G");
  expect(readThread("M10-8g").fits.internal).toBe("6H");
});

test.each([
  ["", "it is empty"],
  ["10x1.5", "does not say which series"],
  ["M10y2", 'stopped at "y2"'],
  ["M10-6q", "classes of M"],
  ["M10-6E", "classes of M"],
  ["M10-6H/6g", "is a fit"],
  ["M1.7", "M1.7x0.35"],
  ["1/0-20 UNC", "diameter must be greater than 0"],
  ["M10 30 starts", "starts must be from 1 to 24"],
  ["M20x3-P1.5 3 starts", "2 starts, not 3"],
  ["M10-6g nut", "classes of M"],
  ["M0", "greater than 0"],
  ["M4x4", "leaves no core"],
  ["M20x3-P2", "not a whole number of pitches"],
  ["M55", "M55x4"],
  ["1/4-28 UNC", "1/4-28 UNF"],
  ["1 UNC", "No. 1 or 1 in"],
  ["1/2-13 BSW", "12 threads per inch, not 13"],
  ["27 BA", "from 0 to 25"],
  ["1/4 ME", "1/4-40 ME"],
  ["bolt", "no thread series"],
  ["custom 12", "THREAD.CUSTOM"],
  ["G 2/3", "G has the sizes 1/16, 1/8"],
  ["1/4-20 NPT", "18 threads per inch, not 20"],
  ["Rd 40x5", 'stopped at "x5"'],
  ["Tr 20x4-6g", "classes of Tr"],
  ["2 Butt", "2-4 Butt"],
])("%j is refused and the message helps", (text, says) => {
  expect(() => readThread(text)).toThrow(Unreadable);
  expect(() => readThread(text)).toThrow(says);
  expect(() => readThread(text)).toThrow("M10x1.5-6g, 1/4-20 UNC-2A, 1/2-12 BSW, 2 BA");
});

// What was understood, where reading stopped, and the nearest that the standards list: sizes and pitches of ISO 261,
// ASME B1.1, BS 84, BS 93, ISO 228-1, ASME B1.20.1, B1.5 and ISO 2902.
test.each([
  ["1/2-11 BSW", 'read 1/2 BSW, stopped at "11"', "has 12 threads per inch, not 11", "1/2 BSW, 1/2-11 Whit"],
  [
    "1/2-13 BSW",
    'read 1/2 BSW, stopped at "13"',
    "has 12 threads per inch",
    "1/2 BSW, 1/2-13 UNC, 1/2-13 Whit",
  ],
  ["7/16-15 UNF", 'read UNF 7/16, stopped at "15"', "has 20 threads per inch", "7/16-20 UNF, 7/16-15 UNS"],
  ["7/16-14 UNF", 'stopped at "14"', "has 20 threads per inch", "7/16-20 UNF, 7/16-14 UNC"],
  ["7-32 UNF", 'read UNF, stopped at "7-32"', "has no size 7", "6-40 UNF, 8-36 UNF"],
  ["5/7 BSW", 'read BSW, stopped at "5/7"', "no such size", "11/16 BSW, 3/4 BSW"],
  ["27 BA", 'read BA, stopped at "27"', "from 0 to 25", "25 BA"],
  ["M1.7", "read M1.7, stopped at the end", "no usual pitch", "M1.6, M1.8"],
  ["G 2/3", 'read G, stopped at "2/3"', "G has the sizes", "G 5/8, G 3/4"],
  ["1/4-20 NPT", 'read NPT 1/4, stopped at "20"', "18 threads per inch", "1/4-18 NPT"],
  ["M10-6q", 'read M10, stopped at "6q"', "nut 4 to 8 with G or H", "M10-6g, M10-6H"],
  ["M10-6q nut", 'stopped at "6q"', "nut 4 to 8 with G or H", "M10-6H"],
  ["1/4-20 UNC-2C", 'read 1/4-20 UNC, stopped at "2C"', "1A, 2A, 3A; nut 1B", "1/4-20 UNC-2A, 1/4-20 UNC-2B"],
  [
    "1/2 BSW loose",
    'read 1/2 BSW, stopped at "loose"',
    "close, medium, free",
    "1/2 BSW medium, 1/2 BSW medium nut",
  ],
  ["Tr 20x4-6g", 'read Tr 20x4, stopped at "6g"', "such as 7e", "Tr 20x4-7e, Tr 20x4-7H"],
  ["M4x4", "read M4x4, stopped at the end", "leaves no core", "M4, M4x0.5"],
  ["1/2-12 BSX", 'read 1/2-12, stopped at "BSX"', "no thread series", "1/2 BSW"],
  ["1/2 BWS", 'read 1/2, stopped at "BWS"', "no thread series", "1/2 BSW"],
  ["1/4 Wihtworth", 'read 1/4, stopped at "Wihtworth"', "no thread series", "1/4 BSW"],
  ["Tx 20x4", 'read nothing, stopped at "Tx 20x4"', "no thread series", "Tr 20x4"],
  ["1/2-5 Stubb Acme", 'stopped at "Stubb Acme"', "no thread series", "1/2-5 Stub Acme"],
  ["1/2 BSW clos nut", 'read 1/2 BSW, stopped at "clos"', "nut medium, normal", "1/2 BSW medium nut"],
  ["1/2 BSW clos", 'read 1/2 BSW, stopped at "clos"', "close, medium, free", "1/2 BSW close, 1/2 BSW medium"],
  ["1/4-20 UNC-3C", 'stopped at "3C"', "1A, 2A, 3A", "1/4-20 UNC-2A"],
  ["M10x", 'read M10, stopped at "x"', "behind x a pitch is wanted", "M10"],
  ["1/2 bsp", 'read 1/2, stopped at "bsp"', "no thread series", "G 1/2"],
  ["1/2-21 BSC", 'read 1/2 BSC, stopped at "21"', "26 or 20 threads per inch", "1/2-20 BSC, 1/2-26 BSC"],
  ["1/2-14 NPSX", 'stopped at "NPSX"', "no thread series", "1/2-14 NPS"],
  ["1/2-12", "read 1/2-12, stopped at the end", "which series", "1/2 BSW"],
  ["1/4-20-2A UNC", 'read 1/4-20, stopped at "-2A"', "between the size and UNC", "1/4-20 UNC"],
])("%j says how far it was read and what is nearest", (text, where, why, nearest) => {
  const message = misreadOf(text);
  expect(message).toContain(`cannot read "${text}" as a thread: `);
  expect(message).toContain(where);
  expect(message).toContain(why);
  expect(message).toContain(`; nearest: ${nearest}`);
});

test.each([
  ["Custom", "read Custom, stopped at the end: major x pitch"],
  ["custom 20x2 in flank 3", 'read Custom 20x2 in, stopped at "flank 3": flanks load/clearance'],
  ["Custom 20x2.5 mm, flanks 30/30, dept 1.5", 'read Custom 20x2.5 mm, flanks 30/30, stopped at "dept 1.5"'],
  ["Custom 20x2.5 mm, flanks 30/30, depth 1.5, top 2", 'depth 1.5, stopped at "top 2": only root and starts'],
])("the custom note %j says which piece of it could not be read", (text, says) => {
  expect(misreadOf(text)).toContain(says);
});

function misreadOf(text: string): string {
  try {
    readThread(text);
  } catch (error) {
    expect(error).toBeInstanceOf(Unreadable);
    return (error as Error).message;
  }
  throw new Error(`${text} was read`);
}

test("what is named as nearest can be read itself", { timeout: 60_000 }, () => {
  const letters = fc.constantFrom(..."BSWUNCFAMEGTRPKX");
  const given = fc.tuple(
    fc.oneof(
      fc.integer({ min: 1, max: 40 }).map(String),
      fc.constantFrom("1/2", "7/16", "1 1/8", "0.3", "5/7"),
    ),
    fc.constantFrom("", "-11", "x1.3", "-20", " x 4"),
    fc.array(letters, { minLength: 1, maxLength: 4 }).map((some) => some.join("")),
    fc.constantFrom("", "-2C", " 6q", "-9"),
  );
  let named = 0;
  fc.assert(
    fc.property(given, ([size, pitch, word, fit]) => {
      const text = `${size}${pitch} ${word}${fit}`;
      try {
        readThread(text);
      } catch (error) {
        const message = (error as Error).message;
        expect(message).toMatch(/: read .+, stopped at (the end|".+"): /);
        const nearest = /; nearest: (.+); write for example/.exec(message)?.[1]?.split(", ") ?? [];
        named += nearest.length;
        for (const each of nearest) expect(() => readThread(each), `${text}: ${each}`).not.toThrow();
      }
    }),
    { ...seeded, numRuns: 3000 },
  );
  expect(named).toBeGreaterThan(300);
});

// Listed pitches of ISO 261 and ISO 2902, ASME B1.5; anything else is still a thread.
test.each([
  ["M12x1.7", 1.7, "1.7 is no standard pitch for M12: 1.75, 1.5, 1.25, 1"],
  ["M12x1.7-6g LH", 1.7, "1.7 is no standard pitch for M12: 1.75, 1.5, 1.25, 1"],
  ["M15x2", 2, "2 is no standard pitch for M15: 1.5, 1"],
  ["M11.3x1", 1, "M11.3 is no standard diameter: nearest M11 and M12"],
  ["M301x4", 4, "M301 is no standard diameter: nearest M300"],
  ["Tr 20x3", 3, "3 is no standard pitch for Tr 20: 4, 2"],
  ["1-6 Acme", 1 / 6, "6 is no standard number of threads per inch for 1 Acme: 5"],
  ["M12x1.75", 1.75, undefined],
  ["M20x3-P1.5", 1.5, undefined],
  ["1-5 Acme", 0.2, undefined],
  ["1/4-20 UNC", 0.05, undefined],
  ["1/2-11 Whit", 1 / 11, undefined],
])("%s is read, and noted where its size or pitch is in no list", (text, pitch, note) => {
  const thread = readThread(text);
  expect([thread.pitch, thread.note]).toEqual([pitch, note]);
});

test("the designation of every tabled size reads back to the same thread", () => {
  fc.assert(
    fc.property(fc.constantFrom(...designations), fc.constantFrom("", " LH"), (text, hand) => {
      const thread = readThread(text + hand);
      expect(figures(readThread(thread.designation))).toEqual(figures(thread));
    }),
    { ...seeded, numRuns: 2000 },
  );
});

test("any metric diameter and pitch reads back to the same thread", () => {
  const given = fc.record({
    d: fc.integer({ min: 20, max: 3000 }).map((n) => n / 10),
    P: fc.integer({ min: 4, max: 160 }).map((n) => n / 20),
    starts: fc.integer({ min: 1, max: 6 }),
    fit: fc.constantFrom("", "-6g", "-6H", "-4h", "-5g6g"),
  });
  fc.assert(
    fc.property(given, ({ d, P, starts, fit }) => {
      fc.pre(1.3 * P < d);
      const lead = Number((P * starts).toPrecision(12));
      const thread = readThread(`M${d}x${starts === 1 ? P : `${lead}-P${P}`}${fit}`);
      expect([thread.major, thread.pitch, thread.starts]).toEqual([d, P, starts]);
      expect(figures(readThread(thread.designation))).toEqual(figures(thread));
    }),
    seeded,
  );
});

test("any text is read to finite figures or refused in words, never another way", { timeout: 60_000 }, () => {
  const pieces = [
    "M",
    "10",
    "x",
    "1.5",
    "-",
    "6g",
    "1/4",
    "20",
    " ",
    "UNC",
    "BSW",
    "nut",
    "BA",
    "G",
    "Tr",
    "P7",
    "LH",
    "0",
    "/",
    "Rd",
    "Sq",
    "Custom",
    ",",
    "2 starts",
    "NPT",
    '"',
    "½",
    "999999999",
    ".",
  ];
  const text = fc.oneof(
    fc.string(),
    fc.array(fc.constantFrom(...pieces), { maxLength: 9 }).map((some) => some.join("")),
  );
  fc.assert(
    fc.property(text, (given) => {
      let thread: Thread;
      try {
        thread = readThread(given);
      } catch (error) {
        expect(error).toBeInstanceOf(RangeError);
        expect((error as Error).message).not.toMatch(/NaN|Infinity|undefined/);
        return;
      }
      const { major, pitch, pitchDia, minor, depth } = thread;
      for (const figure of [
        major,
        pitch,
        pitchDia,
        minor.external,
        minor.internal,
        depth.external,
        depth.internal,
      ]) {
        expect(Number.isFinite(figure) && figure > 0, given).toBe(true);
      }
      expect(figures(readThread(thread.designation)), given).toEqual(figures(thread));
      try {
        thread.limits();
      } catch (error) {
        expect(error).toBeInstanceOf(NothingFound);
      }
    }),
    { ...seeded, numRuns: 5000 },
  );
});

test("minor, pitch and major diameter of every tabled size are in that order", () => {
  for (const text of designations) {
    const { minor, pitchDia, major } = readThread(text);
    expect(minor.external, text).toBeGreaterThan(0);
    expect(minor.external, text).toBeLessThan(pitchDia);
    expect(minor.internal, text).toBeLessThan(pitchDia);
    expect(pitchDia, text).toBeLessThan(major);
  }
});
