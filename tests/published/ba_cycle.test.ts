// BA and cycle thread figures of tests/published/ba_cycle.csv; each row names its own source.
import { baClass } from "../../src/thread/ba.ts";
import { tan, tangentRadius } from "../../src/thread/form.ts";
import { readThread } from "../../src/thread/read.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";

const ba = (row: Row, fit = "") => readThread(`${row.designation} ${fit}`);

function computed(row: Row): number | undefined {
  const { designation, quantity } = row;
  if (designation === "BA form") {
    if (quantity.startsWith("radius")) return tangentRadius((1 / (2 * tan(23.75)) - 0.6) / 2, 23.75);
    return 1 / (2 * Math.tan((readThread("0 BA").loadFlank * Math.PI) / 180));
  }
  const rule = /^BA (close class bolt|normal class bolt|nut)(?: (\d+)-(\d+))?$/.exec(designation);
  if (rule) {
    const member = rule[1] === "nut" ? "internal" : "external";
    const { allowance, ...figures } = baClass(member, rule[1]!.split(" ")[0]!, Number(rule[2] ?? 0));
    if (quantity === "allowance") return allowance;
    const [, diameter] = /^(effective|major|minor) diameter/.exec(quantity)!;
    const [k, c] = figures[diameter === "effective" ? "pitch" : (diameter as "major")]!;
    return quantity.endsWith(": c") ? c : k;
  }
  if (designation === "BSC form") return readThread("1/4-26 BSC").depth.external * 26;
  if (quantity.startsWith("core diameter")) return readThread(designation).minor.external;
  const thread = ba(row);
  if (quantity.startsWith("major diameter")) return row.unit === "in" ? thread.major / 25.4 : thread.major;
  if (quantity === "pitch") return thread.pitch;
  if (quantity === "minor diameter") return thread.minor.external;
  if (quantity === "effective diameter") return thread.pitchDia;
  if (quantity === "depth of thread") return thread.depth.external;
  if (quantity === "radius") return thread.rootRadius;
  if (quantity.startsWith("threads per inch")) return 25.4 / thread.pitch;
  if (quantity === "effective diameter max, nut") return ba(row, "nut").limits().pitch.max;
  if (quantity === "minor diameter max, nut") return ba(row, "nut").limits().minor.max;
  if (quantity.startsWith("effective diameter min, close")) return ba(row, "close").limits().pitch.min;
  if (quantity.startsWith("effective diameter min, normal")) return ba(row, "normal").limits().pitch.min;
  return undefined;
}

testRows(publishedRows("ba_cycle"), computed);
