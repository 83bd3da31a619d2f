/** What the shelf asks for, done with the keep and the desk. */
import type { PageActs } from "./page-acts.ts";
import type { ShelfAct, ShelfDialog } from "./shelf-dialog.ts";
import { type TemplateCard, templateCards } from "./templates.ts";

export class ShelfActs {
  /** The person's own jobs, newest first. */
  kept: ShelfDialog["jobs"] = [];
  rack: readonly TemplateCard[] = [];

  constructor(private readonly acts: PageActs) {}

  async show(): Promise<void> {
    this.acts.commit();
    await this.acts.parts.desk.flush();
    await this.read();
    this.acts.parts.element("shelf-dialog")?.show();
  }

  async did(did: ShelfAct): Promise<void> {
    const { acts } = this;
    const { desk, intake } = acts.parts;
    const { keep } = desk;
    const close = () => acts.parts.element("shelf-dialog")?.close();
    if (did.act === "file") intake.choose();
    if (did.act === "save") acts.saveFile();
    if (did.act === "threads") acts.parts.element("thread-list")?.show();
    if (did.act === "remove") await acts.attempt(async () => keep?.remove(did.id));
    if (did.act === "restore") await acts.attempt(async () => keep?.write({ ...did.job, revision: 1 }));
    if (did.act === "open" && acts.commit() && (await desk.openKept(did.id))) close();
    if (did.act === "start" && acts.commit()) {
      await acts.attempt(async () => {
        await desk.openText(await did.template.read());
        close();
      });
    }
    await this.read();
  }

  private async read(): Promise<void> {
    this.kept = (await this.acts.parts.desk.keep?.list().catch(() => undefined)) ?? [];
    if (this.rack.length === 0) this.rack = await templateCards();
    await this.acts.parts.draw();
  }
}
