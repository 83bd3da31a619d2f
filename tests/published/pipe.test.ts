// Pipe thread figures of tests/published/pipe.csv; each row names its own source.
import { expect } from "vitest";
import { readThread } from "../../src/thread/read.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";
import { tappingDrill } from "./tappingdrill.ts";

const width = (of: string, diameter: "pitch" | "minor") => {
  const { max, min } = readThread(of).limits()[diameter];
  return max! - min!;
};

/** Lengths along the axis. */
function gauged({ designation, quantity }: Row): number | undefined {
  const { gauge } = readThread(designation);
  if (/^gauge length|^hand-tight engagement/.test(quantity)) return gauge!.length;
  if (quantity.startsWith("tolerance +-T1/2")) return gauge!.lengthTolerance;
  if (quantity.startsWith("tolerance +-T2/2")) return gauge!.planeTolerance;
  if (/^useful thread length|^effective thread length/.test(quantity)) return gauge!.useful;
  if (quantity.startsWith("vanish")) return gauge!.vanish;
  if (quantity.startsWith("pipe outside diameter")) return gauge!.outside;
  if (quantity.startsWith("pitch diameter E0")) return gauge!.smallEnd;
  return undefined;
}

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  const thread = readThread(designation);
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
  if (quantity.startsWith("tapping drill")) return tappingDrill(readThread(designation));
  return gauged(row);
}

testRows(publishedRows("pipe"), computed);
