import { splitIncluded } from "../lathe/form.ts";
import {
  correction,
  depthForInfeed,
  flankChip,
  infeedForDepth,
  isPastFlank,
  sideStep,
} from "../lathe/infeed.ts";
import { setoverForShare, trailingShare } from "../lathe/setover-error.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { flank, infeed } from "./depths.ts";
import { setover } from "./slides.ts";
import { included, trailingFlank } from "./toolform.ts";

export const infeedFunctions: readonly SheetFunction[] = [
  declare({
    name: "FLANK.INFEED",
    family: "infeed",
    summary: "Travel of the set-over slide for a radial depth: depth / cos a.",
    params: [{ name: "depth", type: "number", unit: "length", doc: "Radial depth, 0 or more." }, setover],
    returns: { type: "number", unit: "length", doc: "Slide travel." },
    failures: [
      {
        when: "the set-over lies along the bed",
        formula: "=FLANK.INFEED(1, 90)",
        gives: "#NUM!",
        says: "setover must be between -90 and 90",
      },
      {
        when: "the depth is negative",
        formula: "=FLANK.INFEED(-1, 27)",
        gives: "#NUM!",
        says: "depth must be 0 or more, got -1",
      },
      { when: "the set-over is left out", formula: "=FLANK.INFEED(1)", gives: "#VALUE!", says: "setover" },
    ],
    examples: [{ formula: "=FLANK.INFEED(1.3554, 27)", value: 1.521201 }],
    source: "geometry",
    compute: infeedForDepth,
  }),
  declare({
    name: "FLANK.DEPTH",
    family: "infeed",
    summary: "Radial depth that a travel of the set-over slide gives: travel x cos a.",
    params: [{ name: "infeed", type: "number", unit: "length", doc: "Slide travel, 0 or more." }, setover],
    returns: { type: "number", unit: "length", doc: "Radial depth." },
    failures: [
      {
        when: "the set-over is outside -90 to 90",
        formula: "=FLANK.DEPTH(1, -90)",
        gives: "#NUM!",
        says: "setover must be between -90 and 90",
      },
      {
        when: "the travel is negative",
        formula: "=FLANK.DEPTH(-0.1, 27)",
        gives: "#NUM!",
        says: "infeed must be 0 or more",
      },
    ],
    examples: [
      {
        formula: "=FLANK.DEPTH(1.521201, 27)",
        value: 1.3554,
        source: "inverse of FLANK.INFEED(1.3554, 27) = 1.5212010",
        within: 5e-7,
      },
    ],
    source: "geometry",
    compute: depthForInfeed,
  }),
  declare({
    name: "FLANK.CHIP",
    family: "infeed",
    summary: "Uncut chip thickness that a pass takes square to one flank.",
    params: [
      infeed,
      setover,
      flank,
      {
        name: "side",
        type: "text",
        options: ["leading", "trailing"],
        doc: '"leading": towards the cut; "trailing": the other.',
      },
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "s sin(a + f) on the leading, s sin(f - a) on the trailing flank; 0 with a note where the set-over is past the flank.",
    },
    failures: [
      {
        when: "the travel is negative",
        formula: '=FLANK.CHIP(-0.1, 29.5, 30, "leading")',
        gives: "#NUM!",
        says: "infeed must be 0 or more",
      },
      { when: "the side is left out", formula: "=FLANK.CHIP(0.1, 29.5, 30)", gives: "#VALUE!", says: "side" },
    ],
    examples: [
      { formula: '=FLANK.CHIP(0.1, 29.5, 30, "trailing")', value: 0.0008727, within: 5e-8 },
      { formula: '=FLANK.CHIP(0.1, 0, 30, "leading")', value: 0.05, source: "straight in: s sin 30 degrees" },
      {
        formula: '=FLANK.CHIP(0.1, 35, 30, "trailing")',
        value: 0,
        source: "past the trailing flank nothing is cut there",
      },
    ],
    source: "geometry",
    compute: (infeed, angle, flank, side) => {
      const value = flankChip(infeed, angle, flank, side);
      if (!isPastFlank(angle, flank, side)) return value;
      return { value, note: `set-over past the ${side} flank: earlier passes cut outside the finished form` };
    },
  }),
  declare({
    name: "FLANK.CORRECTION",
    family: "infeed",
    summary:
      "Slide travel still to go when the diameter reads over what is wanted: (reading - wanted) / (2 cos a).",
    params: [
      {
        name: "reading",
        type: "number",
        unit: "length",
        doc: "What is measured, over wires or direct, above 0.",
      },
      { name: "wanted", type: "number", unit: "length", doc: "What it should be, above 0." },
      setover,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Slide travel; below 0 when the reading is under what is wanted.",
    },
    failures: [
      {
        when: "a reading is not above 0",
        formula: "=FLANK.CORRECTION(0, 12.35, 27)",
        gives: "#NUM!",
        says: "reading must be greater than 0",
      },
      {
        when: "the set-over is outside -90 to 90",
        formula: "=FLANK.CORRECTION(12.46, 12.35, 95)",
        gives: "#NUM!",
        says: "setover",
      },
    ],
    examples: [{ formula: "=FLANK.CORRECTION(12.46, 12.35, 27)", value: 0.0617279, within: 5e-8 }],
    source: "geometry",
    compute: (reading, wanted, angle) => {
      const value = correction(reading, wanted, angle);
      if (value >= 0) return value;
      return {
        value,
        note: "the reading is under what is wanted: a screw is past its size, stop cutting; in a nut read between balls this is the travel still to go",
      };
    },
  }),
  declare({
    name: "FLANK.SIDESTEP",
    family: "infeed",
    summary: "Side step of the top slide, set along the bed, that goes with a cut in: depth x tan f.",
    params: [
      {
        name: "depth",
        type: "number",
        unit: "length",
        doc: "How much deeper the pass goes, radial, 0 or more.",
      },
      {
        name: "flank",
        type: "number",
        unit: "deg",
        doc: "Angle of the flank that the tool moves along: that side then only slides.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "Away from that flank. Round it down, never up." },
    failures: [
      {
        when: "the flank reaches 90 degrees",
        formula: "=FLANK.SIDESTEP(0.1, 90)",
        gives: "#NUM!",
        says: "flank must be from 0 to below 90",
      },
    ],
    examples: [{ formula: "=FLANK.SIDESTEP(0.1, 30)", value: 0.05773503, source: "0.1 tan 30 degrees" }],
    source: "geometry",
    compute: sideStep,
  }),
  declare({
    name: "FLANK.SHARE",
    family: "infeed",
    summary: "Chip on the trailing flank as a share of that on the leading one: sin(t - a) / sin(a + l).",
    params: [setover, included, trailingFlank],
    returns: {
      type: "number",
      unit: "ratio",
      doc: "1: both alike; 0: at the trailing flank, or past it with a note.",
    },
    failures: [
      {
        when: "the leading edge does not cut",
        formula: "=FLANK.SHARE(-30, 60)",
        gives: "#NUM!",
        says: "setover must be greater than -30",
      },
    ],
    examples: [
      { formula: "=FLANK.SHARE(29.5, 60)", value: 0.01012795, source: "sin 0.5 / sin 59.5, reckoned apart" },
      { formula: "=FLANK.SHARE(6, 52, 7)", value: 0.02245705, source: "sin 1 / sin 51, reckoned apart" },
      { formula: "=FLANK.SHARE(0, 60)", value: 1, source: "straight in both flanks take alike" },
    ],
    source: "geometry",
    compute: (angle, both, trailing) => {
      const flanks = splitIncluded(both, trailing);
      const value = trailingShare(angle, flanks);
      if (!isPastFlank(angle, flanks.trailing, "trailing")) return value;
      return {
        value,
        note: "set-over past the trailing flank: earlier passes cut outside the finished form",
      };
    },
  }),
  declare({
    name: "FLANK.FORSHARE",
    family: "infeed",
    summary: "Set-over at which the trailing flank takes a wanted share of the leading flank's chip.",
    params: [
      {
        name: "share",
        type: "number",
        unit: "ratio",
        doc: "Of the leading flank's chip, 0 or more; 0 is single flank, 1 on a symmetric form straight in.",
      },
      included,
      trailingFlank,
    ],
    returns: {
      type: "number",
      unit: "deg",
      doc: "From the line square to the axis; the inverse of FLANK.SHARE.",
    },
    failures: [
      {
        when: "the share is negative",
        formula: "=FLANK.FORSHARE(-0.1, 60)",
        gives: "#NUM!",
        says: "share must be 0 or more",
      },
    ],
    examples: [
      {
        formula: "=FLANK.FORSHARE(0.2, 60)",
        value: 21.0517244,
        source: "atan((sin 30 - 0.2 sin 30)/(cos 30 + 0.2 cos 30)), reckoned apart",
      },
      { formula: "=FLANK.FORSHARE(0.1, 52, 7)", value: 2.7546654, source: "reckoned apart in the same way" },
    ],
    source: "geometry",
    compute: (share, both, trailing) => setoverForShare(share, splitIncluded(both, trailing)),
  }),
];
