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
 * equation in r; with unequal flanks two, because both contacts must want the same c. The width left over must grow
 * the way the vee opens: the other solution, deep in the bore of a nut, lies behind the metal.
 *
 * A wire pushed towards the axis and free to tip comes to rest where the two flanks push on it from one place along its
 * length: otherwise they would turn it. Both normals then start from one point of its axis, which is the centre of a
 * ball of the wire's diameter touching the same flanks; and the wire lies square to both normals. With equal flanks
 * the wire is no nearer the axis than that ball; with unequal ones it is, by a little.
 *
 * Source: geometry; compared with a numerical search and with published figures in the tests.
 */

/** Where a flank is touched and what that asks of the centre. Filled anew for every guess: nothing is allocated. */
interface Touch {
  /** From the place of contact to the centre along the axis. */
  along: number;
  /** The centre lies at (`out`, `side`) in the plane square to the axis, in the directions outwards and around. */
  out: number;
  side: number;
  /** Width that the vee would have to spare on this flank; and how fast that grows with the radius of contact. */
  spare: number;
  spareRate: number;
  /** Square of the distance of the centre from the axis; and how fast it grows with the radius of contact. */
  square: number;
  squareRate: number;
}

const touch = (): Touch => ({
  along: 0,
  out: 0,
  side: 0,
  spare: 0,
  spareRate: 0,
  square: 0,
  squareRate: 0,
});
const firstTouch = touch();
const secondTouch = touch();

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
  at.along = along;
  at.out = out;
  at.side = side;
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
  /** From the thread axis to the centre of the ball, or to the axis of the wire. */
  readonly radius: number;
  /** Radii at which the flanks are touched. */
  readonly firstContact: number;
  readonly secondContact: number;
}

/** Where a ball comes to rest. @throws RangeError when none does: the lead is too steep for these flanks */
export function ballAtRest(seat: Seat): Rest {
  const [firstContact, secondContact] = contacts(seat);
  return { radius: Math.sqrt(firstTouch.square), firstContact, secondContact };
}

/** Where a straight wire, free to tip, comes to rest. @throws RangeError when none does */
export function wireAtRest(seat: Seat): Rest {
  const [firstContact, secondContact] = contacts(seat);
  const radius = Math.sqrt(firstTouch.square);
  if (seat.firstSlope === seat.secondSlope) return { radius, firstContact, secondContact };
  // Normals seen from the centre, outwards, around and along; the second flank is the first turned over.
  const { out: o1, side: s1, along: z1 } = firstTouch;
  const { out: o2, side: s2, along: z2 } = secondTouch;
  const x1 = (o1 * firstContact) / radius - radius;
  const y1 = (-s1 * firstContact) / radius;
  const x2 = (o2 * secondContact) / radius - radius;
  const y2 = (s2 * secondContact) / radius;
  // The wire lies along their cross product; its axis passes the thread axis as near as its part square to that says.
  const wireOut = -y1 * z2 - z1 * y2;
  const wireAround = z1 * x2 + x1 * z2;
  const lean = wireOut / wireAround;
  return { radius: radius / Math.sqrt(1 + lean * lean), firstContact, secondContact };
}

/** Radii of contact; leaves both touches filled for them. */
function contacts(seat: Seat): readonly [number, number] {
  const { firstSlope, secondSlope } = seat;
  return firstSlope === secondSlope ? alike(seat) : unlike(seat);
}

function alike({ apex, firstSlope: slope, lead, diameter }: Seat): readonly [number, number] {
  const k = lead / (2 * Math.PI);
  const half = diameter / 2;
  let r = apex + half / (slope * Math.hypot(1, slope));
  let settled = false;
  for (let step = 0; step < MOST_STEPS && r > 0; step++) {
    touchAt(firstTouch, r, apex, slope, k, half);
    if (settled && firstTouch.spareRate * slope > 0) return [r, r];
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
  const firstNorm = Math.hypot(1, firstSlope);
  const secondNorm = Math.hypot(1, secondSlope);
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
    if (settled && turn * (firstSlope + secondSlope) > 0) return [r1, r2];
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
