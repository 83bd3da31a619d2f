/** The hand of a thread goes by its designation, and everything that stands on the hand goes with it. */
import { describe, expect, test } from "vitest";
import { cardOf } from "../../src/job/card.ts";
import type { Job } from "../../src/job/job.ts";
import { valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const screwWith = template("full-thread-job");
const nutWith = template("internal-thread");
const taperWith = template("taper-pipe");

const said = (job: Job) => cardOf(job).warnings.filter((words) => words.includes("LH"));
const drawnIn = (job: Job, sheet: string, row: number, column: number) => {
  const { figure } = job.cell(sheet, row, column);
  return figure?.kind === "passes" ? figure.direction : undefined;
};
const towards = (job: Job) => drawnIn(job, "Passes", 1, 6);

// LH behind a designation is left-hand, nothing or RH right-hand: ISO 965-1 and 2901, ASME B1.1, B1.5, BS 84.
const leftHanded = [
  "Tr 20x4-7e LH",
  "M12x1.75-6g-LH",
  "1/4-20 UNC-2A-LH",
  "1-5 Acme-2G LH",
  "1/2 BSW LH",
  "2 BA left",
  "G 1/2 A LH",
];

describe("a screw", () => {
  // Common practice: outside, a left-hand thread is cut away from the headstock, the slide swung the other way.
  test("goes by its designation with nothing else changed, and cautions about right typed against it", () => {
    const job = screwWith({});
    for (const thread of leftHanded) {
      type(job, "thread", thread);
      expect(valueAt(job, "hand"), thread).toBe("left");
      expect(valueAt(job, "'Set-over'!B12"), thread).toContain("handle left");
      expect(valueAt(job, "Card!B5"), thread).toContain("handle left");
      expect(cardOf(job).under, thread).toContain("left hand");
      expect(towards(job), thread).toBe("out");
      expect(said(job), thread).toEqual([]);
      const designated = job.document.sheets[0]!.cells.B5!;
      type(job, "hand", "right");
      expect(valueAt(job, "Thread!C5"), thread).toBe("Designated LH: right is scrap.");
      expect(said(job), thread).toEqual(["Thread: Designated LH: right is scrap."]);
      type(job, "hand", "left");
      expect(said(job), thread).toEqual([]);
      type(job, "hand", designated);
    }
    type(job, "thread", "Tr 20x4-7e");
    expect(valueAt(job, "hand")).toBe("right");
    expect(valueAt(job, "Card!B5")).toContain("handle right");
    expect(towards(job)).toBe("in");
  }, 20_000);

  test("a hand left blank is cautioned about where the designation is left-hand", () => {
    expect(said(screwWith({ thread: "M10 LH", hand: "" }))).toHaveLength(1);
    expect(said(screwWith({ thread: "M10 RH", hand: "left" }))).toEqual([]);
  });
});

describe("a nut", () => {
  test.each(["Tr 20x4-7H LH", "M20x2.5-6H-LH", "1/2-13 UNC-2B LH", "1/2 BSW nut LH"])("%s", (thread) => {
    const job = nutWith({ thread });
    expect(valueAt(job, "hand")).toBe("left");
    expect(valueAt(job, "direction")).toBe("out");
    expect(valueAt(job, "swing")).toBe("handle right, wind back");
    expect(cardOf(job).under).toContain("left hand");
    expect(said(job)).toEqual([]);
    type(job, "hand", "right");
    expect(said(job)).toEqual(["Thread: Designated LH: right is scrap."]);
  });
});

/**
 * Seen from above, directions counter-clockwise from the tailstock: the tailstock comes towards you by the half angle, and
 * the slide of a left-hand thread moves into the work and away from the headstock.
 */
test("a taper with the tailstock set over: the slide of a left-hand thread leans the other way", () => {
  const job = taperWith({ thread: "1/2-14 NPT LH", zero_line: "square" });
  const travel = 90 - number(job, "half_angle") - number(job, "setover");
  expect(90 - number(job, "scale_offset")).toBeCloseTo(travel, 9);
  expect(valueAt(job, "'Tool and slide'!C7")).toContain("left-hand");
});

test("the groove of a wrong setting is drawn as it is cut", () => {
  const wrongWith = template("set-over-error");
  const drawn = (thread: string) => {
    const job = wrongWith({ thread });
    const sheet = job.document.sheets.find(({ cells }) => cells.D18?.includes("DRAW.PASSES"))!.name;
    return drawnIn(job, sheet, 17, 3);
  };
  expect([drawn("1/2-12 BSW"), drawn("1/2-12 BSW LH")]).toEqual(["in", "out"]);
});
