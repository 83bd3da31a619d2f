/** The groove that a tool leaves in any places: area and chip of every pass, what is overcut, what is left. */
import { grooveOf, type NoseShape } from "../lathe/chip-area.ts";
import { cutGroove, deviationFrom, overcutAt } from "../lathe/groove.ts";
import { outlineArea, type Place } from "../lathe/groove-outline.ts";
import { type Block, declare, type Failure, type Param, type SheetFunction } from "./declare.ts";
import { included, noseOrSharp, shape, trailingFlank } from "./toolform.ts";

const placeParams = [
  {
    name: "axial",
    type: "numbers",
    unit: "length",
    doc: "Where the tool stands along the axis at each pass, one a cell; + is the leading side, 0 where it touched off.",
  },
  {
    name: "radial",
    type: "numbers",
    unit: "length",
    doc: "Radial depth of its tip at each pass, as many as axial.",
  },
  included,
  noseOrSharp,
  trailingFlank,
  shape,
] as const satisfies readonly Param[];

/** The form that was wanted, standing where the last pass stands unless its own depth is given. */
const formParams = [
  ...placeParams,
  {
    name: "form_nose",
    type: "number",
    unit: "length",
    optional: true,
    doc: "Nose of the wanted form, of the same shape; left out: as the tool.",
  },
  {
    name: "form_included",
    type: "number",
    unit: "deg",
    optional: true,
    doc: "Included angle of the wanted form; left out: as the tool.",
  },
  {
    name: "form_trailing",
    type: "number",
    unit: "deg",
    optional: true,
    doc: "Trailing flank of the wanted form; left out: half of form_included, or as the tool.",
  },
  {
    name: "form_depth",
    type: "number",
    unit: "length",
    optional: true,
    doc: "Radial depth of the wanted form; left out: that of the last pass.",
  },
] as const satisfies readonly Param[];

/** More passes than anyone winds. */
const MOST_PLACES = 400;

function placesOf(axial: readonly number[], radial: readonly number[]): readonly Place[] {
  if (axial.length !== radial.length) {
    throw new RangeError(
      `axial and radial must hold as many numbers, got ${axial.length} and ${radial.length}`,
    );
  }
  if (axial.length > MOST_PLACES) {
    throw new RangeError(`axial must hold at most ${MOST_PLACES} passes, got ${axial.length}`);
  }
  return axial.map((x, k) => ({ axial: x, radial: radial[k]! }));
}

function deviation(
  axial: readonly number[],
  radial: readonly number[],
  included: number,
  nose: number,
  trailing: number | undefined,
  shape: NoseShape,
  formNose: number | undefined,
  formIncluded: number | undefined,
  formTrailing: number | undefined,
  formDepth: number | undefined,
) {
  const places = placesOf(axial, radial);
  const tool = grooveOf(included, nose, trailing, shape);
  const form = grooveOf(
    formIncluded ?? included,
    formNose ?? nose,
    formTrailing ?? (formIncluded === undefined ? trailing : undefined),
    shape,
  );
  const last = places.at(-1)!;
  const place = { axial: last.axial, radial: formDepth ?? last.radial };
  return deviationFrom(cutGroove(tool, places).at(-1)!.outline, form, place);
}

const failuresOf = (name: string): readonly Failure[] => [
  {
    when: "a place lacks its depth",
    formula: `=${name}({0,0.1}, {1}, 60)`,
    gives: "#NUM!",
    says: "axial and radial must hold as many numbers, got 2 and 1",
  },
  {
    when: "the included angle reaches 180 degrees",
    formula: `=${name}({0}, {1}, 180)`,
    gives: "#NUM!",
    says: "included must be from 0 to below 180",
  },
];

export const grooveFunctions: readonly SheetFunction[] = [
  declare({
    name: "GROOVE.LAYERS",
    family: "infeed",
    summary: "What every pass takes, for a tool in any places: area, chip on each edge, edge that cuts.",
    params: placeParams,
    returns: {
      type: "block",
      doc: "A row for each pass; columns: pass, area, chip on the leading flank, nose and trailing flank, length of the leading flank, nose and trailing flank that cuts.",
    },
    failures: failuresOf("GROOVE.LAYERS"),
    examples: [
      {
        formula: "=INDEX(GROOVE.LAYERS({0,0}, {1,2}, 60), 2, 2)",
        value: 1.7320508,
        source: "a sharp tool from depth 1 to 2: (4 - 1) tan 30 degrees",
      },
      {
        formula: "=INDEX(GROOVE.LAYERS({0,0.1}, {1,1}, 60, 0.2), 2, 3)",
        value: 0.08660254,
        source: "a side step of 0.1: 0.1 cos 30 degrees on the leading flank",
      },
    ],
    source: "geometry",
    compute: (axial, radial, included, nose, trailing, shape): Block =>
      cutGroove(grooveOf(included, nose, trailing, shape), placesOf(axial, radial)).map(
        ({ pass, area, chip, width }) => [
          pass,
          area,
          chip.leading,
          chip.nose,
          chip.trailing,
          width.leading,
          width.nose,
          width.trailing,
        ],
      ),
  }),
  declare({
    name: "GROOVE.AREA",
    family: "infeed",
    summary: "Area of the groove that a tool leaves after passes in any places.",
    params: placeParams,
    returns: { type: "number", unit: "length2", doc: "In the axial plane." },
    failures: failuresOf("GROOVE.AREA"),
    examples: [
      {
        formula: "=GROOVE.AREA({0,0.1}, {1,1}, 60)",
        value: 0.6730201,
        source: "two sharp cuts side by side: tan 30 + 0.1 - 0.1^2/(4 tan 30), by hand",
      },
      {
        formula: "=GROOVE.AREA({0}, {0.92}, 60, 0.19)",
        value: 0.6634693,
        source: "one pass is PASS.AREA(0, 0.92, 60, 0.19)",
      },
    ],
    source: "geometry",
    compute: (axial, radial, included, nose, trailing, shape) =>
      outlineArea(
        cutGroove(grooveOf(included, nose, trailing, shape), placesOf(axial, radial)).at(-1)!.outline,
      ),
  }),
  declare({
    name: "GROOVE.OVERCUT",
    family: "infeed",
    summary: "Axial overcut outside the tool's own form in its last place, at a level below the surface.",
    params: [
      ...placeParams,
      {
        name: "side",
        type: "text",
        options: ["trailing", "leading"],
        fallback: "trailing",
        doc: "Which flank.",
      },
      {
        name: "level",
        type: "number",
        unit: "length",
        fallback: 0,
        doc: "How far below the surface; 0, at it, when left out.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "0 where nothing is overcut." },
    failures: failuresOf("GROOVE.OVERCUT"),
    examples: [
      {
        formula: "=GROOVE.OVERCUT({0.1732051,0.5773503}, {0.3,1}, 40)",
        value: 0.1493661,
        within: 1e-6,
        source: "passes along 30 degrees with a flank of 20: (1 - 0.3)(tan 30 - tan 20)",
      },
      {
        formula: "=GROOVE.OVERCUT({0,0}, {0.3,1}, 40)",
        value: 0,
        source: "straight in nothing is overcut",
      },
    ],
    source: "geometry",
    compute: (axial, radial, included, nose, trailing, shape, side, level) => {
      const places = placesOf(axial, radial);
      const tool = grooveOf(included, nose, trailing, shape);
      return overcutAt(tool, places, tool, places.at(-1)!, side, level);
    },
  }),
  declare({
    name: "GROOVE.OVER",
    family: "infeed",
    summary: "Area that the passes cut outside the wanted form.",
    params: formParams,
    returns: { type: "number", unit: "length2", doc: "In the axial plane; 0 where nothing is overcut." },
    failures: failuresOf("GROOVE.OVER"),
    examples: [
      {
        formula: "=GROOVE.OVER({0}, {1}, 60, 0.2, , , 0)",
        value: 0.2,
        source: "a nose 0.2 wide where the form is sharp, 1 deep: 0.2 x 1",
      },
    ],
    source: "geometry",
    compute: (...given) => deviation(...given).over,
  }),
  declare({
    name: "GROOVE.LEFT",
    family: "infeed",
    summary: "Area of the wanted form that the passes have not cut yet.",
    params: formParams,
    returns: { type: "number", unit: "length2", doc: "In the axial plane; 0 when the form is there." },
    failures: failuresOf("GROOVE.LEFT"),
    examples: [
      {
        formula: "=GROOVE.LEFT({0}, {1}, 60, 0, , , , , , 2)",
        value: 1.7320508,
        source: "a sharp tool stopped at depth 1 of 2: (4 - 1) tan 30 degrees",
      },
    ],
    source: "geometry",
    compute: (...given) => deviation(...given).left,
  }),
];
