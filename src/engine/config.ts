/** How the engine is set up. */
import { type ConfigParams, HyperFormula } from "hyperformula";
import { pluginsWithBranches } from "./branches.ts";
import { limits } from "./gate.ts";
import { masked } from "./mask.ts";
import type { MadePlugin } from "./plugin.ts";

/** Rows and columns that the engine has room for: small, since a formula on whole columns visits them all. */
export interface Room {
  readonly rows: number;
  readonly columns: number;
}

export const roomAtFirst: Room = { rows: 2000, columns: 128 };

/** `room`, or more when something lies beyond it. */
export function growTo(room: Room, rows: number, columns: number): Room {
  return {
    rows: rows > room.rows ? Math.min(limits.rows, Math.max(2 * room.rows, rows)) : room.rows,
    columns:
      columns > room.columns ? Math.min(limits.columns, Math.max(2 * room.columns, columns)) : room.columns,
  };
}

export function configOf(made: MadePlugin, room: Room): Partial<ConfigParams> {
  const language = "enGB";
  // Without a translation a function is #NAME?. The functions themselves stay out of the engine's global registry.
  HyperFormula.getLanguage(language).extendFunctions(made.translations);
  return {
    licenseKey: "gpl-v3",
    language,
    functionPlugins: [...pluginsWithBranches(), made.plugin],
    // Full doubles: rounding belongs to the format of a cell, and a difference of 1e-14 is a difference.
    smartRounding: false,
    precisionEpsilon: 0,
    // Else `1/4-20` and `1 1/2` become dates.
    dateFormats: [],
    timeFormats: [],
    currencySymbol: [],
    maxRows: room.rows,
    maxColumns: room.columns,
    // Undo belongs to the job.
    undoLimit: 0,
    // A pattern of a few stars on a long text runs for hours.
    useRegularExpressions: false,
    useWildcards: false,
    ignoreWhiteSpace: "any",
    useColumnIndex: false,
    stringifyCurrency: masked,
  };
}
