/**
 * What is half typed in a cell when the page goes away. It is no part of the job: it may be half of a formula, over a
 * whole one. It is kept beside the job, and offered when the job is opened again.
 */
import { placeName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import type { Job } from "../job/job.ts";
import type { PageActs } from "./page-acts.ts";

interface Draft {
  readonly job: string;
  readonly place: Place;
  readonly text: string;
  /** What the cell held: with something else in it the draft is of no use. */
  readonly before: string;
}

const place = "halfangle.draft";
const mostText = 40;

export class Drafts {
  constructor(private readonly acts: PageActs) {}

  /** The page goes away, or into the background where it may be ended without another word. */
  leaving(): void {
    const { desk, session } = this.acts.parts;
    const { edit } = session;
    if (!edit || edit.text === edit.before || !desk.openId) return;
    const draft: Draft = { job: desk.openId, place: edit.place, text: edit.text, before: edit.before };
    try {
      localStorage.setItem(place, JSON.stringify(draft));
    } catch {
      // Refused or full: then it lasts as long as the page.
    }
  }

  /** The page is looked at again, with what is being typed still in it. */
  back(): void {
    if (keptDraft()?.job === this.acts.parts.desk.openId) forget();
  }

  /** A job is on the desk: offers what was half typed in it. */
  opened(): void {
    const { job, parts } = this.acts;
    const draft = keptDraft();
    if (!job || draft?.job !== parts.desk.openId) return;
    forget();
    const { sheet, row, column } = draft.place;
    if (!job.document.sheets.some(({ name }) => name === sheet)) return;
    if (job.cell(sheet, row, column).text !== draft.before) return;
    const text = draft.text.length > mostText ? `${draft.text.slice(0, mostText)}…` : draft.text;
    const asked = `As the page was closed, this was half typed in ${placeName(draft.place)}: ${text}`;
    parts.said.alarm(asked, [{ word: "Go on typing it", act: () => void this.goOn(job, draft) }], "draft");
  }

  private async goOn(job: Job, { place: at, text }: Draft): Promise<void> {
    const { parts } = this.acts;
    if (job !== this.acts.job || !this.acts.commit()) return;
    this.acts.choose(at.sheet);
    await parts.draw();
    const grid = parts.element("sheet-grid");
    await grid?.updateComplete;
    await grid?.goTo(at.row, at.column, { focus: true });
    parts.session.begin(job, { text, where: "cell" });
    parts.session.update({ replacing: false });
  }
}

function forget(): void {
  try {
    localStorage.removeItem(place);
  } catch {
    // Nothing was kept there, then.
  }
}

function keptDraft(): Draft | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(place) ?? "null");
    return isDraft(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

function isDraft(kept: unknown): kept is Draft {
  if (typeof kept !== "object" || kept === null) return false;
  const { job, place: at, text, before } = kept as Record<string, unknown>;
  if (typeof job !== "string" || typeof text !== "string" || typeof before !== "string") return false;
  if (typeof at !== "object" || at === null) return false;
  const { sheet, row, column } = at as Record<string, unknown>;
  const whole = [row, column].every((line) => Number.isInteger(line) && (line as number) >= 0);
  return typeof sheet === "string" && whole;
}
