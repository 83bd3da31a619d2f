import { html, LitElement, nothing } from "lit";
import { customElement, query, state } from "lit/decorators.js";
import type { Place } from "../engine/values.ts";
import { sheetFunctions } from "../functions/index.ts";
import { scenarioOf } from "../job/scenario.ts";
import { appStyle } from "./app-style.ts";
import { BenchActs } from "./bench-acts.ts";
import type { GridSaid } from "./commanded-grid.ts";
import { Desk } from "./desk.ts";
import { Drafts } from "./draft.ts";
import { EditSession } from "./edit-session.ts";
import "./entry-line.ts";
import "./find-bar.ts";
import { FileIntake } from "./file-intake.ts";
import { HelpActs } from "./help-acts.ts";
import { LatheActs } from "./lathe-acts.ts";
import { type Layout, layoutFor, roomForWords } from "./layout.ts";
import { lockOffers } from "./lock-offers.ts";
import { stayOffline } from "./offline.ts";
import { factsOf, namedText, numberedName, operationsOf } from "./operations.ts";
import { ownTask } from "./own-task.ts";
import { PageActs, type PageParts } from "./page-acts.ts";
import { Panels } from "./panels.ts";
import { PaperActs } from "./paper-acts.ts";
import "./rail-words.ts";
import type { Word } from "./rail-words.ts";
import "./route-card.ts";
import type { RouteAct } from "./route-card.ts";
import "./said.ts";
import type { SaidLine } from "./said.ts";
import "./reckon-line.ts";
import { pageSettings } from "./page-settings.ts";
import { keepTrouble, savedWords } from "./saved-words.ts";
import { sentence } from "./sentence.ts";
import "./sheet-grid.ts";
import { SheetActs } from "./sheet-acts.ts";
import { ShelfActs } from "./shelf-acts.ts";
import "./title-block.ts";
import { tracesOf } from "./traces.ts";
import { WhatIfActs } from "./whatif-acts.ts";
import { onPageKey, wordActs } from "./word-acts.ts";
import "./why-drawer.ts";
import { wordStyle } from "./word-style.ts";

/** The page: puts the parts together, and passes on what they report to the acts. */
@customElement("half-angle")
export class HalfAngle extends LitElement implements PageParts {
  static override styles = [wordStyle, appStyle];

  @state() private layout: Layout = "card";
  @state() private narrow = false;
  @state() private low = false;
  /** Room for a drawer beside the sheet. */
  @state() private roomy = false;
  @state() private lastly = "";
  @state() private dropping = false;
  @query("said-line") readonly said!: SaidLine;

  readonly settings = pageSettings;
  readonly session = new EditSession();
  readonly desk = new Desk({
    leaving: () => this.session.commit(),
    opened: () => this.onOpened(),
    changed: () => this.requestUpdate(),
    savedChanged: () => this.onSaved(),
    trouble: (text) => this.said.alarm(text),
  });
  readonly intake = new FileIntake({
    take: (name, text) => void this.page.takeFile(name, text),
    hover: (over) => {
      this.dropping = over;
    },
  });
  readonly page = new PageActs(this);
  readonly shelf = new ShelfActs(this.page);
  readonly cells = new SheetActs(this.page);
  readonly paper = new PaperActs(this.page);
  readonly bench = new BenchActs(this.page);
  readonly drafts = new Drafts(this.page);
  readonly whatIf = new WhatIfActs(this.page);
  readonly lathe = new LatheActs(this.page);
  readonly help = new HelpActs(this.page);
  private readonly panels = new Panels(this);

  readonly element: PageParts["element"] = (tag) => this.renderRoot.querySelector(tag);

  readonly panel: PageParts["panel"] = (name) => this.panels.get(name);

  draw(): Promise<unknown> {
    this.requestUpdate();
    return this.updateComplete;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.settings.subscribe(() => this.measure());
    addEventListener("resize", () => this.measure());
    addEventListener("keydown", (event) => this.onKey(event));
    this.addEventListener("panel-closed", () => this.onPanelClosed());
    addEventListener("pagehide", () => this.onLeaving());
    document.addEventListener("visibilitychange", () =>
      document.visibilityState === "hidden" ? this.onLeaving() : this.drafts.back(),
    );
    this.measure();
  }

  /** Neither in the task that reads the script of the page, nor in one that runs a command. */
  protected override scheduleUpdate(): Promise<unknown> {
    return ownTask().then(() => super.scheduleUpdate());
  }

  protected override firstUpdated(): void {
    this.panels.fetchAhead();
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
    const operations = job ? operationsOf(job, () => this.requestUpdate()) : [];
    const at = operations.findIndex(({ name }) => name === sheet);
    const operation = operations[at];
    const heading = operation ? numberedName(operation) : "Halfangle";
    const title = job?.document.title ?? "";
    const why = job && this.help.why ? this.help.whyOf(job, { sheet, ...this.desk.place }) : undefined;
    return html`
      <div class="house ${layout} ${this.dropping ? "dropping" : ""} ${this.help.why ? "why" : ""} ${this.roomy ? "roomy" : ""}">
        <button class="skip" @click=${() => this.element("sheet-grid")?.focus()}>Skip to the sheet</button>
        <route-card
          .layout=${layout}
          .operations=${operations}
          .here=${sheet}
          .job=${title}
          .scenario=${job ? scenarioOf(job) : ""}
          @route=${(event: CustomEvent<RouteAct>) => this.page.route(event.detail)}
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
          .tab=${this.settings.tab}
          .signedOff=${operation?.signedOff ?? false}
          .signedFor=${operation?.signedFor ?? ""}
          .why=${this.help.why}
          .first=${at <= 0}
          .last=${at === operations.length - 1}
          @word=${(event: CustomEvent<Word>) => wordActs[event.detail](this)}
        ></rail-words>
</header>
<main>
        ${
          job
            ? html`<entry-line
                  .job=${job}
                  .session=${this.session}
                  .functions=${sheetFunctions}
                  .rich=${this.settings.hand === "desk"}
                ></entry-line>
                <sheet-grid
                  id="sheet"
                  .job=${job}
                  .sheet=${sheet}
                  .traced=${tracesOf(why, sheet)}
                  .functions=${sheetFunctions}
                  .rich=${this.settings.hand === "desk"}
                  .tabMoves=${this.settings.tab}
                  .session=${this.session}
                  @undo-step=${(event: CustomEvent<"undo" | "redo">) => {
                    event.preventDefault();
                    this.page.step(event.detail);
                  }}
                  @grid-said=${(event: CustomEvent<GridSaid>) => this.onGridSaid(event.detail)}
                  @cell-active=${(event: CustomEvent<{ row: number; column: number }>) => this.onPlace(event.detail)}
                ></sheet-grid>
                <find-bar
                  .job=${job}
                  .sheet=${sheet}
                  @find-go=${(event: CustomEvent<Place>) => this.cells.goTo(event.detail, false)}
                  @find-done=${() => this.element("sheet-grid")?.focus()}
                ></find-bar>
                ${
                  this.help.why
                    ? html`<why-drawer
                        .why=${why}
                        @go=${(event: CustomEvent<Place>) => this.help.go(event.detail)}
                        @leave=${() => this.help.leaveWhy()}
                      ></why-drawer>`
                    : nothing
                }`
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
          ><reckon-line slot="notes" .job=${job}></reckon-line
        ></title-block>
</footer>
        <div class="drop" aria-hidden="true">Open this job file</div>
      </div>
      ${this.panels.render()}
    `;
  }

  protected override updated(): void {
    const { job, sheet } = this.desk;
    if (!job) return;
    const operation = operationsOf(job).find(({ name }) => name === sheet);
    document.title = `${operation ? `${numberedName(operation)} - ` : ""}${job.document.title} - Halfangle`;
  }

  /** The sheet is in hand again, unless the person has gone on elsewhere. */
  private onPanelClosed() {
    const there = (this.renderRoot as ShadowRoot).activeElement?.localName;
    if (there !== "entry-line" && there !== "find-bar") this.element("sheet-grid")?.focus();
  }

  private onPlace(place: { row: number; column: number }) {
    this.desk.choosePlace(place);
    if (this.help.why) this.requestUpdate();
  }

  private onLeaving() {
    this.drafts.leaving();
    this.desk.leaving();
  }

  private onOpened() {
    this.lastly = "";
    this.said.settle(alsoOpen);
    this.said.settle(overtaken);
    this.page.showPlace();
    this.bench.opened();
    this.drafts.opened();
  }

  private onSaved() {
    const { saved, shared } = this.desk;
    if (saved.state === "overtaken") {
      this.said.alarm(overtaken, [
        { word: "Load what it wrote", act: () => void this.desk.openKept(this.desk.openId) },
        { word: "Keep mine as a copy", act: () => void this.shelf.keepAsCopy() },
      ]);
    } else if (shared) this.said.alarm(alsoOpen);
    else this.said.settle(alsoOpen);
    this.requestUpdate();
  }

  /** The grid speaks for itself; here its words are for the eye. */
  private onGridSaid({ text, wrong }: GridSaid) {
    if (wrong) this.said.alarm(sentence(text), lockOffers(this.page, text), "cell refused");
    else this.lastly = text;
  }

  private measure() {
    const { hand, large } = this.settings;
    const touch = hand !== "desk";
    this.layout = layoutFor(innerWidth, touch);
    this.low = innerHeight < 560;
    this.roomy = this.layout === "card" && innerWidth >= 1240 && !large;
    this.narrow = innerWidth < roomForWords(this.layout, large ? 1.3 : 1, touch);
    this.requestUpdate();
  }

  private onKey(event: KeyboardEvent) {
    // A dialog has its own keys, and what lies under it is out of reach.
    const inDialog = event.composedPath().some((node) => node instanceof HTMLDialogElement);
    if (event.defaultPrevented || event.isComposing || inDialog) return;
    if (onPageKey(event, this)) event.preventDefault();
  }
}

const alsoOpen = "This job is open in another tab too. Change it in one of them only.";
const overtaken = "Another tab has changed this job, so nothing more is being kept from this tab.";

declare global {
  interface HTMLElementTagNameMap {
    "half-angle": HalfAngle;
  }
}
