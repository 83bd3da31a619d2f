/** Cells that the one in hand comes from and goes to, as the grid marks them. */
import type { Why, WhyLink } from "../job/why.ts";
import { type Area, contains } from "./grid-window.ts";

export interface Traces {
  readonly from: readonly Area[];
  readonly to: readonly Area[];
}

/** Nothing is marked. */
export const noTraces: Traces = { from: [], to: [] };

/** Those that stand on this sheet. */
export function tracesOf(why: Why | undefined, sheet: string): Traces {
  if (!why) return noTraces;
  const here = (links: readonly WhyLink[]): Area[] =>
    links
      .filter(({ place }) => place.sheet === sheet)
      .map(({ place, last }) => ({
        top: place.row,
        left: place.column,
        bottom: last.row,
        right: last.column,
      }));
  return { from: here(why.comesFrom), to: here(why.goesTo) };
}

/** Whether a cell is traced, and how; what it comes from counts before what it goes to. */
export function traceAt({ from, to }: Traces, row: number, column: number): "from" | "to" | undefined {
  const holds = (areas: readonly Area[]) => areas.some((area) => contains(area, row, column));
  return holds(from) ? "from" : holds(to) ? "to" : undefined;
}
