/**
 * The slots of a column: its numbers stand point under point, and their units in a lane of their own. Worked out from
 * the formats alone, so that nothing moves when a value changes or the sheet scrolls.
 */
import { parseRange } from "../engine/address.ts";
import type { SheetDocument } from "../job/document.ts";
import { fixedPlaces, type NumberParts, unitBeside } from "../job/format.ts";

export interface Slot {
  /** Decimals there is room for. */
  readonly places: number;
  /** Letters of the longest unit; 0 when no number of the column has one. */
  readonly unit: number;
}

/** All figures of B612 have one width. Hundredths of an em, measured. */
const figure = 65;
const point = 32;
const degree = 40;
const letter = 62;
/** Room for mm, whose letters are wide; in hundredths of the unit's em. */
const shortest = 220;
/** Type size of units in that of the figures. */
export const unitSize = 0.86;
export const unitGap = 45;
/** Letters of the longest unit that the lane is made for; a longer one stands outside of it. */
const longest = 4;

export const noSlot: Slot = { places: 0, unit: 0 };

/** Slot of every column that has formatted numbers. */
export function slotsOf(sheet: SheetDocument | undefined, unit: "mm" | "in"): ReadonlyMap<number, Slot> {
  const slots = new Map<number, Slot>();
  for (const [range, format] of Object.entries(sheet?.formats ?? {})) {
    const area = parseRange(range);
    const places = fixedPlaces(format, unit);
    const letters = unitBeside(format, unit).length;
    const beside = letters > longest ? 0 : letters;
    if (!area || (places === undefined && beside === 0)) continue;
    for (let column = area.left; column <= area.right; column++) {
      const known = slots.get(column) ?? noSlot;
      slots.set(column, { places: Math.max(known.places, places ?? 0), unit: Math.max(known.unit, beside) });
    }
  }
  return slots;
}

/**
 * Room to leave on the right of a number, hundredths of its em: the rest of its fraction slot, and the unit lane.
 * Where the cell is too narrow the fraction slot gives way first, then the lane.
 *
 * @param width of the cell between its paddings, em
 */
export function roomOf(parts: NumberParts, slot: Slot, width: number): { fraction: number; lane: number } {
  const decimals = parts.fraction === "" ? 0 : point + (parts.fraction.length - 1) * figure;
  const used = decimals + (parts.degree ? degree : 0);
  const full = slot.places === 0 ? 0 : point + slot.places * figure;
  if (parts.unit.length > longest) return { fraction: 0, lane: 0 };
  const lane = slot.unit === 0 ? 0 : laneOf(slot.unit);
  const free = width * 100 - parts.integer.length * figure - used - lane;
  if (free < 0) return { fraction: 0, lane: 0 };
  return { fraction: Math.max(0, Math.min(full - used, free)), lane };
}

function laneOf(letters: number): number {
  return Math.max(shortest, letters * letter) * unitSize + unitGap;
}
