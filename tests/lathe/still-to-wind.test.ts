// The log of the passes against a spring that is simulated here, pass by pass; windings by hand.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  askedFor,
  furthestReading,
  type Log,
  lagOf,
  nextReading,
  shareOf,
  stillToWind,
} from "../../src/lathe/still-to-wind.ts";
import { between, expectClose, seeded } from "./close.ts";

/** Work and tool spring away: of what stands before the tool a pass takes a share, the rest waits. */
function cut(start: number, asked: readonly number[], share: number, member: "external" | "internal"): Log {
  const readings = [start];
  let tool = 0;
  let work = 0;
  for (const ask of asked) {
    tool += ask;
    work += share * (tool - work);
    readings.push(member === "external" ? start - work : start + work);
  }
  return { readings, asked, member };
}

const logs = fc.record({
  start: between(5, 60),
  asked: fc.array(between(0.01, 0.3), { minLength: 1, maxLength: 12 }),
  share: between(0.4, 1.1),
  member: fc.constantFrom("external" as const, "internal" as const),
});

describe("still to wind", () => {
  test.each([
    // 0.11 over: 0.055 radial, / cos 26.5 = 0.0615 of slide.
    [12.46, 12.35, 0.02, 26.5, "radius", "external", 3],
    [12.46, 12.35, 0.02, 0, "radius", "external", 2],
    [12.46, 12.35, 0.02, 0, "diameter", "external", 5],
    [16, 16.11, 0.02, 0, "radius", "internal", 2],
    [12.35, 12.35, 0.02, 0, "radius", "external", 0],
    [12.3, 12.35, 0.02, 0, "radius", "external", 0],
    [12.45, 12.37, 0.02, 0, "radius", "external", 2],
  ] as const)("from %d to %d by divisions of %d, set over %d, dial of %s, %s: %d", (...given) => {
    const [reading, wanted, division, setover, reads, member, divisions] = given;
    expect(stillToWind(reading, wanted, division, setover, reads, member)).toBe(divisions);
  });

  test("never passes the reading wanted, and stops less than a division before it", () => {
    fc.assert(
      fc.property(
        between(10, 11),
        between(9, 10),
        between(0.005, 0.05),
        between(-30, 30),
        (reading, wanted, q, a) => {
          const asked = askedFor(stillToWind(reading, wanted, q, a, "radius", "external"), q, a, "radius");
          expect(reading - asked).toBeGreaterThanOrEqual(wanted - 1e-9);
          expect(reading - asked - wanted).toBeLessThan(2 * q);
        },
      ),
      seeded,
    );
  });
});

describe("the log of the passes", () => {
  test("finds the share that a springing lathe takes, its lag, and the next reading", () => {
    fc.assert(
      fc.property(logs, between(0, 0.2), ({ start, asked, share, member }, next) => {
        const log = cut(start, asked, share, member);
        expectClose(shareOf(log), share, 1e-9);
        const sum = asked.reduce((total, ask) => total + ask, 0);
        expectClose(lagOf(log), sum - Math.abs(log.readings.at(-1)! - start), 1e-9);
        const then = cut(start, [...asked, next], share, member).readings.at(-1)!;
        expectClose(nextReading(log, next), then, 1e-9);
      }),
      seeded,
    );
  });

  test("a spring pass asks for nothing and takes a share of the lag", () => {
    const log = cut(13, [0.12, 0.08], 0.75, "external");
    // 0.12: 0.09 off, 0.03 left. 0.08 + 0.03: 0.0825 off, 0.0275 left. Then 0.75 of 0.0275.
    expectClose(log.readings[2]!, 12.8275, 1e-12);
    expectClose(nextReading(log, 0), 12.8275 - 0.020625, 1e-12);
    expectClose(furthestReading(log, 0), 12.8, 1e-12);
  });

  test("the furthest reading is where the tool is set, whatever the share", () => {
    fc.assert(
      fc.property(logs, between(0, 0.2), ({ start, asked, share, member }, next) => {
        const log = cut(start, asked, Math.min(1, share), member);
        const set = asked.reduce((total, ask) => total + ask, next);
        expectClose(furthestReading(log, next), member === "external" ? start - set : start + set, 1e-9);
      }),
      seeded,
    );
  });

  test("in another unit says the same", () => {
    fc.assert(
      fc.property(logs, between(0, 0.2), ({ start, asked, share, member }, next) => {
        const log = cut(start, asked, share, member);
        const inches: Log = {
          readings: log.readings.map((reading) => reading / 25.4),
          asked: asked.map((ask) => ask / 25.4),
          member,
        };
        expectClose(shareOf(inches), shareOf(log), 1e-9);
        expectClose(nextReading(inches, next / 25.4) * 25.4, nextReading(log, next), 1e-9);
      }),
      seeded,
    );
  });

  test("before a pass is logged nothing has sprung", () => {
    const log: Log = { readings: [13], asked: [], member: "external" };
    expect([shareOf(log), lagOf(log), nextReading(log, 0.1)]).toEqual([1, 0, 12.9]);
  });

  test.each([
    [
      () => lagOf({ readings: [13, 12.9], asked: [0.1, 0.1], member: "external" }),
      "readings must be one more than asked, 3, got 2",
    ],
    [
      () => shareOf({ readings: [13, 13], asked: [0], member: "external" }),
      "asked must be above 0 in one pass at least, got none",
    ],
    [
      () => lagOf({ readings: [13, 13], asked: [-0.1], member: "external" }),
      "asked must be 0 or more, got -0.1",
    ],
    [
      () => nextReading({ readings: [13], asked: [], member: "external" }, -1),
      "next must be 0 or more, got -1",
    ],
    [
      () => stillToWind(13, 12, 0.02, 90, "radius", "external"),
      "setover must be between -90 and 90 degrees, got 90",
    ],
    [() => askedFor(-1, 0.02, 0, "radius"), "divisions must be 0 or more, got -1"],
  ])("refusal %# names argument, bound and value", (refused, message) => {
    expect(refused).toThrow(RangeError);
    expect(refused).toThrow(message);
  });
});
