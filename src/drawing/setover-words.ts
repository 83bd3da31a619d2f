/** Words of the plan view of the set-over. What is to be set comes first, so that it always finds room. */
import { endPassed, type SetoverFigure } from "../lathe/figure.ts";
import { angle } from "./figures.ts";
import { polar } from "./geometry.ts";
import { widthOf } from "./lettering.ts";
import { type Line, type Plate, type Spot, spots } from "./plate.ts";
import { type At, bedArc, bedLine, crossHalf, type Standing, slide, squareArc } from "./setover-place.ts";

const zeroWords = {
  square: "scale zeroed square",
  bed: "bed scale",
  obtuse: "bed scale, far end",
} as const;

/** Length of lines of the plan view that a word beside it may cross, px; one that would cross more is left out. */
const mostOver = 6;

export function words(plate: Plate, figure: SetoverFigure, place: Standing, at: At, scale: number): void {
  const { setover, reading, mark, flank, flankReading, zeroLine, swing } = figure;
  const { handle, zero, way, axis, jaws, end } = place;
  const { size } = plate;
  const big = 1.6 * size;
  const on = (radius: number, direction: number) => at(polar([0, 0], radius, direction));
  const past = flank !== undefined && setover > flank;
  const warning: Line[] = past
    ? [{ text: `past the flank by ${angle(setover - flank)}`, look: "warn bold" }]
    : [];
  const passed = mark === undefined ? endPassed(figure, reading) : undefined;
  const off: Line[] =
    passed === undefined ? [] : [{ text: `off your scale, ${angle(passed)}`, look: "warn bold" }];
  if (zeroLine !== "square") {
    const block: Line[] = [
      { text: angle(mark ?? reading), look: "set bold", size: big },
      ...(mark === undefined ? [] : [{ text: "mark on your scale", look: "muted" }]),
      ...off,
      { text: `${zeroWords[zeroLine]}${mark === undefined ? "" : ` ${angle(reading)}`}`, look: "muted" },
      ...(flankReading === undefined ? [] : [{ text: `flank ${angle(flankReading)}`, look: "muted" }]),
    ];
    const middle = (zero + handle) / 2;
    const around = [0, 8, -8, 16, -16, 26, -26, 36, -36].map((off) => ({
      at: on(bedArc, middle + off),
      side: sideOf(middle + off),
    }));
    const found = plate.label(block, around, { gap: 5 });
    if (!found) plate.label(block.slice(0, 2), around, { must: true, gap: 3 });
  }
  const fromSquare: Line[] = [
    { text: angle(setover), look: "set bold", size: zeroLine === "square" ? big : 1.3 * size },
    { text: zeroLine === "square" ? "set, from square" : "from square", look: "muted" },
    ...(zeroLine === "square" && mark !== undefined
      ? [{ text: `your mark ${angle(mark)}`, look: "set bold" }]
      : []),
    ...(zeroLine === "square" ? off : []),
    ...(flank === undefined ? [] : [{ text: `flank ${angle(flank)}`, look: "muted" }]),
  ];
  const foot = (90 + handle) / 2;
  const places: Spot[] = [
    { at: on(squareArc, foot), side: "s" },
    { at: on(squareArc, foot), side: "se" },
    { at: on(squareArc, foot), side: "sw" },
    { at: on(squareArc, 90), side: way > 0 ? "sw" : "se" },
    { at: on(squareArc - 8, 90), side: way > 0 ? "w" : "e" },
    { at: on(squareArc - 8, handle), side: way > 0 ? "e" : "w" },
    { at: on(squareArc + 8, handle), side: way > 0 ? "e" : "w" },
    { at: on(squareArc - 34, 90), side: way > 0 ? "w" : "e" },
  ];
  if (!plate.label(fromSquare, places, { gap: 5 }))
    plate.label(fromSquare.slice(0, 2), places, { must: true, gap: 3 });
  if (past) plate.label(warning, places, { must: true });
  cutArrow(plate, figure, place, at);
  plate.label(
    "lathe axis",
    [
      { at: at([end + 24, axis]), side: "nw" },
      { at: at([end + 24, axis]), side: "ne" },
      { at: at([end + 24, axis]), side: "n" },
      { at: at([end + 24, axis]), side: "se" },
      { at: at([end + 24, axis]), side: "sw" },
    ],
    { most: mostOver },
  );
  plate.label(
    swing.split(", ").map((text) => ({ text })),
    [
      { at: on(slide.handle, handle), side: way > 0 ? "ne" : "nw" },
      { at: on(slide.handle + 20, handle), side: way > 0 ? "e" : "w" },
      { at: on(squareArc + 22, handle), side: way > 0 ? "e" : "w" },
      { at: on(slide.back - 10, handle - way * 18), side: way > 0 ? "e" : "w" },
      { at: at([way * 46, 100]), side: way > 0 ? "e" : "w" },
      { at: at([-way * 46, 60]), side: way > 0 ? "w" : "e" },
      { at: at([-way * 46, 20]), side: way > 0 ? "w" : "e" },
    ],
    { gap: 14 * scale },
  );
  if (zeroLine !== "square") {
    const tail = on(bedLine, zero);
    const flush = zero === 0 ? (["nw", "sw", "n", "s"] as const) : (["ne", "se", "n", "s"] as const);
    // Beside the slides, in two lines or as the bare figure where one is too long: never over them.
    const room = (bedLine - crossHalf) * scale - 4;
    const beside = (...lines: readonly string[]) =>
      lines.every((text) => widthOf(text, size) <= room) &&
      plate.label(
        lines.map((text) => ({ text })),
        spots(tail, ...flush),
        { gap: 1, most: mostOver },
      );
    beside("0, along the bed") || beside("0, along", "the bed") || beside("0");
  }
  plate.label("chuck", spots(at([jaws - 35, axis - 60]), "n", "ne", "s"), { gap: 1 });
  plate.label("cross slide", [
    { at: at([-46, place.crossBack - 6]), side: "w" },
    { at: at([46, place.crossBack - 6]), side: "e" },
    { at: at([-46, 100]), side: "w" },
    { at: at([0, place.crossBack]), side: "s" },
  ]);
}

/** Which way the carriage runs while cutting. */
function cutArrow(plate: Plate, { hand }: SetoverFigure, { tip }: Standing, at: At): void {
  const [near, far] = [at([tip[0] + 36, tip[1] + 24]), at([tip[0] + 76, tip[1] + 24])];
  const inward = hand === "right";
  plate.line([near, far], "thin", "cut");
  plate.arrow(inward ? near : far, inward ? 180 : 0);
  plate.label("cut", [
    { at: far, side: "e" },
    { at: near, side: "s" },
  ]);
}

function sideOf(direction: number): Spot["side"] {
  const turn = ((direction % 360) + 360) % 360;
  const sides = ["e", "se", "s", "sw", "w", "nw", "n", "ne"] as const;
  return sides[Math.round(turn / 45) % 8]!;
}

export function saySetover(figure: SetoverFigure): string {
  const { setover, reading, mark, flank, flankReading, zeroLine, hand, member, swing } = figure;
  const parts = [
    `Plan view, headstock left: the top slide set over ${angle(setover)} from the line square to the lathe axis, ${hand}-hand ${member} thread, ${swing}`,
    zeroLine === "square"
      ? "a protractor zeroed square to the bed reads the same"
      : `a protractor zeroed ${zeroLine === "bed" ? "along the bed" : "along the bed from its other end"} reads ${angle(reading)}`,
  ];
  if (mark !== undefined) parts.push(`this lathe's own scale shows ${angle(mark)} there`);
  const end = mark === undefined ? endPassed(figure, reading) : undefined;
  if (end !== undefined)
    parts.push(
      `that is off this lathe's scale, which ${Math.abs(end) === figure.ends?.low ? "begins" : "ends"} at ${angle(end)}`,
    );
  if (flank !== undefined && flankReading !== undefined) {
    parts.push(
      `the flank lies at ${angle(flank)}${zeroLine === "square" ? "" : `, where that scale reads ${angle(flankReading)}`}, not to be set`,
    );
    if (setover > flank) parts.push(`the setting is past the flank by ${angle(setover - flank)}`);
  }
  return `${parts.join("; ")}.`;
}
