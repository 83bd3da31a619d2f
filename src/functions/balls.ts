/** BALL.*: a nut over balls, or with a T-probe. */
import { type Balls, nutPitchDiameterFrom, overBalls } from "../thread/balls.ts";
import { veeOf } from "../thread/groove.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { included, lead, method, pitch, pitchDia, trailingFlank } from "./measured.ts";

const ball = {
  name: "ball",
  type: "number",
  unit: "length",
  doc: "Diameter of the balls, above 0.",
} as const satisfies Param;
const faces = {
  name: "faces",
  type: "text",
  options: ["inner", "centres", "outer"],
  fallback: "inner",
  doc: "Between the inner faces of the balls, their centres, or over their outer faces as a T-probe touches.",
} as const satisfies Param;

/** A groove and the balls in it, in the order of the arguments; `ballsGiven` makes of them what is measured. */
const grooveAndBalls = [pitch, ball, included, lead, method, trailingFlank, faces] as const;

function ballsGiven(
  axialPitch: number,
  diameter: number,
  angle: number,
  advance: number | undefined,
  how: Balls["method"],
  trailing: number | undefined,
  between: Balls["faces"],
): Balls {
  return {
    vee: veeOf(axialPitch, angle, trailing),
    ball: diameter,
    lead: advance ?? axialPitch,
    method: how,
    faces: between,
  };
}

const source = "geometry of a sphere on two helicoids";

export const ballFunctions: readonly SheetFunction[] = [
  declare({
    name: "BALL.READING",
    family: "measure",
    summary: "Distance between the inner faces of three balls in a nut.",
    params: [pitchDia, ...grooveAndBalls],
    returns: {
      type: "number",
      unit: "length",
      doc: "Square to the axis, two balls on one side and one opposite, or the ball of a T-probe moved across.",
    },
    failures: [
      {
        when: "the ball sinks into the groove",
        formula: "=BALL.READING(18.376, 2.5, 0.5, 60)",
        gives: "#NUM!",
        says: "ball must stand out of the pitch line",
      },
      {
        when: "the ball is too large for the groove",
        formula: "=BALL.READING(18.376, 2.5, 3, 60)",
        gives: "#NUM!",
        says: "ball must be at most 2.886751",
      },
    ],
    examples: [
      { formula: "=BALL.READING(18.376, 2.5, 1.5, 60)", value: 16.0388433 },
      { formula: '=BALL.READING(18.376, 2.5, 1.5, 60, 2.5, "normal")', value: 16.0389545 },
      { formula: '=BALL.READING(18.376, 2.5, 1.5, 60, 2.5, "plain")', value: 16.0410635 },
      { formula: '=BALL.READING(18.376, 2.5, 1.5, 60, , , , "outer")', value: 19.0388433 },
    ],
    source,
    compute: (diameter, ...given) => overBalls(diameter, ballsGiven(...given)),
  }),
  declare({
    name: "BALL.PITCHDIA",
    family: "measure",
    summary: "Pitch diameter of a nut from a reading between or over balls.",
    params: [
      { name: "reading", type: "number", unit: "length", doc: "Between or over the balls, above 0." },
      ...grooveAndBalls,
    ],
    returns: { type: "number", unit: "length", doc: "Pitch (effective) diameter of the nut." },
    failures: [
      {
        when: "the reading is less than balls on a thread could give",
        formula: '=BALL.PITCHDIA(1, 2.5, 1.5, 60, , , , "outer")',
        gives: "#NUM!",
        says: "reading must be that of a pitch diameter above 0",
      },
      {
        when: "the ball sinks into the groove",
        formula: "=BALL.PITCHDIA(18, 2.5, 0.5, 60)",
        gives: "#NUM!",
        says: "ball must stand out of the pitch line",
      },
    ],
    examples: [
      { formula: "=BALL.PITCHDIA(16.0388433, 2.5, 1.5, 60)", value: 18.376 },
      { formula: '=BALL.PITCHDIA(19.0388433, 2.5, 1.5, 60, , , , "outer")', value: 18.376 },
    ],
    source,
    compute: (reading, ...given) => nutPitchDiameterFrom(reading, ballsGiven(...given)),
  }),
];
