/** What the shelf asks for, done with the keep and the desk. */
import { readJob, writeJob } from "../job/file.ts";
import { freeTitle } from "../job/titles.ts";
import { setTitle } from "../job/whole-sheets.ts";
import { fileName, saveBlob } from "./files.ts";
import { isKeptJob, type KeptJob } from "./keep.ts";
import type { PageActs } from "./page-acts.ts";
import type { ShelfAct, ShelfDialog } from "./shelf-dialog.ts";
import { type TemplateCard, templateCards } from "./templates.ts";

const emptyJob = JSON.stringify({
  format: "halfangle job",
  version: 1,
  title: "Empty job",
  sheets: [{ name: "Sheet 1", cells: {} }],
});

export class ShelfActs {
  /** The person's own jobs, newest first. */
  kept: ShelfDialog["jobs"] = [];
  rack: readonly TemplateCard[] = [];
  /** Records of jobs that were deleted, as they were then: the list may have been older. */
  private readonly removed = new Map<string, Promise<KeptJob | undefined>>();

  constructor(private readonly acts: PageActs) {}

  async show(): Promise<void> {
    this.acts.commit();
    await this.acts.parts.desk.flush();
    await this.read();
    (await this.acts.parts.panel("shelf-dialog"))?.show();
  }

  async did(did: ShelfAct): Promise<void> {
    const { acts } = this;
    const { desk, intake } = acts.parts;
    const close = () => acts.parts.element("shelf-dialog")?.close();
    if (did.act === "file") intake.choose();
    if (did.act === "save") void acts.saveFile();
    if (did.act === "threads") {
      const list = await acts.parts.panel("thread-list");
      // Why there is none has been said, and stands behind the shelf.
      if (list) list.show();
      else close();
    }
    if (did.act === "rename") await this.rename(did.id, did.title);
    if (did.act === "copy") await this.copy(did.id);
    if (did.act === "export") await this.export(did.id);
    if (did.act === "remove") await acts.attempt(async () => this.remove(did.id));
    if (did.act === "restore") await acts.attempt(() => this.restore(did.id));
    if (did.act === "open" && acts.commit() && (await desk.openKept(did.id))) close();
    if ((did.act === "start" || did.act === "empty") && acts.commit()) {
      await acts.attempt(async () => {
        const text = did.act === "start" ? await did.template.read() : emptyJob;
        await desk.openText(await this.fresh(text));
        close();
      });
    }
    await this.read();
  }

  /** The text of a job that starts, under a title of its own. */
  private async fresh(text: string): Promise<string> {
    const document = readJob(text);
    return writeJob({ ...document, title: freeTitle(document.title, await this.titles()) });
  }

  /** Goes on with what is here as a job of its own, after another tab has written the one it came from. */
  async keepAsCopy(): Promise<void> {
    const { desk } = this.acts.parts;
    const kept = (await desk.keep?.list().catch(() => undefined)) ?? [];
    await desk.keepAsCopy();
    const { job } = desk;
    if (job)
      setTitle(
        job,
        freeTitle(
          job.document.title,
          kept.map(({ title }) => title),
        ),
      );
  }

  private async titles(): Promise<readonly string[]> {
    await this.acts.parts.desk.flush();
    const kept = (await this.acts.parts.desk.keep?.list().catch(() => undefined)) ?? [];
    return kept.map(({ title }) => title);
  }

  private remove(id: string): Promise<KeptJob | undefined> | undefined {
    const record = this.acts.parts.desk.keep?.remove(id);
    if (record) this.removed.set(id, record);
    return record;
  }

  private async restore(id: string): Promise<void> {
    const record = await this.removed.get(id);
    if (!record) throw new Error("another tab had deleted this job before: take that back there");
    await this.acts.parts.desk.keep?.restore(record);
    this.removed.delete(id);
  }

  private async rename(id: string, title: string): Promise<void> {
    const { acts } = this;
    const { desk } = acts.parts;
    if (id === desk.openId) {
      acts.command(() => acts.job && setTitle(acts.job, title));
      await desk.flush();
      return;
    }
    await acts.attempt(async () => {
      const record = await this.record(id);
      const text = writeJob({ ...readJob(record.text), title });
      const next = { ...record, text, title, changed: Date.now(), revision: record.revision + 1 };
      if (!(await desk.keep?.write(next))) throw new RangeError("another tab has changed this job");
    });
  }

  private async copy(id: string): Promise<void> {
    await this.acts.attempt(async () => {
      await this.acts.parts.desk.flush();
      const record = await this.record(id);
      const title = freeTitle(record.title, await this.titles());
      const text = writeJob({ ...readJob(record.text), title });
      const copy = { ...record, id: crypto.randomUUID(), text, title, changed: Date.now(), revision: 1 };
      await this.acts.parts.desk.keep?.write(copy);
    });
  }

  private async export(id: string): Promise<void> {
    await this.acts.attempt(async () => {
      await this.acts.parts.desk.flush();
      const { keep } = this.acts.parts.desk;
      const record = await keep?.read(id);
      if (!keep || !isKeptJob(record)) throw new RangeError("the record is damaged");
      const { title } = record;
      saveBlob(fileName(title), new Blob([await keep.source(record)], { type: "application/json" }));
      this.acts.parts.said.say(`Saved to the file ${fileName(title)}.`);
    });
  }

  /** @throws RangeError when it is not there or damaged */
  private async record(id: string): Promise<KeptJob> {
    const found = await this.acts.parts.desk.keep?.read(id);
    if (!isKeptJob(found)) throw new RangeError("the record is damaged");
    // Its text would have to be read as a whole, and there is room for that in a worker only.
    if (found.parts !== undefined) throw new RangeError("a job as large as this one is opened first");
    return found;
  }

  private async read(): Promise<void> {
    this.kept = (await this.acts.parts.desk.keep?.list().catch(() => undefined)) ?? [];
    if (this.rack.length === 0) this.rack = await templateCards();
    await this.acts.parts.draw();
  }
}
