/**
 * Spindle speed, and what it means at the half nuts.
 *
 * Surface speed goes with the unit of the diameter: m/min with mm, ft/min with in. Carriage speed is rpm x lead.
 * Source: geometry.
 */
import { NothingFound } from "../thread/failures.ts";
import { finite, requireAbove, requireWithin } from "./bounds.ts";

export type LengthUnit = "mm" | "in";

/** mm in a metre, inches in a foot. */
const SMALL_IN_LARGE: Readonly<Record<LengthUnit, number>> = { mm: 1000, in: 12 };

/** rev/min. @param surfaceSpeed m/min or ft/min, 0 or more @throws RangeError also if diameter is not above 0 */
export function spindleSpeed(surfaceSpeed: number, diameter: number, unit: LengthUnit): number {
  requireWithin("surface_speed", surfaceSpeed, 0);
  requireAbove("diameter", diameter);
  return finite("rpm", (SMALL_IN_LARGE[unit] * surfaceSpeed) / (Math.PI * diameter));
}

/** m/min or ft/min. @throws RangeError if rpm < 0 or diameter is not above 0 */
export function surfaceSpeed(rpm: number, diameter: number, unit: LengthUnit): number {
  requireWithin("rpm", rpm, 0);
  requireAbove("diameter", diameter);
  return finite("surface speed", (Math.PI * diameter * rpm) / SMALL_IN_LARGE[unit]);
}

/** Length per minute. @throws RangeError if rpm < 0 or lead is not above 0 */
export function carriageSpeed(rpm: number, lead: number): number {
  requireWithin("rpm", rpm, 0);
  requireAbove("lead", lead);
  return finite("carriage speed", rpm * lead);
}

/** Length the carriage runs in that many seconds. @throws RangeError if an argument is negative or lead is 0 */
export function runOut(rpm: number, lead: number, seconds: number): number {
  requireWithin("seconds", seconds, 0);
  return finite("run-out", (carriageSpeed(rpm, lead) * seconds) / 60);
}

/**
 * Highest rev/min at which the half nuts can be opened inside the run-out: 60 runout / (lead x seconds).
 *
 * @param seconds all of seeing, deciding and lifting the lever
 * @throws RangeError if any argument is not above 0
 */
export function speedCap(runout: number, lead: number, seconds = 1): number {
  requireAbove("runout", runout);
  requireAbove("lead", lead);
  requireAbove("reaction_seconds", seconds);
  return finite("rpm", (60 * runout) / (lead * seconds));
}

/**
 * The fastest of the lathe's speeds that is not above a limit (but for rounding, 1e-9 of it).
 *
 * @param limit rev/min, above 0
 * @param speeds of the lathe, each above 0
 * @throws RangeError outside those ranges
 * @throws NothingFound when every speed is above the limit
 */
export function speedNotAbove(limit: number, speeds: readonly number[]): number {
  requireAbove("limit", limit);
  for (const speed of speeds) requireAbove("speeds", speed);
  const allowed = speeds.filter((speed) => speed <= limit * (1 + 1e-9));
  if (allowed.length === 0) {
    throw new NothingFound(
      `every speed is above ${Number(limit.toFixed(1))}: the slowest is ${Math.min(...speeds)}`,
    );
  }
  return Math.max(...allowed);
}

/**
 * Seconds in which the carriage runs a distance.
 *
 * @param distance 0 or more
 * @throws RangeError if rpm or lead is not above 0
 */
export function secondsFor(rpm: number, lead: number, distance: number): number {
  requireAbove("rpm", rpm);
  requireWithin("distance", distance, 0);
  return finite("seconds", (60 * distance) / carriageSpeed(rpm, lead));
}
