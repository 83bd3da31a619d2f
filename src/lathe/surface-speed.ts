/**
 * Surface speeds by material, as a place to start from, in ft/min. No standard gives them: what is said here comes from
 * three tables, each named with its figure.
 */
import { NothingFound } from "../thread/failures.ts";
import type { LengthUnit } from "./speed.ts";

export const materials = [
  "mild steel",
  "high-carbon steel",
  "tool steel",
  "stainless steel",
  "cast iron",
  "bronze",
  "brass",
  "aluminium",
] as const;
export type Material = (typeof materials)[number];
/** High-speed steel, or uncoated carbide. */
export type ToolMaterial = "HSS" | "carbide";
export type Work = "threading" | "roughing" | "finishing";

const SOURCES = {
  memory: "common practice, from memory of a lathe operator's table of screw-cutting speeds",
  manual: "table 7.1 of a lathe operator's manual",
  none: "common practice, no source",
  chart: "slow end of a threading-tool maker's chart for uncoated carbide",
} as const;

type Entry = readonly [feetAMinute: number, source: keyof typeof SOURCES];

const table: Readonly<Record<Material, Partial<Record<`${ToolMaterial} ${Work}`, Entry>>>> = {
  "mild steel": {
    "HSS threading": [35, "memory"],
    "HSS roughing": [90, "manual"],
    "HSS finishing": [120, "manual"],
    "carbide threading": [75, "chart"],
  },
  "high-carbon steel": {
    "HSS threading": [20, "none"],
    "HSS roughing": [50, "manual"],
    "HSS finishing": [65, "manual"],
  },
  "tool steel": {
    "HSS threading": [20, "memory"],
    "HSS roughing": [50, "memory"],
    "HSS finishing": [75, "memory"],
    "carbide threading": [75, "chart"],
  },
  "stainless steel": { "HSS threading": [15, "none"], "carbide threading": [75, "chart"] },
  "cast iron": {
    "HSS threading": [25, "memory"],
    "HSS roughing": [70, "manual"],
    "HSS finishing": [80, "manual"],
    "carbide threading": [75, "chart"],
  },
  bronze: {
    "HSS threading": [25, "memory"],
    "HSS roughing": [100, "manual"],
    "HSS finishing": [130, "manual"],
  },
  brass: {
    "HSS threading": [50, "memory"],
    "HSS finishing": [200, "memory"],
    "carbide threading": [75, "chart"],
  },
  aluminium: {
    "HSS threading": [50, "memory"],
    "HSS roughing": [200, "manual"],
    "HSS finishing": [300, "manual"],
    "carbide threading": [75, "chart"],
  },
};

/**
 * @returns m/min with mm, ft/min with in, and where the figure comes from
 * @throws NothingFound where no table says
 */
export function surfaceSpeedFor(
  material: Material,
  unit: LengthUnit,
  tool: ToolMaterial = "HSS",
  work: Work = "threading",
): { readonly speed: number; readonly source: string } {
  const entry = table[material][`${tool} ${work}`];
  if (entry === undefined) {
    const known = Object.keys(table[material]).join(", ");
    throw new NothingFound(`no speed is known for ${tool} ${work} in ${material}: known are ${known}`);
  }
  const [feet, source] = entry;
  return { speed: unit === "mm" ? feet * 0.3048 : feet, source: `${feet} ft/min: ${SOURCES[source]}` };
}
