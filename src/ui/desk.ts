/**
 * The job on the desk: which one is open, where the person stands in it, and how it gets into the keep and out of it.
 * Knows no element; the shell shows what stands here.
 */

import { createFarJob } from "../job/far-job.ts";
import { JobFileError, prepareText, writeJob } from "../job/file.ts";
import { partsOf } from "../job/file-parts.ts";
import type { Job, JobChange } from "../job/job.ts";
import { readSoon, type Source } from "../job/read-far.ts";
import { Autosave, type Saved, type Snapshot } from "./autosave.ts";
import { far, startReading } from "./far-thread.ts";
import { Damaged, isKeptJob, Keep, type Standing } from "./keep.ts";
import { later, pause } from "./later.ts";
import { namedText, operationsOf } from "./operations.ts";
import { OtherPages } from "./other-pages.ts";
import { ownTask } from "./own-task.ts";
import { reckoned } from "./reckoned.ts";
import { templates } from "./templates.ts";
import { ValueKeep } from "./value-keep.ts";

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** What the desk tells the shell. */
export interface DeskListener {
  /** Another job is about to take the place of the one on the desk: what is being typed belongs to that. */
  leaving(): void;
  /** Another job is on the desk, or none was before. */
  opened(): void;
  /** The job changed; `what` names the step. */
  changed(what: string): void;
  /** Whether it is kept, or whether another page has the job, has changed. */
  savedChanged(): void;
  /** A sentence for the person about something that went wrong. */
  trouble(text: string): void;
}

/** Remembers the job of this tab over a reload; another tab may have another one. */
const tabPlace = "halfangle.job";

export class Desk {
  job: Job | undefined;
  sheet = "";
  saved: Saved = { state: "not yet" };
  /** Why the browser keeps nothing, once that is known. */
  noKeep: string | undefined;
  keep: Keep | undefined;
  private id = "";
  private cells: Record<string, Place> = {};
  /** Names of the sheets, in order, as they were after the last step. */
  private sheets: readonly string[] = [];
  private autosave: Autosave | undefined;
  /** What was written last of the route. */
  private written: { readonly job: Job; readonly route: string } | undefined;
  private values: ValueKeep | undefined;
  private stop: (() => void) | undefined;
  private readonly pages: OtherPages;

  constructor(private readonly listener: DeskListener) {
    this.pages = new OtherPages(
      () => listener.savedChanged(),
      (revision) => this.autosave?.overtakenBy(revision),
    );
  }

  get openId(): string {
    return this.id;
  }

  /** True while another tab has the same job open. */
  get shared(): boolean {
    return this.pages.shared;
  }

  /** Where the person stood on the sheet in hand. */
  get place(): Place {
    return this.cells[this.sheet] ?? { row: 0, column: 0 };
  }

  /** Opens the keep and the job of last time; on a first visit the first template. Never rejects. */
  async start(): Promise<void> {
    try {
      this.keep = await Keep.open();
    } catch (error) {
      this.noKeep = reasonOf(error);
    }
    const last = await this.lastId();
    if (last !== undefined && (await this.openKept(last))) return;
    await this.startTemplate();
  }

  /** @returns false when there was nothing to open; what stood in the way has then been said */
  async openKept(id: string): Promise<boolean> {
    if (!this.keep) return false;
    let found: unknown;
    try {
      found = await this.keep.read(id);
      if (found === undefined) return false;
      if (!isKeptJob(found)) throw new Damaged("the record is damaged");
      const job = await running(
        await this.keep.source(found),
        await this.keep.values(found.id, found.revision),
      );
      await this.put(job, found.id, found.revision, await this.keep.standing(id).catch(() => undefined));
      this.saved = { state: "kept", when: found.changed, revision: found.revision };
      this.listener.savedChanged();
      return true;
    } catch (error) {
      const reason = reasonOf(error);
      // Whatever else stood in the way may be gone the next time.
      const aside =
        (error instanceof Damaged || error instanceof JobFileError) &&
        (await this.keep.setAside(id, reason).then(
          () => true,
          () => false,
        ));
      const title = isKeptJob(found) ? `"${found.title}"` : "A kept job";
      this.listener.trouble(
        `${title} can't be read: ${reason}.${aside ? " It has been set aside on this device, unchanged." : ""}`,
      );
      return false;
    }
  }

  /** Opens a copy of a template: the given text, else the first that ships. */
  async startTemplate(text?: string): Promise<void> {
    const given = text ?? (await templates[0]?.read());
    if (given === undefined) this.listener.trouble("This build ships no template job. Open a job file.");
    else await this.openText(given);
  }

  /** @throws what readJob throws; the job on the desk then stays as it is */
  async openText(source: Source, stop?: AbortSignal): Promise<void> {
    const job = await running(source, undefined, stop);
    await this.put(job, crypto.randomUUID(), 0);
    this.autosave?.touch();
  }

  /** The job as a file. */
  async file(): Promise<Blob> {
    const document = this.job?.document;
    if (!document) return new Blob();
    const texts = partsOf(document) ?? [{ text: () => writeJob(document) }];
    const parts: Blob[] = [];
    for (const part of texts) {
      if (parts.length > 0) await pause();
      parts.push(new Blob([part.text()]));
    }
    return new Blob(parts, { type: "application/json" });
  }

  /** Goes on under a name of its own, after another tab has written the job it came from. */
  async keepAsCopy(): Promise<void> {
    if (!this.job) return;
    const standing = { sheet: this.sheet, cells: this.cells };
    await this.put(this.job, crypto.randomUUID(), 0, standing);
    this.autosave?.touch();
  }

  chooseSheet(sheet: string): void {
    this.sheet = sheet;
    this.stand();
  }

  choosePlace(place: Place): void {
    this.cells = { ...this.cells, [this.sheet]: place };
    this.stand();
  }

  /** The operation in hand may have got another name, by an undo too, or be gone: then the one in its place is. */
  private followSheets(names: readonly string[]): void {
    const before = this.sheets;
    this.sheets = names;
    const gone = before.filter((name) => !names.includes(name));
    const come = names.filter((name) => !before.includes(name));
    const [from] = gone;
    const [to] = come;
    const renamed = gone.length === 1 && come.length === 1 && before.length === names.length;
    if (renamed && from !== undefined && to !== undefined) {
      const { [from]: place, ...others } = this.cells;
      this.cells = place ? { ...others, [to]: place } : others;
      if (this.sheet === from) this.sheet = to;
    }
    if (!names.includes(this.sheet))
      this.sheet = names[Math.min(before.indexOf(this.sheet), names.length - 1)] ?? names[0] ?? "";
  }

  flush(): Promise<void> {
    return this.autosave?.flush() ?? Promise.resolve();
  }

  /** The page goes away, or into the background where it may be ended without another word. */
  leaving(): void {
    this.autosave?.flushAtOnce();
  }

  private async lastId(): Promise<string | undefined> {
    const ofTab = remembered();
    if (ofTab) return ofTab;
    return this.keep?.lastOpen().catch(() => undefined);
  }

  private async put(job: Job, id: string, revision: number, standing?: Standing): Promise<void> {
    await this.flush().catch(() => undefined);
    this.listener.leaving();
    this.autosave?.flushAtOnce();
    this.autosave?.stop();
    this.values?.stop();
    this.stop?.();
    if (this.job !== job) this.job?.close();
    this.job = job;
    this.id = id;
    this.cells = { ...standing?.cells };
    const { sheets } = job.document;
    this.sheets = sheets.map(({ name }) => name);
    this.sheet = sheets.find(({ name }) => name === standing?.sheet)?.name ?? sheets[0]?.name ?? "";
    this.saved = this.noKeep === undefined ? { state: "not yet" } : { state: "failing", reason: this.noKeep };
    this.autosave =
      this.keep &&
      new Autosave(
        this.keep,
        id,
        revision,
        () => this.snapshot(job),
        (saved) => this.report(saved),
        () => this.shared,
        () => this.readyFor(job),
      );
    const { autosave } = this;
    this.values = this.keep && new ValueKeep(this.keep, id, job, () => autosave?.settled);
    this.values?.touch();
    this.stop = job.subscribe((change) => this.onChange(change));
    remember(id);
    void this.keep?.setLastOpen(id).catch(() => undefined);
    this.pages.open(id);
    this.listener.opened();
  }

  private onChange({ what, document: { sheets }, values, trouble }: JobChange) {
    if (trouble !== undefined) this.listener.trouble(trouble);
    this.values?.touch();
    // Values that were still being reckoned: nothing to keep.
    if (values) {
      // What the shelf shows of the job comes of them.
      const { job, written } = this;
      if (job && written?.job === job && !job.reckoning && routeOf(job) !== written.route)
        this.autosave?.touch();
      this.listener.changed(what);
      return;
    }
    this.followSheets(sheets.map(({ name }) => name));
    this.autosave?.touch();
    this.listener.changed(what);
  }

  private report(saved: Saved) {
    this.saved = saved;
    if (saved.state === "kept") {
      this.pages.tellWritten(saved.revision);
      this.values?.touch();
    }
    this.listener.savedChanged();
  }

  /** What the shelf shows of a job are values, too: they are waited for, but not long. */
  private readyFor(job: Job): Promise<void> | undefined {
    const prepared = () => (partsOf(job.document) ? undefined : prepareText(job.document, pause));
    return job.reckoning ? reckoned(job, 500).then(prepared) : prepared();
  }

  private snapshot(job: Job): ReturnType<Snapshot> {
    const texts = partsOf(job.document);
    const route = routeOf(job);
    this.written = { job, route };
    return {
      text: texts ? "" : writeJob(job.document),
      texts,
      title: job.document.title,
      thread: namedText(job, "thread") ?? "",
      route,
    };
  }

  private stand() {
    void this.keep?.stand(this.id, { sheet: this.sheet, cells: this.cells }).catch(() => undefined);
  }
}

/** A letter for each operation. */
function routeOf(job: Job): string {
  return operationsOf(job)
    .filter(({ number }) => number !== undefined)
    .map(({ signedOff, cautions, errors }) => {
      if (cautions + errors > 0) return signedOff ? "b" : "c";
      return signedOff ? "s" : "o";
    })
    .join("");
}

async function running(source: Source, before?: unknown, stop?: AbortSignal): Promise<Job> {
  const document = await readSoon(source, startReading, stop, ownTask);
  await ownTask();
  const job = createFarJob(document, far, later, before);
  await ownTask();
  // What the route card shows of it is known before it is drawn: together they would take long.
  operationsOf(job);
  return job;
}

/** What went wrong, in words for the person: without a full stop, since a sentence goes on after it. */
export function reasonOf(error: unknown): string {
  const text = error instanceof Error ? error.message || error.name : String(error);
  return text.replace(/\.$/, "");
}

function remembered(): string | undefined {
  try {
    return sessionStorage.getItem(tabPlace) ?? undefined;
  } catch {
    return undefined;
  }
}

function remember(id: string) {
  try {
    sessionStorage.setItem(tabPlace, id);
  } catch {
    // Then the tab opens the job that was open last in any tab.
  }
}
