/** What opens over the page when it is asked for. A new panel gets its line here, and its word in word-acts.ts. */
import { html } from "lit";
import type { Place } from "../engine/values.ts";
import "./bench-view.ts";
import type { BenchAct } from "./bench-view.ts";
import "./card-dialog.ts";
import { cellName } from "../engine/address.ts";
import { sheetFunctions } from "../functions/index.ts";
import "./guide-dialog.ts";
import "./lathe-dialog.ts";
import type { TablePlan } from "../job/whatif.ts";
import type { LatheAct } from "./lathe-dialog.ts";
import type { PrintChoice } from "./paper-acts.ts";
import "./history-list.ts";
import "./name-list.ts";
import "./print-dialog.ts";
import "./seek-dialog.ts";
import type { Found } from "./seek-dialog.ts";
import "./shelf-dialog.ts";
import type { ShelfAct } from "./shelf-dialog.ts";
import "./thread-list.ts";
import "./trial-dialog.ts";
import type { Acts } from "./word-acts.ts";

export function panels(acts: Acts) {
  const { page, shelf, paper, bench, lathe, help, whatIf, cells } = acts;
  const { openId, noKeep, place } = page.parts.desk;
  return html`<shelf-dialog
    .jobs=${shelf.kept}
    .rack=${shelf.rack}
    .here=${openId}
    .trouble=${noKeep ? `This browser keeps no jobs: ${noKeep}. Save the job to a file.` : ""}
    @shelf=${(event: CustomEvent<ShelfAct>) => void shelf.did(event.detail)}
  ></shelf-dialog>
    <card-dialog
      .pages=${() => (page.job ? paper.card(page.job) : [])}
      @print=${() => void paper.print()}
    ></card-dialog>
    <bench-view
      .job=${bench.view}
      .at=${bench.at}
      .awake=${bench.awake}
      @bench=${(event: CustomEvent<BenchAct>) => bench.did(event.detail)}
    ></bench-view>
    <guide-dialog
      .functions=${sheetFunctions}
      .cell=${cellName(place.row, place.column)}
      @example=${(event: CustomEvent<string>) => help.put(event.detail)}
    ></guide-dialog>
    <lathe-dialog
      .lathes=${lathe.lathes}
      .takes=${lathe.takes}
      @lathe=${(event: CustomEvent<LatheAct>) => void lathe.did(event.detail)}
    ></lathe-dialog>
    <print-dialog
      .choice=${paper.choice}
      .sheet=${page.sheet}
      .range=${paper.rangeName}
      .remark=${paper.remark}
      @choice=${(event: CustomEvent<Partial<PrintChoice>>) => paper.choose(event.detail)}
      @print=${() => void paper.print()}
    ></print-dialog>
    <name-list
      .job=${page.job}
      .here=${cells.here}
      @name-go=${(event: CustomEvent<Place>) => cells.goTo(event.detail, true)}
    ></name-list>
    <history-list
      .job=${page.job}
      @history-go=${(event: CustomEvent<number>) => cells.goToStep(event.detail)}
    ></history-list>
    <trial-dialog @table=${(event: CustomEvent<TablePlan>) => whatIf.make(event.detail)}></trial-dialog>
    <seek-dialog @found=${(event: CustomEvent<Found>) => whatIf.keep(event.detail)}></seek-dialog>
    <thread-list></thread-list>`;
}
