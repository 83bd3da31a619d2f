/** DRAW.THREAD and DRAW.WIRES: a thread in its axial plane, and what rests in its grooves. */
import type { LimitPair, ThreadShape } from "../lathe/figure.ts";
import { betweenBalls } from "../thread/balls.ts";
import { NothingFound } from "../thread/failures.ts";
import { veeOf } from "../thread/groove.ts";
import { readThread } from "../thread/read.ts";
import { convertLength, type LengthUnit, type Limits, type Thread } from "../thread/thread.ts";
import { bestWire } from "../thread/wirelimits.ts";
import { overWires, wiresOf } from "../thread/wires.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { designationParam, unitParam, unreadableDesignation } from "./designated.ts";

const noLimits: Limits = { major: {}, pitch: {}, minor: {} };

export const drawThreadFunctions: readonly SheetFunction[] = [
  declare({
    name: "DRAW.THREAD",
    family: "drawing",
    summary:
      "Profile of a thread to scale: diameters, pitch, flanks, root, crest and the zones of its class.",
    params: [designationParam, unitParam],
    returns: { type: "drawing", doc: "As text: the thread, its pitch and its angle." },
    failures: [unreadableDesignation('=DRAW.THREAD("M")')],
    examples: [
      {
        formula: '=DRAW.THREAD("1/2-12 BSW","in")',
        value: "Profile of 1/2 BSW: pitch 0.0833 in, 55°",
        source: "1/12 in; BS 84",
      },
      {
        formula: '=DRAW.THREAD("M10-6g")',
        value: "Profile of M10-6g: pitch 1.5 mm, 60°",
        source: "ISO 261, ISO 68-1",
      },
      {
        formula: '=DRAW.THREAD("S 48x8")',
        value: "Profile of S 48x8: pitch 8 mm, 3° and 30°",
        source: "DIN 513",
      },
    ],
    source: "Standard of the designated thread",
    compute: (designation, unit) => {
      const thread = readThread(designation);
      const shape = shapeOf(thread, unit);
      const own = (value: number) => convertLength(value, thread.unit, unit);
      const screw = thread.member === "external";
      // Crest and root flats are those of the screw; the flats of a nut follow from its diameters.
      const flats = {
        ...(screw && thread.crestFlat !== undefined ? { crestFlat: own(thread.crestFlat) } : {}),
        ...(screw && thread.rootFlat !== undefined ? { rootFlat: own(thread.rootFlat) } : {}),
      };
      const limits = limitsOf(thread);
      const pair = ({ max, min }: LimitPair): LimitPair => ({
        ...(max === undefined ? {} : { max: own(max) }),
        ...(min === undefined ? {} : { min: own(min) }),
      });
      const angles =
        thread.loadFlank === thread.clearanceFlank
          ? `${thread.loadFlank + thread.clearanceFlank}°`
          : `${thread.loadFlank}° and ${thread.clearanceFlank}°`;
      return {
        value: `Profile of ${thread.designation}: pitch ${shown(shape.pitch, unit)}, ${angles}`,
        figure: {
          kind: "thread",
          shape,
          fit: limits === noLimits ? "" : thread.fits[thread.member],
          limits: { major: pair(limits.major), pitch: pair(limits.pitch), minor: pair(limits.minor) },
          ...flats,
          taper: thread.taper,
        },
        ...noteOf(thread),
      };
    },
  }),
  declare({
    name: "DRAW.WIRES",
    family: "drawing",
    summary: "Wires on a screw, or balls in a nut, to scale: where they touch and what is read over them.",
    params: [
      designationParam,
      {
        name: "wire",
        type: "number",
        unit: "length",
        doc: "Diameter of the wires or balls, above 0, in the unit of this drawing.",
      },
      unitParam,
    ],
    returns: {
      type: "drawing",
      doc: "As text: the reading for the middle of the class limits, or for the basic size where none are held.",
    },
    failures: [
      unreadableDesignation('=DRAW.WIRES("M",1)'),
      {
        when: "the wire sinks into the groove",
        formula: '=DRAW.WIRES("M10",0.3)',
        gives: "#NUM!",
        says: "wire must stand above the pitch line",
      },
      {
        when: "the wire is too large to touch the flanks",
        formula: '=DRAW.WIRES("M10",5)',
        gives: "#NUM!",
        says: "wire must be at most",
      },
      {
        when: "the flanks are square to the axis, so that nothing rests on them",
        formula: '=DRAW.WIRES("Sq 1-4",2)',
        gives: "#NUM!",
        says: "included must be above 0",
      },
    ],
    examples: [
      {
        formula: '=DRAW.WIRES("M12x1.75-6g",1)',
        // Middle of the pitch diameter limits 10.679 and 10.829 (ISO 965-2) is 10.754; over the plain 12.2384555 that
        // makes, the lead adds what it adds at 10.863: 0.0018891, to the third decimal.
        value: "Wires of 1 mm on M12-6g: 12.240 mm over three",
        source:
          "ISO 965-2 limits; E + w (1 + cosec 30) - (P/2) cot 30, and the lead's 0.0019 computed independently",
      },
    ],
    source: "geometry; the exact contact is that of WIRE.READING",
    compute: (designation, wire, unit) => {
      const thread = readThread(designation);
      const shape = shapeOf(thread, unit);
      const aim = aimOf(thread);
      const at = convertLength(aim ?? thread.pitchDia, thread.unit, unit);
      const vee = veeOf(shape.pitch, shape.loadFlank + shape.clearanceFlank, shape.clearanceFlank);
      const ball = thread.member === "internal";
      const reading = ball
        ? betweenBalls(at, vee, wire, shape.lead, "exact")
        : overWires(at, wiresOf(vee, wire, shape.lead, "exact"));
      const digits = unit === "mm" ? 3 : 4;
      const what = ball ? "Balls" : "Wires";
      return {
        value: `${what} of ${shown(wire, unit)} ${ball ? "in" : "on"} ${thread.designation}: ${reading.toFixed(digits)} ${unit} ${ball ? "between" : "over three"}`,
        figure: {
          kind: "wires",
          shape: aim === undefined ? shape : aimedShape(thread, shape, aim, unit),
          wire,
          reading,
          at,
          aimed: aim !== undefined,
          best: bestWire(vee),
        },
        ...noteOf(thread),
      };
    },
  }),
];

function shapeOf(thread: Thread, unit: LengthUnit): ThreadShape {
  const own = (value: number) => convertLength(value, thread.unit, unit);
  const { member, form, pitch } = thread;
  const screw = member === "external";
  // What is the root of the one is the crest of the other, unless the form says otherwise.
  const nutRoot = form.nutRootRadius?.(pitch) ?? thread.crestRadius;
  const [root, crest] = screw
    ? [thread.rootRadius, thread.crestRadius]
    : [nutRoot, form.roundRoot ? thread.rootRadius : undefined];
  const minor = screw ? thread.minor.external : thread.minor.internal;
  return {
    designation: thread.designation,
    unit,
    member,
    pitch: own(pitch),
    lead: own(pitch * thread.starts),
    starts: thread.starts,
    hand: thread.hand,
    loadFlank: thread.loadFlank,
    clearanceFlank: thread.clearanceFlank,
    // A nut may be cut deeper than the basic major diameter.
    major: own(screw ? thread.major : Math.max(thread.major, minor + 2 * thread.depth.internal)),
    pitchDia: own(thread.pitchDia),
    minor: own(minor),
    ...(root === undefined ? {} : { rootRadius: own(root) }),
    ...(crest === undefined ? {} : { crestRadius: own(crest) }),
  };
}

/** The thread as it is aimed at, in the middle of its limits; a minor diameter without limits moves with the flanks. */
function aimedShape(thread: Thread, shape: ThreadShape, aim: number, unit: LengthUnit): ThreadShape {
  const { major, minor } = limitsOf(thread);
  const middle = ({ max, min }: LimitPair, otherwise: number) =>
    max === undefined || min === undefined ? otherwise : convertLength((max + min) / 2, thread.unit, unit);
  const moved = convertLength(aim - thread.pitchDia, thread.unit, unit);
  const screw = thread.member === "external";
  return {
    ...shape,
    major: middle(major, shape.major + (screw ? 0 : moved)),
    minor: middle(minor, shape.minor + (screw ? moved : 0)),
  };
}

function limitsOf(thread: Thread): Limits {
  try {
    return thread.limits();
  } catch (error) {
    if (error instanceof NothingFound) return noLimits;
    throw error;
  }
}

/** Middle of the limits of the pitch diameter, where both are held. */
function aimOf(thread: Thread): number | undefined {
  const { max, min } = limitsOf(thread).pitch;
  return max === undefined || min === undefined ? undefined : (max + min) / 2;
}

function noteOf({ note, limitsNote }: Thread): { note?: string } {
  const notes = [note, limitsNote].filter((each) => each !== undefined);
  return notes.length === 0 ? {} : { note: notes.join("; ") };
}

function shown(value: number, unit: LengthUnit): string {
  return `${Number(value.toFixed(unit === "mm" ? 3 : 4))} ${unit}`;
}
