import { html, LitElement } from "lit";
import { customElement, query, state } from "lit/decorators.js";
import { appStyle } from "./app-style.ts";
import { Desk, reasonOf, sentence } from "./desk.ts";
import { EditSession } from "./edit-session.ts";
import "./entry-line.ts";
import { FileIntake } from "./file-intake.ts";
import { fileName, saveText } from "./files.ts";
import { type Layout, layoutFor, roomForWords } from "./layout.ts";
import { stayOffline } from "./offline.ts";
import { factsOf, namedText, operationsOf } from "./operations.ts";
import "./rail-words.ts";
import type { Word } from "./rail-words.ts";
import "./route-card.ts";
import type { RouteAct, RouteCard } from "./route-card.ts";
import "./said.ts";
import type { SaidLine } from "./said.ts";
import { keepTrouble, savedWords } from "./saved-words.ts";
import { type Hand, Settings } from "./settings.ts";
import "./sheet-grid.ts";
import type { SheetGrid } from "./sheet-grid.ts";
import "./shelf-dialog.ts";
import type { ShelfAct, ShelfDialog } from "./shelf-dialog.ts";
import { type TemplateCard, templateCards } from "./templates.ts";
import "./title-block.ts";
import { wordStyle } from "./word-style.ts";

/** Order of the F6 ring. */
const regions = ["route-card", "rail-words", "entry-line", "sheet-grid", "title-block"] as const;

/** The page: puts the parts together, and turns what they report into commands of the job. */
@customElement("half-angle")
export class HalfAngle extends LitElement {
  static override styles = [wordStyle, appStyle];

  @state() private layout: Layout = "card";
  @state() private narrow = false;
  @state() private low = false;
  @state() private lastly = "";
  @state() private dropping = false;
  @state() private rack: readonly TemplateCard[] = [];
  @state() private kept: ShelfDialog["jobs"] = [];
  @query("said-line") private readonly said!: SaidLine;
  @query("shelf-dialog") private readonly shelf!: ShelfDialog;
  @query("route-card") private readonly route!: RouteCard;
  @query("sheet-grid") private readonly grid!: SheetGrid | null;

  private readonly settings = new Settings();
  private readonly session = new EditSession();
  private readonly desk = new Desk({
    opened: () => this.onOpened(),
    changed: () => this.requestUpdate(),
    savedChanged: () => this.onSaved(),
    trouble: (text) => this.said.alarm(text),
  });
  private readonly intake = new FileIntake({
    take: (name, text) => void this.takeFile(name, text),
    hover: (over) => {
      this.dropping = over;
    },
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.settings.subscribe(() => this.measure());
    addEventListener("resize", () => this.measure());
    addEventListener("keydown", (event) => this.onKey(event));
    addEventListener("pagehide", () => this.desk.leaving());
    document.addEventListener(
      "visibilitychange",
      () => document.visibilityState === "hidden" && this.desk.leaving(),
    );
    this.measure();
  }

  protected override firstUpdated(): void {
    void this.desk.start();
    void stayOffline((change) =>
      this.said.alarm("A newer build of Halfangle is ready.", [
        { word: "Change to it", act: () => void this.desk.flush().then(change) },
      ]),
    );
  }

  override render() {
    const { job, sheet } = this.desk;
    const { layout } = this;
    const operations = job ? operationsOf(job) : [];
    const at = operations.findIndex(({ name }) => name === sheet);
    const operation = operations[at];
    const heading = operation ? `${operation.number} ${operation.name}` : "Halfangle";
    const title = job?.document.title ?? "";
    return html`
      <div class="house ${layout} ${this.dropping ? "dropping" : ""}">
        <button class="skip" @click=${() => this.grid?.focus()}>Skip to the sheet</button>
        <route-card
          .layout=${layout}
          .operations=${operations}
          .here=${sheet}
          .job=${title}
          .scenario=${job?.document.scenario ?? ""}
          @route=${(event: CustomEvent<RouteAct>) => this.onRoute(event.detail)}
        ></route-card>
<header>
        <rail-words
          .layout=${layout}
          .narrow=${this.narrow}
          .heading=${heading}
          .under=${[title, job ? (namedText(job, "thread") ?? "") : ""].filter(Boolean).join(", ")}
          .lastly=${this.lastly}
          .undoes=${job?.canUndo}
          .redoes=${job?.canRedo}
          .ground=${this.settings.ground}
          .large=${this.settings.large}
          .hand=${this.settings.chosenHand}
          .signedOff=${operation?.signedOff ?? false}
          .first=${at <= 0}
          .last=${at === operations.length - 1}
          @word=${(event: CustomEvent<Word>) => this.onWord(event.detail)}
        ></rail-words>
</header>
<main>
        ${
          job
            ? html`<entry-line .job=${job} .session=${this.session}></entry-line>
                <sheet-grid
                  id="sheet"
                  .job=${job}
                  .sheet=${sheet}
                  .session=${this.session}
                  @undo-step=${(event: CustomEvent<"undo" | "redo">) => {
                    event.preventDefault();
                    this.step(event.detail);
                  }}
                  @cell-active=${(event: CustomEvent<{ row: number; column: number }>) => this.desk.choosePlace(event.detail)}
                ></sheet-grid>`
            : html`<p class="wait">Fetching the job from the shelf.</p>`
        }
        <said-line @said=${(event: CustomEvent<string>) => (this.lastly = event.detail)}></said-line>
</main>
<footer>
<title-block
          .layout=${layout}
          .low=${this.low}
          .cautions=${job?.document.cautions ?? []}
          .facts=${job ? factsOf(job, sheet, savedWords(this.desk.saved)) : []}
          .trouble=${keepTrouble(this.desk.saved)}
        ></title-block>
</footer>
        <div class="drop" aria-hidden="true">Open this job file</div>
      </div>
      <shelf-dialog
        .jobs=${this.kept}
        .rack=${this.rack}
        .here=${this.desk.openId}
        .trouble=${this.desk.noKeep ? `This browser keeps no jobs: ${this.desk.noKeep}. Save the job to a file.` : ""}
        @shelf=${(event: CustomEvent<ShelfAct>) => void this.onShelf(event.detail)}
      ></shelf-dialog>
    `;
  }

  protected override updated(): void {
    const { job, sheet } = this.desk;
    if (!job) return;
    const operation = operationsOf(job).find(({ name }) => name === sheet);
    document.title = `${operation ? `${operation.number} ${operation.name} - ` : ""}${job.document.title} - Halfangle`;
  }

  private onOpened() {
    this.lastly = "";
    this.said.settle(alsoOpen);
    this.said.settle(overtaken);
    this.showPlace();
    this.requestUpdate();
  }

  private onSaved() {
    const { saved, shared } = this.desk;
    if (saved.state === "overtaken") {
      this.said.alarm(overtaken, [
        { word: "Load what it wrote", act: () => void this.desk.openKept(this.desk.openId) },
        { word: "Keep mine as a copy", act: () => void this.desk.keepAsCopy() },
      ]);
    } else if (shared) this.said.alarm(alsoOpen);
    else this.said.settle(alsoOpen);
    this.requestUpdate();
  }

  private onRoute(did: RouteAct) {
    const { job } = this.desk;
    if (!job) return;
    if (did.act === "choose") this.choose(did.name);
    if (did.act === "sign") this.command(() => job.signOff(did.name, did.signed));
    if (did.act === "rename") {
      this.command(() => {
        const reason = job.renameSheet(did.name, did.newName);
        if (reason === undefined) this.desk.renamed(did.name, did.newName);
        return reason;
      });
    }
    if (did.act === "move") this.move(did.name, did.by);
    if (did.act === "remove") this.drop(did.name);
    if (did.act === "add") {
      this.command(() => {
        this.choose(job.addSheet());
      });
    }
  }

  private onWord(word: Word) {
    const { sheet } = this.desk;
    if (word === "shelf") void this.showShelf();
    if (word === "undo" || word === "redo") this.step(word);
    if (word === "open") this.intake.choose();
    if (word === "save") this.saveFile();
    if (word === "sign") this.onRoute({ act: "sign", name: sheet, signed: !this.signedOff(sheet) });
    if (word === "rename") void this.route.rename();
    if (word === "up") this.move(sheet, -1);
    if (word === "down") this.move(sheet, 1);
    if (word === "add") this.onRoute({ act: "add" });
    if (word === "remove") this.drop(sheet);
    if (word === "large") this.settings.choose({ large: !this.settings.large });
    if (word === "ground")
      this.settings.choose({ ground: this.settings.ground === "slate" ? "paper" : "slate" });
    if (word === "hand auto") this.settings.forgetHand();
    else if (word.startsWith("hand ")) this.settings.choose({ hand: word.slice(5) as Hand });
  }

  private async onShelf(did: ShelfAct) {
    const { keep } = this.desk;
    if (did.act === "file") this.intake.choose();
    if (did.act === "save") this.saveFile();
    if (did.act === "remove") await this.attempt(async () => keep?.remove(did.id));
    if (did.act === "restore") await this.attempt(async () => keep?.write({ ...did.job, revision: 1 }));
    if (did.act === "open" && this.commit() && (await this.desk.openKept(did.id))) this.shelf.close();
    if (did.act === "start" && this.commit()) {
      await this.attempt(async () => {
        await this.desk.openText(await did.template.read());
        this.shelf.close();
      });
    }
    await this.readShelf();
  }

  private async showShelf() {
    this.commit();
    await this.desk.flush();
    await this.readShelf();
    this.shelf.show();
  }

  private async readShelf() {
    this.kept = (await this.desk.keep?.list().catch(() => undefined)) ?? [];
    if (this.rack.length > 0) return;
    this.rack = await templateCards();
  }

  private choose(sheet: string) {
    if (sheet === this.desk.sheet || !this.commit()) return;
    this.desk.chooseSheet(sheet);
    this.showPlace();
    this.requestUpdate();
  }

  private signedOff(name: string): boolean {
    return this.desk.job?.document.sheets.find((sheet) => sheet.name === name)?.signedOff ?? false;
  }

  private move(name: string, by: -1 | 1) {
    const { job } = this.desk;
    const to = (job?.document.sheets.findIndex((sheet) => sheet.name === name) ?? -1) + by;
    if (job && to >= 0 && to < job.document.sheets.length) this.command(() => job.moveSheet(name, to));
  }

  private drop(name: string) {
    const { job } = this.desk;
    if (!job) return;
    if (job.document.sheets.length === 1) {
      this.said.say("A job keeps at least one operation.");
      return;
    }
    this.command(() => job.removeSheet(name));
  }

  /** Runs a command of the job, which may answer why it could not, and says what it did. */
  private command(run: () => unknown) {
    const { job } = this.desk;
    if (!job || !this.commit()) return;
    const before = job.canUndo;
    const reason = run();
    if (typeof reason === "string") this.said.alarm(sentence(reason));
    else if (job.canUndo !== undefined && job.canUndo !== before)
      this.said.say(`${job.canUndo}. Undo takes it back.`);
    this.requestUpdate();
  }

  private step(which: "undo" | "redo") {
    const { job } = this.desk;
    if (!job) return;
    const what = which === "undo" ? job.canUndo : job.canRedo;
    if (what === undefined) {
      this.said.say(`Nothing to ${which}.`);
      return;
    }
    job[which]();
    this.said.say(`${which === "undo" ? "Undone" : "Done again"}: ${what}`);
    this.showPlace();
    this.requestUpdate();
  }

  private saveFile() {
    this.commit();
    const { job, text } = this.desk;
    if (!job) return;
    const name = fileName(job.document.title);
    saveText(name, text);
    this.said.say(`Saved to the file ${name}.`);
  }

  private async takeFile(name: string, text: Promise<string>) {
    try {
      const job = await text;
      if (!this.commit()) return;
      await this.desk.openText(job);
      this.shelf.close();
      this.said.settle();
      this.said.say(`Opened ${name}.`);
    } catch (error) {
      // The alert stands behind a dialog, where nobody would see or hear it.
      this.shelf.close();
      this.said.alarm(`${name} was not opened: ${reasonOf(error)}. The job on the desk is unchanged.`);
    }
  }

  /** Keeps what is being typed. */
  private commit(): boolean {
    return this.session.commit();
  }

  /** Puts the active cell of the sheet in hand where the person left it. */
  private showPlace() {
    const { sheet, place } = this.desk;
    this.session.stand({ sheet, ...place });
    // The grid can bring it into view once it has drawn that sheet.
    void this.updateComplete
      .then(() => this.grid?.updateComplete)
      .then(() => this.desk.sheet === sheet && this.grid?.goTo(place.row, place.column));
  }

  private measure() {
    const { hand, large } = this.settings;
    const touch = hand !== "desk";
    this.layout = layoutFor(innerWidth, touch);
    this.low = innerHeight < 560;
    this.narrow = innerWidth < roomForWords(this.layout, large ? 1.3 : 1, touch);
    this.requestUpdate();
  }

  private onKey(event: KeyboardEvent) {
    if (event.defaultPrevented || event.isComposing || this.shelf.matches(":focus-within")) return;
    const typing =
      event.composedPath()[0] instanceof HTMLInputElement ||
      event.composedPath()[0] instanceof HTMLTextAreaElement;
    const key = event.key.toLowerCase();
    const command = (event.ctrlKey || event.metaKey) && !event.altKey;
    if (key === "f6") this.turn(event.shiftKey ? -1 : 1);
    else if (command && key === "s") this.saveFile();
    else if (command && key === "z" && !typing) this.step(event.shiftKey ? "redo" : "undo");
    else if (command && key === "y" && !typing) this.step("redo");
    else return;
    event.preventDefault();
  }

  /** Moves the focus to the next part of the page. */
  private turn(by: 1 | -1) {
    const now = regions.findIndex((name) => this.renderRoot.querySelector(name)?.matches(":focus-within"));
    const next = regions[(now + by + regions.length) % regions.length]!;
    this.renderRoot.querySelector<HTMLElement>(next)?.focus();
  }

  private async attempt(run: () => Promise<unknown>) {
    try {
      await run();
    } catch (error) {
      this.shelf.close();
      this.said.alarm(sentence(reasonOf(error)));
    }
  }
}

const alsoOpen = "This job is open in another tab too. Change it in one of them only.";
const overtaken = "Another tab has changed this job, so nothing more is being kept from this tab.";

declare global {
  interface HTMLElementTagNameMap {
    "half-angle": HalfAngle;
  }
}
