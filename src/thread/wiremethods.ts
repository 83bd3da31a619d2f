/**
 * Other ways of measuring a screw over wires than three wires between flat anvils, and a set that is not quite alike.
 *
 *     two wires      one on each side, anvils held parallel to the axis
 *     one wire       one wire (or two in neighbouring grooves) on one side, the plain crests on the other
 *     taper          three wires: the anvil on the pair lies along the cone, so that the reading is slanted by half its angle
 *
 * Lengths in any one unit, angles in degrees. Source: geometry; the taper formula of Handbook H28 and ASME B1.20.1 in the
 * form M = (E - (P/2) cot a + w (1 + cosec a)) / sec b leaves out w (1 - cos b) and the term in tan^2 b.
 */
import { cos, sin, tan } from "./form.ts";
import { requireNotNegative, requirePositive, type Vee } from "./groove.ts";
import { overWires, pitchDiameterFrom, type Wires } from "./wires.ts";

/**
 * Reading over two wires, one on each side. Square to the axis it is that of three wires; a micrometer that stands out
 * of square by `tilt` reads wrong in proportion, because the two grooves are not opposite each other: that is what the third wire is for.
 *
 * @param tilt degrees out of square, towards the groove ahead; above -45 and below 45
 * @throws RangeError as for the reading over three wires
 */
export function overTwoWires(pitchDiameter: number, wires: Wires, tilt = 0): number {
  requireTilt(tilt);
  const across = overWires(pitchDiameter, wires) - wires.wire;
  return across * cos(tilt) + apart(wires) * sin(tilt) + wires.wire;
}

/** Pitch diameter from a reading over two wires. @throws RangeError as for the reading */
export function pitchDiameterFromTwo(reading: number, wires: Wires, tilt = 0): number {
  requireTilt(tilt);
  requirePositive("reading", reading);
  const across = (reading - wires.wire - apart(wires) * sin(tilt)) / cos(tilt);
  return pitchDiameterFrom(across + wires.wire, wires);
}

/** How far along the axis the groove opposite is from the one here: half a pitch for odd starts, nothing for even ones. */
function apart({ vee, lead }: Wires): number {
  const half = (lead === 0 ? vee.pitch : lead) / 2;
  const past = half - Math.floor(half / vee.pitch + 1e-9) * vee.pitch;
  return Math.max(0, Math.min(past, vee.pitch - past));
}

function requireTilt(tilt: number): void {
  if (!(tilt > -45 && tilt < 45)) {
    throw new RangeError(`tilt must be above -45 and below 45 degrees, got ${tilt}`);
  }
}

/**
 * Reading over one wire, or two side by side, and the crests opposite: half of each diameter.
 *
 * @param major diameter over the crests as measured, above 0
 * @throws RangeError as for the reading over three wires, or if the wire does not stand above the crests
 */
export function overOneWire(pitchDiameter: number, major: number, wires: Wires): number {
  requirePositive("major", major);
  const whole = overWires(pitchDiameter, wires);
  requireAbove(whole, major, wires.wire);
  return (whole + major) / 2;
}

/** Pitch diameter from a reading over one wire and the crests. @throws RangeError as for the reading */
export function pitchDiameterFromOne(reading: number, major: number, wires: Wires): number {
  requirePositive("reading", reading);
  requirePositive("major", major);
  const whole = 2 * reading - major;
  requireAbove(whole, major, wires.wire);
  return pitchDiameterFrom(whole, wires);
}

function requireAbove(whole: number, major: number, wire: number): void {
  if (!(whole > major)) {
    throw new RangeError(`wire must stand above the crests of the major diameter ${major}, got ${wire}`);
  }
}

/**
 * Reading over three wires on a taper thread with its form square to the axis, the single wire at the place whose pitch
 * diameter is asked for: 2 R cos b + w, with the wires' middles 2 R apart as on a straight thread but for (P/2) tan a tan^2 b, b half
 * the angle of the taper.
 *
 * @param taper on diameter per length, 0 or more and less than the flanks allow
 * @throws RangeError outside that, for unequal flanks, or as for the reading over three wires
 */
export function overTaper(pitchDiameter: number, taper: number, wires: Wires): number {
  const { slant, lift } = slantOf(taper, wires.vee);
  const across = overWires(pitchDiameter, wires) - wires.wire + lift;
  return across * slant + wires.wire;
}

/** Pitch diameter at the single wire, from a reading on a taper thread. @throws RangeError as for the reading */
export function pitchDiameterOfTaper(reading: number, taper: number, wires: Wires): number {
  requirePositive("reading", reading);
  const { slant, lift } = slantOf(taper, wires.vee);
  return pitchDiameterFrom((reading - wires.wire) / slant - lift + wires.wire, wires);
}

function slantOf(taper: number, vee: Vee): { slant: number; lift: number } {
  requireNotNegative("taper", taper);
  if (Math.abs(vee.first - vee.second) > 1e-9) {
    throw new RangeError(`flanks must be alike on a taper thread, got ${vee.first} and ${vee.second}`);
  }
  const rise = taper / 2;
  if (!(rise * tan(vee.first) < 1)) {
    throw new RangeError(
      `taper must be less than ${Number((2 / tan(vee.first)).toPrecision(6))}, got ${taper}`,
    );
  }
  return { slant: 1 / Math.hypot(1, rise), lift: (vee.pitch / 2) * tan(vee.first) * rise * rise };
}

/**
 * The one diameter that stands for three wires of a set as calibrated: the pair shares one anvil, so each of it counts a
 * quarter and the wire opposite a half.
 *
 * @throws RangeError unless all are above 0
 */
export function meanOfSet(pairOne: number, pairTwo: number, opposite: number): number {
  requirePositive("pair_one", pairOne);
  requirePositive("pair_two", pairTwo);
  requirePositive("opposite", opposite);
  return (pairOne + pairTwo) / 4 + opposite / 2;
}

/** What a pitch diameter is reckoned from. */
export type Input = "reading" | "wire" | "pitch" | "angle";

/**
 * How much the pitch diameter changes for each unit of a change of one input: length per length, or length per degree of
 * the included angle. A pitch takes the lead with it. Found from two places close by.
 *
 * @throws RangeError as for the pitch diameter
 */
export function sensitivity(input: Input, reading: number, wires: Wires): number {
  const { vee } = wires;
  const step = input === "angle" ? 0.01 : 1e-4 * wires.wire;
  const at = (by: number): number => {
    if (input === "reading") return pitchDiameterFrom(reading + by, wires);
    if (input === "wire") return pitchDiameterFrom(reading, { ...wires, wire: wires.wire + by });
    if (input === "pitch") {
      const lead = (wires.lead * (vee.pitch + by)) / vee.pitch;
      return pitchDiameterFrom(reading, { ...wires, vee: { ...vee, pitch: vee.pitch + by }, lead });
    }
    const opened = { ...vee, first: vee.first + by / 2, second: vee.second + by / 2 };
    return pitchDiameterFrom(reading, { ...wires, vee: opened });
  };
  return (at(step) - at(-step)) / (2 * step);
}
