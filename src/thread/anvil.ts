/**
 * What a thread micrometer reads, with a cone on one side and a vee on the other, on a thread whose angle is not its own.
 *
 *      cone in the groove             vee over the thread
 *      \____ widest ____/             ____          ____       c   half the angle of cone and vee
 *       \              /                  \        /           a   half the angle of the thread
 *        \____ tip ___/                    \_tip__/
 *
 * Set to nothing with the cone home in the vee, it reads the pitch diameter of a thread of its own angle. On another it
 * touches at one end only: a cone more pointed than the groove with its tip and its vee with the mouth, a blunter one with
 * its widest part and its vee with the bottom. Cone and vee together are then held off by |cot c - cot a| (widest - tip) / 2:
 * such a micrometer never reads low. The lead is left out.
 *
 * Lengths in any one unit, angles in degrees. Equal flanks. Source: geometry in the axial plane.
 */
import { tan } from "./form.ts";
import { requireIncluded, requirePositive } from "./groove.ts";

export interface ThreadMicrometer {
  /** Included angle of cone and vee. */
  readonly angle: number;
  /** Width of the cone's tip, and of the flat at the bottom of the vee: both less than half the pitch. */
  readonly tip: number;
  /** Width of the cone, and of the mouth of the vee, where the flanks in contact end: more than half the pitch. */
  readonly widest: number;
}

/**
 * How much more than the pitch diameter it reads; never below 0.
 *
 * @throws RangeError if an angle, the pitch or a width is out of range
 */
export function heldOffByAngle(
  pitch: number,
  included: number,
  { angle, tip, widest }: ThreadMicrometer,
): number {
  requirePositive("pitch", pitch);
  requireIncluded(included);
  if (!(angle > 0 && angle < 180)) {
    throw new RangeError(`cone_angle must be above 0 and below 180 degrees, got ${angle}`);
  }
  if (!(tip >= 0 && tip < pitch / 2)) {
    throw new RangeError(`tip must be from 0 to below half the pitch ${pitch / 2}, got ${tip}`);
  }
  if (!(widest > pitch / 2 && widest <= pitch)) {
    throw new RangeError(
      `widest must be above half the pitch ${pitch / 2}, not above the pitch, got ${widest}`,
    );
  }
  const ofCone = 1 / tan(angle / 2);
  const ofThread = 1 / tan(included / 2);
  return (Math.abs(ofCone - ofThread) * (widest - tip)) / 2;
}
