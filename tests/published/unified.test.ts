// Unified figures of tests/published/unified.csv; each row names its own source.
import { largeRoot } from "../../src/thread/form.ts";
import { readThread } from "../../src/thread/read.ts";
import { convertLength } from "../../src/thread/thread.ts";
import { unifiedTolerance } from "../../src/thread/unifiedlimits.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  const length = (inches: number | undefined) =>
    inches === undefined ? undefined : convertLength(inches, "in", row.unit === "mm" ? "mm" : "in");
  if (quantity.startsWith("root radius min")) return largeRoot.least;
  if (designation === "MJ") {
    const thread = readThread("MJ6x1");
    // Truncated from the sharp corner, which lies H/8 outside the major diameter.
    const sharp = (7 / 8) * (Math.sqrt(3) / 2);
    return quantity.includes("truncation")
      ? sharp - (6 - thread.minor.internal) / 2
      : 6 - thread.minor.internal;
  }
  const thread = readThread(designation);
  const found = /^(UNR |UN )?(major|minor|pitch) diameter (max|min) ([123][AB])/.exec(quantity);
  if (found) {
    const [, root, diameter, end, fit] = found;
    const rooted = root === "UNR " ? designation.replace("UN", "UNR") : designation;
    return length(readThread(`${rooted}-${fit}`).limits()[diameter as "major"][end as "max"]);
  }
  if (quantity === "allowance 2A") return thread.major - thread.limits().major.max!;
  if (quantity.startsWith("basic pitch diameter")) return length(thread.pitchDia);
  if (quantity.startsWith("basic internal minor")) return thread.minor.internal;
  if (quantity.startsWith("external minor diameter d3"))
    return readThread(designation.replace("UN", "UNR")).minor.external;
  if (quantity.startsWith("lead angle"))
    return (Math.atan(thread.pitch / (Math.PI * thread.pitchDia)) * 180) / Math.PI;
  if (quantity.startsWith("pitch diameter tolerance Td2")) {
    const { major: D, pitch: P } = thread;
    const engagement = /UN[CF]$/.test(designation) || (designation.endsWith(" UN") && P >= 1 / 8) ? D : 9 * P;
    return unifiedTolerance(D, Number(P.toFixed(8)), engagement);
  }
  return undefined;
}

testRows(publishedRows("unified"), computed);
