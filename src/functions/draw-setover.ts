/** DRAW.SETOVER: plan view of the set-over top slide. */
import { requireFlank, requireSetover, requireWithin } from "../lathe/bounds.ts";
import { endPassed, type SetoverFigure } from "../lathe/figure.ts";
import { scaleReading, swing } from "../lathe/setover.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { member } from "./member.ts";
import { setover } from "./slides.ts";

const zeroWords = { square: "scale zeroed square", bed: "bed scale", obtuse: "bed scale, far end," } as const;

/** The swing of a set-over above 0, turned to where the handle of this one stands. */
function swingAt(setover: number, swung: string): string {
  if (setover > 0) return swung;
  if (setover === 0) return swung.replace(/handle (left|right)/, "handle square");
  return swung.includes("left") ? swung.replace("left", "right") : swung.replace("right", "left");
}

function doubt(setover: number, flank: number | undefined): string | undefined {
  if (flank !== undefined && setover > flank) {
    return `past the trailing flank of ${flank} degrees: this cuts outside the form`;
  }
  return setover < 0
    ? "swung to the other side of square: the trailing edge does most of the work"
    : undefined;
}

/** A scale all the way round has no end that could be passed. */
function scaleEnds(low: number, high: number): Pick<SetoverFigure, "ends"> {
  requireWithin("low", low, 0, 360);
  requireWithin("high", high, 0, 360);
  if (!(low < high)) throw new RangeError(`low must be less than high, got ${low} and ${high}`);
  return low === 0 && high === 360 ? {} : { ends: { low, high } };
}

export const drawSetoverFunctions: readonly SheetFunction[] = [
  declare({
    name: "DRAW.SETOVER",
    family: "drawing",
    summary: "Plan view: the top slide as it stands, what this lathe's scale reads, which way to swing.",
    params: [
      setover,
      {
        name: "zero_line",
        type: "text",
        options: ["square", "bed", "obtuse"],
        fallback: "square",
        doc: "Where the slide's scale has its zero: square to the bed, along it, or along it from its other end.",
      },
      {
        name: "flank",
        type: "number",
        unit: "deg",
        optional: true,
        doc: "Trailing flank angle, 0 to below 90: shown beside the setting, muted; left out, not shown.",
      },
      {
        name: "hand",
        type: "text",
        options: ["right", "left"],
        fallback: "right",
        doc: "Hand of the thread.",
      },
      { ...member, doc: "Screw or nut; inside, the tool faces you." },
      {
        name: "mark",
        type: "number",
        unit: "deg",
        optional: true,
        doc: "What this lathe's own scale shows there, as SETOVER.MARK gives it; left out, a scale that shows the full reading.",
      },
      {
        name: "low",
        type: "number",
        unit: "deg",
        fallback: 0,
        doc: "Lowest mark of this lathe's scale, 0 or more.",
      },
      {
        name: "high",
        type: "number",
        unit: "deg",
        fallback: 360,
        doc: "Highest mark of this lathe's scale, above low, up to 360: it is drawn to there.",
      },
    ],
    returns: { type: "drawing", doc: "As text: the set-over, the reading of the scale and the swing." },
    failures: [
      {
        when: "the set-over is outside -90 to 90",
        formula: "=DRAW.SETOVER(90)",
        gives: "#NUM!",
        says: "setover must be between -90 and 90 degrees, got 90",
      },
      {
        when: "the flank is outside 0 to 90",
        formula: '=DRAW.SETOVER(27,"bed",95)',
        gives: "#NUM!",
        says: "flank must be from 0 to below 90 degrees, got 95",
      },
      {
        when: "the scale is none of the three",
        formula: '=DRAW.SETOVER(27,"north")',
        gives: "#VALUE!",
        says: "zero_line",
      },
      {
        when: "the scale has no length",
        formula: '=DRAW.SETOVER(27,"bed",27.5,"right","external",,60,60)',
        gives: "#NUM!",
        says: "low must be less than high, got 60 and 60",
      },
    ],
    examples: [
      {
        formula: '=DRAW.SETOVER(27,"bed",27.5)',
        value: "Set-over 27°, bed scale 63°, flank 27.5°: handle right, wind in",
        source: "90 - 27 by hand; the swing is common practice, no source",
      },
      {
        formula: '=DRAW.SETOVER(29,"square",,"right","internal")',
        value: "Set-over 29°, scale zeroed square 29°: handle left, wind back",
        source: "the swing is common practice, no source",
      },
      {
        formula: '=DRAW.SETOVER(27,"bed",27.5,"right","external",27)',
        value: "Set-over 27°, bed scale 63°, your mark 27°, flank 27.5°: handle right, wind in",
        source: "90 - 27 by hand; the mark is what was given",
      },
      {
        formula: '=DRAW.SETOVER(27,"bed",27.5,"right","external",,0,60)',
        value: "Set-over 27°, bed scale 63°, off your scale at 60°, flank 27.5°: handle right, wind in",
        source: "90 - 27 by hand, past 60",
      },
      {
        formula: "=DRAW.SETOVER(-20)",
        value: "Set-over -20°, scale zeroed square -20°: handle left, wind in",
        source: "below 0 the handle stands on the other side than SETOVER.SWING says",
      },
    ],
    source: "geometry; the swing is common practice, no source",
    compute: (setover, zeroLine, flank, hand, member, mark, low, high) => {
      requireSetover(setover);
      if (mark !== undefined) requireWithin("mark", mark, -360, 360);
      if (flank !== undefined) requireFlank("flank", flank);
      const scale = scaleEnds(low, high);
      const reading = scaleReading(setover, zeroLine);
      const way = swingAt(setover, swing(hand, member));
      const shown = (angle: number) => `${Number(angle.toFixed(2))}°`;
      // Told apart only where a person could read a difference.
      const ownMark = mark === undefined || Math.abs(mark - reading) < 0.005 ? undefined : mark;
      const beside = flank === undefined ? {} : { flank, flankReading: scaleReading(flank, zeroLine) };
      const figure: SetoverFigure = {
        kind: "setover",
        setover,
        zeroLine,
        reading,
        ...(ownMark === undefined ? {} : { mark: ownMark }),
        ...scale,
        ...beside,
        hand,
        member,
        swing: way,
      };
      const end = endPassed(figure, reading);
      const words = [
        `Set-over ${shown(setover)}`,
        `${zeroWords[zeroLine]} ${shown(reading)}`,
        ...(ownMark === undefined ? [] : [`your mark ${shown(ownMark)}`]),
        ...(end === undefined ? [] : [`off your scale at ${shown(end)}`]),
        ...(flank === undefined ? [] : [`flank ${shown(flank)}`]),
      ];
      const note = doubt(setover, flank);
      return {
        value: `${words.join(", ")}: ${way}`,
        figure,
        ...(note === undefined ? {} : { note }),
      };
    },
  }),
];
