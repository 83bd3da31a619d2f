/**
 * Chip area: what a tool with a given nose takes out of the axial plane down to a depth d, and back from area to depth.
 *
 *        \         |         /     l, t  leading and trailing flank angle, from the line square to the axis
 *         \  l     |     t  /      f     width of a flat nose: A = f d + d^2 (tan l + tan t) / 2
 *          \       |       /       r     radius of a round nose: on each flank a sector of the circle down to where
 *           \_____ f _____/              the flank touches it, r (1 - sin g) above the tip, then the straight flank
 *
 * All passes lie on one helix, so the area of a pass is the difference of two such areas, as long as the set-over is
 * not above the trailing flank. Lengths in any one unit, areas in its square, angles in degrees. Source: geometry.
 */
import { finite, radians, requireWithin, tan } from "./bounds.ts";
import { type Flanks, splitIncluded } from "./form.ts";

export type NoseShape = "flat" | "radius";

/** The groove that a tool leaves. */
export interface Groove extends Flanks {
  /** Width of a flat nose or radius of a round one; 0 is a sharp point. */
  readonly nose: number;
  readonly shape: NoseShape;
}

/**
 * @param included included angle, 0 to below 180
 * @param nose 0 or more
 * @param trailing trailing flank angle; half the included angle when left out
 * @throws RangeError outside those ranges, or for a sharp point between square flanks, which has no width
 */
export function grooveOf(
  included: number,
  nose: number,
  trailing?: number,
  shape: NoseShape = "flat",
): Groove {
  requireWithin("nose", nose, 0);
  const flanks = splitIncluded(included, trailing);
  if (included === 0 && nose === 0) {
    throw new RangeError("nose must be greater than 0 when the included angle is 0, got 0");
  }
  return { ...flanks, nose, shape };
}

/**
 * Area of the groove cut to `depth`.
 *
 * @throws RangeError if the depth is negative
 */
export function grooveArea(depth: number, groove: Groove): number {
  requireWithin("depth", depth, 0);
  if (isFlat(groove)) {
    const { nose, leading, trailing } = groove;
    return finite("area", nose * depth + (depth * depth * (tan(leading) + tan(trailing))) / 2);
  }
  const { nose: r, leading, trailing } = groove;
  return finite("area", roundSide(depth, r, leading).area + roundSide(depth, r, trailing).area);
}

/**
 * Depth at which the groove has taken `area`: the exact inverse of grooveArea.
 *
 * @throws RangeError if the area is negative
 */
export function depthForArea(area: number, groove: Groove): number {
  requireWithin("area", area, 0);
  if (area === 0) return 0;
  const { leading, trailing, nose } = groove;
  const spread = tan(leading) + tan(trailing);
  if (isFlat(groove)) return straightDepth(area, nose, spread);
  // From the shallower to the deeper point of contact one flank is straight and the other still round.
  const allStraight = Math.max(contactDepth(nose, leading), contactDepth(nose, trailing));
  const taken = grooveArea(allStraight, groove);
  if (area < taken) return circularDepth(area, allStraight, groove);
  return allStraight + straightDepth(area - taken, grooveWidth(allStraight, groove), spread);
}

/** Width of the groove at the surface when it is `depth` deep: what the next bit of depth removes. */
function grooveWidth(depth: number, { nose: r, leading, trailing }: Groove): number {
  return roundSide(depth, r, leading).width + roundSide(depth, r, trailing).width;
}

function isFlat({ nose, shape }: Groove): boolean {
  return shape === "flat" || nose === 0;
}

/** Depth w of a trapezium of `area` that is `width` wide at its bottom. Written so that nothing cancels. */
function straightDepth(area: number, width: number, spread: number): number {
  return finite("depth", (2 * area) / (width + Math.sqrt(width * width + 2 * area * spread)));
}

/** Depth at which the flank touches the circle. */
function contactDepth(r: number, flank: number): number {
  return r * (1 - Math.sin(radians(flank)));
}

/** One half of a round-nosed groove: its area, and its width at the surface. */
function roundSide(depth: number, r: number, flank: number): { area: number; width: number } {
  const contact = contactDepth(r, flank);
  if (depth <= contact) {
    const angle = 2 * Math.asin(Math.sqrt(depth / (2 * r)));
    return { area: (r * r * segment(2 * angle)) / 4, width: Math.sqrt(depth * (2 * r - depth)) };
  }
  const angle = radians(90 - flank);
  const beyond = depth - contact;
  const touch = r * Math.cos(radians(flank));
  return {
    area: (r * r * segment(2 * angle)) / 4 + beyond * touch + (beyond * beyond * tan(flank)) / 2,
    width: touch + beyond * tan(flank),
  };
}

/** x - sin x, kept exact for small x where the difference would lose its digits. */
function segment(x: number): number {
  if (x > 0.5) return x - Math.sin(x);
  let term = x ** 3 / 6;
  let sum = term;
  for (let k = 4; k <= 16; k += 2) {
    term *= -(x * x) / (k * (k + 1));
    sum += term;
  }
  return sum;
}

/**
 * Inside the rounded part area has no closed inverse. Its slope is the width of the groove, which only grows, so
 * Newton's steps from above run down to the root; the bracket catches the rounding at the end.
 */
function circularDepth(area: number, above: number, groove: Groove): number {
  let low = 0;
  let high = above;
  let depth = above;
  for (let step = 0; step < 200; step++) {
    const over = grooveArea(depth, groove) - area;
    if (over > 0) high = depth;
    else low = depth;
    let next = depth - over / grooveWidth(depth, groove);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === depth || Math.abs(next - depth) <= 1e-15 * depth) return next;
    depth = next;
  }
  return depth;
}
