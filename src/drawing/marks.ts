/** Dial of the thread indicator with the marks on which the half nuts may be closed. */
import type { MarksFigure } from "../lathe/figure.ts";
import { type Point, polar } from "./geometry.ts";
import { type Drawing, Plate, spots } from "./plate.ts";

export function drawMarks(figure: MarksFigure, width: number, height: number): Drawing {
  const plate = new Plate(width, height);
  const { size } = plate;
  const { usable, marks } = figure;
  const good = new Set(usable);
  const foot = 2.9 * size;
  const outside = 2.6 * size;
  const radius = Math.max(14, Math.min(width / 2 - outside, (height - foot - 1.6 * size) / 2 - 1.5 * size));
  const centre: Point = [width / 2, 1.6 * size + 1.5 * size + radius];
  plate.circle(centre, radius, "outline paper", "dial");
  plate.circle(centre, Math.max(2, 0.08 * radius), "outline metal-2");
  // The line on the housing that the marks pass: the last mark stands there.
  plate.line([polar(centre, radius + 3, -90), polar(centre, radius + 0.9 * size, -90)], "outline", "index");
  const turnOf = (mark: number) => -90 + (360 * mark) / marks;
  const inner = 0.16 * radius;
  for (let mark = 1; mark <= marks; mark++) {
    const turn = turnOf(mark);
    if (good.has(mark)) {
      plate.line(
        [polar(centre, radius - 1, turn), polar(centre, radius - Math.max(10, 1.6 * inner), turn)],
        "set",
        `mark-${mark}`,
      );
      plate.arrow(polar(centre, radius - 1, turn), turn, "set");
    } else {
      plate.line(
        [polar(centre, radius - 1, turn), polar(centre, radius - Math.max(5, 0.7 * inner), turn)],
        "faint",
        `mark-${mark}`,
      );
    }
  }
  const every = Math.max(
    1,
    Math.ceil((marks * 1.7 * size) / (2 * Math.PI * Math.max(10, radius - 2.6 * size))),
  );
  const order = Array.from({ length: marks }, (_, i) => i + 1).sort(
    (a, b) => Number(good.has(b)) - Number(good.has(a)),
  );
  for (const mark of order) {
    const turn = turnOf(mark);
    if (!good.has(mark) && mark % every !== 0) continue;
    const at = polar(centre, radius - Math.max(11, 1.7 * inner) - 0.8 * size, turn);
    plate.label(
      [
        {
          text: String(mark),
          look: good.has(mark) ? "set bold" : "muted",
          size: good.has(mark) ? 1.2 * size : size,
        },
      ],
      [{ at, side: "over" }],
    );
  }
  const words =
    usable.length === 0
      ? [
          { text: "No mark may be used twice", look: "warn bold" },
          { text: "keep closed and reverse", look: "warn" },
        ]
      : [
          {
            text: usable.length === marks ? "Close on any mark" : `Close on ${listed(usable)}`,
            look: "set bold",
          },
          {
            text: usable.length === marks ? `all ${marks}` : `not on the other ${marks - usable.length}`,
            look: "muted",
          },
        ];
  const below: Point = [width / 2, height - 3];
  plate.label(words, spots(below, "n"), { gap: 0 }) ||
    plate.label(words.slice(0, 1), spots(below, "n"), { gap: 0 });
  plate.label("index", spots(polar(centre, radius + 0.9 * size, -90), "e", "w", "n"), { gap: 3 });
  return plate.done(sayMarks(figure));
}

function listed(numbers: readonly number[]): string {
  if (numbers.length > 8) return `${numbers.slice(0, 7).join(", ")} ...`;
  return numbers.length < 2 ? numbers.join("") : `${numbers.slice(0, -1).join(", ")} and ${numbers.at(-1)}`;
}

export function sayMarks({ usable, marks }: MarksFigure): string {
  if (usable.length === 0) {
    return `Thread indicator with ${marks} marks: none may be used every time it comes round; keep the half nuts closed and reverse.`;
  }
  return `Thread indicator with ${marks} marks: the half nuts may be closed on ${usable.length === marks ? "any of them" : usable.join(", ")}${usable.length === marks ? "" : ", on no other"}.`;
}
