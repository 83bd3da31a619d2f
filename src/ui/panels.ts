/**
 * What opens over the page. The panels are fetched while the first job is, and one is drawn when it is asked for the first
 * time, so that the page is there sooner. A new one gets its lines here, and its word in word-acts.ts.
 */
import { html, nothing, type TemplateResult } from "lit";
import { cellName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { sheetFunctions } from "../functions/index.ts";
import type { TablePlan } from "../job/whatif.ts";
import type { BenchAct } from "./bench-view.ts";
import type { LatheAct } from "./lathe-dialog.ts";
import type { PrintChoice } from "./paper-acts.ts";
import type { Found } from "./seek-dialog.ts";
import type { ShelfAct } from "./shelf-dialog.ts";
import type { Acts } from "./word-acts.ts";

interface Panel {
  readonly fetch: () => Promise<unknown>;
  readonly template: (acts: Acts) => TemplateResult;
}

const panels = {
  "shelf-dialog": {
    fetch: () => import("./shelf-dialog.ts"),
    template: ({ page, shelf }) => {
      const { openId, noKeep } = page.parts.desk;
      return html`<shelf-dialog
        .jobs=${shelf.kept}
        .rack=${shelf.rack}
        .here=${openId}
        .trouble=${noKeep ? `This browser keeps no jobs: ${noKeep}. Save the job to a file.` : ""}
        @shelf=${(event: CustomEvent<ShelfAct>) => void shelf.did(event.detail)}
      ></shelf-dialog>`;
    },
  },
  "card-dialog": {
    fetch: () => import("./card-dialog.ts"),
    template: ({ page, paper }) => html`<card-dialog
      .pages=${() => (page.job ? paper.card(page.job) : [])}
      @print=${() => void paper.print()}
    ></card-dialog>`,
  },
  "bench-view": {
    fetch: () => import("./bench-view.ts"),
    template: ({ bench }) => html`<bench-view
      .job=${bench.view}
      .at=${bench.at}
      .awake=${bench.awake}
      @bench=${(event: CustomEvent<BenchAct>) => bench.did(event.detail)}
    ></bench-view>`,
  },
  "guide-dialog": {
    fetch: () => import("./guide-dialog.ts"),
    template: ({ page, help }) => {
      const { row, column } = page.parts.desk.place;
      return html`<guide-dialog
        .functions=${sheetFunctions}
        .cell=${cellName(row, column)}
        @example=${(event: CustomEvent<string>) => help.put(event.detail)}
      ></guide-dialog>`;
    },
  },
  "lathe-dialog": {
    fetch: () => import("./lathe-dialog.ts"),
    template: ({ lathe }) => html`<lathe-dialog
      .lathes=${lathe.lathes}
      .takes=${lathe.takes}
      @lathe=${(event: CustomEvent<LatheAct>) => void lathe.did(event.detail)}
    ></lathe-dialog>`,
  },
  "print-dialog": {
    fetch: () => import("./print-dialog.ts"),
    template: ({ page, paper }) => html`<print-dialog
      .choice=${paper.choice}
      .sheet=${page.sheet}
      .range=${paper.rangeName}
      .remark=${paper.remark}
      @choice=${(event: CustomEvent<Partial<PrintChoice>>) => paper.choose(event.detail)}
      @print=${() => void paper.print()}
    ></print-dialog>`,
  },
  "name-list": {
    fetch: () => import("./name-list.ts"),
    template: ({ page, cells }) => html`<name-list
      .job=${page.job}
      .here=${cells.here}
      @name-go=${(event: CustomEvent<Place>) => cells.goTo(event.detail, true)}
    ></name-list>`,
  },
  "history-list": {
    fetch: () => import("./history-list.ts"),
    template: ({ page, cells }) => html`<history-list
      .job=${page.job}
      @history-go=${(event: CustomEvent<number>) => cells.goToStep(event.detail)}
    ></history-list>`,
  },
  "trial-dialog": {
    fetch: () => import("./trial-dialog.ts"),
    template: ({ whatIf }) =>
      html`<trial-dialog @table=${(event: CustomEvent<TablePlan>) => whatIf.make(event.detail)}></trial-dialog>`,
  },
  "seek-dialog": {
    fetch: () => import("./seek-dialog.ts"),
    template: ({ whatIf }) =>
      html`<seek-dialog @found=${(event: CustomEvent<Found>) => whatIf.keep(event.detail)}></seek-dialog>`,
  },
  "thread-list": {
    fetch: () => import("./thread-list.ts"),
    template: () => html`<thread-list></thread-list>`,
  },
} as const satisfies Record<string, Panel>;

export type PanelName = keyof typeof panels;

export class Panels {
  private readonly fetched = new Set<PanelName>();
  private readonly drawn = new Set<PanelName>();
  /** How often a panel was asked for. */
  private asked = 0;

  constructor(private readonly acts: Acts) {}

  render() {
    return Object.entries<Panel>(panels).map(([name, { template }]) =>
      this.drawn.has(name as PanelName) ? template(this.acts) : nothing,
    );
  }

  /**
   * The panel, drawn and ready to be shown; undefined where it could not be fetched, which has then been said, and where
   * one was asked for since: they would lie over each other.
   */
  async get<Name extends PanelName>(name: Name): Promise<HTMLElementTagNameMap[Name] | undefined> {
    const { parts } = this.acts.page;
    this.asked += 1;
    const { asked } = this;
    // Even of what is there already the browser tells a little late, and the next key may be for the panel.
    if (!this.fetched.has(name) && !(await this.fetch(name))) {
      parts.said.alarm("This part of the page could not be fetched. Load the page again; the job is kept.");
      return undefined;
    }
    this.drawn.add(name);
    // With what it shows as that is now.
    await parts.draw();
    const panel = parts.element(name) ?? undefined;
    await panel?.updateComplete;
    return asked === this.asked ? panel : undefined;
  }

  /** Fetches all of them: whoever asks for one types into it at once. Each runs in a task of its own. */
  fetchAhead(): void {
    // What fails is tried again when the panel is asked for.
    for (const name of Object.keys(panels)) void this.fetch(name as PanelName);
  }

  private fetch(name: PanelName): Promise<boolean> {
    return panels[name].fetch().then(
      () => {
        this.fetched.add(name);
        return true;
      },
      () => false,
    );
  }
}
