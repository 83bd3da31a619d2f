/** Titles that tell one job from another. */

/** This title, with a number where another job has it: "Full thread job 2". */
export function freeTitle(title: string, taken: readonly string[]): string {
  if (!taken.includes(title)) return title;
  // A copy of a numbered copy goes on counting; a number that is part of a title stays.
  const numbered = /^(.+) \d+$/.exec(title)?.[1];
  const stem = numbered !== undefined && taken.includes(numbered) ? numbered : title;
  let n = 2;
  while (taken.includes(`${stem} ${n}`)) n += 1;
  return `${stem} ${n}`;
}
