/** What the parts of the grid ask of the grid: where the person stands, what is chosen, and how to say and ask things. */
import type { Job } from "../job/job.ts";
import type { AskDialog } from "./ask-dialog.ts";
import type { Spot } from "./grid-keys.ts";
import type { Area } from "./grid-window.ts";
import type { SheetMap } from "./sheet-map.ts";

export interface GridHost {
  readonly job: Job | undefined;
  readonly sheet: string;
  readonly map: SheetMap | undefined;
  /** The cell in hand. */
  readonly active: Spot;
  /** What is chosen. */
  readonly area: Area;
  /** What was cut or copied and is still marked. */
  marked: { readonly sheet: string; readonly area: Area } | undefined;
  /** Something was done. */
  say(text: string): void;
  /** Something could not be done. */
  refuse(reason: string): void;
  choose(from: Spot, to: Spot): void;
  goTo(row: number, column: number, options?: { focus?: boolean; extend?: boolean }): void;
  focus(): void;
  readonly ask: AskDialog["ask"];
  /** How wide the contents of a column are at normal type, px. */
  widthOf(column: number): number;
}
