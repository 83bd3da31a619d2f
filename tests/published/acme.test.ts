// Acme and Stub Acme figures of tests/published/acme.csv; each row names its own source.
import { expect, test } from "vitest";
import { readThread } from "../../src/thread/read.ts";
import { publishedRows, type Row } from "./rows.ts";

/** Allowance and tolerance of the pitch diameter at one diameter and pitch. */
function pitchFigures(D: number, tpi: number, fit: string) {
  const { max, min } = readThread(`${D}-${tpi} Acme-${fit}`).limits().pitch;
  return { allowance: D - 0.5 / tpi - max!, tolerance: max! - min! };
}

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  const stub = designation.startsWith("Stub") ? "Stub Acme" : "Acme";
  const fit = /^Acme class (\dG)$/.exec(designation)?.[1];
  if (fit !== undefined) {
    // Large sizes, so that the four decimals of the limits say enough of the coefficient.
    const far = pitchFigures(100, 1, fit);
    if (quantity.startsWith("pitch diameter allowance")) return far.allowance / 10;
    const ofD = (far.tolerance - pitchFigures(4, 1, fit).tolerance) / (10 - 2);
    return quantity.endsWith("sqrt(D)") ? ofD : far.tolerance - 10 * ofD;
  }
  if (designation === "Acme form") return readThread("9-1 Acme").crestFlat;
  const tpi = /^(?:Stub )?Acme ([\d.]+) tpi$/.exec(designation)?.[1];
  if (tpi !== undefined) {
    const { form, pitch, depth, crestFlat, rootFlat } = readThread(`9-${tpi} ${stub}`);
    if (quantity.startsWith("basic height")) return form.addendum(pitch) + form.dedendum(pitch);
    if (quantity.startsWith("total height")) return depth.external;
    if (quantity.startsWith("crest flat")) return crestFlat;
    if (quantity.startsWith("root flat")) return rootFlat;
    return undefined;
  }
  const thread = readThread(designation);
  if (quantity === "basic pitch diameter") return thread.pitchDia;
  if (quantity === "basic minor diameter") return thread.minor.internal;
  if (quantity.startsWith("lead angle"))
    return (Math.atan(thread.pitch / (Math.PI * thread.pitchDia)) * 180) / Math.PI;
  const found = /^(major|minor|pitch) diameter (max|min) (external|internal)/.exec(quantity);
  if (!found) return undefined;
  const [, diameter, end, member] = found;
  return thread.limits(member as "external")[diameter as "major"][end as "max"];
}

const rows = publishedRows("acme");

test.each(rows)("$id ($source)", (row) => {
  expect(Math.abs(computed(row)! - row.value)).toBeLessThanOrEqual((row.tolerance || 0.00003) + 1e-9);
});
