/** Detail of the set-over: the lathe's own scale, enlarged and drawn to its end, with the setting and the flank told apart. */
import { endPassed, type SetoverFigure } from "../lathe/figure.ts";
import { angle } from "./figures.ts";
import { type Box, type Point, polar } from "./geometry.ts";
import { type Plate, spots } from "./plate.ts";

/** By how many degrees are shown: degrees from one mark to the next, and every which of them is a long one. */
function divided(shown: number): { readonly every: number; readonly long: number } {
  if (shown <= 14) return { every: 0.5, long: 2 };
  return shown <= 45 ? { every: 1, long: 5 } : { every: 5, long: 2 };
}

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
  // A setting that is off the scale is shown with the end of the scale that it is past.
  const end = endPassed(figure, reading) ?? endPassed(figure, flankReading);
  const values = [reading, flankReading, ...(end === undefined ? [] : [end])];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const shown = Math.max(5.4, 1.7 * (most - least));
  const middle = (least + most) / 2;
  const radius = 1.2 * width;
  // Degrees of the scale to degrees on paper.
  const spread = (2 * Math.asin(Math.min(1, (0.94 * width) / (2 * radius))) * 180) / Math.PI;
  const step = spread / shown;
  const top = room.top + 5.4 * size;
  const centre: Point = [(room.left + room.right) / 2, top + radius];
  const onPaper = (value: number) => -90 + (value - middle) * step;
  const at = (value: number, r: number) => polar(centre, r, onPaper(value));
  const [first, last] = [middle - shown / 2, middle + shown / 2];
  const isOn = (value: number) => endPassed(figure, value) === undefined;
  // Marks first, so that the labels know them.
  const { every, long } = divided(shown);
  const whole: number[] = [];
  for (let count = Math.ceil(first / every); count * every <= last; count++) {
    if (!isOn(count * every)) continue;
    const isLong = count % long === 0;
    plate.line(
      [at(count * every, radius), at(count * every, radius - (isLong ? 18 : 10))],
      isLong ? "thin" : "faint",
    );
    if (isLong) whole.push(count * every);
  }
  if (end === undefined) plate.arc(centre, radius, onPaper(first), onPaper(last), "thin");
  else {
    // From its last mark a scale runs back to its zero, from its first one away from it.
    const back = (Math.abs(end) === figure.ends?.high) === end > 0;
    const [from, to] = back ? [first, end] : [end, last];
    plate.arc(centre, radius, onPaper(from), onPaper(to), "thin", "scale");
    plate.line([at(end, radius + 8), at(end, radius - 24)], "outline", "scale-end");
  }
  plate.line([at(flankReading, radius - 22), at(flankReading, radius + 18)], "flank", "flank-mark");
  plate.line([at(reading, radius - 4), at(reading, radius + 22)], "set", "set-mark");
  plate.arrow(at(reading, radius - 1), onPaper(reading) + 180, "set");
  const right = reading >= flankReading;
  plate.label(
    [{ text: `${isOn(reading) ? "set" : "off it:"} ${angle(reading)}`, look: "set bold" }],
    spots(at(reading, radius + 20), right ? "ne" : "nw", "n", right ? "e" : "w"),
    { must: true },
  );
  plate.label(
    [{ text: `flank ${angle(flankReading)}`, look: "muted" }],
    spots(at(flankReading, radius + 16), right ? "nw" : "ne", right ? "w" : "e", "n"),
    { must: true },
  );
  const skip = Math.ceil(whole.length / Math.max(2, Math.floor(width / 34)));
  whole.forEach((value, index) => {
    if ((every * long === 1 ? value : index) % skip === 0)
      plate.label(String(value), spots(at(value, radius - 22), "s"), { gap: 1 });
  });
  if (end !== undefined)
    plate.label(
      [
        {
          text: `${Math.abs(end) === figure.ends?.low ? "begins" : "ends"} at ${angle(end)}`,
          look: "warn bold",
        },
      ],
      spots(at(end, radius - 26), "s", "sw", "se", "w"),
      { must: true, gap: 1 },
    );
}
