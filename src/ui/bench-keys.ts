/** Which key does what at the bench: any that is not named here goes on. */

export const backKeys: ReadonlySet<string> = new Set(["ArrowLeft", "ArrowUp", "Backspace", "PageUp"]);

/** Keys that do nothing here. */
export function isQuiet(key: string): boolean {
  return quiet.has(key) || /^F\d/.test(key);
}

const quiet = new Set([
  "Tab",
  "Shift",
  "Control",
  "Alt",
  "Meta",
  "CapsLock",
  "NumLock",
  "Escape",
  "ContextMenu",
  "Dead",
]);

/** A key that begins a number is the first of a reading, and never the one that goes on. */
export function beginsNumber(key: string): boolean {
  return /^[\d.,\-−]$/.test(key);
}
