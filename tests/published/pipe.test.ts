// Pipe thread figures of tests/published/pipe.csv; each row names its own source.
import { expect, test } from "vitest";
import { readThread } from "../../src/thread/read.ts";
import { publishedRows, type Row } from "./rows.ts";

function computed({ designation, quantity }: Row): number | undefined {
  const thread = readThread(designation);
  const width = (of: string, diameter: "pitch" | "major" | "minor") => {
    const { max, min } = readThread(of).limits()[diameter];
    return max! - min!;
  };
  if (/^threads per inch/.test(quantity)) return (thread.unit === "mm" ? 25.4 : 1) / thread.pitch;
  if (quantity === "pitch") return thread.pitch;
  if (/^(gauge \(major\)|major) diameter/.test(quantity)) return thread.major;
  if (/^pitch diameter (d2|at gauge plane|E1)/.test(quantity)) return thread.pitchDia;
  if (/^minor diameter/.test(quantity)) return thread.minor.external;
  if (/^thread height/.test(quantity)) return thread.depth.external;
  if (quantity === "pitch diameter tolerance, external class B") return width(`${designation} B`, "pitch");
  if (quantity === "pitch diameter tolerance, internal and external class A") {
    expect(width(`${designation} nut`, "pitch")).toBeCloseTo(width(`${designation} A`, "pitch"), 9);
    return width(`${designation} A`, "pitch");
  }
  if (/^internal minor diameter tolerance/.test(quantity)) return width(`${designation} nut`, "minor");
  return undefined;
}

const notOurs: readonly RegExp[] = [
  /^tapping drill/, // shop choices from a stock list
  /gauge length|gauge plane of internal|useful thread length|T1\/2/, // lengths along the axis, which no function here gives
  /engagement L|thread length L|^vanish|pipe outside diameter|E0 at small end/, // likewise
  /taper/, // a ratio and angles of the form, tested beside THREAD.TAPER
];
const rows = publishedRows("pipe").filter(
  ({ quantity }) => !notOurs.some((pattern) => pattern.test(quantity)),
);

test.each(rows)("$id ($source)", (row) => {
  expect(Math.abs(computed(row)! - row.value)).toBeLessThanOrEqual(row.tolerance + 1e-9);
});
