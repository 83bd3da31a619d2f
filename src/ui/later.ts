/** Runs work after the page has had its turn: what the person did meanwhile is heard, and what changed is painted. */
export function later(work: () => void): void {
  setTimeout(work);
}

/** Settles after the page has had its turn. */
export function pause(): Promise<void> {
  return new Promise((done) => later(done));
}
