/**
 * A thread in its axial plane as points: axial place to the right, radius upwards, in the thread's own unit.
 *
 * Flanks pass through the pitch line where the groove is half a pitch wide, groove 0 in the middle of pitch 0. Corners of
 * root and crest are rounded with the form's own radii, as far as the straight parts allow.
 */
import type { ThreadShape } from "../lathe/figure.ts";

/** Axial place and radius. */
export type Place = readonly [x: number, r: number];

/** Where groove and crest end: half widths on the side of the first flank (left) and of the second (right). */
export interface FormLines {
  readonly left: number;
  readonly right: number;
  /** Radii of the bottom of the groove and of the crest, whichever is nearer the axis. */
  readonly bottom: number;
  readonly crest: number;
  readonly pitchRadius: number;
  /** 1 when the groove opens outwards (screw), -1 when it opens towards the axis (nut). */
  readonly opens: 1 | -1;
}

const tangent = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

export function formLines(shape: ThreadShape): FormLines {
  const { loadFlank, clearanceFlank, major, minor, pitchDia, member } = shape;
  const screw = member === "external";
  return {
    left: loadFlank,
    right: clearanceFlank,
    bottom: (screw ? minor : major) / 2,
    crest: (screw ? major : minor) / 2,
    pitchRadius: pitchDia / 2,
    opens: screw ? 1 : -1,
  };
}

/** Half width of the groove at a radius, on the left and on the right of its middle line. */
export function grooveSides(shape: ThreadShape, radius: number): { left: number; right: number } {
  const { left, right, pitchRadius, opens } = formLines(shape);
  const above = opens * (radius - pitchRadius);
  return {
    left: shape.pitch / 4 + above * tangent(left),
    right: shape.pitch / 4 + above * tangent(right),
  };
}

/**
 * Surface of the thread from axial place `from` to `to`, in pitches; groove k has its middle at k.
 */
export function surface(shape: ThreadShape, from: number, to: number): Place[] {
  const { bottom, crest } = formLines(shape);
  const { pitch } = shape;
  const low = grooveSides(shape, bottom);
  const high = grooveSides(shape, crest);
  const corners: { at: Place; radius: number }[] = [];
  const first = Math.floor(from) - 1;
  const last = Math.ceil(to) + 1;
  for (let k = first; k <= last; k++) {
    const x = k * pitch;
    corners.push(
      { at: [x - high.left, crest], radius: shape.crestRadius ?? 0 },
      { at: [x - low.left, bottom], radius: shape.rootRadius ?? 0 },
      { at: [x + low.right, bottom], radius: shape.rootRadius ?? 0 },
      { at: [x + high.right, crest], radius: shape.crestRadius ?? 0 },
    );
  }
  return clipped(rounded(corners), from * pitch, to * pitch);
}

/** Corners replaced by arcs that touch both sides, no larger than half of either side leaves room for. */
function rounded(corners: readonly { readonly at: Place; readonly radius: number }[]): Place[] {
  const points: Place[] = [];
  for (let i = 0; i < corners.length; i++) {
    const { at, radius } = corners[i]!;
    const before = corners[i - 1]?.at;
    const after = corners[i + 1]?.at;
    if (!before || !after || radius <= 0) {
      points.push(at);
      continue;
    }
    const [ux, uy, u] = unit(at, before);
    const [vx, vy, v] = unit(at, after);
    const half = Math.acos(Math.max(-1, Math.min(1, ux * vx + uy * vy))) / 2;
    // A flank has a corner at both of its ends, a root or crest has two.
    const most = Math.min(u, v) / 2;
    const reach = Math.min(radius / Math.tan(half), most);
    const r = reach * Math.tan(half);
    if (!(r > 0) || !Number.isFinite(r)) {
      points.push(at);
      continue;
    }
    const centre = r / Math.sin(half);
    const [bx, by] = [ux + vx, uy + vy];
    const b = Math.hypot(bx, by);
    const c: Place = [at[0] + (bx / b) * centre, at[1] + (by / b) * centre];
    const start = Math.atan2(at[1] + uy * reach - c[1], at[0] + ux * reach - c[0]);
    let end = Math.atan2(at[1] + vy * reach - c[1], at[0] + vx * reach - c[0]);
    if (end - start > Math.PI) end -= 2 * Math.PI;
    if (end - start < -Math.PI) end += 2 * Math.PI;
    for (let step = 0; step <= 10; step++) {
      const turn = start + ((end - start) * step) / 10;
      points.push([c[0] + r * Math.cos(turn), c[1] + r * Math.sin(turn)]);
    }
  }
  return points;
}

function unit(from: Place, to: Place): readonly [number, number, number] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length, length];
}

/** The part of a line that grows in x between two places. */
function clipped(points: readonly Place[], from: number, to: number): Place[] {
  const found: Place[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!];
    if (b[0] < from || a[0] > to) continue;
    const cut = (x: number): Place =>
      b[0] === a[0] ? [x, a[1]] : [x, a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0])];
    if (found.length === 0) found.push(a[0] < from ? cut(from) : a);
    found.push(b[0] > to ? cut(to) : b);
    if (b[0] > to) break;
  }
  return found;
}
