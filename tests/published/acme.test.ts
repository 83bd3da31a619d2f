// Acme and Stub Acme figures of tests/published/acme.csv; each row names its own source.
import { acmeAllowance, acmeTolerance } from "../../src/thread/acme.ts";
import { readThread } from "../../src/thread/read.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  const stub = designation.startsWith("Stub") ? "Stub Acme" : "Acme";
  const fit = /^Acme class (\dG)$/.exec(designation)?.[1];
  if (fit !== undefined) {
    if (quantity.startsWith("pitch diameter allowance")) return acmeAllowance(fit, 1);
    return quantity.endsWith("sqrt(D)") ? acmeTolerance(fit, 1, 0) : acmeTolerance(fit, 0, 1);
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

testRows(publishedRows("acme"), computed);
