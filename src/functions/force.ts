/** Cutting force, torque and power of a pass: estimates with a spread. */
import {
  areaForForce,
  coefficientsOf,
  cuttingForce,
  materials,
  specificForce,
  spindlePower,
  spindleTorque,
} from "../lathe/cutting-force.ts";
import { type Block, declare, type Noted, type Param, type SheetFunction } from "./declare.ts";

const material = {
  name: "material",
  type: "text",
  options: materials,
  doc: `Metal: ${materials.join(", ")}.`,
} as const satisfies Param;
const unit = {
  name: "unit",
  type: "text",
  options: ["mm", "in"],
  doc: '"mm" goes with N, N m and W; "in" with lbf, lbf ft and hp. Required.',
} as const satisfies Param;
const estimate = {
  name: "estimate",
  type: "text",
  options: ["likely", "low", "high"],
  fallback: "likely",
  doc: '"likely"; "low": 0.8 of it, a keen edge with rake and oil; "high": 1.8 times, tough metal and a worn edge. Plan for high.',
} as const satisfies Param;
const area = {
  name: "area",
  type: "numbers",
  unit: "length2",
  doc: "Chip area of the pass, 0 or more; or a range, the area on each edge: PASS.SCHEDULE gives them.",
} as const satisfies Param;
const width = {
  name: "width",
  type: "numbers",
  unit: "length",
  doc: "Length of the edge that cuts, above 0 unless its area is 0; or a range, one for each area.",
} as const satisfies Param;

const source =
  "Kienzle; kc1.1 and mc after VDI 3323 as an insert maker prints them, two steels from memory; the spread is common practice, no source";

/** Under this mean chip, in mm, a worn or round edge rubs more than the coefficients know. Common practice, no source. */
const THIN = { mm: 0.02, in: 0.02 / 25.4 };

function noted(
  value: number,
  areas: readonly number[],
  widths: readonly number[],
  lengths: "mm" | "in",
): number | Noted {
  const thickest = Math.max(...areas.map((chip, k) => (chip === 0 ? 0 : chip / widths[k]!)));
  if (thickest === 0 || thickest >= THIN[lengths]) return value;
  return { value, note: "a chip thinner than 0.02 mm: the edge rubs, and the force may be well above this" };
}

export const forceFunctions: readonly SheetFunction[] = [
  declare({
    name: "FORCE.CUT",
    family: "force",
    summary:
      "Cutting force of a pass, estimated from the metal: the sum of kc1.1 b h^(1 - mc). Never a promise.",
    params: [area, width, material, unit, estimate],
    returns: {
      type: "number",
      doc: "N or lbf, along the cut at the tool's edge; the work pushes back as much.",
    },
    failures: [
      {
        when: "the unit is left out",
        formula: '=FORCE.CUT(0.08, 1, "mild steel")',
        gives: "#VALUE!",
        says: "unit",
      },
      {
        when: "the metal is not in the list",
        formula: '=FORCE.CUT(0.08, 1, "cheese", "mm")',
        gives: "#VALUE!",
        says: "mild steel",
      },
      {
        when: "no edge cuts",
        formula: '=FORCE.CUT(0.08, 0, "mild steel", "mm")',
        gives: "#NUM!",
        says: "width must be greater than 0",
      },
    ],
    examples: [
      {
        formula: '=FORCE.CUT(0.08, 1, "mild steel", "mm")',
        value: 183.5586514,
        source: "1350 x 0.08^-0.21 x 0.08, reckoned apart",
      },
      {
        formula: '=FORCE.CUT(0.08, 1, "mild steel", "mm", "high")',
        value: 330.4055725,
        source: "1.8 times that",
      },
      {
        formula: '=FORCE.CUT({0.05,0,0.03}, {0.5,0,0.4}, "mild steel", "mm")',
        value: 179.2459465,
        source: "1350 (0.1^-0.21 x 0.05 + 0.075^-0.21 x 0.03), reckoned apart",
      },
      {
        formula: '=FORCE.CUT(0.0001, 0.05, "mild steel", "in")',
        value: 36.608624,
        source: "1350 x (0.002 x 25.4)^-0.21 x 0.0001 x 645.16 / 4.4482216, reckoned apart",
      },
    ],
    source,
    compute: (chips, edges, metal, lengths, figure) =>
      noted(cuttingForce(chips, edges, coefficientsOf(metal), lengths, figure), chips, edges, lengths),
  }),
  declare({
    name: "FORCE.PASSES",
    family: "force",
    summary: "Cutting force of every pass of a schedule, estimated from the metal. Never a promise.",
    params: [
      {
        name: "areas",
        type: "numbers",
        unit: "length2",
        doc: "Shares of the area of every pass, three columns: leading flank, nose, trailing flank, as PASS.SCHEDULE gives them.",
      },
      {
        name: "widths",
        type: "numbers",
        unit: "length",
        doc: "Lengths of the three edges that cut, as many rows; the next three columns of PASS.SCHEDULE.",
      },
      material,
      unit,
      estimate,
    ],
    returns: { type: "block", doc: "A row for each pass with one column, N or lbf; 0 for a spring pass." },
    failures: [
      {
        when: "an area lacks its edge",
        formula: '=FORCE.PASSES({0.05,0,0.03;0.04,0,0.02}, {0.5,0,0.4}, "mild steel", "mm")',
        gives: "#NUM!",
        says: "areas and widths must hold as many numbers, three a pass, got 6 and 3",
      },
    ],
    examples: [
      {
        formula: '=INDEX(FORCE.PASSES({0.08,0,0;0.05,0,0.03}, {1,0,0;0.5,0,0.4}, "mild steel", "mm"), 2, 1)',
        value: 179.2459465,
        source: "1350 (0.1^-0.21 x 0.05 + 0.075^-0.21 x 0.03), reckoned apart",
      },
    ],
    source,
    compute: (areas, widths, metal, lengths, figure): Block => {
      if (areas.length !== widths.length || areas.length % 3 !== 0) {
        throw new RangeError(
          `areas and widths must hold as many numbers, three a pass, got ${areas.length} and ${widths.length}`,
        );
      }
      return Array.from({ length: areas.length / 3 }, (_, pass) => {
        const edges = [3 * pass, 3 * pass + 3] as const;
        const [chips, lengthsOf] = [areas.slice(...edges), widths.slice(...edges)];
        return [cuttingForce(chips, lengthsOf, coefficientsOf(metal), lengths, figure)];
      });
    },
  }),
  declare({
    name: "FORCE.KIENZLE",
    family: "force",
    summary: "Cutting force of a pass from coefficients of your own.",
    params: [
      area,
      width,
      { name: "kc", type: "number", doc: "Specific cutting force kc1.1 in N/mm2, above 0." },
      { name: "mc", type: "number", doc: "Exponent of the chip thickness, 0 to below 1." },
      unit,
      estimate,
    ],
    returns: { type: "number", doc: "N or lbf." },
    failures: [
      {
        when: "the exponent reaches 1",
        formula: '=FORCE.KIENZLE(0.08, 1, 1990, 1, "mm")',
        gives: "#NUM!",
        says: "mc must be from 0 to below 1",
      },
    ],
    examples: [
      {
        formula: '=FORCE.KIENZLE(0.08, 1, 1990, 0.26, "mm")',
        value: 307.0009128,
        source: "1990 x 0.08^-0.26 x 0.08, reckoned apart",
      },
    ],
    source: "Kienzle; the spread is common practice, no source",
    compute: (chips, edges, kc11, mc, lengths, figure) =>
      noted(cuttingForce(chips, edges, { kc11, mc }, lengths, figure), chips, edges, lengths),
  }),
  declare({
    name: "FORCE.SPECIFIC",
    family: "force",
    summary: "Specific cutting force of a metal at a chip thickness: kc1.1 h^-mc.",
    params: [
      material,
      { name: "thickness", type: "number", unit: "length", doc: "Mean chip thickness, above 0." },
      unit,
    ],
    returns: { type: "number", doc: "N/mm2, whatever the unit of the thickness." },
    failures: [
      {
        when: "the chip has no thickness",
        formula: '=FORCE.SPECIFIC("brass", 0, "mm")',
        gives: "#NUM!",
        says: "thickness must be greater than 0",
      },
    ],
    examples: [
      {
        formula: '=FORCE.SPECIFIC("mild steel", 1, "mm")',
        value: 1350,
        source: "printed: kc1 of group 1 after VDI 3323",
      },
      {
        formula: '=FORCE.SPECIFIC("mild steel", 0.1, "mm")',
        value: 2189.443631,
        source: "1350 x 0.1^-0.21, reckoned apart",
      },
    ],
    source,
    compute: (metal, thickness, lengths) => specificForce(coefficientsOf(metal), thickness, lengths),
  }),
  declare({
    name: "FORCE.AREA",
    family: "force",
    summary: "Chip area at which a force is reached: what a light lathe may take in one pass.",
    params: [
      { name: "force", type: "number", doc: "Cutting force allowed, N or lbf, above 0." },
      {
        name: "width",
        type: "number",
        unit: "length",
        doc: "Length of the edge that cuts, above 0: about the flanks and the nose at that depth.",
      },
      material,
      unit,
      estimate,
    ],
    returns: { type: "number", unit: "length2", doc: "Chip area; the inverse of FORCE.CUT." },
    failures: [
      {
        when: "no force is allowed",
        formula: '=FORCE.AREA(0, 1, "mild steel", "mm")',
        gives: "#NUM!",
        says: "force must be greater than 0",
      },
    ],
    examples: [
      {
        formula: '=FORCE.AREA(100, 1, "mild steel", "mm")',
        value: 0.037085,
        within: 5e-8,
        source: "(100/1350)^(1/0.79), reckoned apart",
      },
    ],
    source,
    compute: (force, edge, metal, lengths, figure) =>
      areaForForce(force, edge, coefficientsOf(metal), lengths, figure),
  }),
  declare({
    name: "FORCE.TORQUE",
    family: "force",
    summary: "Torque at the spindle for a cutting force: force x diameter / 2.",
    params: [
      { name: "force", type: "number", doc: "N or lbf, 0 or more." },
      {
        name: "diameter",
        type: "number",
        unit: "length",
        doc: "Where it acts; the major diameter is on the safe side. Above 0.",
      },
      unit,
    ],
    returns: { type: "number", doc: "N m or lbf ft." },
    failures: [
      {
        when: "the diameter is not above 0",
        formula: '=FORCE.TORQUE(200, 0, "mm")',
        gives: "#NUM!",
        says: "diameter must be greater than 0",
      },
    ],
    examples: [
      { formula: '=FORCE.TORQUE(200, 10, "mm")', value: 1, source: "200 N x 5 mm is 1 N m" },
      { formula: '=FORCE.TORQUE(50, 0.5, "in")', value: 1.0416667, source: "50 x 0.25 / 12" },
    ],
    source: "mechanics",
    compute: spindleTorque,
  }),
  declare({
    name: "FORCE.POWER",
    family: "force",
    summary:
      "Power at the spindle for a torque: torque x 2 pi rpm. Gears and belts take more from the motor.",
    params: [
      { name: "torque", type: "number", doc: "N m or lbf ft, 0 or more." },
      { name: "rpm", type: "number", unit: "rev/min", doc: "Spindle speed, 0 or more." },
      unit,
    ],
    returns: { type: "number", doc: "W or hp." },
    failures: [
      {
        when: "the torque is negative",
        formula: '=FORCE.POWER(-1, 200, "mm")',
        gives: "#NUM!",
        says: "torque must be 0 or more",
      },
    ],
    examples: [
      { formula: '=FORCE.POWER(1, 200, "mm")', value: 20.943951, source: "1 N m x 2 pi x 200/60" },
      {
        formula: '=FORCE.POWER(0.5, 200, "in")',
        value: 0.01903996,
        source: "0.5 x 2 pi x 200/60/550, reckoned apart",
      },
    ],
    source: "mechanics",
    compute: spindlePower,
  }),
];
