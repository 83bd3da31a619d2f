// Trapezoidal, buttress, round and square figures of tests/published/trap_buttress_round.csv; each row names its source.
import { buttressTolerance } from "../../src/thread/buttress.ts";
import { tan } from "../../src/thread/form.ts";
import { tolerance } from "../../src/thread/metriclimits.ts";
import { readThread } from "../../src/thread/read.ts";
import { trapezoidDeviation } from "../../src/thread/trapezoidal.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";

/** Height of the fundamental triangle for a pitch of one. */
function triangle(designation: string): number {
  const { loadFlank, clearanceFlank } = readThread(designation);
  return 1 / (tan(loadFlank) + tan(clearanceFlank));
}

/** Figures of the form alone, for a pitch of one. */
function ofForm({ designation, quantity }: Row): number | undefined {
  const of: Readonly<Record<string, string>> = {
    "7/45 buttress": "9-1 Butt",
    "S (3/30)": "S 30x1",
    "Tr form": "Tr 30x1",
    Rd: "Rd 100x1/25.4",
    Square: "Sq 9-1",
  };
  const text = of[designation];
  if (text === undefined) return undefined;
  const { form, major, minor, rootRadius, crestFlat, depth } = readThread(text);
  if (/^H\/P/.test(quantity)) return triangle(text);
  if (/crest flat/.test(quantity)) return crestFlat;
  if (/^root radius|^R1|^R ?\//.test(quantity)) return rootRadius;
  if (/^R2/.test(quantity)) return arcRadius(0.2);
  if (/^R3/.test(quantity)) return form.nutRootRadius!(1);
  if (/^ac\/P/.test(quantity)) return (minor.internal - minor.external) / 2;
  if (/^basic height|^H1/.test(quantity)) return form.addendum(1) + form.dedendum(1);
  if (/^total height|^h3|^depth/.test(quantity)) return depth.external;
  if (/^d3 = d - k P/.test(quantity)) return major - minor.external;
  if (/^ac/.test(quantity)) return depth.external - (major - minor.internal) / 2;
  return undefined;
}

/** Arc between 15-degree flanks that ends `reach` pitches from the pitch line: tangent geometry. */
function arcRadius(reach: number): number {
  return (1 / (4 * tan(15)) - reach) / (1 / Math.sin(Math.PI / 12) - 1);
}

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  const form = ofForm(row);
  if (form !== undefined) return form;
  if (designation.startsWith("buttress class 2")) {
    const T = buttressTolerance;
    if (quantity.includes("cuberoot(D)")) return (T(8, 1) - T(1, 1)) / 1;
    const ofP = T(1, 1) - T(1, 0);
    return quantity.includes("sqrt(Le)") ? (ofP - 0.00854) / Math.sqrt(10) : ofP - 0.00278 * Math.sqrt(10);
  }
  const P = Number(/^Tr P([\d.]+)$/.exec(designation)?.[1]);
  if (P > 0) {
    const position = /position ([ce])/.exec(quantity)?.[1];
    if (position !== undefined) return -trapezoidDeviation(position, P);
    if (quantity.includes("Td(4)")) return tolerance.Td("4", P);
    if (quantity.includes("TD1(4)")) return tolerance.TD1("4", P);
    if (quantity.startsWith("crest clearance")) return readThread(`Tr 100x${P}`).depth.external - P / 2;
    return undefined;
  }
  const thread = readThread(designation);
  const found = /^(major|minor|pitch) diameter (max|min) (7e|7H|8e|8H)/.exec(quantity);
  if (found) {
    const [, diameter, end, fit] = found;
    return readThread(`${designation}-${fit}`).limits()[diameter as "major"][end as "max"];
  }
  if (quantity === "threads per inch") return 25.4 / thread.pitch;
  if (quantity === "pitch") return thread.pitch;
  if (quantity.startsWith("pitch diameter")) return thread.pitchDia;
  if (/minor diameter of nut|nut minor/.test(quantity)) return thread.minor.internal;
  if (/minor diameter of screw|screw minor|minor diameter d3/.test(quantity)) return thread.minor.external;
  if (/major diameter of nut|nut major/.test(quantity))
    return thread.minor.internal + 2 * thread.depth.internal;
  return undefined;
}

testRows(publishedRows("trap_buttress_round"), computed);
