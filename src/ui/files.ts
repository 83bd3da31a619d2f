/** Job files from and to the person's disk. */
import { longestFile } from "../job/file.ts";
import { longFile, type Source } from "../job/read-far.ts";

/**
 * What the person has chosen: a long file as it is, since only the worker that reads it needs its text.
 * @throws RangeError when the file is too large to be a job
 */
export async function readSource(file: File): Promise<Source> {
  if (file.size > longestFile) {
    const size = (bytes: number) => Math.round(bytes / 1e6);
    throw new RangeError(
      `${file.name} has ${size(file.size)} MB; a job file has ${size(longestFile)} MB at most`,
    );
  }
  return file.size < longFile ? file.text() : file;
}

/** Hands a file to the browser as a download. */
export function saveBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A title as a file name that every system takes. */
export function fileName(title: string): string {
  const plain = title
    .normalize("NFKD")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60)
    .toLowerCase();
  return `${plain || "job"}.json`;
}
