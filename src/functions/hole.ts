/** HOLE.*: bore of a nut and percentage of engagement. */
import { boreFor, engagementOf } from "../thread/bore.ts";
import { NothingFound } from "../thread/failures.ts";
import { readThread } from "../thread/read.ts";
import { convertLength, type LengthUnit, type Thread } from "../thread/thread.ts";
import { declare, type Result, type SheetFunction } from "./declare.ts";
import { designationParam, unitParam, unreadableDesignation } from "./designated.ts";

const percentageParam = {
  name: "percentage",
  type: "text",
  options: ["basic", "drill"],
  fallback: "basic",
  doc: "basic: of the basic height of the nut thread. drill: of 0.649519 P, as older drill charts count; 60-degree forms only.",
} as const;

const source = "geometry; class limits by the standard of the designated thread";

/** Note for a bore outside the minor-diameter limits of the nut's class. */
function withBoreNote(thread: Thread, value: number, bore: number, unit: LengthUnit): Result {
  const notes = thread.note === undefined ? [] : [thread.note];
  const outside = outsideLimits(thread, bore, unit);
  if (outside !== undefined)
    notes.push(outside, ...(thread.limitsNote === undefined ? [] : [thread.limitsNote]));
  return notes.length === 0 ? value : { value, note: notes.join("; ") };
}

function outsideLimits(thread: Thread, bore: number, unit: LengthUnit): string | undefined {
  try {
    const { max, min } = thread.limits("internal").minor;
    const shown = (limit: number) =>
      `${Number(convertLength(limit, thread.unit, unit).toPrecision(7))} ${unit}`;
    const dust = 1e-9 * thread.major;
    const fit = thread.fits.internal;
    if (max !== undefined && bore > max + dust) return `bore above the ${fit} maximum ${shown(max)}`;
    if (min !== undefined && bore < min - dust) return `bore below the ${fit} minimum ${shown(min)}`;
  } catch (error) {
    // No class limits to compare with is no reason to withhold the figure.
    if (!(error instanceof NothingFound)) throw error;
  }
  return undefined;
}

export const holeFunctions: readonly SheetFunction[] = [
  declare({
    name: "HOLE.BORE",
    family: "hole",
    summary: "Bore that leaves a wanted percentage of thread engagement.",
    params: [
      designationParam,
      { name: "engagement_percent", type: "number", unit: "%", doc: "Above 0, not above 100." },
      unitParam,
      percentageParam,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Bore diameter. A note says when it is outside the limits of the nut's class.",
    },
    failures: [
      unreadableDesignation('=HOLE.BORE("hole",75)'),
      {
        when: "the percentage is out of range",
        formula: '=HOLE.BORE("M10",120)',
        gives: "#NUM!",
        says: "engagement_percent",
      },
      {
        when: "drill is asked for another form",
        formula: '=HOLE.BORE("1/2 BSW",75,"mm","drill")',
        gives: "#VALUE!",
        says: "60-degree",
      },
    ],
    examples: [
      { formula: '=HOLE.BORE("M10",75)', value: 8.7821518 },
      { formula: '=HOLE.BORE("M10",75,"mm","drill")', value: 8.5385821 },
    ],
    source,
    compute: (designation, percent, unit, percentage) => {
      const thread = readThread(designation);
      const bore = boreFor(thread, percent, percentage);
      return withBoreNote(thread, convertLength(bore, thread.unit, unit), bore, unit);
    },
  }),
  declare({
    name: "HOLE.ENGAGEMENT",
    family: "hole",
    summary: "Percentage of thread engagement that a bore leaves.",
    params: [
      designationParam,
      {
        name: "bore",
        type: "number",
        unit: "length",
        doc: "Diameter of the hole, above 0, not above the major diameter.",
      },
      unitParam,
      percentageParam,
    ],
    returns: {
      type: "number",
      unit: "%",
      doc: "A note says when the bore is outside the limits of the nut's class.",
    },
    failures: [
      unreadableDesignation('=HOLE.ENGAGEMENT("hole",8.5)'),
      {
        when: "the bore is out of range",
        formula: '=HOLE.ENGAGEMENT("M10",12)',
        gives: "#NUM!",
        says: "bore",
      },
    ],
    examples: [
      { formula: '=HOLE.ENGAGEMENT("M10",8.5)', value: 92.376043 },
      { formula: '=HOLE.ENGAGEMENT("M10",8.5,"mm","drill")', value: 76.9800359 },
    ],
    source,
    compute: (designation, bore, unit, percentage) => {
      const thread = readThread(designation);
      const own = convertLength(bore, unit, thread.unit);
      return withBoreNote(thread, engagementOf(thread, own, percentage), own, unit);
    },
  }),
];
