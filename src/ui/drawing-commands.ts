/** What the cell menu offers for a drawing. */
import type { CellCommand, Ready } from "./cell-commands.ts";
import { type DrawingAction, drawingActions } from "./save-drawing.ts";

/** The action with this word, where the cell in hand has a drawing. */
function actionOn({ map, active }: Ready, word: string): DrawingAction | undefined {
  const { top, left } = map.areaAt(active.row, active.column);
  return drawingActions(map.view(top, left)).find((action) => action.word === word);
}

export const drawingCommands: readonly CellCommand[] = ["Save drawing as SVG", "Save drawing as PNG"].map(
  (word) => ({
    id: word.toLowerCase(),
    group: "Cells",
    label: (on) => actionOn(on, word)?.word,
    async run(on) {
      try {
        const name = await actionOn(on, word)?.act();
        return name === undefined ? undefined : `Saved to the file ${name}`;
      } catch (error) {
        return {
          reason: `The drawing could not be saved: ${error instanceof Error ? error.message : error}`,
        };
      }
    },
  }),
);
