/**
 * The tool: the flank to grind when the top face has rake, side clearance, and what a tool off centre cuts.
 *
 * In the section square to the axis the work is a circle of radius R (screw: the outside, R = blank / 2; nut: the bore)
 * and the groove reaches radius r. A top face with rake g leaves the tip at r and meets R at a distance s along the
 * face; on the way it turns through the angle q about the axis, in which the helix advances lead q / (2 pi). Angles in
 * degrees, lengths in any one unit. Source: geometry.
 */
import { degrees, finite, radians, requireAbove, requireFlank, requireWithin, tan } from "./bounds.ts";
import type { Side } from "./infeed.ts";
import type { Member } from "./setover.ts";

/**
 * Flank angle to grind from the tool's centre line, measured in the plane of the raked top face: right at root and
 * crest, a hair off between them.
 *
 * @param flank wanted in the axial plane, 0 to below 90
 * @param rake between -90 and 90, positive falls away from the edge
 * @param depth radial, above 0; less than the radius of a screw's blank
 * @param blankDia outside diameter of the screw's blank, bore of the nut's
 * @param lead 0 leaves the helix out
 * @throws RangeError outside those ranges, or when the top face does not reach the bore
 */
export function flankForRake(
  flank: number,
  rake: number,
  depth: number,
  blankDia: number,
  member: Member = "external",
  lead = 0,
  side: Side = "leading",
): number {
  requireFlank("flank", flank);
  const { face, advance } = raked(rake, depth, blankDia, member, lead);
  const width = depth * tan(flank) + (side === "leading" ? -advance : advance);
  return finite("flank", degrees(Math.atan(width / face)));
}

/**
 * Flank angle that an edge really cuts, measured in the axial plane: the other way round from flankForRake.
 *
 * @param ground flank angle as ground, from the tool's centre line in the plane of the raked top face, 0 to below 90
 * @throws RangeError as flankForRake, or when the helix leaves no flank
 */
export function flankCut(
  ground: number,
  rake: number,
  depth: number,
  blankDia: number,
  member: Member = "external",
  lead = 0,
  side: Side = "leading",
): number {
  requireFlank("ground", ground);
  const { face, advance } = raked(rake, depth, blankDia, member, lead);
  const width = face * tan(ground) + (side === "leading" ? advance : -advance);
  return finite("flank", degrees(Math.atan(width / depth)));
}

/** Length of the raked top face, and how far the helix advances while the edge turns through it. */
function raked(
  rake: number,
  depth: number,
  blankDia: number,
  member: Member,
  lead: number,
): { face: number; advance: number } {
  if (!(rake > -90 && rake < 90))
    throw new RangeError(`rake must be between -90 and 90 degrees, got ${rake}`);
  requireWithin("lead", lead, 0);
  const { face, turn } = topFace(radians(rake), depth, blankDia, member);
  if (!(face > 0)) throw new RangeError(`depth ${depth} is too small beside a blank of ${blankDia}`);
  return { face, advance: (lead * turn) / (2 * Math.PI) };
}

/** Length of the raked top face from root to surface, and the angle about the axis (radians) that it spans. */
function topFace(g: number, depth: number, blankDia: number, member: Member): { face: number; turn: number } {
  const surface = blankDia / 2;
  if (member === "external") {
    const root = rootRadius(depth, blankDia);
    const face = -root * Math.cos(g) + Math.sqrt(surface ** 2 - (root * Math.sin(g)) ** 2);
    return { face, turn: Math.asin((face * Math.sin(g)) / surface) };
  }
  requireAbove("depth", depth);
  requireAbove("blank_dia", blankDia);
  const root = surface + depth;
  const under = surface ** 2 - (root * Math.sin(g)) ** 2;
  if (under < 0) {
    const most = degrees(Math.asin(surface / root));
    throw new RangeError(
      `rake must be at most ${most.toFixed(2)} degrees to reach this bore, got ${degrees(g)}`,
    );
  }
  const face = root * Math.cos(g) - Math.sqrt(under);
  return { face, turn: Math.asin((face * Math.sin(g)) / surface) };
}

/** Radius at the root of a screw. @throws RangeError if nothing is left */
function rootRadius(depth: number, blankDia: number): number {
  requireAbove("depth", depth);
  requireAbove("blank_dia", blankDia);
  if (!(depth < blankDia / 2)) {
    throw new RangeError(`depth must be less than half the blank ${blankDia / 2}, got ${depth}`);
  }
  return blankDia / 2 - depth;
}

/**
 * Side clearance under an edge, from the vertical: relief plus the helix angle on the leading side, less it on the
 * trailing side. Below 0 the side leans the other way.
 *
 * @param lead 0 or more
 * @param diameter above 0: the minor diameter for the leading side, the major for the trailing one
 * @param relief clearance wanted beside the helix, 0 to below 90
 * @throws RangeError outside those ranges
 */
export function sideClearance(lead: number, diameter: number, side: Side = "leading", relief = 3): number {
  requireWithin("lead", lead, 0);
  requireAbove("diameter", diameter);
  requireFlank("relief", relief);
  const helix = degrees(Math.atan(lead / (Math.PI * diameter)));
  return side === "leading" ? relief + helix : relief - helix;
}

/**
 * Flank angle really cut by a flat-topped tool that stands above or below centre.
 *
 * @param heightError above or below, either sign; no more than the radius left at the root
 * @throws RangeError outside those ranges
 */
export function offCentreFlank(flank: number, depth: number, blankDia: number, heightError: number): number {
  requireFlank("flank", flank);
  const root = rootRadius(depth, blankDia);
  requireWithin("height_error", heightError, -root, root);
  const surface = blankDia / 2;
  const reach = Math.sqrt(surface ** 2 - heightError ** 2) - Math.sqrt(root ** 2 - heightError ** 2);
  return finite("flank", degrees(Math.atan((tan(flank) * reach) / depth)));
}

/**
 * Radial depth really reached by a tool that stands above or below centre, touched off on the blank and fed in by
 * `infeed`: it meets the work on the far side of the radius, and leaves the root too large.
 *
 * @param infeed radial, above 0, less than the radius of the blank
 * @param heightError above or below, either sign; less than the radius of the blank
 * @throws RangeError outside those ranges, or when the tool passes the middle of the work
 */
export function depthOffCentre(infeed: number, blankDia: number, heightError: number): number {
  rootRadius(infeed, blankDia);
  const surface = blankDia / 2;
  if (!(Math.abs(heightError) < surface)) {
    throw new RangeError(`height_error must be between -${surface} and ${surface}, got ${heightError}`);
  }
  const touched = finite("blank_dia", Math.sqrt((surface - heightError) * (surface + heightError)));
  const rest = touched - infeed;
  if (!(rest >= 0)) throw new RangeError(`infeed must be at most ${touched}, got ${infeed}`);
  return surface - Math.hypot(rest, heightError);
}
