/**
 * Domain checks and angles that every file of this folder shares.
 *
 * Angles are decimal degrees everywhere outside this file. Each check throws a RangeError that names the argument, the
 * bound and the value given.
 */

/** How near to a whole number counts as whole: divisions and passes. */
const WHOLE = 1e-9;

export function tan(degrees: number): number {
  return Math.tan(radians(degrees));
}

export function sin(degrees: number): number {
  return Math.sin(radians(degrees));
}

export function cos(degrees: number): number {
  return Math.cos(radians(degrees));
}

export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

export function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

/** @throws RangeError unless value > bound */
export function requireAbove(name: string, value: number, bound = 0): void {
  if (!(value > bound && value < Infinity)) {
    throw new RangeError(`${name} must be greater than ${bound}, got ${value}`);
  }
}

/** @throws RangeError unless low <= value <= high */
export function requireWithin(name: string, value: number, low: number, high = Infinity): void {
  if (value >= low && value <= high && Number.isFinite(value)) return;
  const range = high === Infinity ? `${low} or more` : `from ${low} to ${high}`;
  throw new RangeError(`${name} must be ${range}, got ${value}`);
}

/** A flank angle: 0 (square to the axis) to below 90. */
export function requireFlank(name: string, value: number): void {
  if (!(value >= 0 && value < 90)) {
    throw new RangeError(`${name} must be from 0 to below 90 degrees, got ${value}`);
  }
}

/** A set-over along which the slide can still put on depth: strictly between -90 and 90. */
export function requireSetover(value: number): void {
  if (!(value > -90 && value < 90)) {
    throw new RangeError(`setover must be between -90 and 90 degrees, got ${value}`);
  }
}

/** @returns `value` as a whole number @throws RangeError unless it is within 1e-9 of one and at least `low` */
export function requireWhole(name: string, value: number, low: number): number {
  const whole = Math.round(value);
  if (!(Math.abs(value - whole) <= WHOLE && whole >= low)) {
    throw new RangeError(`${name} must be a whole number of ${low} or more, got ${value}`);
  }
  return whole;
}

/** Largest whole number not above `value`, when a value within 1e-9 below the next counts as that next one. */
export function floorWhole(value: number): number {
  return Math.floor(value + WHOLE) + 0;
}

/** Smallest whole number not below `value`, with the same allowance. */
export function ceilWhole(value: number): number {
  return Math.ceil(value - WHOLE) + 0;
}

/** @throws RangeError when a result grew beyond what a number can hold */
export function finite(what: string, value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${what} is too large for a number to hold`);
  return value;
}
