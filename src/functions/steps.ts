/** The steps of a job under which the guide files the families of functions. */
import type { SheetFunction } from "./declare.ts";

type Family = SheetFunction["family"];

export interface JobStep {
  readonly name: string;
  readonly families: readonly Family[];
}

export const jobSteps: readonly JobStep[] = [
  { name: "Thread", families: ["thread", "form", "hole"] },
  { name: "Set-over", families: ["set-over"] },
  { name: "Infeed", families: ["infeed", "passes", "force"] },
  { name: "Dial", families: ["dial"] },
  { name: "Measure", families: ["measure", "uncertainty"] },
  { name: "Lathe", families: ["gears", "half nuts", "starts", "speed", "taper"] },
  { name: "Tool", families: ["tool"] },
  { name: "Draw", families: ["drawing"] },
  { name: "Sheet", families: ["units", "what if"] },
];

/**
 * Functions whose name or words hold every word of `sought`, those whose name starts with it first.
 *
 * @param step only those of this step of the job
 */
export function findFunctions(
  functions: readonly SheetFunction[],
  sought: string,
  step: JobStep | undefined,
): SheetFunction[] {
  const words = sought.trim().toLowerCase().split(/\s+/).filter(Boolean);
  const rank = (fn: SheetFunction) => {
    const name = fn.name.toLowerCase();
    const named = words.every((word) => name.includes(word));
    return (named ? 0 : 2) + (name.startsWith(words[0] ?? "") ? 0 : 1);
  };
  const holds = (fn: SheetFunction) => {
    const text = [fn.name, fn.summary, fn.family, ...fn.params.map((param) => `${param.name} ${param.doc}`)]
      .join(" ")
      .toLowerCase();
    return words.every((word) => text.includes(word));
  };
  return functions
    .filter((fn) => (step === undefined || step.families.includes(fn.family)) && holds(fn))
    .map((fn, index) => ({ fn, index, rank: rank(fn) }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ fn }) => fn);
}
