/**
 * What touching both helicoids exactly costs against the formula without lead: 1,000 readings over wires of either kind,
 * of threads that all differ, equal and unequal flanks, one start to four.
 */
import { veeOf } from "../../src/thread/groove.ts";
import { bestWire } from "../../src/thread/wirelimits.ts";
import { overWires, type Wires, wiresOf } from "../../src/thread/wires.ts";

const count = 1000;

interface Screw {
  readonly pitchDiameter: number;
  readonly exact: Wires;
  readonly plain: Wires;
}

/** Included angle and one flank: 60, 55, 47.5, 29, 30, and the buttress of 7 and 45. */
const forms = [
  [60, 30],
  [55, 27.5],
  [47.5, 23.75],
  [29, 14.5],
  [30, 15],
  [52, 7],
] as const;

const screws: readonly Screw[] = Array.from({ length: count }, (_, i) => {
  const pitch = 0.5 + (i % 97) / 20;
  const [included, one] = forms[i % forms.length]!;
  const vee = veeOf(pitch, included, one);
  const wire = bestWire(vee);
  const lead = pitch * (1 + (i % 4));
  const pitchDiameter = lead * (2 + (i % 23) / 3);
  return {
    pitchDiameter,
    exact: wiresOf(vee, wire, lead, "exact"),
    plain: wiresOf(vee, wire, lead, "plain"),
  };
});

/** Prints both times, and the median of the ratios of rounds in which they take turns. */
export function measureTimes(rounds: number, median: (times: readonly number[]) => number): void {
  let sum = 0;
  const timeOf = (kind: "exact" | "plain") => {
    const start = performance.now();
    for (const screw of screws) sum += overWires(screw.pitchDiameter, screw[kind]);
    return performance.now() - start;
  };
  const times = Array.from({ length: rounds }, () => ({ plain: timeOf("plain"), exact: timeOf("exact") }));
  // A sum that is not a number was not reckoned.
  if (!Number.isFinite(sum)) throw new Error(`readings are not numbers: ${sum}`);
  const [exact, plain] = [median(times.map((time) => time.exact)), median(times.map((time) => time.plain))];
  const ratio = median(times.map((time) => time.exact / time.plain));
  console.log(
    `\n${count} readings over wires: exact ${exact.toFixed(3)} ms, plain ${plain.toFixed(3)} ms; ratio ${ratio.toFixed(1)}, to stay below 30`,
  );
}
