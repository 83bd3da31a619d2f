/**
 * Values as they are kept beside a stored job, to be shown while newer ones are reckoned. They are a convenience: what
 * is found in the store is believed only as far as it has the right form, and is shown only as a value of before.
 */
import type { Area } from "./cone.ts";
import { limits } from "./gate.ts";
import { columnOf, mostInPacket, type Packet, rowOf } from "./packets.ts";

export interface KnownValues {
  readonly packets: readonly Packet[];
  /** Areas that block functions fill. */
  readonly filled: readonly Area[];
}

/** Values kept of one job: 5 MB of numbers. */
export const mostKnown = 400_000;
/** Characters of words among them. */
export const mostWords = 1_000_000;
export const mostAreas = 2000;
const mostPackets = 1000;

/**
 * @param sheets how many the job has
 * @returns undefined where `found` is anything else, or more than anyone keeps
 */
export function readKnown(found: unknown, sheets: number): KnownValues | undefined {
  if (typeof found !== "object" || found === null) return undefined;
  const { packets, filled } = found as Record<string, unknown>;
  if (!Array.isArray(packets) || !Array.isArray(filled)) return undefined;
  if (packets.length > mostPackets || filled.length > mostAreas) return undefined;
  if (!packets.every((one) => isPacket(one, sheets)) || !filled.every((one) => isArea(one, sheets)))
    return undefined;
  const count = packets.reduce((sum, { spots }) => sum + spots.length, 0);
  if (count > mostKnown) return undefined;
  // Only what is looked for is taken over, so that nothing else comes in with it.
  return {
    packets: packets.map(({ sheet, spots, numbers, others }) => ({
      sheet,
      spots,
      numbers,
      others,
      beside: [],
    })),
    filled: filled.map(({ sheet, top, left, bottom, right }) => ({ sheet, top, left, bottom, right })),
  };
}

function isPacket(found: unknown, sheets: number): found is Packet {
  if (typeof found !== "object" || found === null) return false;
  const { sheet, spots, numbers, others } = found as Record<string, unknown>;
  if (!isCount(sheet, sheets)) return false;
  if (!(spots instanceof Int32Array && numbers instanceof Float64Array && Array.isArray(others)))
    return false;
  if (spots.length !== numbers.length || spots.length > mostInPacket) return false;
  if (!spots.every((spot) => spot >= 0 && isInside(rowOf(spot), columnOf(spot)))) return false;
  const words = numbers.reduce((sum, number) => sum + Number(Number.isNaN(number)), 0);
  return (
    words === others.length && others.every((one) => typeof one === "string" || typeof one === "boolean")
  );
}

function isArea(found: unknown, sheets: number): found is Area {
  if (typeof found !== "object" || found === null) return false;
  const { sheet, top, left, bottom, right } = found as Record<string, unknown>;
  if (![top, left, bottom, right].every((each) => isCount(each, limits.rows))) return false;
  const area = found as Area;
  const ordered = area.top <= area.bottom && area.left <= area.right;
  return isCount(sheet, sheets) && ordered && isInside(area.bottom, area.right);
}

function isCount(found: unknown, below: number): found is number {
  return Number.isInteger(found) && (found as number) >= 0 && (found as number) < below;
}

function isInside(row: number, column: number): boolean {
  return row < limits.rows && column < limits.columns;
}
