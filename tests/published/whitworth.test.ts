// Whitworth figures of tests/published/whitworth.csv; each row names its own source.
import { drillSize } from "../../src/lathe/drills.ts";
import { sin, tan } from "../../src/thread/form.ts";
import { readThread } from "../../src/thread/read.ts";
import { whitworthRules } from "../../src/thread/whitworth.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";
import { tappingDrill } from "./tappingdrill.ts";

/** Figures of the tolerance rules. */
function rule({ quantity }: Row): number | undefined {
  const { share, bolt, nutMinor } = whitworthRules;
  if (quantity.startsWith("major tolerance")) return bolt.major;
  if (quantity.startsWith("minor tolerance close")) return bolt.minor.close;
  if (quantity.startsWith("nut minor tolerance, 26")) return nutMinor(1 / 26);
  if (quantity.startsWith("bolt close")) return 100 * share.bolt.close;
  if (quantity.startsWith("nut medium")) return 100 * share.nut.medium;
  if (quantity.startsWith("nut normal")) return 100 * share.nut.normal;
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
  // A tapping drill is printed with its name.
  const drill = /^tapping drill \((.+)\)$/.exec(quantity)?.[1];
  if (drill !== undefined) return drillSize(drill.replace(" in", ""), "in");
  if (quantity === "tapping drill") return tappingDrill(readThread(designation));
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

testRows(publishedRows("whitworth"), computed);
