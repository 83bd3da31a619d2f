/**
 * Reading a large job file in a worker. What it holds comes back in parts, so that the page has its turn between them.
 */
import type { JobDocument } from "./document.ts";
import { JobFileError, readJob } from "./file.ts";
import { type Cells, fromSlabs, slabsIn } from "./large-cells.ts";

/** From the worker. */
export type FilePart =
  | { readonly part: "job"; readonly document: JobDocument }
  | { readonly part: "slabs"; readonly sheet: number; readonly slabs: Cells[] }
  | { readonly part: "end" }
  | { readonly part: "refused"; readonly line: number; readonly reason: string };

/** Starts a worker that reads `text`. @returns the way to end it */
export type StartReading = (
  text: string,
  heard: (part: FilePart) => void,
  died: (reason: string) => void,
) => () => void;

/** Shorter files are read before anyone could notice. */
export const longFile = 150_000;
/** Slabs sent at once: the page takes them over in a few ms. */
const together = 24;

/** The worker's side. */
export function readInParts(text: string, post: (part: FilePart) => void): void {
  let document: JobDocument;
  try {
    document = readJob(text);
  } catch (error) {
    if (!(error instanceof JobFileError)) throw error;
    post({ part: "refused", line: error.line, reason: error.reason });
    return;
  }
  const slabs = document.sheets.map(({ cells }) => slabsIn(cells));
  const sheets = document.sheets.map((sheet, i) => (slabs[i]!.length > 0 ? { ...sheet, cells: {} } : sheet));
  post({ part: "job", document: { ...document, sheets } });
  for (const [sheet, own] of slabs.entries())
    for (let from = 0; from < own.length; from += together)
      post({ part: "slabs", sheet, slabs: own.slice(from, from + together) });
  post({ part: "end" });
}

/**
 * Reads and checks a job file, a long one in a worker.
 *
 * @returns rejects with JobFileError as readJob does
 */
export async function readSoon(text: string, start: StartReading): Promise<JobDocument> {
  if (text.length < longFile) return readJob(text);
  let document: JobDocument | undefined;
  const slabs = new Map<number, Cells[]>();
  let end = () => {};
  try {
    await new Promise<void>((done, fail) => {
      const heard = (part: FilePart) => {
        if (part.part === "job") document = part.document;
        else if (part.part === "slabs")
          slabs.set(part.sheet, [...(slabs.get(part.sheet) ?? []), ...part.slabs]);
        else if (part.part === "refused") fail(new JobFileError(part.line, part.reason));
        else done();
      };
      // Without a worker it is read here: better late than not at all.
      end = start(text, heard, () => done());
    });
  } finally {
    end();
  }
  if (!document) return readJob(text);
  const sheets = document.sheets.map((sheet, i) => {
    const own = slabs.get(i);
    return own ? { ...sheet, cells: fromSlabs(own) } : sheet;
  });
  return { ...document, sheets };
}
