/**
 * An estimate of the cutting force, so that a light lathe can be planned for. Never a promise.
 *
 *   F = sum of kc1.1 b h^(1 - mc) over the edges,  h = A / b     A chip area, b length of edge, h mean thickness, in mm
 *
 * kc1.1 is the force on a chip 1 mm wide and 1 mm thick. Source of the formula: Kienzle; of kc1.1 and mc: each material
 * below. They are for hard metal, no rake, new edges and chips from 0.1 mm up; a thread takes thinner ones.
 *
 * The spread is common practice, no source: from 0.8 (sharp edge, rake, good oil) to 1.8 (other printed coefficients give
 * up to 1.4 times these, a worn edge 1.3 times). Lengths and forces go by unit: mm and N, in and lbf.
 */
import { finite, requireAbove, requireWithin } from "./bounds.ts";
import type { LengthUnit } from "./speed.ts";

/** Which figure of the spread. */
export type Estimate = "likely" | "low" | "high";

export interface CuttingCoefficients {
  /** N/mm2 */
  readonly kc11: number;
  readonly mc: number;
}

interface Metal extends CuttingCoefficients {
  /** Group of VDI 3323, or the steel's own name, and strength or hardness. */
  readonly is: string;
}

/**
 * kc1 and mc by the groups of VDI 3323 as printed in an insert maker's turning catalogue 2017, p. 558. The two
 * structural steels: Kienzle's coefficients from memory, held against the kc that a chuck maker prints for six feeds.
 */
const metals = {
  "mild steel": { kc11: 1350, mc: 0.21, is: "group 1, under 0.25 % C, 420 N/mm2, 125 HB" },
  "medium carbon steel": { kc11: 1500, mc: 0.22, is: "group 2, from 0.25 % C, annealed, 650 N/mm2, 190 HB" },
  "high carbon steel": { kc11: 1700, mc: 0.24, is: "group 4, from 0.55 % C, annealed, 750 N/mm2, 220 HB" },
  "hardened carbon steel": { kc11: 1900, mc: 0.24, is: "group 5, quenched and tempered, 1000 N/mm2, 300 HB" },
  "alloy steel": { kc11: 1775, mc: 0.24, is: "group 6, low alloy, annealed, 600 N/mm2, 200 HB" },
  "hardened alloy steel": {
    kc11: 1800,
    mc: 0.24,
    is: "group 9, low alloy, quenched and tempered, 1200 N/mm2, 350 HB",
  },
  "tool steel": { kc11: 2450, mc: 0.23, is: "group 10, high alloy, annealed, 680 N/mm2, 200 HB" },
  "martensitic stainless steel": { kc11: 1875, mc: 0.21, is: "groups 12 and 13, 200 to 240 HB" },
  "austenitic stainless steel": { kc11: 2150, mc: 0.2, is: "group 14, 600 N/mm2, 180 HB" },
  "grey cast iron": { kc11: 1150, mc: 0.2, is: "group 15, ferritic/pearlitic, 180 HB" },
  "hard grey cast iron": { kc11: 1350, mc: 0.28, is: "group 16, pearlitic, 260 HB" },
  "nodular cast iron": { kc11: 1225, mc: 0.25, is: "group 17, ferritic, 160 HB" },
  aluminium: { kc11: 700, mc: 0.25, is: "group 21, wrought, not hardened, 60 HB" },
  "hardened aluminium": { kc11: 800, mc: 0.25, is: "group 22, wrought, hardened, 100 HB" },
  brass: { kc11: 700, mc: 0.27, is: "groups 26 and 27, 90 to 110 HB" },
  copper: { kc11: 700, mc: 0.27, is: "group 28, 100 HB" },
  "St 50-2": { kc11: 1990, mc: 0.26, is: "structural steel St 50-2 (E295), 520 N/mm2" },
  "St 60-2": { kc11: 2110, mc: 0.17, is: "structural steel St 60-2 (E335), 620 N/mm2" },
} as const satisfies Record<string, Metal>;

export type Material = keyof typeof metals;
export const materials = Object.keys(metals) as readonly Material[];

/** Coefficients of a metal, with what it is. */
export function coefficientsOf(material: Material): Metal {
  return metals[material];
}

/** Times the likely figure; common practice, no source. */
const SPREAD: Readonly<Record<Estimate, number>> = { low: 0.8, likely: 1, high: 1.8 };

const MM = { mm: 1, in: 25.4 } as const;
/** Newtons in the unit of force that goes with the unit of length. */
const NEWTON = { mm: 1, in: 4.4482216152605 } as const;

/**
 * Specific cutting force kc1.1 h^-mc at a chip thickness, in N/mm2 whatever the unit of the thickness.
 *
 * @throws RangeError if the thickness is not above 0
 */
export function specificForce(
  { kc11, mc }: CuttingCoefficients,
  thickness: number,
  unit: LengthUnit,
): number {
  requireCoefficients(kc11, mc);
  requireAbove("thickness", thickness);
  return finite("specific force", kc11 * (thickness * MM[unit]) ** -mc);
}

/**
 * Cutting force of a pass: the forces on the edges that cut, added up.
 *
 * @param areas chip area on each edge, 0 or more
 * @param widths length of each edge that cuts, as many; above 0 unless its area is 0
 * @returns N with mm, lbf with in
 * @throws RangeError outside those ranges
 */
export function cuttingForce(
  areas: readonly number[],
  widths: readonly number[],
  coefficients: CuttingCoefficients,
  unit: LengthUnit,
  estimate: Estimate = "likely",
): number {
  if (areas.length !== widths.length) {
    throw new RangeError(
      `area and width must hold as many numbers, got ${areas.length} and ${widths.length}`,
    );
  }
  requireCoefficients(coefficients.kc11, coefficients.mc);
  let newtons = 0;
  areas.forEach((area, k) => {
    const width = widths[k]!;
    requireWithin("area", area, 0);
    requireWithin("width", width, 0);
    if (area === 0) return;
    requireAbove("width", width);
    newtons += specificForce(coefficients, area / width, unit) * area * MM[unit] ** 2;
  });
  return finite("force", (newtons * SPREAD[estimate]) / NEWTON[unit]);
}

/**
 * Chip area at which the force is reached, for an edge of this length: what a light lathe may take in one pass.
 *
 * @throws RangeError if the force or the width is not above 0
 */
export function areaForForce(
  force: number,
  width: number,
  coefficients: CuttingCoefficients,
  unit: LengthUnit,
  estimate: Estimate = "likely",
): number {
  requireAbove("force", force);
  requireAbove("width", width);
  const { kc11, mc } = coefficients;
  requireCoefficients(kc11, mc);
  const perWidth = (force * NEWTON[unit]) / (SPREAD[estimate] * kc11 * width * MM[unit]);
  return finite("area", (perWidth ** (1 / (1 - mc)) * width) / MM[unit]);
}

/**
 * Torque at the spindle: force x diameter / 2.
 *
 * @returns N m with mm, lbf ft with in
 * @throws RangeError if the force is negative or the diameter not above 0
 */
export function spindleTorque(force: number, diameter: number, unit: LengthUnit): number {
  requireWithin("force", force, 0);
  requireAbove("diameter", diameter);
  return finite("torque", (force * diameter) / 2 / (unit === "mm" ? 1000 : 12));
}

/**
 * Power at the spindle: torque x 2 pi rpm.
 *
 * @returns W with mm, hp (550 ft lbf/s) with in
 * @throws RangeError if torque or rpm is negative
 */
export function spindlePower(torque: number, rpm: number, unit: LengthUnit): number {
  requireWithin("torque", torque, 0);
  requireWithin("rpm", rpm, 0);
  return finite("power", (torque * 2 * Math.PI * rpm) / 60 / (unit === "mm" ? 1 : 550));
}

function requireCoefficients(kc11: number, mc: number): void {
  requireAbove("kc", kc11);
  if (!(mc >= 0 && mc < 1)) throw new RangeError(`mc must be from 0 to below 1, got ${mc}`);
}
