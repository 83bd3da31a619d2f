/**
 * Reading a large job file in a worker. What it holds comes back in parts, so that the page has its turn between them.
 */
import { cellsOf, type Packed, PackedCells, type Piece, packedOf } from "../engine/packed-cells.ts";
import type { JobDocument } from "./document.ts";
import { formulasOf } from "./error-count.ts";
import { JobFileError, readJob, readJobInTurns } from "./file.ts";
import { type Cells, fromSlabs, lastUsed, slabsIn } from "./large-cells.ts";
import { readableCells } from "./readings.ts";

/** As it is sent: packed where that is less. */
type Slab = { readonly packed: Packed } | { readonly cells: Cells };

/** From the worker. */
export type FilePart =
  | { readonly part: "job"; readonly document: JobDocument }
  | { readonly part: "slabs"; readonly sheet: number; readonly slabs: readonly Slab[] }
  | { readonly part: "end" }
  | { readonly part: "refused"; readonly line: number; readonly reason: string }
  /** The fault is not in the job. */
  | { readonly part: "failed"; readonly reason: string };

/** Starts a worker that reads `source`. @returns the way to end it */
export type StartReading = (
  source: Source,
  heard: (part: FilePart) => void,
  died: (reason: string) => void,
) => () => void;

/** Shorter files are read before anyone could notice. */
export const longFile = 150_000;
/** The longest file that is read on the page itself. */
const mostHere = 8_000_000;
/** Cells sent at once, packed ones counted for less: the page takes them over in a few ms. */
const together = 8000;

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
  for (const [sheet, own] of slabs.entries()) {
    let some: Slab[] = [];
    let count = 0;
    for (const piece of own) {
      const cells = cellsOf(piece);
      const packed = packedOf(cells);
      some.push(packed ? { packed } : { cells });
      count += packed ? 64 + Object.keys(packed.notable).length : Object.keys(cells).length;
      if (count < together) continue;
      post({ part: "slabs", sheet, slabs: some });
      some = [];
      count = 0;
    }
    if (some.length > 0) post({ part: "slabs", sheet, slabs: some });
  }
  post({ part: "end" });
}

/** The same for whatever the page has sent. A promise that is broken in a worker is heard by nobody: it is told. */
export async function readForPage(source: Source, post: (part: FilePart) => void): Promise<void> {
  try {
    readInParts(typeof source === "string" ? source : await source.text(), post);
  } catch (error) {
    post({ part: "failed", reason: error instanceof Error ? error.message : String(error) });
  }
}

/** What the page asks of all slabs as soon as it has them is found part by part, each when its part comes. */
function lookThrough(cells: Cells): void {
  readableCells(cells);
  formulasOf({ cells });
  lastUsed(cells);
}

/** The text of a job file, or the file itself. */
export type Source = string | Blob;

/**
 * Reads and checks a job file, a long one in a worker.
 *
 * @param stop ends the reading
 * @param turn lets the page have its turn where a short file is read on its thread
 * @returns rejects with JobFileError as readJob does
 */
export async function readSoon(
  source: Source,
  start: StartReading,
  stop?: AbortSignal,
  turn: () => Promise<unknown> = async () => {},
): Promise<JobDocument> {
  const size = typeof source === "string" ? source.length : source.size;
  const here = async () => readJobInTurns(typeof source === "string" ? source : await source.text(), turn);
  if (size < longFile) return here();
  let document: JobDocument | undefined;
  let reason = "";
  const slabs = new Map<number, Piece[]>();
  let end = () => {};
  try {
    await new Promise<void>((done, fail) => {
      const heard = (part: FilePart) => {
        if (part.part === "job") document = part.document;
        else if (part.part === "slabs") {
          const own = slabs.get(part.sheet) ?? [];
          slabs.set(part.sheet, own);
          const come = part.slabs.map((one) => ("packed" in one ? new PackedCells(one.packed) : one.cells));
          own.push(...come);
          lookThrough(fromSlabs(come));
        } else if (part.part === "refused") fail(new JobFileError(part.line, part.reason));
        else if (part.part === "failed") died(part.reason);
        else done();
      };
      const died = (why: string) => {
        document = undefined;
        reason = why;
        done();
      };
      end = start(source, heard, died);
      stop?.addEventListener("abort", () => fail(new Error("reading was stopped")));
    });
  } finally {
    end();
  }
  if (!document) {
    // Without a worker it is read here: better late than not at all. What a worker has no room for, the page has not either.
    if (size < mostHere) return here();
    throw new RangeError(`there is no worker that could read ${Math.round(size / 1e6)} MB (${reason})`);
  }
  const sheets = document.sheets.map((sheet, i) => {
    const own = slabs.get(i);
    return own ? { ...sheet, cells: fromSlabs(own) } : sheet;
  });
  return { ...document, sheets };
}
