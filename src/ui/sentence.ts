/** Words of a command or of the engine, as they stand on the page. */

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A reason, or other words, as a sentence of its own: with a full stop where it has no end. */
export function sentence(words: string): string {
  return `${capital(words)}${/[.!?]$/.test(words) ? "" : "."}`;
}
