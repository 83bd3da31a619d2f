/**
 * Undo and redo. A step keeps the whole document before and after it: documents are never changed in place, so two of
 * them share all but what the step touched, and going back to the start gives the very document that was opened, but for
 * answers that its sign-offs waited for.
 */
import type { JobDocument } from "./document.ts";
import { joined, type Moves, reversed } from "./moves.ts";

interface Step {
  readonly what: string;
  readonly before: JobDocument;
  readonly after: JobDocument;
  /** Where cells went, if they did. */
  readonly moves: Moves | undefined;
}

/** What following the history has done: what the steps were, and where cells went. */
export interface Followed {
  readonly what: string;
  readonly moves: Moves | undefined;
}

/** Older steps are dropped beyond this. */
const mostSteps = 1000;

export class History {
  private readonly done: Step[] = [];
  private readonly undone: Step[] = [];

  constructor(public document: JobDocument) {}

  get canUndo(): string | undefined {
    return this.done.at(-1)?.what;
  }

  get canRedo(): string | undefined {
    return this.undone.at(-1)?.what;
  }

  /** What every step was, oldest first, those that were taken back included. */
  get steps(): string[] {
    return [...this.done, ...[...this.undone].reverse()].map((step) => step.what);
  }

  /** How many of the steps are done. */
  get stepsDone(): number {
    return this.done.length;
  }

  add(after: JobDocument, what: string, moves?: Moves): void {
    this.done.push({ what, before: this.document, after, moves });
    if (this.done.length > mostSteps) this.done.shift();
    this.undone.length = 0;
    this.document = after;
  }

  /** The step taken back, or undefined if there was none. */
  undo(): Followed | undefined {
    const step = this.done.pop();
    if (!step) return undefined;
    this.undone.push(step);
    this.document = step.before;
    return { what: step.what, moves: step.moves && reversed(step.moves) };
  }

  redo(): Followed | undefined {
    const step = this.undone.pop();
    if (!step) return undefined;
    this.done.push(step);
    this.document = step.after;
    return step;
  }

  /** Goes to where `done` steps are done. @returns where cells went on the way */
  goTo(done: number): Moves | undefined {
    let moves: Moves | undefined;
    while (this.done.length !== done) {
      const step = this.done.length > done ? this.undo() : this.redo();
      if (!step) break;
      moves = moves && step.moves ? joined(moves, step.moves) : (moves ?? step.moves);
    }
    return moves;
  }
}
