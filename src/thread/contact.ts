/**
 * The exact place of a straight wire in a screw, or of a ball in a screw or a nut, on flanks straight in the axial plane.
 *
 * A flank is the helicoid z = k f + (r - a) T, with f the angle about the axis, k = lead / 2 pi, a the radius of the
 * apex of the vee and T the tangent of the flank angle (below 0 in a nut, whose vee opens inwards). Its normal has the
 * length sqrt(1 + T^2 + (k/r)^2) for 1 along the axis, so a ball of diameter w touching at radius r has its centre
 *
 *   z = (w/2) / sqrt(1 + T^2 + (k/r)^2)   along the axis from the place of contact,
 *   c = sqrt((r + z T)^2 + (z k/r)^2)     from the axis, turned by atan((z k/r) / (r + z T)).
 *
 * What is left is how wide the vee may be: each flank's share of width must be used up. With equal flanks that is one
 * equation in r; with unequal flanks two, because both contacts must want the same c.
 *
 * A wire pushed towards the axis and free to tip comes to rest where the two flanks push on it from one place along its
 * length: otherwise they would turn it. Both normals then start from one point of its axis, which is the centre of a
 * ball of the wire's diameter touching the same flanks; and the wire lies square to both normals. Every normal of such a
 * helicoid has k times as much moment about the axis as it has length along it; so what is square to two of them is
 * square to the radius through that centre too, and the wire comes as near the axis as the ball, no nearer.
 *
 * A straight wire on a nearly square flank and a steep lead may be held off by what it touches further round: that is
 * found in furtherround.ts.
 *
 * Source: geometry; compared with a numerical search and with published figures in the tests.
 */

/** Where a flank is touched and what that asks of the centre. Filled anew for every guess: nothing is allocated. */
interface Touch {
  /** Width that the vee would have to spare on this flank; and how fast that grows with the radius of contact. */
  spare: number;
  spareRate: number;
  /** Square of the distance of the centre from the axis; and how fast it grows with the radius of contact. */
  square: number;
  squareRate: number;
}

const firstTouch: Touch = { spare: 0, spareRate: 0, square: 0, squareRate: 0 };
const secondTouch: Touch = { spare: 0, spareRate: 0, square: 0, squareRate: 0 };

function touchAt(at: Touch, r: number, apex: number, slope: number, k: number, half: number): void {
  const climb = k / r;
  const norm = 1 + slope * slope + climb * climb;
  const along = half / Math.sqrt(norm);
  const alongRate = (along * climb * climb) / (r * norm);
  const out = r + along * slope;
  const outRate = 1 + alongRate * slope;
  const side = along * climb;
  const sideRate = climb * (alongRate - along / r);
  const square = out * out + side * side;
  at.spare = (r - apex) * slope - k * Math.atan2(side, out) - along;
  at.spareRate = slope - (k * (sideRate * out - side * outRate)) / square - alongRate;
  at.square = square;
  at.squareRate = 2 * (out * outRate + side * sideRate);
}

/** Steps after which a search gives up; five are usual. */
const MOST_STEPS = 60;
/** Newton's steps square the error: after one this small, against the radius, only rounding is left. */
const LAST_STEP = 1e-9;

/** What rests in the vee of one thread. */
export interface Seat {
  /** Radius of the apex of the vee. */
  readonly apex: number;
  /** Tangents of the two flank angles, both above 0 for a screw and below 0 for a nut; one of them may be 0. */
  readonly firstSlope: number;
  readonly secondSlope: number;
  readonly lead: number;
  /** Diameter of the wire or ball. */
  readonly diameter: number;
}

export interface Rest {
  /** From the thread axis to the centre of the ball, and to the axis of the wire. */
  readonly radius: number;
  /** Radii at which the flanks are touched. */
  readonly firstContact: number;
  readonly secondContact: number;
}

/**
 * Where a ball, or a straight wire that is free to tip, comes to rest.
 *
 * @throws RangeError when neither does: the lead is too steep for these flanks and this diameter
 */
export function atRest(seat: Seat): Rest {
  const [firstContact, secondContact] = seat.firstSlope === seat.secondSlope ? alike(seat) : unlike(seat);
  // Either search ends with the first touch filled for the place where both flanks want the same centre.
  return { radius: Math.sqrt(firstTouch.square), firstContact, secondContact };
}

function alike({ apex, firstSlope: slope, lead, diameter }: Seat): readonly [number, number] {
  const k = lead / (2 * Math.PI);
  const half = diameter / 2;
  let r = apex + half / (slope * Math.sqrt(1 + slope * slope));
  let settled = false;
  for (let step = 0; step < MOST_STEPS && r > 0; step++) {
    touchAt(firstTouch, r, apex, slope, k, half);
    if (settled) return [r, r];
    const change = firstTouch.spare / firstTouch.spareRate;
    r -= change;
    settled = Math.abs(change) <= LAST_STEP * r;
  }
  throw noRest(lead, diameter);
}

function unlike({ apex, firstSlope, secondSlope, lead, diameter }: Seat): readonly [number, number] {
  const k = lead / (2 * Math.PI);
  const half = diameter / 2;
  // With no lead the centre is where lines parallel to the flanks, half a diameter inside them, cross.
  const firstNorm = Math.sqrt(1 + firstSlope * firstSlope);
  const secondNorm = Math.sqrt(1 + secondSlope * secondSlope);
  const centre = apex + (half * (firstNorm + secondNorm)) / (firstSlope + secondSlope);
  let r1 = centre - (half * firstSlope) / firstNorm;
  let r2 = centre - (half * secondSlope) / secondNorm;
  let settled = false;
  for (let step = 0; step < MOST_STEPS && r1 > 0 && r2 > 0; step++) {
    touchAt(firstTouch, r1, apex, firstSlope, k, half);
    touchAt(secondTouch, r2, apex, secondSlope, k, half);
    const spare = firstTouch.spare + secondTouch.spare;
    const apart = firstTouch.square - secondTouch.square;
    const turn =
      firstTouch.spareRate * secondTouch.squareRate + secondTouch.spareRate * firstTouch.squareRate;
    if (settled) return [r1, r2];
    const change1 = (spare * secondTouch.squareRate + secondTouch.spareRate * apart) / turn;
    const change2 = (spare * firstTouch.squareRate - firstTouch.spareRate * apart) / turn;
    r1 -= change1;
    r2 -= change2;
    settled = Math.abs(change1) <= LAST_STEP * r1 && Math.abs(change2) <= LAST_STEP * r2;
  }
  throw noRest(lead, diameter);
}

/** Steep flanks close on a large ball before it gets between them: it hangs on the edges of the crest. */
function noRest(lead: number, diameter: number): RangeError {
  return new RangeError(
    `lead must be less steep for a diameter of ${diameter} to touch both flanks, got ${lead}`,
  );
}
