/** What a set-over that is off does, and how exact it has to be. */
import { splitIncluded } from "../lathe/form.ts";
import {
  depthWithError,
  flankLeft,
  flankStep,
  largestSetover,
  overcutLeft,
  pitchDiameterChange,
} from "../lathe/setover-error.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { depth, firstDepth, flank, infeed } from "./depths.ts";
import { trailingFlank } from "./toolform.ts";

const setover = {
  name: "setover",
  type: "number",
  unit: "deg",
  doc: "Set-over that is really there. 0 or more: held against the trailing flank; below 0: its size against the leading one.",
} as const satisfies Param;
const meant = {
  name: "setover",
  type: "number",
  unit: "deg",
  doc: "Set-over that the travel is reckoned for, from the line square to the axis.",
} as const satisfies Param;
const error = {
  name: "error",
  type: "number",
  unit: "deg",
  doc: "What the slide really stands at, less setover.",
} as const satisfies Param;
export const setoverErrorFunctions: readonly SheetFunction[] = [
  declare({
    name: "SETOVER.REACHED",
    family: "set-over",
    summary: "Radial depth really reached when the slide is off: depth cos(a + error) / cos a.",
    params: [depth, meant, error],
    returns: { type: "number", unit: "length", doc: "Less than depth where the slide leans further over." },
    failures: [
      {
        when: "the slide would lie along the bed",
        formula: "=SETOVER.REACHED(1.2, 29, 61)",
        gives: "#NUM!",
        says: "error must leave a set-over between -90 and 90",
      },
    ],
    examples: [
      {
        formula: "=SETOVER.REACHED(1.2, 29, 3)",
        value: 1.1635431,
        source: "1.2 cos 32 / cos 29, reckoned apart",
      },
    ],
    source: "geometry",
    compute: depthWithError,
  }),
  declare({
    name: "SETOVER.FLANKLEFT",
    family: "set-over",
    summary: "Mean flank angle, root to surface, that passes along a set-over leave.",
    params: [depth, setover, flank, { ...firstDepth, fallback: 0 }],
    returns: {
      type: "number",
      unit: "deg",
      doc: "The flank's own angle when the set-over is not past it; past it the flank is stepped and leans further.",
    },
    failures: [
      {
        when: "the first pass is deeper than the depth",
        formula: "=SETOVER.FLANKLEFT(1.2, 33, 30, 1.3)",
        gives: "#NUM!",
        says: "first_depth must be from 0 to 1.2",
      },
    ],
    examples: [
      {
        formula: "=SETOVER.FLANKLEFT(1.2, 33, 30, 0.3)",
        value: 32.268038,
        source: "atan(tan 30 + 0.75 (tan 33 - tan 30)), reckoned apart",
      },
      {
        formula: "=SETOVER.FLANKLEFT(1.2, 29, 30, 0.3)",
        value: 30,
        source: "inside the flank the tool's own",
      },
    ],
    source: "geometry",
    compute: flankLeft,
  }),
  declare({
    name: "SETOVER.STEP",
    family: "set-over",
    summary: "Height of the step that a pass leaves on a flank its set-over is past: s sin(a - f).",
    params: [infeed, setover, flank],
    returns: {
      type: "number",
      unit: "length",
      doc: "Square to the flank; 0 when the set-over is not past it.",
    },
    failures: [
      {
        when: "the travel is negative",
        formula: "=SETOVER.STEP(-0.1, 33, 30)",
        gives: "#NUM!",
        says: "infeed must be 0 or more",
      },
    ],
    examples: [
      { formula: "=SETOVER.STEP(0.1, 33, 30)", value: 0.005233596, source: "0.1 sin 3 degrees" },
      { formula: "=SETOVER.STEP(0.1, 29, 30)", value: 0, source: "inside the flank there are no steps" },
    ],
    source: "geometry",
    compute: flankStep,
  }),
  declare({
    name: "SETOVER.REMAINS",
    family: "set-over",
    summary: "Axial overcut at the surface that is still there after finishing straight in.",
    params: [
      depth,
      setover,
      flank,
      firstDepth,
      {
        name: "reached",
        type: "number",
        unit: "length",
        doc: "Radial depth at which the slide is left alone and the cross slide takes over, first_depth to depth.",
      },
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "0 when the straight-in passes clean the flank: then reached is not past SETOVER.RESCUE.",
    },
    failures: [
      {
        when: "the slide passes go past the depth",
        formula: "=SETOVER.REMAINS(1.2, 35, 30, 0.3, 1.3)",
        gives: "#NUM!",
        says: "reached must be from 0.3 to 1.2",
      },
    ],
    examples: [
      {
        formula: "=SETOVER.REMAINS(1.2269, 35, 30, 0.3, 1.1)",
        value: 0.02502007,
        source: "(1.1 - 0.3)(tan 35 - tan 30) - (1.2269 - 1.1) tan 30, reckoned apart",
      },
      {
        formula: "=SETOVER.REMAINS(1.2269, 35, 30, 0.3, 1.0642676)",
        value: 0,
        within: 1e-7,
        source: "at the depth of SETOVER.RESCUE nothing is left",
      },
    ],
    source: "geometry",
    compute: overcutLeft,
  }),
  declare({
    name: "SETOVER.PITCHCHANGE",
    family: "set-over",
    summary: "Change of a screw's pitch diameter, against what the dial promised, when the slide is off.",
    params: [
      depth,
      meant,
      error,
      {
        name: "included",
        type: "number",
        unit: "deg",
        doc: "Included angle of the tool, above 0 to below 180.",
      },
      firstDepth,
      {
        name: "level",
        type: "number",
        unit: "length",
        doc: "Pitch line below the surface: (blank - pitch diameter) / 2, 0 to depth.",
      },
      trailingFlank,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Above 0: too large, since less depth is reached; overcut takes from it. Below the first pass a bound, the bottom of the steps. In a nut the other sign.",
    },
    failures: [
      {
        when: "the pitch line lies below the groove",
        formula: "=SETOVER.PITCHCHANGE(1.2, 29, 3, 60, 0.3, 1.5)",
        gives: "#NUM!",
        says: "level must be from 0 to 1.2",
      },
      {
        when: "both flanks are square",
        formula: "=SETOVER.PITCHCHANGE(1.2, 0, 1, 0, 0.3, 0.5)",
        gives: "#NUM!",
        says: "included must be greater than 0",
      },
    ],
    examples: [
      {
        formula: "=SETOVER.PITCHCHANGE(1.2, 29, 3, 60, 0.3, 0.5)",
        value: 0.0183006,
        within: 5e-8,
        source: "2 (1.2 - 1.1635431) - 2 (1.1635431 - 0.5)(tan 32 - tan 30) / (2 tan 30), reckoned apart",
      },
    ],
    source: "geometry",
    compute: (full, angle, off, included, first, level, trailing) =>
      pitchDiameterChange(full, angle, off, splitIncluded(included, trailing), first, level),
  }),
  declare({
    name: "SETOVER.LARGEST",
    family: "set-over",
    summary: "Largest set-over that keeps the mean flank angle within an allowed error: how exact to set it.",
    params: [
      depth,
      flank,
      {
        name: "allowed",
        type: "number",
        unit: "deg",
        doc: "How far off the mean flank angle may be, above 0.",
      },
      { ...firstDepth, fallback: 0, doc: "Radial depth of the first pass, 0 to below depth." },
    ],
    returns: {
      type: "number",
      unit: "deg",
      doc: "Less the set-over you mean to set, it is the room for your error. Below the flank there is no limit from the form.",
    },
    failures: [
      {
        when: "nothing is allowed",
        formula: "=SETOVER.LARGEST(1.2, 30, 0)",
        gives: "#NUM!",
        says: "allowed must be greater than 0",
      },
      {
        when: "the first pass is the depth",
        formula: "=SETOVER.LARGEST(1.2, 30, 0.5, 1.2)",
        gives: "#NUM!",
        says: "first_depth must be less than depth",
      },
    ],
    examples: [
      {
        formula: "=SETOVER.LARGEST(1.2, 30, 0.5, 0.3)",
        value: 30.665536,
        source: "atan(tan 30 + (tan 30.5 - tan 30)/0.75), reckoned apart",
      },
    ],
    source: "geometry",
    compute: largestSetover,
  }),
];
