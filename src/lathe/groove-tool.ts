/**
 * The profile that a ground tool leaves in the axial plane: its flanks as ground, its nose, and what top rake does.
 *
 * On a raked top face the profile is spread out along the face; in the axial plane it is shorter, and every point of the
 * edge meets the helix a little earlier or later. Both flanks come right at root and surface and bend a hair between
 * them. A flat nose keeps its width. A round nose becomes blunter: radius / cos rake where the root is deepest. Angles in
 * degrees, lengths in any one unit. Source: geometry.
 */
import { cos, requireWithin } from "./bounds.ts";
import type { Groove, NoseShape } from "./chip-area.ts";
import type { Member } from "./setover.ts";
import { flankCut } from "./tool.ts";

export interface GroundTool {
  /** Flank angles from the tool's centre line, measured in the plane of its top face, 0 to below 90. */
  readonly leading: number;
  readonly trailing: number;
  /** Width of a flat nose or radius of a round one, as ground; 0 is a sharp point. */
  readonly nose: number;
  readonly shape: NoseShape;
  /** Between -90 and 90, positive falls away from the edge. */
  readonly rake: number;
}

/**
 * @param depth radial, and blankDia the outside of a screw's blank or the bore of a nut's: where the flanks come right
 * @param lead 0 leaves the helix out
 * @throws RangeError outside those ranges, or when the top face does not reach the bore
 */
export function axialTool(
  tool: GroundTool,
  depth: number,
  blankDia: number,
  member: Member = "external",
  lead = 0,
): Groove {
  const { nose, shape, rake } = tool;
  requireWithin("nose", nose, 0);
  const flank = (side: "leading" | "trailing") =>
    flankCut(tool[side], rake, depth, blankDia, member, lead, side);
  return {
    leading: flank("leading"),
    trailing: flank("trailing"),
    nose: shape === "radius" ? nose / cos(rake) : nose,
    shape,
  };
}
