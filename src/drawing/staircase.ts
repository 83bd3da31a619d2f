/** The passes of a job as a staircase: a bar for each, as high as the depth it reaches. Numbers in, SVG out. */
import { type SVGTemplateResult, svg } from "lit";

export interface Stair {
  /** Share of the full depth, 0 to 1; undefined for a step that cuts no deeper. */
  readonly reach: number | undefined;
  /** Letter of a step that is no numbered pass. */
  readonly letter: string;
  readonly state: "done" | "next" | "to come";
}

export const stairHeight = 60;
const pitch = 21;

/** Width of the drawing, in its own units. */
export function stairWidth(count: number): number {
  return Math.max(1, count) * pitch + 4;
}

/** `role=img` and its words are the caller's. */
export function staircase(stairs: readonly Stair[]): SVGTemplateResult {
  return svg`${stairs.map(({ reach, letter, state }, index) => {
    const x = 2 + index * pitch;
    const full = stairHeight - 12;
    const height = reach === undefined ? full : Math.max(4, full * Math.min(1, reach));
    const y = stairHeight - 4 - height;
    const kind = { done: "done", next: "next", "to come": "come" }[state];
    return svg`<rect class="stair ${kind} ${letter ? "other" : ""}" x=${x} y=${y} width=${pitch - 4} height=${height} />
      ${letter ? svg`<text class="letter ${kind}" x=${x + (pitch - 4) / 2} y=${stairHeight - 14} text-anchor="middle" font-size="12">${letter}</text>` : ""}`;
  })}`;
}
