/** What to measure to tell two threads apart: each difference with both figures, the easiest to see first. */
import { round } from "./text.ts";
import { convertLength, type LengthUnit, type Thread } from "./thread.ts";

/** Diameters nearer than this, in mm, wear and tolerance hide. */
const hidden = 0.05;

/**
 * @param unit of the lengths in the answer
 * @param pitches over how many pitches the length is compared, 1 or more
 * @throws RangeError when the number of pitches is no whole number from 1 up
 */
export function tellApart(one: Thread, other: Thread, unit: LengthUnit, pitches = 10): string {
  if (!Number.isInteger(pitches) || pitches < 1)
    throw new RangeError(`pitches must be a whole number from 1 up, got ${pitches}`);
  const differences = [
    ...byPitch(one, other, unit, pitches),
    ...byStarts(one, other),
    ...byTaper(one, other),
    ...byAngle(one, other),
    ...byDiameter(one, other, unit),
    ...byCrest(one, other),
  ];
  return differences.length === 0
    ? "size, pitch and angle are alike: only the root or the class of fit differs"
    : differences.join("; ");
}

function length(mm: number, unit: LengthUnit): string {
  const places = unit === "mm" ? 2 : 4;
  return round(convertLength(mm, "mm", unit), places).toFixed(places);
}

const mm = (thread: Thread, value: number) => convertLength(value, thread.unit, "mm");

function byPitch(one: Thread, other: Thread, unit: LengthUnit, n: number): string[] {
  const [a, b] = [n * mm(one, one.pitch), n * mm(other, other.pitch)];
  if (Math.abs(a - b) < 1e-6 * a) return [];
  const what = n === 1 ? "one pitch" : `${n} pitches`;
  return [`measure ${what}: ${length(a, unit)} against ${length(b, unit)} ${unit}`];
}

function byStarts(one: Thread, other: Thread): string[] {
  return one.starts === other.starts
    ? []
    : [`count the starts at the end: ${one.starts} against ${other.starts}`];
}

function byTaper(one: Thread, other: Thread): string[] {
  if (one.taper === other.taper) return [];
  const words = ({ taper }: Thread) =>
    taper === 0 ? "parallel" : `growing 1 in ${Number((1 / taper).toPrecision(4))}`;
  return [`measure the diameter at two places: ${words(one)} against ${words(other)}`];
}

function byAngle(one: Thread, other: Thread): string[] {
  const angles = [one, other].map((thread) => thread.loadFlank + thread.clearanceFlank);
  if (Math.abs(angles[0]! - angles[1]!) > 0.01)
    return [`included angle ${angles[0]} against ${angles[1]} degrees`];
  return Math.abs(one.loadFlank - other.loadFlank) > 0.01
    ? [
        `flanks ${one.loadFlank}/${one.clearanceFlank} against ${other.loadFlank}/${other.clearanceFlank} degrees`,
      ]
    : [];
}

function byDiameter(one: Thread, other: Thread, unit: LengthUnit): string[] {
  const [a, b] = [mm(one, one.major), mm(other, other.major)];
  return Math.abs(a - b) <= hidden
    ? []
    : [`unworn crests: ${length(a, unit)} against ${length(b, unit)} ${unit} across`];
}

function byCrest(one: Thread, other: Thread): string[] {
  const words = ({ crestRadius }: Thread) => (crestRadius === undefined ? "flat" : "rounded");
  return words(one) === words(other) ? [] : [`crests made ${words(one)} against ${words(other)}`];
}
