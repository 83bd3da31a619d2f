/** How the page tells whether the job is kept. */
import type { Saved } from "./autosave.ts";

/** For the title block: "here, 14:06". */
export function savedWords(saved: Saved): string {
  if (saved.state === "kept") return `here, ${clock(saved.when)}`;
  return saved.state === "not yet" ? "not yet" : "not kept";
}

/** For the notes line: why nothing is being kept; "" while all is well. */
export function keepTrouble(saved: Saved): string {
  if (saved.state === "failing") {
    return `Nothing is being kept here: ${saved.reason.replace(/\.$/, "")}. Save to a file.`;
  }
  return saved.state === "overtaken"
    ? "Nothing more is being kept here: another tab has changed this job."
    : "";
}

/** "today 14:06", "yesterday", "18 Nov", "18 Nov 2025". */
export function whenChanged(time: number, now: Date): string {
  const then = new Date(time);
  const days = Math.round((midnight(now) - midnight(then)) / 86_400_000);
  if (days === 0) return `today ${clock(time)}`;
  if (days === 1) return "yesterday";
  const year = then.getFullYear() === now.getFullYear() ? {} : ({ year: "numeric" } as const);
  return then.toLocaleDateString("en-GB", { day: "numeric", month: "short", ...year });
}

/** "28 Nov 2026, 14:06", the same in every country. */
export function dateAndTime(time: number): string {
  const day = { day: "numeric", month: "short", year: "numeric" } as const;
  return `${new Date(time).toLocaleDateString("en-GB", day)}, ${clock(time)}`;
}

function clock(time: number): string {
  const then = new Date(time);
  return [then.getHours(), then.getMinutes()].map((part) => String(part).padStart(2, "0")).join(":");
}

function midnight(day: Date): number {
  return new Date(day.getFullYear(), day.getMonth(), day.getDate()).getTime();
}
