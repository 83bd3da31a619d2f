// Wires and readings over them, tests/published/wires.csv; each row names its own source.
import { expect, test } from "vitest";
import { measureFunctions } from "../../src/functions/measure.ts";
import { caller } from "../functions/call.ts";
import { publishedRows, type Row } from "./rows.ts";

const rows = publishedRows("wires");
const call = caller(measureFunctions);
const find = (designation: string, quantity: RegExp) =>
  rows.find((row) => row.designation === designation && quantity.test(row.quantity));
const number = (name: string, ...given: (number | string | undefined)[]) => call(name, ...given) as number;

/** Reading over one wire of 1 less one of 0, and over a pitch of 1: the factors of the formula without lead. */
const plain = (E: number, P: number, w: number, included: number) =>
  number("WIRE.READING", E, P, w, included, P, "plain");

/** Crest flat of the Acme form, ASME B1.5, and of the root of a mating tool: 0.3707 P. */
const acmeCrest = (P: number) => 0.370691 * P;

/** What these functions answer for a row; undefined where the row is about something else. */
function computed({ designation, quantity, value }: Row): number | undefined {
  const degrees = Number(/^([\d.]+) deg/.exec(designation)?.[1]);
  if (quantity === "best wire /P" || quantity.startsWith("best wire / P"))
    return number("WIRE.BEST", 1, degrees || 60);
  const wireFactor = (included: number) => (plain(10, 1, 0.6, included) - plain(10, 1, 0.5, included)) / 0.1;
  const pitchFactor = (included: number) => 10 + 0.6 * wireFactor(included) - plain(10, 1, 0.6, included);
  if (quantity.startsWith("1 + csc a")) return wireFactor(degrees);
  if (quantity.startsWith("(1/2) cot a")) return pitchFactor(degrees);
  if (quantity === "Whitworth: wire factor") return wireFactor(55);
  // M = E + 3.1657 w - 0.9605 P, and E = D - 0.640327 P (BS 84).
  if (quantity.startsWith("Whitworth: M")) return pitchFactor(55) + 0.640327;
  if (quantity.startsWith("sharp V: M")) return pitchFactor(60) + Math.sqrt(3) / 2;
  const acme = Number(/^Acme ([\d.]+) tpi$/.exec(designation)?.[1]);
  if (acme && quantity === "best wire") return number("WIRE.BEST", 1 / acme, 29);
  if (acme && quantity === "largest wire") return number("WIRE.LARGEST", 1 / acme, 29, acmeCrest(1 / acme));
  if (acme && quantity === "smallest wire") return number("WIRE.SMALLEST", 1 / acme, 29, acmeCrest(1 / acme));
  if (quantity === "smallest wire / P") return number("WIRE.SMALLEST", 1, 29, acmeCrest(1));
  if (quantity.startsWith("minimum wire that clears the crest")) return number("WIRE.SMALLEST", 1, 60, 1 / 8);
  if (quantity === "best wire 0.57735/8") return number("WIRE.BEST", 1 / 8, 60);
  if (quantity === "best wire from table") return number("WIRE.BEST", 1 / 5, 29);
  const factor = /^(60|55) deg ([\d.]+) tpi$/.exec(designation);
  if (factor) return pitchFactor(Number(factor[1])) / Number(factor[2]);
  const handbook = /^([\d.]+)-(\d+) wire ([\d.]+)$/.exec(designation);
  if (handbook && quantity.startsWith("measurement over wires")) {
    const [D, n, w] = handbook.slice(1).map(Number) as [number, number, number];
    // The table's own forms: US form M = D - 1.5155 P + 3 w, sharp V M = D - 1.732 P + 3 w, so the pitch diameter is that of each.
    const E = quantity.includes("sharp V") ? D - Math.sqrt(3) / 2 / n : D - 0.649519 / n;
    return plain(E, 1 / n, w, 60);
  }
  if (designation === "1-1/2 x 6 wire 0.140") return plain(1.5 - 0.649519 / 6, 1 / 6, 0.14, 60);
  const stated = /E=([\d.]+), w=([\d.]+)/.exec(designation);
  if (stated) {
    const [E, w] = [Number(stated[1]), Number(stated[2])];
    const { pitch, lead, included } = forms.find((form) => designation.startsWith(form.starts))!;
    if (quantity.includes("exact")) return number("WIRE.READING", E, pitch, w, included, lead, "exact");
    if (quantity.includes("zero-lead")) return number("WIRE.READING", E, pitch, w, included, lead, "plain");
  }
  const steep = /^29 deg lead angle ([\d.]+) deg (\d)-start, P=1$/.exec(designation);
  if (steep && quantity.startsWith("best wire w1")) {
    const lead = Number(steep[2]);
    const E = lead / (Math.PI * Math.tan((Number(steep[1]) * Math.PI) / 180));
    return number("WIRE.BEST", 1, 29, undefined, E, lead);
  }
  const large = /^29 deg lead angle ([\d.]+) deg (\d)-start, P=1$/.exec(designation);
  if (large && quantity.startsWith("(C+c)1")) {
    const wire = find(designation, /^best wire w1/);
    if (!wire) return undefined;
    const lead = Number(large[2]);
    const E = lead / (Math.PI * Math.tan((Number(large[1]) * Math.PI) / 180));
    return number("WIRE.READING", E, 1, wire.value, 29, lead, "exact") - E;
  }
  if (designation.startsWith("wire ") && quantity === "nominal wire diameter") {
    return number("WIRE.PICK", value / 0.57735, 60, [value] as never);
  }
  return undefined;
}

const forms = [
  { starts: "M6x1", pitch: 1, lead: 1, included: 60 },
  { starts: "1/4-20", pitch: 1 / 20, lead: 1 / 20, included: 60 },
  { starts: "Acme 1-5", pitch: 1 / 5, lead: 1 / 5, included: 29 },
  { starts: "BSW 1/4-20", pitch: 1 / 20, lead: 1 / 20, included: 55 },
  { starts: "Acme 1/2-10 2-start", pitch: 1 / 10, lead: 2 / 10, included: 29 },
  { starts: "Tr 40x7", pitch: 7, lead: 14, included: 30 },
];

/** Rows that no function answers, with the reason; every row is compared or stands here. */
const others: readonly (readonly [(row: Row) => boolean, string])[] = [
  [
    (row) => /second-order|A1 coefficient|coefficient k|correction coefficient/.test(row.quantity),
    "second-order approximation; the exact contact stands in its place",
  ],
  [(row) => /^\(C\+c\)1/.test(row.quantity), "its wire is not in the open rows"],
  [
    (row) => /thickness formula|0\.5P-1\.0L/.test(row.designation),
    "terms of another formula, by tooth thickness",
  ],
  [(row) => row.standard === "shop set", "a set of wires on sale, not a result"],
];

let compared = 0;
for (const row of rows) {
  const value = computed(row);
  if (value === undefined) continue;
  compared++;
  test(`${row.id} agrees with its source (${row.source})`, () => {
    expect(Math.abs(value - row.value), `${value} against ${row.text}`).toBeLessThanOrEqual(
      row.tolerance + 1e-9,
    );
  });
}

test("every row is compared or stands among the others with a reason", () => {
  const unexplained = rows.filter((row) => computed(row) === undefined && !others.some(([is]) => is(row)));
  expect(unexplained.map((row) => row.id)).toEqual([]);
  expect(compared).toBeGreaterThan(90);
});
