import { describe, expect, test } from "vitest";
import { faults, put, valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const jobWith = template("custom-form");

/** Forms of the standards as a person would type them in: ASME B1.5, B1.1, B1.9, BS 84, ISO 2901; the square is common practice. */
const acme = {
  unit: "in",
  major: "1",
  pitch: "0.2",
  load_flank: "14.5",
  clearance_flank: "14.5",
  form_depth: "0.11",
  root_flat: "=0.2*(0.5-0.5*TAN(RADIANS(14.5)))-0.02*TAN(RADIANS(14.5))",
  play: "0",
};
const butt = {
  unit: "in",
  major: "2",
  pitch: "0.25",
  load_flank: "7",
  clearance_flank: "45",
  form_depth: "=0.66271*pitch",
  root_flat: "=pitch-pitch*0.163163-form_depth*(TAN(RADIANS(7))+1)",
  play: "0",
};
const whitworth = {
  unit: "in",
  major: "0.5",
  pitch: "=1/12",
  load_flank: "27.5",
  clearance_flank: "27.5",
  form_depth: "=0.640327*pitch",
  root_flat: "",
  play: "0",
};
const unified = {
  unit: "in",
  major: "0.5",
  pitch: "=1/13",
  load_flank: "30",
  clearance_flank: "30",
  form_depth: "=pitch*0.625*SQRT(3)/2",
  root_flat: "=pitch/4",
  play: "0",
};
const trapezoid = {
  unit: "mm",
  major: "20",
  pitch: "4",
  load_flank: "15",
  clearance_flank: "15",
  form_depth: "2.25",
  root_flat: "=4*(0.5-0.5*TAN(RADIANS(15)))-0.5*TAN(RADIANS(15))",
  play: "0",
};
const square = {
  unit: "mm",
  major: "24",
  pitch: "5",
  load_flank: "0",
  clearance_flank: "0",
  form_depth: "2.5",
  root_flat: "",
  play: "0.1",
};

describe("any form in either unit", () => {
  const forms = { acme, butt, whitworth, unified, trapezoid, square };
  const cases = Object.entries(forms).flatMap(([name, form]) =>
    ["mm", "in"].map((unit) => ({ name, form, unit })),
  );
  test.each(cases)("$name in $unit shows no error", ({ form, unit }) => {
    const size = form.unit === unit ? 1 : unit === "mm" ? 25.4 : 1 / 25.4;
    const [major, pitch] = [typedNumber(form.major) * size, typedNumber(form.pitch) * size];
    const fixed = form.form_depth.includes("pitch")
      ? {}
      : { form_depth: String(Number(form.form_depth) * size) };
    const root = form.root_flat.startsWith("=") && !form.root_flat.includes("pitch");
    const job = jobWith({
      ...form,
      unit,
      major: String(major),
      pitch: String(pitch),
      ...fixed,
      ...(root && { root_flat: `=(${form.root_flat.slice(1)})*${size}` }),
    });
    expect(faults(job)).toEqual([]);
  });
});

function typedNumber(typed: string): number {
  const [over, under = "1"] = typed.replace("=", "").split("/");
  return Number(over) / Number(under);
}

test("the lengths that came with the job follow the unit", () => {
  const [mm, inch] = ["mm", "in"].map((unit) => jobWith({ unit }));
  for (const name of [
    "major",
    "pitch_dia",
    "crest",
    "triangle",
    "depth",
    "slide_travel",
    "smallest_wire",
    "wire_target",
  ])
    expect(number(inch!, name) * 25.4, name).toBeCloseTo(number(mm!, name), 8);
  for (const name of ["thread", "plan_in_short"])
    expect(String(valueAt(inch!, name)).length, name).toBeGreaterThan(0);
  expect(valueAt(inch!, "plan_in_short")).toBe(valueAt(mm!, "plan_in_short"));
});

// Printed basic dimensions: ASME B1.5 table 3 (1-5 Acme), ASME B1.9 (2-4 Butt), BS 84 (1/2 in), ASME B1.1 (1/2-13 UNC),
// ISO 2904 (Tr 20x4: d2 18, d3 15.5); the tolerance is the printed rounding. BS 84 rounds the depth before it doubles it.
test.each([
  ["1-5 Acme", acme, { pitch_dia: 0.9, minor: 0.78, crest: 0.0741, root: 0.0689, included: 29 }, 0.0001],
  ["1-5 Acme", acme, { lead_angle: 4.05 }, 0.009],
  [
    "2-4 Butt",
    butt,
    { pitch_dia: 1.85, crest: 0.0408, triangle: 0.22266, included: 52, addendum: 0.075 },
    0.00005,
  ],
  ["1/2 BSW", whitworth, { pitch_dia: 0.4466, minor: 0.3932, included: 55, addendum: 0.0267 }, 0.0001],
  ["1/2-13 UNC", unified, { pitch_dia: 0.45, included: 60, crest: 0.00962, root: 0.01923 }, 0.00005],
  ["Tr 20x4", trapezoid, { pitch_dia: 18, minor: 15.5, included: 30 }, 0.0005],
])("the form of %s has the figures that its standard prints", (_, form, printed, within) => {
  const job = jobWith(form);
  for (const [name, value] of Object.entries(printed))
    expect(Math.abs(number(job, name) - value), name).toBeLessThanOrEqual(within + 1e-12);
});

test.each([
  ["1-5 Acme", acme, 12],
  ["2-4 Butt", butt, 5],
  ["Tr 20x4", trapezoid, 12],
  ["1/2-13 UNC", unified, 12],
])(
  "the form of %s typed in gives what its designation gives, all the way to the tool",
  (name, form, digits) => {
    const job = jobWith(form);
    const ask = (formula: string) => {
      put(job, [{ sheet: "Form", row: 60, column: 1, text: formula }]);
      return job.cell("Form", 60, 1).value as number;
    };
    const of = (fn: string, ...more: string[]) => ask(`=${fn}(${[`"${name}"`, ...more].join(",")})`);
    const unit = `"${form.unit}"`;
    for (const [cell, value] of [
      ["pitch_dia", of("THREAD.PITCHDIA", unit)],
      ["minor", of("THREAD.MINOR", unit, '"external"')],
      ["crest", of("THREAD.CREST", '"flat"', unit)],
      ["lead_angle", of("THREAD.HELIX", '"pitch"')],
      ["included", of("THREAD.ANGLE")],
      ["lead", of("THREAD.LEAD", unit)],
      ["setover", of("SETOVER.FORTHREAD", "back_off", "trails")],
      ["depth", of("THREAD.CUTDEPTH", "nose", '"flat"', unit, '"external"', "blank", "target")],
    ] as const)
      expect(number(job, cell), cell).toBeCloseTo(value, digits);
  },
);

test("equal flanks take the wires that the functions for equal flanks give", () => {
  for (const form of [acme, unified, trapezoid, whitworth]) {
    const job = jobWith(form);
    const ask = (formula: string) => {
      put(job, [{ sheet: "Form", row: 60, column: 1, text: formula }]);
      return job.cell("Form", 60, 1).value as number;
    };
    expect(number(job, "best_wire")).toBeCloseTo(ask("=WIRE.BEST(pitch,included)"), 9);
    expect(number(job, "largest_wire")).toBeCloseTo(ask("=WIRE.LARGEST(pitch,included,crest)"), 9);
    expect(number(job, "smallest_wire")).toBeCloseTo(
      ask('=WIRE.SMALLEST(pitch,included,crest,"flat",nose)'),
      9,
    );
    expect(number(job, "wire")).toBe(ask('=WIRE.PICK(pitch,included,Wires!F2:F15,crest,"flat",nose)'));
  }
});

/** Centre of a circle of radius r between the two flanks, by the distances to both lines, and where it touches them. */
function seated(r: number, load: number, clearance: number) {
  const [a, b] = [(load * Math.PI) / 180, (clearance * Math.PI) / 180];
  // Flanks x = -y tan a and x = y tan b: x cos a + y sin a = r and -x cos b + y sin b = r.
  const det = Math.cos(a) * Math.sin(b) + Math.cos(b) * Math.sin(a);
  const x = (r * Math.sin(b) - r * Math.sin(a)) / det;
  const y = (r * Math.cos(a) + r * Math.cos(b)) / det;
  return { centre: y, onLoad: y - r * Math.sin(a), onClearance: y - r * Math.sin(b), x };
}

// The circle is found from its distance to both lines, another way than the sheet's formulas.
test("unequal flanks take wires that touch both flanks, stand above the crest and clear the root", () => {
  for (const [load, clearance] of [
    [7, 45],
    [45, 7],
    [3, 30],
    [10, 20],
  ] as const) {
    const job = jobWith({
      ...butt,
      load_flank: String(load),
      clearance_flank: String(clearance),
      form_depth: "0.12",
      root_flat: "",
    });
    expect(faults(job)).toEqual([]);
    const [crest, root] = [number(job, "crest_height"), number(job, "root_height")];
    const largest = seated(number(job, "largest_wire") / 2, load, clearance);
    expect(Math.max(largest.onLoad, largest.onClearance)).toBeCloseTo(crest, 9);
    const w = number(job, "smallest_wire") / 2;
    const smallest = seated(w, load, clearance);
    const margins = [
      smallest.centre + w - crest,
      smallest.centre - w - root,
      Math.min(smallest.onLoad, smallest.onClearance) - root,
    ];
    expect(Math.min(...margins)).toBeCloseTo(0, 9);
    const ask = (formula: string) => {
      put(job, [{ sheet: "Form", row: 60, column: 1, text: formula }]);
      return job.cell("Form", 60, 1).value as number;
    };
    const of = 'pitch,included,crest,"flat"';
    expect(ask(`=WIRE.LARGEST(${of},clearance_flank)`)).toBeCloseTo(number(job, "largest_wire"), 9);
    expect(ask(`=WIRE.SMALLEST(${of},nose,clearance_flank)`)).toBeCloseTo(number(job, "smallest_wire"), 9);
  }
});

// WIRE.READING's worked value for unequal flanks: 1.85, 0.25, wire 0.13, 52 degrees, trailing 7, computed independently.
test("the reading over wires of a 7/45 form is the one computed independently", () => {
  const job = jobWith({ ...butt, target: "1.85", wire: "0.13" }, "target", "wire");
  expect(number(job, "wire_plain")).toBeCloseTo(2.0377351, 7);
});

test("a reading becomes divisions still to wind, and the reading aimed at gives back the pitch diameter", () => {
  const job = jobWith({ ...acme, measured: "=wire_target+0.01" });
  // (0.01 / 2) / cos 13.5 degrees = 0.005142: five divisions of a thousandth.
  expect(valueAt(job, "slide_to_wind")).toBe(5);
  const there = jobWith({ ...acme, measured: "=wire_target" });
  expect(number(there, "pitch_dia_now")).toBeCloseTo(0.9, 9);
  expect(valueAt(there, "slide_to_wind")).toBe(0);
});

test("a square form goes straight in and takes no wires", () => {
  const job = jobWith(square);
  expect(number(job, "setover")).toBe(0);
  expect(valueAt(job, "wire")).toBe("none: flanks are parallel");
  expect(valueAt(job, "triangle")).toBe("none: flanks are parallel");
  expect(valueAt(job, "Wires!A19")).toContain("take no wires");
});

test("the flank that trails decides the set-over, and each scale reads it from its own zero", () => {
  const load = jobWith({ ...butt, back_off: "0" });
  const clearance = jobWith({ ...butt, back_off: "0", trails: "clearance", zero_line: "obtuse" });
  expect([number(load, "setover"), number(load, "scale_reading")]).toEqual([7, 83]);
  expect([number(clearance, "setover"), number(clearance, "scale_reading")]).toEqual([45, 135]);
});

// atan(0.2 / pi) = 3.6426 degrees: a relief of 3 leans out by 0.64, one of 4 leaves 0.36.
test("a trailing side that would lean out is cautioned by how much", () => {
  expect(valueAt(jobWith({ ...acme, relief: "3" }), "Tool!A12")).toBe(
    "Trailing edge: -0.64° would lean out. Grind that side upright: the lead angle clears it by 3.64°.",
  );
  const clears = jobWith({ ...acme, relief: "4" });
  expect(number(clears, "trailing_clearance")).toBeCloseTo(0.3574, 4);
  expect(valueAt(clears, "Tool!A12")).toBe("");
});

test("a reading is of the form and the wire that it was taken for, and over equal or unequal flanks", () => {
  const job = jobWith({ ...butt, target: "1.85", wire: "0.13125" }, "target", "wire");
  expect(valueAt(job, "reading_for")).toBe("2 x 0.25, 7/45°, wire 0.13125 in");
  type(job, "measured", "=wire_target");
  expect(number(job, "pitch_dia_now")).toBeCloseTo(1.85, 9);
  // Set over by 6 degrees 0.1 on diameter is 0.05 / cos 6 = 0.050275 of travel: 50 divisions of a thousandth.
  type(job, "measured", "=wire_target+0.1");
  expect(valueAt(job, "slide_to_wind")).toBe(50);
  // And at 44, off the clearance flank: 0.05 / cos 44 = 0.069508.
  type(job, "trails", "clearance");
  expect(valueAt(job, "slide_to_wind")).toBe(69);
  type(job, "measured", "=wire_target-0.003");
  expect(valueAt(job, "Wires!A18")).toContain("Under the reading aimed at by 0.0030 in");
  type(job, "measured", "=wire_target+0.003");
  expect(valueAt(job, "Wires!A18")).toBe("");
});
