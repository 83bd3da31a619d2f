/** Sheets and jobs made up for a test, empty but for what the test is about. */
import { emptySheet } from "../../src/job/changes.ts";
import type { JobDocument, SheetDocument } from "../../src/job/document.ts";

export function madeSheet(
  name: string,
  cells: Record<string, string>,
  more: Partial<SheetDocument> = {},
): SheetDocument {
  return { ...emptySheet(name), cells, ...more };
}

export function madeDocument(sheets: readonly SheetDocument[], more: Partial<JobDocument> = {}): JobDocument {
  return {
    format: "halfangle job",
    version: 1,
    title: "Pin",
    purpose: "",
    scenario: "Invented for a test",
    source: "",
    cautions: [],
    names: {},
    sheets,
    check: {},
    ...more,
  };
}
