/** All the steps as a staircase, the one in hand marked. */
import { html, type TemplateResult } from "lit";
import { type Stair, staircase, stairHeight, stairWidth } from "../drawing/staircase.ts";
import type { Steps } from "../job/steps.ts";

export function stairsOf({ steps, depth }: Steps, here: number): TemplateResult {
  const stairs = steps.map((step, index): Stair => {
    const cuts = step.kind === "slide" || step.kind === "straight in";
    const letter = { scratch: "", slide: "", "straight in": "X", spring: "S", measure: "M" }[step.kind];
    return {
      reach: cuts && depth ? (step.depth ?? 0) / depth : step.kind === "scratch" ? 0.05 : undefined,
      letter,
      state: index < here ? "done" : index === here ? "next" : "to come",
    };
  });
  return html`<svg class="stairs" viewBox="0 0 ${stairWidth(stairs.length)} ${stairHeight}" role="img" aria-label="Step ${here + 1} of ${steps.length}">
      ${staircase(stairs)}
    </svg>`;
}
