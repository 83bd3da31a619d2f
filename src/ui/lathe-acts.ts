/** The lathes that ship and those of the person, and what is done with them. A lathe is a job with a sheet named Lathe. */

import { withCells } from "../job/changes.ts";
import type { JobDocument } from "../job/document.ts";
import { writeJob } from "../job/file.ts";
import type { Job } from "../job/job.ts";
import { isLathe, takeLathe, withInvented } from "../job/lathe.ts";
import { namedArea } from "../job/named.ts";
import { readSoon } from "../job/read-far.ts";
import { startReading } from "./far-thread.ts";
import type { LatheAct, LatheCard } from "./lathe-dialog.ts";
import { namedText } from "./operations.ts";
import type { PageActs } from "./page-acts.ts";
import { reckonedJob } from "./reckoned-job.ts";
import { templates } from "./templates.ts";

interface Lathe extends LatheCard {
  readonly document: JobDocument;
}

/** A lathe of the person's own is laid out as this one. */
const layout = "lathe-metric";

/** Values of a lathe that are told by their names. */
const mostNamed = 9;

export class LatheActs {
  lathes: readonly Lathe[] = [];

  constructor(private readonly acts: PageActs) {}

  async show(): Promise<void> {
    if (!this.acts.job || !this.acts.commit()) return;
    await this.acts.parts.desk.flush();
    await this.read();
    (await this.acts.parts.panel("lathe-dialog"))?.show();
    await this.acts.parts.draw();
  }

  /** What the job in hand takes from a lathe, in words. */
  get takes(): string {
    const { job } = this.acts;
    const lathe = this.lathes[0];
    if (!job || !lathe || !this.acts.parts.element("lathe-dialog")?.open) return "";
    const names = new Set(Object.keys(job.document.names).map((name) => name.toLowerCase()));
    const shared = Object.keys(lathe.document.names).filter((name) => name !== "unit" && names.has(name));
    const said = shared.slice(0, mostNamed).map((name) => name.replaceAll("_", " "));
    const more = shared.length - said.length;
    return [...said, ...(more > 0 ? [`and ${more} more`] : [])].join(", ");
  }

  async did(did: LatheAct): Promise<void> {
    const { acts } = this;
    const dialog = acts.parts.element("lathe-dialog");
    if (did.act === "keep") await acts.attempt(() => this.keep(did.name));
    else {
      const lathe = this.lathes.find(({ id }) => id === did.id);
      if (!lathe) return;
      if (did.act === "take") await this.take(lathe);
      else await acts.attempt(() => this.open(lathe));
      dialog?.close();
    }
    await acts.parts.draw();
  }

  private async take(lathe: Lathe): Promise<void> {
    const { job } = this.acts;
    if (!job) return;
    const { edits, taken, left } = takeLathe(job, await reckonedJob(lathe.document));
    this.acts.command(() => job.setCells(edits, `Lathe taken over: ${lathe.name}`));
    if (left.length > 0)
      this.acts.parts.said.alarm(`${taken.length} values taken over; not taken: ${left.join("; ")}.`);
  }

  private async open(lathe: Lathe): Promise<void> {
    const { desk } = this.acts.parts;
    if (lathe.mine) await desk.openKept(lathe.id);
    else await desk.openText(writeJob(ownOf(lathe)));
  }

  /** Makes a lathe of the person's own from the values of the job in hand. */
  private async keep(name: string): Promise<void> {
    const { job } = this.acts;
    const plan = this.lathes.find(({ id }) => id === layout);
    const { keep } = this.acts.parts.desk;
    if (!job || !plan) return;
    if (!keep) throw new Error("this browser keeps nothing, so the lathe cannot be kept");
    const lathe = withoutChecks(plan.document, name);
    // Reckoned afresh: the values of the last edit may not be there yet.
    const from = await reckonedJob(job.document);
    const { edits } = takeLathe({ document: lathe }, from);
    const made = withInvented(withCells(lathe, edits), from);
    await keep.write({
      id: crypto.randomUUID(),
      text: writeJob(called(made, name)),
      title: name,
      thread: "",
      route: "o",
      changed: Date.now(),
      revision: 1,
    });
    await this.read();
    this.acts.parts.said.say(`${name} is kept as one of your lathes.`);
  }

  private async read(): Promise<void> {
    const shipped = await Promise.all(
      templates.map(async ({ name, read }) => ({ id: name, text: await read(), mine: false })),
    );
    const kept = (await this.acts.parts.desk.keep?.list().catch(() => undefined)) ?? [];
    const all = [...kept.map(({ id, text }) => ({ id, text, mine: true })), ...shipped];
    const lathes: Lathe[] = [];
    for (const { id, text, mine } of all) {
      const lathe = await latheIn(id, text, mine);
      if (lathe) lathes.push(lathe);
    }
    this.lathes = lathes;
    await this.acts.parts.draw();
  }
}

/** None when the text holds no lathe, or can't be read any more: the shelf says that of a damaged job. */
async function latheIn(id: string, text: string, mine: boolean): Promise<Lathe | undefined> {
  try {
    const document = await readSoon(text, startReading);
    if (!isLathe(document)) return undefined;
    const job = await reckonedJob(document);
    return { id, document, mine, name: namedText(job, "lathe") || document.title, facts: factsOf(job) };
  } catch {
    return undefined;
  }
}

function factsOf(job: Job): string {
  const fact = (label: string, name: string, words: Readonly<Record<string, string>> = {}) => {
    const text = namedText(job, name);
    return text ? [`${label} ${words[text] ?? text}`] : [];
  };
  return [
    ...fact("leadscrew", "leadscrew"),
    ...fact("top slide division", "slide_division"),
    ...fact("cross slide division", "cross_division"),
    ...fact("scale zeroed", "zero_line", zeroWords),
  ].join(", ");
}

const zeroWords = {
  square: "square to the bed",
  bed: "along the bed",
  obtuse: "along the bed, at its far end",
};

/** A lathe that ships is invented; what is made of it is the person's, under a name that tells the two apart. */
function ownOf({ document, name }: Lathe): JobDocument {
  const mine = `${name}, mine`;
  return called(withoutChecks(document, mine), mine);
}

/** The lathe under another name, as its sheet has it. */
function called(lathe: JobDocument, name: string): JobDocument {
  const at = namedArea({ document: lathe }, "lathe");
  return at ? withCells(lathe, [{ sheet: at.sheet, row: at.top, column: at.left, text: name }]) : lathe;
}

function withoutChecks(document: JobDocument, title: string): JobDocument {
  return { ...document, title, purpose: "A lathe of your own.", scenario: "", source: "", check: {} };
}
