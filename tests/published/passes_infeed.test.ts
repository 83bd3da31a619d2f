// Pass and infeed figures of tests/published/passes_infeed.csv; each row names its own source.
import { expect, test } from "vitest";
import { grooveOf } from "../../src/lathe/chip-area.ts";
import { sharpHeight } from "../../src/lathe/form.ts";
import { infeedForDepth } from "../../src/lathe/infeed.ts";
import { depthAfter } from "../../src/lathe/passes.ts";
import { setoverAngle } from "../../src/lathe/setover.ts";
import { spindleSpeed } from "../../src/lathe/speed.ts";
import { type Material, surfaceSpeedFor, type Work } from "../../src/lathe/surface-speed.ts";
import { sideClearance } from "../../src/lathe/tool.ts";
import { publishedRows, type Row } from "./rows.ts";

const rows = publishedRows("passes_infeed");

/** Lead and basic pitch diameter, by the formula of their standards (ISO 724, ISO 2904, ASME B1.5). */
const pitchLines: Readonly<Record<string, readonly [number, number]>> = {
  "M10x1.5": [1.5, 10 - 0.649519 * 1.5],
  M6x1: [1, 6 - 0.649519],
  "Tr 20x4": [4, 20 - 4 / 2],
  "1-5 Acme": [1 / 5, 1 - 1 / 10],
};

/** The materials of the speed tables, as we name them. */
const materialNames: Readonly<Record<string, Material>> = {
  "low-carbon steel": "mild steel",
  "machine (mild) steel": "mild steel",
  "high-carbon steel annealed": "high-carbon steel",
  "tool steel, annealed": "tool steel",
  "aluminium alloys": "aluminium",
  aluminium: "aluminium",
  "cast iron": "cast iron",
  bronze: "bronze",
  brass: "brass",
};

/** What these functions answer for a row; undefined where the row is about something else. */
function computed({ designation, quantity }: Row): number | undefined {
  const pass = /^cumulative depth after pass (\d+) of (\d+)/.exec(quantity);
  if (pass) {
    const depth = Number(/depth ([\d.]+)/.exec(designation)![1]);
    return depthAfter(depth, Number(pass[1]), Number(pass[2]), "area", grooveOf(60, 0));
  }
  if (/set-over angle|half included angle/.test(quantity))
    return setoverAngle(Number.parseFloat(designation));
  const slide = /^M external P([\d.]+), depth ([\d.]+)P, slide at ([\d.]+) deg$/.exec(designation);
  if (slide) return infeedForDepth(Number(slide[1]) * Number(slide[2]), Number(slide[3]));
  if (quantity.startsWith("travel at 30 deg")) {
    const share = designation === "sharp V" ? 1 : 3 / 4;
    return infeedForDepth(sharpHeight(1, 30) * share, 30);
  }
  if (quantity.startsWith("lead (helix) angle")) {
    const [lead, diameter] = pitchLines[designation]!;
    return sideClearance(lead, diameter, "leading", 0);
  }
  const work =
    /(roughing|finishing|screw-cutting)(?: speed)? ?,? ?HSS|(roughing|finishing|screw-cutting) speed, HSS/.exec(
      quantity,
    );
  if (work && !isOlder({ designation, quantity } as Row)) {
    const kind = (work[1] ?? work[2])!.replace("screw-cutting", "threading") as Work;
    return surfaceSpeedFor(materialNames[designation.replace(" (manual 7.1)", "")]!, "in", "HSS", kind).speed;
  }
  const turned = /^dia ([\d.]+) in at ([\d.]+) ft\/min$/.exec(designation);
  if (turned) return spindleSpeed(Number(turned[2]), Number(turned[1]), "in");
  if (quantity === "12/pi") return spindleSpeed(1, 1, "in");
  return undefined;
}

/** A speed remembered from one table where another one, found in print, says otherwise. */
function isOlder({ designation, quantity }: Row): boolean {
  return [
    "cast iron roughing",
    "bronze roughing",
    "bronze finishing",
    "machine (mild) steel finishing",
  ].includes(`${designation} ${quantity.split(" ")[0]}`);
}

/** Rows that go by another rule than ours, with the reason; every row must be compared or stand here. */
const others: readonly (readonly [(row: Row) => boolean, string])[] = [
  [
    (row) => row.standard.includes("insert maker"),
    "a maker's own lists for coated inserts on a powered machine: no nose is stated, passes are flatter than equal area at the start",
  ],
  [(row) => row.quantity.startsWith("tool tip flat"), "a choice of tool, not a result"],
  [isOlder, "from memory; the operator's manual that was found prints another speed, and that one is given"],
];

for (const row of rows) {
  const value = computed(row);
  if (value === undefined) continue;
  test(`${row.id} agrees with its source (${row.source})`, () => {
    expect(Math.abs(value - row.value), `${value} against ${row.text}`).toBeLessThanOrEqual(
      row.tolerance + 1e-9,
    );
  });
}

test("every published row is compared, or left out for a stated reason", () => {
  const unexplained = rows.filter(
    (row) => computed(row) === undefined && !others.some(([holds]) => holds(row)),
  );
  expect(unexplained.map((row) => row.id)).toEqual([]);
  const compared = rows.filter((row) => computed(row) !== undefined);
  expect(compared.length).toBeGreaterThanOrEqual(30);
  // A row that can be compared must not be excused.
  expect(compared.filter((row) => others.some(([holds]) => holds(row))).map((row) => row.id)).toEqual([]);
});

test("a remembered speed is left out only where a printed one for the same material and work says otherwise", () => {
  const speeds = /(roughing|finishing)/;
  const left = rows.filter(isOlder);
  expect(left.map(({ confidence }) => confidence)).toEqual(["memory", "memory", "memory", "memory"]);
  for (const older of left) {
    const printed = rows.filter(
      ({ designation, quantity, confidence }) =>
        confidence === "found" &&
        materialNames[designation.replace(" (manual 7.1)", "")] === materialNames[older.designation] &&
        speeds.exec(quantity)?.[1] === speeds.exec(older.quantity)![1],
    );
    expect(printed, older.id).toHaveLength(1);
    expect(Math.abs(printed[0]!.value - older.value), older.id).toBeGreaterThan(older.tolerance);
  }
});
