/** Change gears by their pitch circles, to scale of their teeth: spindle, studs, leadscrew, and where they mesh. */
import type { TrainFigure } from "../lathe/figure.ts";
import { trimmed } from "./figures.ts";
import { boxOf, fitInto, type Point, polar } from "./geometry.ts";
import { type Drawing, Plate, spots } from "./plate.ts";

interface Wheel {
  readonly teeth: number;
  readonly centre: Point;
  readonly role: string;
  readonly look: string;
  /** Another wheel on the same stud is larger and lies behind. */
  readonly stud: number;
}

/** Gears that may stand between a single pair, and have no say in the lead. */
const idlerRole = "idler, any";

/** Wheels in place: radii in half teeth. `bend` is the angle that the row is bent by at each stud. */
function wheelsOf({ train, box }: TrainFigure, tilt: number, bend: number): Wheel[] {
  const end = box === undefined ? "leadscrew" : "gearbox";
  const wheels: Wheel[] = [];
  const [first] = train[0]!;
  let centre: Point = [0, 0];
  let direction = tilt;
  wheels.push({ teeth: first, centre, role: "spindle", look: "driver", stud: 0 });
  if (train.length === 1) {
    const [a, b] = train[0]!;
    // Any size serves; this one keeps the picture even.
    const between = Math.max(20, Math.round((a + b) / 2.6));
    centre = polar(centre, (a + between) / 2, direction);
    wheels.push({ teeth: between, centre, role: idlerRole, look: "idler", stud: 1 });
    centre = polar(centre, (between + b) / 2, direction + bend);
    wheels.push({ teeth: b, centre, role: end, look: "driven", stud: 2 });
    return wheels;
  }
  train.forEach(([driver, driven], i) => {
    const last = i === train.length - 1;
    centre = polar(centre, (driver + driven) / 2, direction);
    direction += i % 2 === 0 ? bend : -bend;
    wheels.push({ teeth: driven, centre, role: last ? end : "driven", look: "driven", stud: i + 1 });
    if (!last) {
      wheels.push({ teeth: train[i + 1]![0], centre, role: "driver", look: "driver", stud: i + 1 });
    }
  });
  return wheels;
}

/** Wheels on different studs that are not in mesh must not lie over each other. */
function isClear(wheels: readonly Wheel[]): boolean {
  return wheels.every((a, i) =>
    wheels.slice(i + 1).every((b) => {
      if (a.stud === b.stud) return true;
      const apart = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]);
      const inMesh = Math.abs(apart - (a.teeth + b.teeth) / 2) < 1e-6;
      // On neighbouring studs wheels that are not in mesh lie in different planes.
      return inMesh || Math.abs(a.stud - b.stud) === 1 || apart > (a.teeth + b.teeth) / 2 + 2;
    }),
  );
}

function rim(wheels: readonly Wheel[]) {
  return boxOf(
    wheels.flatMap(({ centre, teeth }) =>
      [0, 90, 180, 270].map((turn) => polar(centre, teeth / 2 + 1, turn)),
    ),
  );
}

export function drawTrain(figure: TrainFigure, width: number, height: number): Drawing {
  const plate = new Plate(width, height);
  const { size } = plate;
  const room = { left: 6, right: width - 6, top: 1.6 * size, bottom: height - 3.6 * size };
  const ways = [0, 15, 30, 45, 60, 75, 90].flatMap((tilt) =>
    [0, -25, 25, -50, 50, -75, 75].map((bend) => wheelsOf(figure, tilt, bend)),
  );
  const fitted = ways.filter(isClear).map((wheels) => ({ wheels, fit: fitInto(rim(wheels), room, 3.2) }));
  // Of those that come out as large, the plainest.
  const best = fitted.reduce((a, b) => (b.fit.scale > 1.03 * a.fit.scale ? b : a));
  const { wheels, fit } = best;
  const behindFirst = [...wheels].sort((a, b) => b.teeth - a.teeth);
  for (const wheel of behindFirst) drawWheel(plate, wheel, fit.at(wheel.centre), fit.scale);
  for (const [i, a] of wheels.entries()) {
    for (const b of wheels.slice(i + 1)) {
      if (b.stud !== a.stud + 1 || !meshes(a, b)) continue;
      plate.line([fit.at(a.centre), fit.at(b.centre)], "axis");
    }
  }
  for (const wheel of wheels) name(plate, wheel, fit.at(wheel.centre), fit.scale, wheels);
  plate.label(
    [
      { text: figure.train.map(([a, b]) => `${a}/${b}`).join(" × "), look: "set bold", size: 1.35 * size },
      { text: turns(figure), look: "muted" },
    ],
    spots([6, height - 3], "ne"),
    { gap: 0 },
  ) ||
    plate.label(
      [{ text: figure.train.map(([a, b]) => `${a}/${b}`).join(" × "), look: "set bold" }],
      spots([6, height - 3], "ne"),
      { gap: 0 },
    );
  return plate.done(sayTrain(figure));
}

function turns({ ratio, box }: TrainFigure): string {
  const count = `turns ${trimmed(ratio, 5)} to 1`;
  return box === undefined ? `leadscrew ${count}` : `gearbox at ${box}: its shaft ${count}`;
}

function meshes(a: Wheel, b: Wheel): boolean {
  const apart = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]);
  return Math.abs(apart - (a.teeth + b.teeth) / 2) < 1e-6;
}

function drawWheel(plate: Plate, { teeth, look }: Wheel, centre: Point, scale: number): void {
  const pitch = (teeth / 2) * scale;
  plate.circle(
    centre,
    pitch,
    look === "idler" ? "phantom paper" : `pitch-circle ${look === "driver" ? "chip-2" : "metal"}`,
    `wheel-${teeth}`,
  );
  plate.circle(centre, pitch + Math.min(3, scale), look === "idler" ? "phantom" : "outline open");
  plate.circle(centre, Math.max(2, Math.min(6, 0.12 * pitch)), "outline paper");
}

function name(plate: Plate, wheel: Wheel, centre: Point, scale: number, wheels: readonly Wheel[]): void {
  const { teeth, role, stud } = wheel;
  const pitch = (teeth / 2) * scale;
  const { size } = plate;
  const idler = role === idlerRole;
  const lines = idler
    ? [{ text: role, look: "muted" }]
    : [
        { text: String(teeth), look: "bold", size: 1.25 * size },
        { text: role, look: "muted" },
      ];
  const others = wheels.filter((one) => one.stud === stud && one !== wheel);
  const behind = others.some((one) => one.teeth < teeth);
  const places = [
    // A wheel behind a smaller one is named in the ring that shows.
    ...(behind
      ? [-90, 90, 0, 180, -45, 45].map((turn) => ({
          at: polar(centre, (pitch + (others[0]!.teeth / 2) * scale) / 2, turn),
          side: "over" as const,
        }))
      : []),
    ...spots([centre[0], centre[1] - 3], "n"),
    ...spots([centre[0], centre[1] + 3], "s"),
    ...[-90, 90, -60, 60, 0, 180].map((turn) => ({
      at: polar(centre, 0.55 * pitch, turn),
      side: "over" as const,
    })),
    ...spots(polar(centre, pitch + 2, -90), "n"),
    ...spots(polar(centre, pitch + 2, 90), "s"),
    ...spots(polar(centre, pitch + 2, 0), "e"),
    ...spots(polar(centre, pitch + 2, 180), "w"),
  ];
  if (!plate.label(lines, places)) plate.label(lines.slice(0, 1), places, { must: !idler });
}

export function sayTrain(figure: TrainFigure): string {
  const { train, box } = figure;
  const pairs = train.map(([a, b], i) => {
    const from = i === 0 ? "on the spindle" : `on stud ${i}`;
    const to =
      i === train.length - 1
        ? box === undefined
          ? "on the leadscrew"
          : "on the gearbox"
        : `on stud ${i + 1}`;
    return `${a} teeth ${from} drive ${b} ${to}`;
  });
  const idler = train.length === 1 ? "; any idler may stand between" : "";
  return `Change gears: ${pairs.join(", ")}${idler}; ${turns(figure)} of the spindle.`;
}
