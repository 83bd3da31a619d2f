/** Setting the top slide over and proving the setting: what scales and indicators show. */
import {
  acrossBed,
  alongBed,
  foundSetover,
  scaleReading,
  setoverByTwo,
  setoverFromScale,
} from "../lathe/setover.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { setover } from "./slides.ts";

const scale = {
  name: "scale",
  type: "text",
  options: ["square", "bed", "obtuse"],
  doc: '"square": zero square to the bed; "bed": zero along the bed; "obtuse": along the bed from its other end.',
} as const satisfies Param;

const travel = {
  name: "travel",
  type: "number",
  unit: "length",
  doc: "Travel of the slide.",
} as const satisfies Param;

export const setoverProofFunctions: readonly SheetFunction[] = [
  declare({
    name: "SETOVER.SCALE",
    family: "set-over",
    summary: "What a protractor reads at this set-over, by where its zero is.",
    params: [setover, scale],
    returns: { type: "number", unit: "deg", doc: "Reading of the scale: a, 90 - a or 90 + a." },
    failures: [
      {
        when: "the set-over is outside -90 to 90",
        formula: '=SETOVER.SCALE(91, "bed")',
        gives: "#NUM!",
        says: "setover must be from -90 to 90",
      },
      {
        when: "the zero of the scale is not told",
        formula: "=SETOVER.SCALE(27.5)",
        gives: "#VALUE!",
        says: "scale",
      },
    ],
    examples: [
      { formula: '=SETOVER.SCALE(27.5, "bed")', value: 62.5 },
      { formula: '=SETOVER.SCALE(27.5, "obtuse")', value: 117.5 },
      { formula: '=SETOVER.SCALE(27.5, "square")', value: 27.5 },
    ],
    source: "common practice, no source",
    compute: scaleReading,
  }),
  declare({
    name: "SETOVER.FROMSCALE",
    family: "set-over",
    summary: "Set-over from what a protractor reads, by where its zero is.",
    params: [{ name: "reading", type: "number", unit: "deg", doc: "What the scale reads." }, scale],
    returns: { type: "number", unit: "deg", doc: "From the line square to the lathe axis." },
    failures: [
      {
        when: "no set-over gives this reading",
        formula: '=SETOVER.FROMSCALE(181, "bed")',
        gives: "#NUM!",
        says: "reading must be from 0 to 180",
      },
      {
        when: "the word is not one of the three",
        formula: '=SETOVER.FROMSCALE(62.5, "axis")',
        gives: "#VALUE!",
        says: "bed",
      },
    ],
    examples: [
      { formula: '=SETOVER.FROMSCALE(62.5, "bed")', value: 27.5 },
      { formula: '=SETOVER.FROMSCALE(117.5, "obtuse")', value: 27.5 },
    ],
    source: "common practice, no source",
    compute: setoverFromScale,
  }),
  declare({
    name: "SETOVER.ALONG",
    family: "set-over",
    summary:
      "What an indicator along the bed shows when the slide travels: travel x sin a. The sensitive proof near 30 degrees.",
    params: [travel, { ...setover, doc: "Set-over, -90 to 90." }],
    returns: { type: "number", unit: "length", doc: "Movement along the bed." },
    failures: [
      {
        when: "the set-over is outside -90 to 90",
        formula: "=SETOVER.ALONG(10, 120)",
        gives: "#NUM!",
        says: "setover",
      },
    ],
    examples: [{ formula: "=SETOVER.ALONG(10, 27.5)", value: 4.6174861 }],
    source: "geometry",
    compute: alongBed,
  }),
  declare({
    name: "SETOVER.ACROSS",
    family: "set-over",
    summary: "What an indicator square to the bed shows when the slide travels: travel x cos a.",
    params: [travel, { ...setover, doc: "Set-over, -90 to 90." }],
    returns: { type: "number", unit: "length", doc: "Movement square to the bed." },
    failures: [
      {
        when: "the set-over is outside -90 to 90",
        formula: "=SETOVER.ACROSS(10, -91)",
        gives: "#NUM!",
        says: "setover",
      },
    ],
    examples: [{ formula: "=SETOVER.ACROSS(10, 60)", value: 5, source: "cos 60 degrees is one half" }],
    source: "geometry",
    compute: acrossBed,
  }),
  declare({
    name: "SETOVER.FOUND",
    family: "set-over",
    summary: "Set-over found by an indicator while the slide travels: asin or acos of reading / travel.",
    params: [
      { ...travel, doc: "Travel of the slide by its dial, above 0." },
      {
        name: "reading",
        type: "number",
        unit: "length",
        doc: "What the indicator moved, no more than the travel.",
      },
      {
        name: "way",
        type: "text",
        options: ["along", "across"],
        doc: '"along": indicator along the bed; "across": square to it.',
      },
    ],
    returns: { type: "number", unit: "deg", doc: "From the line square to the lathe axis." },
    failures: [
      {
        when: "the indicator moved more than the slide",
        formula: '=SETOVER.FOUND(10, 10.5, "along")',
        gives: "#NUM!",
        says: "reading must be from -10 to 10",
      },
      {
        when: "the slide did not travel",
        formula: '=SETOVER.FOUND(0, 0, "along")',
        gives: "#NUM!",
        says: "travel must be greater than 0",
      },
      { when: "the way is not told", formula: "=SETOVER.FOUND(10, 4.6)", gives: "#VALUE!", says: "way" },
    ],
    examples: [{ formula: '=SETOVER.FOUND(10, 4.6, "along")', value: 27.3871075 }],
    source: "geometry",
    compute: foundSetover,
  }),
  declare({
    name: "SETOVER.BYTWO",
    family: "set-over",
    summary: "Set-over from two indicator readings over the same travel: free of dial and backlash.",
    params: [
      { name: "along", type: "number", unit: "length", doc: "Movement along the bed." },
      { name: "across", type: "number", unit: "length", doc: "Movement square to the bed, 0 or more." },
    ],
    returns: { type: "number", unit: "deg", doc: "atan(along / across)." },
    failures: [
      {
        when: "nothing moved",
        formula: "=SETOVER.BYTWO(0, 0)",
        gives: "#NUM!",
        says: "move the slide first",
      },
      {
        when: "the reading across is negative",
        formula: "=SETOVER.BYTWO(4.6, -8.88)",
        gives: "#NUM!",
        says: "across must be 0 or more",
      },
    ],
    examples: [{ formula: "=SETOVER.BYTWO(4.6, 8.88)", value: 27.3849706 }],
    source: "geometry",
    compute: setoverByTwo,
  }),
];
