import { describe, expect, test } from "vitest";
import { grooveOf } from "../../src/lathe/chip-area.ts";
import { alongSetover, overcutAt } from "../../src/lathe/groove.ts";
import { faults, valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const jobWith = template("set-over-error");

const threads = ["1/2-12 BSW", "M12x1.75-6g", "2 BA", "1/4-20 UNC-2A", "1-5 Acme-2G", "2-4 Butt"];

test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
  "$thread in $unit shows no error",
  ({ thread, unit }) => {
    expect(faults(jobWith({ thread, unit }))).toEqual([]);
  },
);

test("an error inside the flank leaves the form right, and one past it by a degree steps the flank", () => {
  const job = jobWith({});
  for (const row of [4, 5, 6, 7, 8, 9]) {
    expect(number(job, `What it does!F${row}`), `row ${row}`).toBe(0);
    expect(valueAt(job, `What it does!K${row}`)).toBe("form right");
  }
  expect(number(job, "What it does!F10")).toBeGreaterThan(0);
  expect(valueAt(job, "What it does!K13")).toBe("overcut stays");
});

test("what straight in does not clean is what the groove shows when it is cut so", () => {
  const job = jobWith({});
  for (const row of [10, 11, 12, 13]) {
    const [depth, reached, stands] = ["depth", `What it does!C${row}`, `What it does!B${row}`].map((name) =>
      number(job, name),
    );
    const tool = grooveOf(55, number(job, "nose"), undefined, "radius");
    const first = (0.25 * reached!) / depth!;
    const stop = Math.min(reached!, depth!) - 0.05;
    const cos = Math.cos((stands! * Math.PI) / 180);
    const passes = [first, (first + stop) / 2, stop].map((radial) => alongSetover(radial / cos, stands!));
    const last = { axial: passes.at(-1)!.axial, radial: depth! };
    const shows = overcutAt(tool, [...passes, last], tool, last, "trailing", 0);
    expect(number(job, `What it does!J${row}`)).toBeCloseTo(shows, 6);
  }
});

test("at the largest set-over the flank is off by just what is allowed", () => {
  const job = jobWith({ flank_allowed: "0.25", over_allowed: "1" });
  const error = number(job, "largest") - number(job, "setover");
  const checked = jobWith({ flank_allowed: "0.25", over_allowed: "1", errors: String(error) });
  // The first pass is reckoned with the travel as wound here, with the depth as meant in the limit: a hair apart.
  expect(number(checked, "What it does!E4")).toBeCloseTo(0.25, 2);
});

test("a reading of the indicator past the largest set-over asks to swing back", () => {
  const read = number(jobWith({}), "along_largest") + 0.05;
  const job = jobWith({ moved_along: String(read) });
  expect(valueAt(job, "How exact!A20")).toContain("past the largest: swing back before you cut");
  expect(valueAt(jobWith({ moved_along: "4.54" }), "How exact!A20")).toBe("");
});

test("a setting that is off by more than the back-off allows is warned", () => {
  expect(valueAt(jobWith({ scale_error: "3" }), "How exact!A19")).toContain("back off by");
  expect(valueAt(jobWith({ scale_error: "0.5" }), "How exact!A19")).toBe("");
  expect(valueAt(jobWith({ scale_error: "3" }), "What it does!A16")).toContain(
    "an overcut may stay on the flank",
  );
});

describe("angle and depth together", () => {
  const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
  const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

  /**
   * Worked by hand: the travel stays as wound, so that a slide at `a` reaches the cosine of it. A pass d deep stands out of
   * the last one's trailing flank by (reached - d)(tan a - tan f) where it is past the flank; the pass that only just reaches
   * the pitch line does so most. A groove wider by w is smaller on pitch diameter by w / tan f.
   */
  function changeByHand(job: ReturnType<typeof jobWith>, off: number): number {
    const [depth, setover, flank, level] = ["depth", "setover", "flank", "level"].map((name) =>
      number(job, name),
    ) as [number, number, number, number];
    const reached = (depth * cos(setover + off)) / cos(setover);
    const out = Math.max(0, (reached - level) * (tan(setover + off) - tan(flank)));
    return 2 * (depth - reached) - out / tan(flank);
  }

  test("each row is its angle, each column its depth, twice on the diameter", () => {
    const job = jobWith({});
    const columns = [
      ["B", -0.05],
      ["C", 0],
      ["D", 0.05],
    ] as const;
    for (const [index, off] of [-3, -2, -1, 0, 1, 2, 3].entries())
      for (const [column, deeper] of columns) {
        const place = `'Angle and depth'!${column}${9 + index}`;
        expect(number(job, place), place).toBeCloseTo(changeByHand(job, off) - 2 * deeper, 9);
      }
    const column = (letter: string) =>
      [9, 10, 11, 12, 13, 14, 15].map((row) => number(job, `'Angle and depth'!${letter}${row}`));
    expect(job.cell("Angle and depth", 1, 5).figure).toMatchObject({
      x: column("A"),
      series: ["B", "C", "D"].map((letter) => ({ y: column(letter) })),
    });
    // Past the flank too, or the table says little: 27 and 3 are 30, the flank is 27.5.
    expect(changeByHand(job, 3)).toBeCloseTo(0.009333, 6);
  });

  // ISO 965-1: Td2 of 6g at pitch 1.75 over 11.2 to 22.4 mm is 150 micrometres; half of it is 0.075, which is 0.0375 radial.
  test("off by more than half the tolerance is cautioned, either way", () => {
    const job = jobWith({ thread: "M12x1.75-6g", angle_off: "0" });
    expect(number(job, "'Angle and depth'!B5")).toBeCloseTo(0.075, 9);
    for (const [off, cautions] of [
      ["0.037", false],
      ["0.038", true],
      ["-0.037", false],
      ["-0.038", true],
    ] as const) {
      type(job, "depth_off", off);
      expect(valueAt(job, "'Angle and depth'!A6") !== "", off).toBe(cautions);
    }
  });
});
