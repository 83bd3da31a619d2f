/**
 * The shape of a thread, apart from its size: how the pitch gives flanks, depths, root and crest.
 *
 *        |<------- P ------->|
 *      ___                 ___     major     ^ addendum
 *     /   \               /   \              |
 *    /-----\-------------/-----\   pitch     v ^ dedendum
 *   /       \___________/       \  minor       v
 *
 * A form with flanks a and b has a fundamental triangle of height H = P/(tan a + tan b). Radial lengths in the unit of
 * the pitch; angles in degrees from the line square to the axis.
 */
import type { Member } from "./thread.ts";

/** A length that the pitch decides. */
export type OfPitch = (P: number) => number;

export interface Form {
  readonly name: string;
  readonly loadFlank: number;
  readonly clearanceFlank: number;
  /** From the pitch line out to the basic major and in to the basic minor diameter, radially. */
  readonly addendum: OfPitch;
  readonly dedendum: OfPitch;
  /** Radial depth of the design form. */
  readonly depth: Readonly<Record<Member, OfPitch>>;
  readonly rootRadius?: OfPitch;
  readonly rootFlat?: OfPitch;
  readonly crestFlat?: OfPitch;
  readonly crestRadius?: OfPitch;
  /** The basic profile itself has a rounded root, which a tool's nose must not exceed. */
  readonly roundRoot?: true;
  /** Root radius of the nut, where it is not that of the screw's crest. */
  readonly nutRootRadius?: OfPitch;
}

/** k pitches. */
export const times =
  (k: number): OfPitch =>
  (P) =>
    k * P;

const degree = Math.PI / 180;

/** tan of degrees. */
export const tan = (angle: number): number => Math.tan(angle * degree);
/** sin of degrees. */
export const sin = (angle: number): number => Math.sin(angle * degree);
/** cos of degrees. */
export const cos = (angle: number): number => Math.cos(angle * degree);

/** H of a 60-degree thread of pitch 1. */
const H60 = Math.sqrt(3) / 2;

const basic60 = {
  loadFlank: 30,
  clearanceFlank: 30,
  addendum: times((3 / 8) * H60),
  dedendum: times(H60 / 4),
};

/** ISO metric screw, rounded root R = H/6 and depth 17H/24; nut 5H/8. Source: ISO 68-1, DIN 13-1. */
export const isoForm: Form = {
  ...basic60,
  name: "ISO metric",
  depth: { external: times((17 / 24) * H60), internal: times((5 / 8) * H60) },
  rootRadius: times(H60 / 6),
  rootFlat: times(1 / 4),
  crestFlat: times(1 / 8),
};

/** Large root radius of MJ and UNJ, in P: 5H/24 at most, and the least. Source: ISO 5855-1, ASME B1.15, from memory. */
export const largeRoot = { most: (5 / 24) * H60, least: 0.15011 } as const;

/** Flats of P/8 on crest and root of screw and nut, depth 3H/4. Source: handbook proportions of the American National form. */
export const americanForm: Form = {
  ...basic60,
  name: "American National",
  dedendum: times((3 / 8) * H60),
  depth: { external: times((3 / 4) * H60), internal: times((3 / 4) * H60) },
  rootFlat: times(1 / 8),
  crestFlat: times(1 / 8),
};

/**
 * Sharp V, 60 degrees without flats, depth H = 0.866025 P. Source: handbook proportions, as in the wire formula
 * M = D - 1.732 P + 3 w for it.
 */
export const sharpForm: Form = {
  ...basic60,
  name: "sharp V",
  addendum: times(H60 / 2),
  dedendum: times(H60 / 2),
  depth: { external: times(H60), internal: times(H60) },
  rootFlat: times(0),
  crestFlat: times(0),
};

/** Unified screw with the flat root of P/4, depth 5H/8. Source: ASME B1.1. */
export const unifiedForm: Form = {
  ...basic60,
  name: "Unified",
  depth: { external: times((5 / 8) * H60), internal: times((5 / 8) * H60) },
  rootFlat: times(1 / 4),
  crestFlat: times(1 / 8),
};

const whitworthH = 1 / (2 * tan(27.5));
const whitworthDepth = times((2 / 3) * whitworthH);

/** Whitworth, 55 degrees: a sixth of H is rounded off crest and root. Source: BS 84. */
export const whitworthForm: Form = {
  name: "Whitworth",
  loadFlank: 27.5,
  clearanceFlank: 27.5,
  addendum: times(whitworthH / 3),
  dedendum: times(whitworthH / 3),
  depth: { external: whitworthDepth, internal: whitworthDepth },
  rootRadius: times(tangentRadius(whitworthH / 6, 27.5)),
  crestRadius: times(tangentRadius(whitworthH / 6, 27.5)),
  roundRoot: true,
};

/** Radius that touches both flanks of half angle `a` and stands `truncation` off the sharp corner. */
export function tangentRadius(truncation: number, a: number): number {
  return truncation / (1 / sin(a) - 1);
}

/** Width of a groove of this form at its pitch line less what the flanks close up over `depth` below it. */
export function widthBelowPitchLine(form: Form, P: number, depth: number): number {
  return P / 2 - depth * (tan(form.loadFlank) + tan(form.clearanceFlank));
}
