/** Detail of the set-over: the lathe's own scale, enlarged, with the setting and the flank told apart. */
import type { SetoverFigure } from "../lathe/figure.ts";
import { angle } from "./figures.ts";
import { type Box, type Point, polar } from "./geometry.ts";
import { type Plate, spots } from "./plate.ts";

export function scaleDetail(plate: Plate, figure: SetoverFigure, room: Box): void {
  const { reading, flankReading } = figure;
  if (flankReading === undefined) return;
  const { size } = plate;
  const width = room.right - room.left;
  plate.line(
    [
      [room.left, room.top],
      [room.right, room.top],
    ],
    "faint",
  );
  plate.label([{ text: "The scale, enlarged", look: "bold" }], spots([room.left, room.top], "se"), {
    gap: 3,
  });
  const shown = Math.max(5.4, 1.7 * Math.abs(reading - flankReading));
  const middle = (reading + flankReading) / 2;
  const radius = 1.2 * width;
  // Degrees of the scale to degrees on paper.
  const spread = (2 * Math.asin(Math.min(1, (0.94 * width) / (2 * radius))) * 180) / Math.PI;
  const step = spread / shown;
  const top = room.top + 5.4 * size;
  const centre: Point = [(room.left + room.right) / 2, top + radius];
  const at = (value: number, r: number) => polar(centre, r, -90 + (value - middle) * step);
  const [first, last] = [middle - shown / 2, middle + shown / 2];
  plate.arc(centre, radius, -90 - spread / 2, -90 + spread / 2, "thin");
  // Marks first, so that the labels know them.
  const whole: number[] = [];
  for (let half = Math.ceil(2 * first); half <= 2 * last; half++) {
    const long = half % 2 === 0;
    plate.line([at(half / 2, radius), at(half / 2, radius - (long ? 18 : 10))], long ? "thin" : "faint");
    if (long) whole.push(half / 2);
  }
  plate.line([at(flankReading, radius - 22), at(flankReading, radius + 18)], "flank", "flank-mark");
  plate.line([at(reading, radius - 4), at(reading, radius + 22)], "set", "set-mark");
  const lean = -90 + (reading - middle) * step;
  plate.arrow(at(reading, radius - 1), lean + 180, "set");
  const right = reading >= flankReading;
  plate.label(
    [{ text: `set ${angle(reading)}`, look: "set bold" }],
    spots(at(reading, radius + 20), right ? "ne" : "nw", "n", right ? "e" : "w"),
    { must: true },
  );
  plate.label(
    [{ text: `flank ${angle(flankReading)}`, look: "muted" }],
    spots(at(flankReading, radius + 16), right ? "nw" : "ne", right ? "w" : "e", "n"),
    { must: true },
  );
  const every = Math.ceil(whole.length / Math.max(2, Math.floor(width / 34)));
  for (const value of whole) {
    if (value % every === 0) plate.label(String(value), spots(at(value, radius - 22), "s"), { gap: 1 });
  }
}
