// Expected values were computed independently of this code, unless a test names another source.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  bestWheel,
  engagementTravel,
  engagesAnywhere,
  startMarks,
  usableMarks,
} from "../../src/lathe/engage.ts";
import { leadCut } from "../../src/lathe/gears.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { expectClose, seeded } from "./close.ts";

test.each([
  [1 / 12, 1 / 8, 16, 8, undefined, "1,2,3,4,5,6,7,8"],
  [1 / 11, 1 / 8, 16, 8, undefined, "4,8"],
  [1 / 11, 1 / 8, 16, 8, 1, "1,5"],
  [2 / 23, 1 / 8, 16, 8, undefined, "8"],
  [4 / 45, 1 / 8, 16, 8, undefined, ""],
  [1.25, 3, 16, 8, undefined, ""],
  [1.5, 3, 16, 8, undefined, "1,2,3,4,5,6,7,8"],
  [1.25, 3, 20, 20, undefined, "5,10,15,20"],
  [1.75, 3, 14, 2, undefined, "1,2"],
  [1.5, 2, 16, 8, undefined, ""],
])(
  "lead %d on a leadscrew of %d, %d teeth, %d marks, first %s: %j",
  (lead, screw, teeth, marks, first, list) => {
    expect(usableMarks(lead, screw, teeth, marks, first).usable.join(",")).toBe(list);
  },
);

/** A lead or pitch as a fraction, so that the carriage below is followed in whole numbers. */
type Fraction = readonly [top: number, bottom: number];

const whole = (min: number, max: number) => fc.integer({ min, max });
// Inch threads by halves of a thread per inch, 2 to 80 an inch; metric ones by hundredths, 0.2 to 6 mm.
const inchLead = whole(4, 160).map((halves): Fraction => [254 * 2, 10 * halves]);
const metricLead = whole(20, 600).map((hundredths): Fraction => [hundredths, 100]);
const inchScrew = whole(4, 10).map((perInch): Fraction => [254, 10 * perInch]);
const metricScrew = whole(6, 24).map((quarters): Fraction => [quarters, 4]);
const setting = fc.record({
  lead: fc.oneof(inchLead, metricLead),
  screw: fc.oneof(inchScrew, metricScrew),
  teeth: whole(8, 64),
  marks: fc.constantFrom(1, 2, 3, 4, 6, 8, 12, 16, 20),
  first: whole(1, 20),
});

/**
 * Follows the carriage: whether nuts and tool both fall in when this mark comes round for the n-th time, the first cut
 * having started on `first`.
 */
function fallsIn(lead: Fraction, screw: Fraction, teeth: number, marks: number, past: number): boolean {
  // Travel is past/marks turns of the wheel, each of `teeth` pitches of the leadscrew.
  const nuts = (past * teeth) % marks === 0;
  const tool = (past * teeth * screw[0] * lead[1]) % (marks * screw[1] * lead[0]) === 0;
  return nuts && tool;
}

test("over 200 turns a usable mark always falls in, and any other mark spoils the thread at least once", () => {
  let [used, refused] = [0, 0];
  fc.assert(
    fc.property(setting, ({ lead, screw, teeth, marks, first }) => {
      const start = Math.min(first, marks);
      const { usable } = usableMarks(lead[0] / lead[1], screw[0] / screw[1], teeth, marks, start);
      for (let mark = 1; mark <= marks; mark++) {
        let spoilt = 0;
        for (let turn = 1; turn <= 200; turn++) {
          if (!fallsIn(lead, screw, teeth, marks, turn * marks + mark - start)) spoilt++;
        }
        if (usable.includes(mark)) {
          used++;
          expect(spoilt).toBe(0);
        } else {
          refused++;
          expect(spoilt).toBeGreaterThan(0);
        }
      }
    }),
    { ...seeded, numRuns: 1500 },
  );
  // Both sorts were met, or the test says nothing.
  expect(used).toBeGreaterThan(200);
  expect(refused).toBeGreaterThan(200);
});

/**
 * A lathe in whole numbers: lengths in 1/(lead's bottom x screw's bottom), so that nothing is rounded. The leadscrew turns
 * under a carriage at rest until the dial has gone on by `past` marks, then the nuts close. Says how far behind its first
 * place the carriage now runs, or undefined when the nuts meet the tops of the leadscrew's thread.
 */
function runsBehind(screw: Fraction, lead: Fraction, teeth: number, marks: number, past: number) {
  // The dial goes on by a tooth for each pitch of the leadscrew that goes by.
  const pitches = (past * teeth) / marks;
  return Number.isInteger(pitches) ? pitches * screw[0] * lead[1] : undefined;
}

/** The start, from 1, in which a tool cuts that runs so far behind the first; undefined between two starts. */
function startCut(behind: number, lead: Fraction, screw: Fraction, starts: number): number | undefined {
  const turn = lead[0] * screw[1];
  const ahead = ((-behind % turn) + turn) % turn;
  const start = (ahead * starts) / turn;
  return Number.isInteger(start) ? start + 1 : undefined;
}

test("over 200 turns a mark listed for a start cuts that start every time, and no other mark does", () => {
  const seen = new Map<number, number>();
  fc.assert(
    fc.property(setting, whole(1, 6), ({ lead, screw, teeth, marks, first }, starts) => {
      const begun = Math.min(first, marks);
      const listed = Array.from({ length: starts }, (_, i) =>
        startMarks(lead[0] / lead[1], starts, i + 1, screw[0] / screw[1], teeth, marks, begun),
      );
      expect(listed[0]).toEqual(usableMarks(lead[0] / lead[1], screw[0] / screw[1], teeth, marks, begun));
      for (let mark = 1; mark <= marks; mark++) {
        const cut = new Set<number | undefined>();
        for (let turn = 1; turn <= 200; turn++) {
          const behind = runsBehind(screw, lead, teeth, marks, turn * marks + mark - begun);
          cut.add(behind === undefined ? undefined : startCut(behind, lead, screw, starts));
        }
        const always = cut.size === 1 ? [...cut][0] : undefined;
        const told = listed.flatMap(({ usable }, i) => (usable.includes(mark) ? [i + 1] : []));
        expect(told).toEqual(always === undefined ? [] : [always]);
        if (always !== undefined) seen.set(always, (seen.get(always) ?? 0) + 1);
      }
    }),
    { ...seeded, numRuns: 1500 },
  );
  // The first three starts were met often, or the test says nothing.
  for (const start of [1, 2, 3]) expect(seen.get(start)).toBeGreaterThan(10);
});

// Every whole number of threads per inch from 2 to 80 on every leadscrew of 4 to 10 per inch, every wheel of 8 to 64 teeth.
test("for whole threads per inch every case is followed, with a dial of 8 marks", () => {
  let usableCases = 0;
  for (let tpi = 2; tpi <= 80; tpi++) {
    for (let perInch = 4; perInch <= 10; perInch++) {
      for (let teeth = 8; teeth <= 64; teeth++) {
        const { usable } = usableMarks(1 / tpi, 1 / perInch, teeth, 8);
        for (let mark = 1; mark <= 8; mark++) {
          // In turns of a thread per inch: n pitches of the leadscrew are n tpi / perInch leads.
          let holds = true;
          for (let turn = 0; turn < 200 && holds; turn++) {
            const eighths = turn * 8 + mark;
            holds = (eighths * teeth) % 8 === 0 && (eighths * teeth * tpi) % (8 * perInch) === 0;
          }
          if (usable.includes(mark) !== holds)
            throw new Error(`${tpi} per inch on ${perInch}, ${teeth} teeth, mark ${mark}: ${holds}`);
          if (holds) usableCases++;
        }
      }
    }
  }
  expect(usableCases).toBeGreaterThan(10_000);
});

// The pitches of ISO 261 on leadscrews of 1.5 to 6 mm, every wheel of 8 to 64 teeth, begun on any of six marks.
test("for standard metric pitches every case is followed, whichever mark was first", () => {
  const pitches = [
    20, 25, 30, 35, 40, 45, 50, 60, 70, 75, 80, 100, 125, 150, 175, 200, 250, 300, 350, 400, 450, 500, 550,
    600,
  ];
  let cases = 0;
  for (const pitch of pitches) {
    for (const screw of [150, 200, 250, 300, 400, 500, 600]) {
      for (let teeth = 8; teeth <= 64; teeth++) {
        const first = 1 + (cases++ % 6);
        const { usable } = usableMarks(pitch / 100, screw / 100, teeth, 6, first);
        for (let mark = 1; mark <= 6; mark++) {
          let holds = true;
          for (let turn = 1; turn <= 200 && holds; turn++) {
            const sixths = turn * 6 + mark - first;
            holds = (sixths * teeth) % 6 === 0 && (sixths * teeth * screw) % (6 * pitch) === 0;
          }
          if (usable.includes(mark) !== holds)
            throw new Error(`${pitch} on ${screw}, ${teeth} teeth, first ${first}, mark ${mark}: ${holds}`);
        }
      }
    }
  }
  expect(cases).toBe(24 * 7 * 57);
});

// By hand: a mark is two pitches of 1/8, half of a lead of 1/2; three starts of lead 3 on a screw of 1 go 2 1 3 2 1 3.
test("marks of a thread of two and of three starts", () => {
  const list = (start: number, first?: number) =>
    startMarks(1 / 2, 2, start, 1 / 8, 16, 8, first).usable.join(",");
  expect([list(1), list(2), list(1, 1), list(2, 1)]).toEqual(["2,4,6,8", "1,3,5,7", "1,3,5,7", "2,4,6,8"]);
  const three = (start: number) => startMarks(3, 3, start, 1, 12, 12, 12).usable.join(",");
  expect([three(1), three(2), three(3)]).toEqual(["3,6,9,12", "2,5,8,11", "1,4,7,10"]);
});

test("the wheel is picked whose usable marks come soonest after each other", () => {
  // A lead of 1.25 is met every 5 pitches of 3: 15 teeth with 3 marks and 20 teeth with 4 marks are alike, 20 with 20 too.
  expect(bestWheel(1.25, 3, [14, 20, 15], [2, 4, 3])).toBe(1);
  expect(bestWheel(1.25, 3, [14, 15, 20], [2, 3, 4])).toBe(1);
  // 15 teeth with one mark wait three times as long.
  expect(bestWheel(1.25, 3, [15, 20], [1, 20])).toBe(1);
  expect(bestWheel(1.5, 3, [14, 16], [8])).toBe(1);
});

test("the picked wheel waits no longer than any other, counted mark by mark", () => {
  const wheels = fc.array(whole(8, 64), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(setting, wheels, ({ lead, screw, marks }, teeth) => {
      const [l, s] = [lead[0] / lead[1], screw[0] / screw[1]];
      const waits = teeth.map((each) => {
        for (let past = 1; past <= 20 * marks; past++) {
          if (!usableMarks(l, s, each, marks).usable.includes(((past - 1) % marks) + 1)) continue;
          return (past / marks) * each;
        }
        return Infinity;
      });
      const least = Math.min(...waits);
      if (least === Infinity) expect(() => bestWheel(l, s, teeth, [marks])).toThrow(NothingFound);
      else expectClose(waits[bestWheel(l, s, teeth, [marks])]!, least, 1e-9);
    }),
    seeded,
  );
});

test("with a lead cut by any train the tool is never further out than the turns allow", () => {
  const gear = whole(20, 127);
  let used = 0;
  fc.assert(
    fc.property(gear, gear, gear, gear, whole(8, 64), (a, b, c, d, teeth) => {
      const lead = leadCut(3.175, [
        [a, b],
        [c, d],
      ]);
      const { usable, creep } = usableMarks(lead, 3.175, teeth, 8);
      // A turn of the wheel is teeth x driven / drivers leads; this is how far that is from whole, in 1/(a c).
      const rest = (teeth * b * d) % (a * c);
      const off = Math.min(rest, a * c - rest) / (a * c);
      expectClose(creep, off, 1e-9);
      if (off > 1.0001e-4) expect(usable).toEqual([]);
      for (const mark of usable) {
        used++;
        const leads = (((mark - 8) / 8) * teeth * b * d) / (a * c);
        expectClose(leads, Math.round(leads), 1.0001e-4);
      }
    }),
    { ...seeded, numRuns: 3000 },
  );
  expect(used).toBeGreaterThan(0);
});

// 16 x 3.175 / 1.5009091 is 33.85 leads a turn, while 16 x 3.175 / 1.5 would be 33.87: neither is whole.
test("an approximate metric lead on an inch leadscrew leaves no mark", () => {
  const lead = leadCut(3.175, [
    [65, 50],
    [20, 55],
  ]);
  expect(usableMarks(lead, 3.175, 16, 8).usable).toEqual([]);
});

// One tooth on a leadscrew of 1.00005 leads: 1.00005 leads a turn.
test("a turn may miss a whole lead by one part in ten thousand, and what it misses is told", () => {
  const near = usableMarks(1, 1.00005, 1, 1);
  expect(near.usable).toEqual([1]);
  expectClose(near.creep, 0.00005, 1e-12);
  expect(usableMarks(1, 1.0002, 1, 1).usable).toEqual([]);
});

test("a turn of the wheel far shorter than a lead is no whole lead", () => {
  expect(usableMarks(1e6, 3, 16, 8).usable).toEqual([]);
});

test("marks that stand between pitches of the leadscrew are left out", () => {
  // 4 teeth under 8 marks: every other mark is half way between two pitches.
  expect(usableMarks(1, 4, 4, 8).usable).toEqual([2, 4, 6, 8]);
});

test("the first mark is usable whenever any is", () => {
  fc.assert(
    fc.property(setting, ({ lead, screw, teeth, marks, first }) => {
      const start = Math.min(first, marks);
      const { usable } = usableMarks(lead[0] / lead[1], screw[0] / screw[1], teeth, marks, start);
      expect(usable.length === 0 || usable.includes(start)).toBe(true);
    }),
    seeded,
  );
});

test("the shortest travel that is whole leads of both screws", () => {
  expect(engagementTravel(1.75, 3)).toBe(21);
  expect(engagementTravel(1.5, 3.175)).toBe(190.5);
  expect(engagementTravel(3, 3)).toBe(3);
});

test("travel is the first multiple of the leadscrew at which the thread falls in too", () => {
  fc.assert(
    fc.property(fc.oneof(inchLead, metricLead), fc.oneof(inchScrew, metricScrew), (lead, screw) => {
      let pitches = 1;
      while ((pitches * screw[0] * lead[1]) % (screw[1] * lead[0]) !== 0) pitches++;
      const expected = (pitches * screw[0]) / screw[1];
      expectClose(engagementTravel(lead[0] / lead[1], screw[0] / screw[1]), expected, expected * 1e-14);
    }),
    seeded,
  );
});

test("travel is long but finite for leads that only come near each other, and never shorter than either", () => {
  // 1651/1100 and 127/40: whole multiples of both first meet at 1651 x 5 / 100 = 82.55 by exact arithmetic.
  const lead = leadCut(3.175, [
    [65, 50],
    [20, 55],
  ]);
  expectClose(engagementTravel(lead, 3.175), 82.55, 1e-12);
  const any = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
  fc.assert(
    fc.property(any, any, (x, y) => {
      const travel = engagementTravel(x, y);
      expect(Number.isFinite(travel)).toBe(true);
      expect(travel).toBeGreaterThanOrEqual(Math.max(x, y) * (1 - 1e-14));
    }),
    seeded,
  );
});

test.each([
  [() => usableMarks(0, 3, 16, 8), "lead must be greater than 0, got 0"],
  [() => usableMarks(1, -3, 16, 8), "leadscrew_lead must be greater than 0, got -3"],
  [() => usableMarks(1, 3, 16.5, 8), "wheel_teeth must be a whole number of 1 or more, got 16.5"],
  [() => usableMarks(1, 3, 1001, 8), "wheel_teeth must be from 1 to 1000, got 1001"],
  [() => usableMarks(1, 3, 16, 0), "marks must be a whole number of 1 or more, got 0"],
  [() => usableMarks(1, 3, 16, 1e9), "marks must be from 1 to 1000, got 1000000000"],
  [() => usableMarks(1, 3, 16, 8, 9), "first must be from 1 to 8, got 9"],
  [() => usableMarks(1, 3, 16, 8, 0), "first must be a whole number of 1 or more, got 0"],
  [() => usableMarks(1e-308, 3e307, 16, 8), "wheel_teeth x leadscrew_lead / lead is too large"],
  [() => startMarks(1, 2, 3, 3, 16, 8), "start must be from 1 to 2, got 3"],
  [() => startMarks(1, 0, 1, 3, 16, 8), "starts must be a whole number of 1 or more, got 0"],
  [() => bestWheel(1.25, 3, [14, 16], [2, 8, 3]), "one for each of the 2 wheels, got 3"],
  [() => bestWheel(1.25, 3, [16], [8]), "keep the half nuts closed and reverse"],
  [() => engagementTravel(0, 3), "lead must be greater than 0, got 0"],
  [() => engagementTravel(3, Number.NaN), "leadscrew_lead must be greater than 0, got NaN"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});

// A 3 mm leadscrew goes on by 2 leads of 1.5, 6 of 0.5 and 1 of 3; by 2.4 of 1.25 and half of 6. 8 per inch: 2 of 16 per inch.
test("the half nuts close anywhere where a pitch of the leadscrew is a whole number of leads", () => {
  const inch = 25.4;
  for (const [lead, screw] of [
    [1.5, 3],
    [0.5, 3],
    [3, 3],
    [inch / 16, inch / 8],
  ] as const)
    expect(engagesAnywhere(lead, screw)).toBe(true);
  for (const [lead, screw] of [
    [1.25, 3],
    [6, 3],
    [3e7, 3],
    [inch / 12, inch / 8],
    [1.50001, 3],
  ] as const)
    expect(engagesAnywhere(lead, screw)).toBe(false);
});
