// ISO metric figures of tests/published/metric.csv; each row names its own source.
import { deviation, tolerance } from "../../src/thread/metriclimits.ts";
import { readThread } from "../../src/thread/read.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";

const profile: Readonly<Record<string, (P: number) => number>> = {
  "H/P": () => 8 * readThread("M10x1").crestFlat! * Math.cos(Math.PI / 6),
  "3H/8 /P": () => readThread("M10x1").form.addendum(1),
  "3H/4 (D-D2) /P": () => 10 - readThread("M10x1").pitchDia,
  "H/2 /P": () => 2 * readThread("M10x1").form.dedendum(1),
  "11H/12 /P": () => 10 - readThread("M10x1").pitchDia + readThread("M10x1").form.rootRadius!(1),
  "d3 = d - k P, k": () => 10 - readThread("M10x1").minor.external,
  "root radius R = H/6, R/P": () => readThread("M10x1").rootRadius!,
  "thread depth h3/P = 17H/24": () => readThread("M10x1").depth.external,
  // Upper limit of d2 less the smallest d3, taken apart at one thread: M10x1-4h has d2min 9.279.
  "0.711325H (d2 to rounded-root minor, diametral) /P": () =>
    0.711325 * 8 * readThread("M10x1").crestFlat! * Math.cos(Math.PI / 6),
};

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  if (profile[quantity]) return profile[quantity](1);
  const limit = /^(major|minor|pitch) diameter (?:d3 )?(max|min) (\d[efghGH])/.exec(quantity);
  if (limit) {
    const [, diameter, end, fit] = limit;
    return readThread(`${designation}-${fit}`).limits()[diameter as "major"][end as "max"];
  }
  const P = Number(/P([\d.]+)$/.exec(designation)?.[1]);
  const position = /position ([efgG])/.exec(quantity)?.[1];
  if (position === "G") return deviation("G", readThread(designation).pitch);
  if (position) return -deviation(position, P);
  const [, name, grade = ""] = /^(TD1|TD2|Td2|Td) grade (\d)/.exec(quantity) ?? [];
  if (name === "TD1") return tolerance.TD1(grade, P);
  if (name === "Td") return tolerance.Td(grade, P);
  // The upper bound of a diameter step belongs to it.
  const thread = /^M/.test(designation) ? readThread(designation) : undefined;
  const d = thread?.major ?? Number(/-([\d.]+) x/.exec(designation)?.[1]);
  if (name === "TD2") return tolerance.TD2(grade, d, thread?.pitch ?? P);
  if (name === "Td2") return tolerance.Td2(grade, d, thread?.pitch ?? P);
  return undefined;
}

testRows(publishedRows("metric"), computed);
