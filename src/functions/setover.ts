import { backedOff, miscut, rescueDepth, setoverAngle, swing } from "../lathe/setover.ts";
import { Unreadable } from "../thread/failures.ts";
import { readThread } from "../thread/read.ts";
import { declare, type Noted, type Param, type SheetFunction } from "./declare.ts";
import { depth, firstDepth, flank } from "./depths.ts";
import { alsoNoted } from "./designated.ts";
import { member } from "./member.ts";
import { setoverErrorFunctions } from "./setover-error.ts";
import { setoverProofFunctions } from "./setover-proof.ts";
import { setover } from "./slides.ts";

const backOff = {
  name: "back_off",
  type: "number",
  unit: "deg",
  fallback: 0,
  doc: "Taken off as margin for the error of the setting; 0 when left out.",
} as const satisfies Param;

/** A set-over that the trailing flank does not allow, or that lets the trailing edge do all the work, says so. */
function noted(angle: number, trailingFlank: number): number | Noted {
  if (angle > trailingFlank) {
    return {
      value: angle,
      note: `past the trailing flank of ${trailingFlank} degrees: this cuts outside the form`,
    };
  }
  if (angle < 0) {
    return {
      value: angle,
      note: "swung to the other side of square: the trailing edge does most of the work",
    };
  }
  return angle;
}

export const setoverFunctions: readonly SheetFunction[] = [
  declare({
    name: "SETOVER.ANGLE",
    family: "set-over",
    summary: "Set-over of the top slide for a symmetric form: half the included angle, less a back-off.",
    params: [
      { name: "included", type: "number", unit: "deg", doc: "Included angle of the form, 0 to below 180." },
      backOff,
    ],
    returns: { type: "number", unit: "deg", doc: "From the line square to the lathe axis." },
    failures: [
      {
        when: "the included angle reaches 180 degrees",
        formula: "=SETOVER.ANGLE(180)",
        gives: "#NUM!",
        says: "included must be from 0 to below 180",
      },
      {
        when: "the included angle is left out",
        formula: "=SETOVER.ANGLE()",
        gives: "#VALUE!",
        says: "included",
      },
    ],
    examples: [
      { formula: "=SETOVER.ANGLE(55)", value: 27.5 },
      {
        formula: "=SETOVER.ANGLE(60, 0.5)",
        value: 29.5,
        source: "half of 60 less the half degree most people back off",
      },
    ],
    source: "geometry; the back-off is common practice, no source",
    compute: (included, off) => noted(setoverAngle(included, off), included / 2),
  }),
  declare({
    name: "SETOVER.FORTHREAD",
    family: "set-over",
    summary: "Set-over of the top slide for a thread: its trailing flank angle, less a back-off.",
    params: [
      { name: "designation", type: "text", doc: 'Thread, as "1/2-12 BSW" or a note made by THREAD.CUSTOM.' },
      backOff,
      {
        name: "trailing",
        type: "text",
        options: ["load", "clearance"],
        optional: true,
        doc: "Which flank trails; needed where the flanks differ. Cut toward the headstock the load flank trails on a screw that is pulled, leads on one that is pushed; cut away from it the reverse.",
      },
    ],
    returns: { type: "number", unit: "deg", doc: "From the line square to the lathe axis." },
    failures: [
      {
        when: "the flanks differ and it is not said which one trails",
        formula: '=SETOVER.FORTHREAD("2-4 Butt")',
        gives: "#VALUE!",
        says: "say which flank trails",
      },
      {
        when: "the designation cannot be read",
        formula: '=SETOVER.FORTHREAD("bolt")',
        gives: "#VALUE!",
        says: "bolt",
      },
    ],
    examples: [
      { formula: '=SETOVER.FORTHREAD("1/2-12 BSW")', value: 27.5 },
      { formula: '=SETOVER.FORTHREAD("2-4 Butt", 1, "load")', value: 6 },
    ],
    source: "geometry; flank angles from the standard of the thread",
    compute: (designation, off, trailing) => {
      const thread = readThread(designation);
      const { loadFlank, clearanceFlank } = thread;
      if (trailing === undefined && loadFlank !== clearanceFlank) {
        throw new Unreadable(
          `say which flank trails, "load" (${loadFlank} degrees) or "clearance" (${clearanceFlank}): that depends on the direction of the cut`,
        );
      }
      const flank = trailing === "clearance" ? clearanceFlank : loadFlank;
      return alsoNoted(thread, noted(backedOff(flank, off), flank));
    },
  }),
  declare({
    name: "SETOVER.SWING",
    family: "set-over",
    summary:
      "Which way the handle end of the slide goes, and whether the cut is put on by winding in or back.",
    params: [
      { name: "hand", type: "text", options: ["right", "left"], doc: "Hand of the thread." },
      { ...member, doc: "Screw or nut; inside, the tool faces you." },
      {
        name: "direction",
        type: "text",
        options: ["in", "out"],
        optional: true,
        doc: '"in": the carriage runs toward the headstock while cutting; "out": away from it. Left out: in for a right-hand thread, out for a left-hand one, as a spindle turning forward needs.',
      },
    ],
    returns: { type: "text", doc: "Standing at the lathe with the headstock left." },
    failures: [
      { when: "the hand is left out", formula: "=SETOVER.SWING()", gives: "#VALUE!", says: "hand" },
      {
        when: "the hand is another word",
        formula: '=SETOVER.SWING("both")',
        gives: "#VALUE!",
        says: "right",
      },
    ],
    examples: [
      { formula: '=SETOVER.SWING("right", "internal", "in")', value: "handle left, wind back" },
      { formula: '=SETOVER.SWING("right")', value: "handle right, wind in" },
      { formula: '=SETOVER.SWING("left")', value: "handle left, wind in" },
      { formula: '=SETOVER.SWING("left", "internal")', value: "handle right, wind back" },
    ],
    source: "common practice, no source",
    compute: swing,
  }),
  ...setoverProofFunctions,
  declare({
    name: "SETOVER.MISCUT",
    family: "set-over",
    summary: "Axial overcut outside the finished form that a set-over past the flank leaves.",
    params: [
      depth,
      {
        ...setover,
        doc: "Set-over that was used. 0 or more: held against the trailing flank; below 0: its size against the leading one.",
      },
      flank,
      {
        name: "first_depth",
        type: "number",
        unit: "length",
        fallback: 0,
        doc: "Radial depth of the first pass, 0 to depth.",
      },
      {
        name: "level",
        type: "number",
        unit: "length",
        fallback: 0,
        doc: "How far below the surface, 0 to depth.",
      },
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Exact at the surface once the first pass is past the rounding of the nose; before that, and below the first pass, an upper bound.",
    },
    failures: [
      {
        when: "the first pass is deeper than the depth",
        formula: "=SETOVER.MISCUT(1, 35, 30, 2)",
        gives: "#NUM!",
        says: "first_depth must be from 0 to 1",
      },
      {
        when: "the set-over is outside -90 to 90",
        formula: "=SETOVER.MISCUT(1, 90, 30)",
        gives: "#NUM!",
        says: "setover must be between -90 and 90",
      },
    ],
    examples: [
      { formula: "=SETOVER.MISCUT(1.3554, 35, 27.5, 0.3)", value: 0.1895926 },
      { formula: "=SETOVER.MISCUT(1.3554, 35, 27.5, 0.3, 0.68)", value: 0.1213292 },
      {
        formula: "=SETOVER.MISCUT(1.3554, 26.5, 27.5, 0.3)",
        value: 0,
        source: "a set-over inside the flank overcuts nothing",
      },
    ],
    source: "geometry",
    compute: miscut,
  }),
  declare({
    name: "SETOVER.RESCUE",
    family: "set-over",
    summary:
      "Deepest depth at which finishing straight in still cleans a flank that a wrong set-over has stepped.",
    params: [
      depth,
      {
        ...setover,
        doc: "Set-over that was used, 0 to below 90; for one past the leading flank its size, with that flank.",
      },
      { name: "trailing_flank", type: "number", unit: "deg", doc: "Flank angle, 0 to below 90." },
      firstDepth,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Radial depth; the full depth when the set-over is not past the flank.",
    },
    failures: [
      {
        when: "the set-over is negative",
        formula: "=SETOVER.RESCUE(1, -35, 30, 0.3)",
        gives: "#NUM!",
        says: "setover must be from 0 to below 90",
      },
      {
        when: "the first pass is deeper than the depth",
        formula: "=SETOVER.RESCUE(1, 35, 30, 1.5)",
        gives: "#NUM!",
        says: "first_depth",
      },
    ],
    examples: [{ formula: "=SETOVER.RESCUE(1.2269, 35, 30, 0.3)", value: 1.0642676 }],
    source: "geometry",
    compute: rescueDepth,
  }),
  ...setoverErrorFunctions,
];
