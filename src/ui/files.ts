/** Job files from and to the person's disk. */

/** A job file of a few hundred KB is large; past this it is something else, and reading it would only stall the page. */
const largest = 20 * 1024 * 1024;

/** @throws RangeError when the file is too large to be a job */
export async function readText(file: File): Promise<string> {
  if (file.size > largest) {
    throw new RangeError(
      `${file.name} has ${Math.round(file.size / 1024 / 1024)} MB; a job file has 20 MB at most`,
    );
  }
  return file.text();
}

/** Hands `text` to the browser as a download. */
export function saveText(name: string, text: string): void {
  saveBlob(name, new Blob([text], { type: "application/json" }));
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
