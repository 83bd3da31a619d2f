/**
 * Hears of every cell that the engine below reckons, while it does: what changed, how far it is, and that it still
 * works. The engine itself tells only when all is done. Nothing of the reckoning is altered.
 */
import type { HyperFormula } from "hyperformula";
import type { Cell } from "./plugin.ts";

/** @param changed false when the value came out as it was */
export type Heard = (cell: Cell, changed: boolean) => void;

/** The part of the engine's evaluator that is relied upon; `tests/job/far.test.ts` fails when it is another one. */
interface Evaluator {
  recomputeVertex(vertex: Vertex, changes: unknown): boolean;
  processVertexOnCycle(vertex: Vertex, changes: unknown): void;
}

interface Vertex {
  getAddress?(service: unknown): Cell;
}

export function hearReckoned(hf: HyperFormula, heard: Heard): void {
  const evaluator = hf.evaluator as unknown as Evaluator;
  const tell = (vertex: Vertex, changed: boolean) => {
    const cell = vertex.getAddress?.(hf.lazilyTransformingAstService);
    // Names of the job stand on a sheet with a number below zero.
    if (cell && cell.sheet >= 0) heard(cell, changed);
  };
  const recompute = evaluator.recomputeVertex;
  evaluator.recomputeVertex = function (vertex, changes) {
    const changed = recompute.call(this, vertex, changes);
    tell(vertex, changed);
    return changed;
  };
  const onCycle = evaluator.processVertexOnCycle;
  evaluator.processVertexOnCycle = function (vertex, changes) {
    onCycle.call(this, vertex, changes);
    tell(vertex, true);
  };
}
