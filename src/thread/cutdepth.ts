/**
 * How deep a tool has to go when its nose is not that of the design form. Source: geometry of the axial section.
 *
 * A nose flat of width f, or an arc r that touches both flanks, ends y beyond the pitch line of the groove that it cuts
 * half a pitch wide there. The groove must contain the basic profile, or the mating part fouls it.
 */
import { cos, sin, tan, widthBelowPitchLine } from "./form.ts";
import type { Member, Thread } from "./thread.ts";

export type Nose = "flat" | "radius";

/**
 * Radial depth from the surface of the blank that brings the pitch diameter to `target`, all in the thread's own unit.
 *
 * @param nose width of the flat or radius of the nose, 0 when sharp
 * @param blank outside diameter of the screw's blank, or bore of the nut's; default basic major / basic minor
 * @param target pitch diameter wanted; default basic
 * @throws RangeError when the groove would not contain the basic profile, or the blank has no room for a groove
 */
export function cutDepth(
  thread: Thread,
  nose: number,
  shape: Nose,
  member: Member,
  blank: number = member === "internal" ? thread.minor.internal : thread.major,
  target: number = thread.pitchDia,
): number {
  const { pitch: P, loadFlank: l, clearanceFlank: t } = thread;
  if (!(nose >= 0)) throw new RangeError(`nose must be 0 or more, got ${nose}`);
  if (!(blank > 0)) throw new RangeError(`blank must be greater than 0, got ${blank}`);
  if (!(target > 0)) throw new RangeError(`target must be greater than 0, got ${target}`);
  requireProfile(thread, nose, shape, member);
  const slopes = tan(l) + tan(t);
  const beyondPitchLine =
    slopes < 1e-9
      ? thread.form.dedendum(P)
      : shape === "flat"
        ? (P / 2 - nose) / slopes
        : P / 2 / slopes - nose * (cos((t - l) / 2) / sin((l + t) / 2) - 1);
  const depth = (member === "internal" ? target - blank : blank - target) / 2 + beyondPitchLine;
  if (!(depth > 0))
    throw new RangeError(
      `blank ${blank} ${thread.unit} leaves nothing to cut for a pitch diameter of ${target} ${thread.unit}`,
    );
  return depth;
}

function requireProfile(thread: Thread, nose: number, shape: Nose, member: Member): void {
  const { form, pitch: P, loadFlank: l, clearanceFlank: t } = thread;
  // A nose given with seven digits is the design nose when it differs in the last one only; round roots are printed with four.
  const slack = (form.roundRoot ? 5e-5 : 1e-6) * P;
  const who = `${thread.designation} (${member})`;
  const slopes = tan(l) + tan(t);
  if (slopes < 1e-9) {
    if (shape === "radius" || Math.abs(nose - P / 2) > slack) {
      throw new RangeError(
        `nose must be a flat of half the pitch, ${P / 2} ${thread.unit}, for ${who}, got ${shape} ${nose} ${thread.unit}`,
      );
    }
    return;
  }
  const depth = member === "internal" ? form.addendum(P) : form.dedendum(P);
  const width = widthBelowPitchLine(form, P, depth);
  const bound = shape === "flat" ? width : largestRadius(thread, member, width);
  if (nose > bound + slack) {
    const most = bound < slack ? 0 : Number(bound.toPrecision(7));
    throw new RangeError(
      `nose ${shape} must not be above ${most} ${thread.unit} for ${who}, or the groove does not contain the basic profile, got ${Number(nose.toPrecision(7))} ${thread.unit}`,
    );
  }
}

/** An arc leaves the flanks at or below the corners of the basic root, or is the form's own. */
function largestRadius(
  { form, pitch: P, loadFlank: l, clearanceFlank: t }: Thread,
  member: Member,
  width: number,
): number {
  const own =
    form.roundRoot && (member === "internal" ? (form.nutRootRadius ?? form.crestRadius) : form.rootRadius);
  if (own) return own(P);
  const slopes = tan(l) + tan(t);
  return (width / slopes) * (tan((l + t) / 2) / Math.max(cos(l), cos(t)));
}
