/** Commands on whole sheets and on the job: a copy of a sheet, the title, and names under another name. */
import { sheetPrefix } from "../engine/address.ts";
import { renameSheetIn } from "../engine/formula.ts";
import type { JobDocument } from "./document.ts";
import { renameIn } from "./formula-text.ts";
import type { Job } from "./job.ts";
import { textsIn, tooManyCells } from "./large-cells.ts";
import { inPlace } from "./moves.ts";
import { nameProblem, sheetNameProblem } from "./names.ts";

/**
 * Puts a copy of a sheet after it. Formulas of the copy that point to cells of the sheet point to those of the copy;
 * names keep pointing to the first one.
 *
 * @returns the name of the copy; undefined when there is no such sheet
 */
export function duplicateSheet(job: Job, name: string): string | undefined {
  const { sheets } = job.document;
  const at = sheets.findIndex((sheet) => sheet.name === name);
  const found = sheets[at];
  if (!found) return undefined;
  const others = sheets.map((sheet) => sheet.name);
  const stem = name.replace(/ \d+$/, "").slice(0, 50);
  let copy = "";
  for (let n = 2; copy === "" || sheetNameProblem(copy, others); n++) copy = `${stem} ${n}`;
  const { operation, signedOff: _, signedFor: __, ...unsigned } = found;
  // What is no operation stays none.
  const rest = operation === 0 ? { ...unsigned, operation } : unsigned;
  const cells = Object.fromEntries(
    textsIn(found.cells).map(([key, text]) => [
      key,
      text.startsWith("=") ? renameSheetIn(text, name, sheetPrefix(copy)) : text,
    ]),
  );
  job.put(
    {
      ...job.document,
      sheets: [...sheets.slice(0, at + 1), { ...rest, name: copy, cells }, ...sheets.slice(at + 1)],
    },
    `Made the sheet ${copy}, a copy of ${name}`,
    { to: (place) => place, from: (place) => (place.sheet === copy ? { ...place, sheet: name } : place) },
  );
  return copy;
}

/** @returns why the job cannot be called that; undefined when it is */
export function setTitle(job: Job, title: string): string | undefined {
  const kept = title.trim();
  if (kept === "") return "a job has a title";
  if (kept.length > 200) return `a title may have 200 characters, this one has ${kept.length}`;
  if (kept !== job.document.title) job.put({ ...job.document, title: kept }, `Called the job ${kept}`);
  return undefined;
}

/**
 * Gives a name another spelling, in every formula too.
 *
 * @returns why it cannot be done; undefined when it is done
 */
export function renameName(job: Job, from: string, to: string): string | undefined {
  const { names } = job.document;
  if (!Object.hasOwn(names, from)) return `there is no name ${from}`;
  if (from === to) return undefined;
  const taken = Object.keys(names).find((name) => name !== from && name.toLowerCase() === to.toLowerCase());
  const problem = nameProblem(to) ?? (taken === undefined ? undefined : `there is a name ${taken} already`);
  if (problem !== undefined) return problem;
  const many = tooManyCells(job.document.sheets);
  if (many !== undefined) return many;
  job.put(withNameRenamed(job.document, from, to), `Renamed ${from} to ${to}`, inPlace);
  return undefined;
}

function withNameRenamed(document: JobDocument, from: string, to: string): JobDocument {
  return {
    ...document,
    names: Object.fromEntries(
      Object.entries(document.names).map(([name, target]) => [name === from ? to : name, target]),
    ),
    sheets: document.sheets.map((sheet) => ({
      ...sheet,
      cells: Object.fromEntries(textsIn(sheet.cells).map(([key, text]) => [key, renameIn(text, from, to)])),
      formats: Object.fromEntries(
        Object.entries(sheet.formats).map(([key, format]) => [
          key,
          String(format.perTurn).toLowerCase() === from.toLowerCase() ? { ...format, perTurn: to } : format,
        ]),
      ),
    })),
  };
}
