/**
 * What reading a designation costs, as a ratio within one run: 10,000 designations, no two alike and none read before,
 * against the engine's own additions of two cells in as many cells.
 */
import { Engine } from "../../src/engine/engine.ts";
import { readThread } from "../../src/thread/read.ts";

export const readingCount = 10_000;

/** How designations are written, for the n-th size. */
const writings: readonly ((n: number) => string)[] = [
  (n) => `M${(3 + n / 500).toFixed(3)}x0.5-6g`,
  (n) => `M ${(3 + n / 500).toFixed(3)} x 0.75 - 6H`,
  (n) => `Tr ${(20 + n / 500).toFixed(3)}x8-P4-7e LH`,
  (n) => `${(0.3 + n / 50_000).toFixed(5)}-20 UNS-2A`,
  (n) => `${(0.3 + n / 50_000).toFixed(5)}"-24 Whit nut`,
  (n) => `${(0.5 + n / 50_000).toFixed(5)}-8 Acme-2G`,
  (n) => `${Math.floor(n / 32)} ${2 * (n % 32) + 1}/64-12 UN-2B`,
  (n) => `Sq ${(10 + n / 500).toFixed(3)}x3`,
  (n) => `Custom ${(10 + n / 500).toFixed(3)}x2 mm, flanks 30/30, depth 1.1`,
  (n) => `${(0.2 + n / 50_000).toFixed(5)}-26 BSB`,
];

function designations(round: number): readonly string[] {
  const each = readingCount / writings.length;
  const all = writings.flatMap((write) =>
    Array.from({ length: each }, (_, i) => write(round * each + i + 64)),
  );
  if (new Set(all).size < readingCount) throw new Error("the designations repeat");
  return all;
}

/** Milliseconds that the engine takes for as many additions, and that reading takes, round by round. */
export function readingTimes(rounds: number): { readonly additions: number[]; readonly readings: number[] } {
  const cells: Record<string, string> = { A1: "0" };
  for (let row = 1; row <= readingCount; row++) {
    cells[`B${row}`] = String(row);
    cells[`C${row}`] = `=$A$1+B${row}`;
  }
  const engine = new Engine({ sheets: [{ name: "Sums", cells }], names: {} }, []);
  const additions: number[] = [];
  const readings: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const texts = designations(round);
    let start = performance.now();
    engine.setCells([{ sheet: "Sums", row: 0, column: 0, text: String(round + 1) }]);
    const last = engine.value("Sums", readingCount - 1, 2);
    additions.push(performance.now() - start);
    start = performance.now();
    let majors = 0;
    for (const text of texts) majors += readThread(text).major;
    readings.push(performance.now() - start);
    if (last !== readingCount + round + 1 || !(majors > readingCount))
      throw new Error(`not reckoned: ${last}, ${majors}`);
  }
  return { additions, readings };
}
