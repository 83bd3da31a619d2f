// Limits against the standards as printed; hole, depth and windings reckoned by hand here.
import { describe, expect, test } from "vitest";
import { faults, valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const jobWith = template("internal-thread");

describe("any nut in either unit", () => {
  const threads = [
    "M20x2.5-6H",
    "M12x1.75-6H",
    "1/4-20 UNC-2B",
    "1/2-12 BSW nut",
    "2 BA nut",
    "M24x4-P2-6H",
    "1-5 Acme-2G nut",
    "1-8 UNC-2B",
  ];
  test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
    "$thread in $unit shows no error",
    ({ thread, unit }) => {
      const job = jobWith({ thread, unit });
      expect(faults(job)).toEqual([]);
      type(job, "measured", "=ball_target");
      expect(faults(job)).toEqual([]);
      expect(number(job, "pitch_dia_now")).toBeCloseTo(number(job, "target"), 9);
    },
  );

  test("the unit flips every length and leaves plan, swing and scale alone", () => {
    const [mm, inch] = [
      jobWith({ unit: "mm", drill_kind: "metric" }),
      jobWith({ unit: "in", drill_kind: "metric" }),
    ];
    for (const name of [
      "bore_target",
      "depth",
      "bar_most",
      "ball",
      "ball_least",
      "ball_target",
      "slide_travel",
    ])
      expect(number(inch, name) * 25.4, name).toBeCloseTo(number(mm, name), 9);
    for (const name of ["drill", "plan_in_short", "swing", "scale_reading"])
      expect(valueAt(inch, name), name).toBe(valueAt(mm, name));
    expect(number(inch, "engagement_now")).toBeCloseTo(number(mm, "engagement_now"), 9);
  });
});

describe("an M20x2.5-6H nut", () => {
  const H = 2.5 * (Math.sqrt(3) / 2);

  test("the bore leaves the engagement asked for, inside the limits of its class", () => {
    const job = jobWith({});
    // The basic height is 5/8 H: 20 - 2 x 0.9 x 5/8 H.
    expect(number(job, "bore_target")).toBeCloseTo(20 - 1.8 * 0.625 * H, 9);
    // ISO 965-2: 17.294 to 17.744.
    type(job, "engagement", "60");
    expect(number(job, "bore_target")).toBeCloseTo(17.744, 9);
    type(job, "engagement", "100");
    expect(number(job, "bore_target")).toBeCloseTo(17.294, 3);
  });

  test("the drill is the nearest under what is left for boring", () => {
    const job = jobWith({ engagement: "90", leave: "0.3", drill_kind: "metric" });
    // 17.564 - 0.3 = 17.264; stock drills go by a quarter of a millimetre there (ISO 235).
    expect(valueAt(job, "drill")).toBe("17.25 mm");
  });

  test("a bore over its limit says by how much and what thread is left", () => {
    const job = jobWith({ bore: "18" });
    const caution = job.cell("Hole", 14, 0).value as string;
    expect(caution).toContain("Over the largest minor diameter by 0.2560 mm");
    // (20 - 18) / (2 x 5/8 H) = 73.9 %.
    expect(caution).toContain("74 % of thread is left");
  });

  test("the depth brings a tool with this nose to the middle of the limits", () => {
    const job = jobWith({ bore: "17.5", nose: "0.2" });
    // (target - bore)/2 + (P/2 - nose)/(2 tan 30), target 18.488.
    const depth = (18.488 - 17.5) / 2 + (1.25 - 0.2) / (2 * Math.tan(Math.PI / 6));
    expect(number(job, "depth")).toBeCloseTo(depth, 9);
    expect(number(job, "cut_out_to")).toBeCloseTo(17.5 + 2 * depth, 9);
    expect(number(job, "bar_most")).toBeCloseTo(17.5 - depth - 1, 9);
  });

  // Common practice: inside, tool facing you, the handle goes the other way than outside, and the cut is put on by winding back.
  test.each([
    ["right", "handle left, wind back"],
    ["left", "handle right, wind back"],
  ])("%s hand: %s", (hand, says) => {
    expect(valueAt(jobWith({ hand }), "swing")).toBe(says);
  });

  test("balls between the crests read as computed independently for the smallest nut", () => {
    const job = jobWith({});
    expect(number(job, "ball")).toBeCloseTo(1.5, 9);
    // 16.0388433 for a pitch diameter of 18.376, computed independently to 7 digits; over the outer faces two balls more.
    expect(number(job, "ball_min")).toBeCloseTo(16.0388433, 6);
    type(job, "faces", "outer");
    expect(number(job, "ball_min")).toBeCloseTo(19.0388433, 6);
  });

  test("the ball lies between one flush with the bored crest and one that leaves the flank", () => {
    const job = jobWith({ bore: "17.5" });
    // Crest of the nut: P/2 less what the flanks close up from 18.488 to 17.5.
    const crest = 1.25 - (18.488 - 17.5) * Math.tan(Math.PI / 6);
    expect(number(job, "crest")).toBeCloseTo(crest, 9);
    expect(number(job, "ball_most")).toBeCloseTo((2.5 - crest) / Math.cos(Math.PI / 6), 9);
    expect(number(job, "ball_least")).toBeCloseTo((2 * ((2.5 - crest) / (2 * Math.tan(Math.PI / 6)))) / 3, 9);
  });

  test("a reading becomes divisions still to wind and a verdict that counts its uncertainty", () => {
    const job = jobWith({ measured: "=ball_target-0.11" });
    // 0.055 radial: / cos 29 = 0.0629 of slide, 3 divisions of 0.02; 2 of the cross slide.
    expect(valueAt(job, "slide_to_wind")).toBe(3);
    expect(valueAt(job, "cross_to_wind")).toBe(2);
    for (const [measured, says] of [
      ["=ball_target", "in"],
      ["=ball_max-0.01", "can't be told"],
      ["=ball_max+0.03", "out"],
      ["=ball_min-0.03", "out"],
    ] as const) {
      type(job, "measured", measured);
      expect(valueAt(job, "verdict"), measured).toBe(says);
    }
  });

  test("between either faces of the balls the reading aimed at gives back the pitch diameter", () => {
    for (const faces of ["inner", "outer"]) {
      const job = jobWith({ faces, measured: "=ball_target" });
      // ISO 965-2: 18.376 to 18.600.
      expect(number(job, "pitch_dia_now"), faces).toBeCloseTo((18.376 + 18.6) / 2, 6);
      type(job, "measured", "=ball_max+0.03");
      const over = number(job, "pitch_dia_now") - 18.6;
      expect(over).toBeCloseTo(0.03, 3);
      expect(valueAt(job, "Measure!A20")).toBe(
        `Over the largest pitch diameter by ${over.toFixed(4)} mm: nothing puts it back.`,
      );
      type(job, "measured", "=ball_min-0.03");
      expect(valueAt(job, "Measure!A20")).toContain("Still under size");
    }
  });
});

describe("gears, half nuts and speed", () => {
  test("the lead is cut, and the half nuts close where both leads agree", () => {
    const job = jobWith({});
    // A wheel of 15 teeth on 3 mm are 45 mm = 18 leads of 2.5; one of three marks is 15 mm = 6 leads.
    expect(number(job, "lead_cut")).toBeCloseTo(2.5, 12);
    expect(valueAt(job, "usable_marks")).toBe("1,2,3");
    // 25.4/8 x 100/127 = 2.5 exactly; 2.5 mm and 1/8 in meet only after 317.5 mm, 127 leads: no mark does.
    type(job, "leadscrew", '=CONVERT(1/8,"in",unit)');
    expect(number(job, "lead_cut")).toBeCloseTo(2.5, 12);
    expect(valueAt(job, "half_nuts")).toBe("keep them closed");
    expect(valueAt(job, "'Gears and marks'!A20")).toContain("keep the half nuts closed");
  });

  test("the speed is the slower of what the tool and the hand bear", () => {
    const job = jobWith({ surface_speed: "10" });
    // 10 000 / (20 pi) = 159.15; 6 mm in 1 s at 2.5 a turn are 2.4 turns: 144 rev/min; of the lathe's speeds 110.
    expect(number(job, "speed_for_surface")).toBeCloseTo(159.1549, 3);
    expect(number(job, "speed_cap")).toBeCloseTo(144, 9);
    expect(valueAt(job, "spindle_speed")).toBe(110);
    // 5 000 / (20 pi) = 79.6: 70.
    type(job, "surface_speed", "5");
    expect(valueAt(job, "spindle_speed")).toBe(70);
  });

  test("what the speed is reckoned from, and what it means at the run-out", () => {
    const job = jobWith({ surface_speed: "10" });
    // 110 turns a minute of 2.5 are 275 mm: 4.583 in a second, 6 mm in 60 x 6 / 275.
    expect(number(job, "Speed!B6")).toBe(6);
    expect(number(job, "Speed!B11")).toBeCloseTo(275 / 60, 9);
    expect(number(job, "Speed!B12")).toBeCloseTo(360 / 275, 9);
    expect(valueAt(job, "Speed!A13")).toBe(
      "The hand sets the limit here, not the tool: 144 rev/min instead of 159.",
    );
    // With two starts the carriage runs by the lead: 6 mm in 1 s at 4 a turn are 90 turns a minute, 70 of them 280 mm.
    type(job, "thread", "M24x4-P2-6H");
    expect(number(job, "speed_cap")).toBeCloseTo(90, 9);
    expect(valueAt(job, "spindle_speed")).toBe(70);
    expect(number(job, "Speed!B11")).toBeCloseTo(280 / 60, 9);
    // 1 mm in 1 s at 4 a turn are 15: the slowest is 30.
    type(job, "runout", "1");
    expect(valueAt(job, "spindle_speed")).toBe("none is slow enough");
    expect(valueAt(job, "Speed!A13")).toContain("The slowest speed, 30 rev/min, is too fast");
    // In inches a foot a minute: 12 x 30 / (pi 20/25.4).
    const inch = jobWith({ unit: "in", surface_speed: "30" });
    expect(number(inch, "speed_for_surface")).toBeCloseTo((360 * 25.4) / (20 * Math.PI), 9);
    expect(number(inch, "Speed!B6")).toBeCloseTo(6 / 25.4, 12);
  });

  // Common practice, no source: carbide bears several times what high-speed steel does.
  test("the tool is in the surface speed", () => {
    const [steel, carbide] = ["HSS", "carbide"].map((tool) => number(jobWith({ tool }), "surface_speed"));
    expect(carbide! / steel!).toBeGreaterThan(2);
  });
});
