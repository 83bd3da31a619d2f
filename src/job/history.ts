/**
 * Undo and redo. A step keeps the whole document before and after it: documents are never changed in place, so two of
 * them share all but what the step touched, and going back to the start gives the very document that was opened.
 */
import type { JobDocument } from "./document.ts";

interface Step {
  readonly what: string;
  readonly before: JobDocument;
  readonly after: JobDocument;
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

  add(after: JobDocument, what: string): void {
    this.done.push({ what, before: this.document, after });
    if (this.done.length > mostSteps) this.done.shift();
    this.undone.length = 0;
    this.document = after;
  }

  /** The step taken back, or undefined if there was none. */
  undo(): string | undefined {
    const step = this.done.pop();
    if (!step) return undefined;
    this.undone.push(step);
    this.document = step.before;
    return step.what;
  }

  redo(): string | undefined {
    const step = this.undone.pop();
    if (!step) return undefined;
    this.done.push(step);
    this.document = step.after;
    return step.what;
  }
}
