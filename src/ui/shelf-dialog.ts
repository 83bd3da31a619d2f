import { html, LitElement, nothing } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import type { KeptJob } from "./keep.ts";
import { mark, markStyle } from "./mark.ts";
import { openPanel } from "./open-panel.ts";
import { whenChanged } from "./saved-words.ts";
import { shelfStyle } from "./shelf-style.ts";
import type { TemplateCard } from "./templates.ts";
import { wordStyle } from "./word-style.ts";

/** What was asked for on the shelf. */
export type ShelfAct =
  | { readonly act: "open" | "remove" | "restore" | "copy" | "export"; readonly id: string }
  | { readonly act: "rename"; readonly id: string; readonly title: string }
  | { readonly act: "start"; readonly template: TemplateCard }
  | { readonly act: "file" | "save" | "threads" | "empty" };

/** The shelf: your jobs as a register, the template jobs as a rack. Fires `shelf` with what was asked for. */
@customElement("shelf-dialog")
export class ShelfDialog extends LitElement {
  static override styles = [wordStyle, markStyle, shelfStyle];

  /** Newest first. */
  @property({ attribute: false }) jobs: readonly KeptJob[] = [];
  @property({ attribute: false }) rack: readonly TemplateCard[] = [];
  /** The job that is open. */
  @property() here = "";
  /** Why the jobs on this device can't be read, where they can't. */
  @property() trouble = "";
  /** Newest last; each can be put back as long as the page is open. */
  @state() private removed: readonly KeptJob[] = [];
  /** The job whose title is up for change. */
  @state() private renaming = "";
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  show(): void {
    this.renaming = "";
    openPanel(this.dialog);
  }

  close(): void {
    this.dialog.close();
  }

  override render() {
    return html`
      <dialog aria-labelledby="shelf" @click=${this.onBackdrop}>
        <div class="head">
          ${mark}
          <h1 id="shelf">Shelf</h1>
          <span class="gap"></span>
          <button class="word" @click=${() => this.ask({ act: "threads" })}>Threads it knows</button>
          <button class="word" @click=${() => this.ask({ act: "empty" })}>Start an empty job</button>
          <button class="word" @click=${() => this.ask({ act: "file" })}>Open a job file</button>
          <button class="word" @click=${() => this.ask({ act: "save" })}>Save this job to a file</button>
          <button class="act go" @click=${this.close}>Back to the job</button>
        </div>
        <div class="body">
          <h2 id="yours">Your jobs <span>kept on this device; save a job file to carry one elsewhere</span></h2>
          ${this.register()} ${this.wayBack()}
          <h2 id="templates">Template jobs <span>each opens as a copy; the examples are invented</span></h2>
          <ul class="rack" aria-labelledby="templates">
            ${this.rack.map((template) => this.card(template))}
          </ul>
        </div>
        <div class="foot">
          <span class="hatch" aria-hidden="true"></span>
          <p>Threads that carry load, pressure or people need the governing standard and a qualified inspector, not a worksheet.</p>
        </div>
      </dialog>
    `;
  }

  private register() {
    if (this.trouble) return html`<p class="none">${this.trouble}</p>`;
    if (this.jobs.length === 0)
      return html`<p class="none">None kept yet. Start a copy of a template job below.</p>`;
    return html`<table aria-labelledby="yours">
      <thead>
        <tr>
          <th scope="col">Job</th>
          <th scope="col">Thread</th>
          <th scope="col">Route</th>
          <th scope="col">Last changed</th>
          <th scope="col"><span class="sr">What to do</span></th>
        </tr>
      </thead>
      <tbody>
        ${this.jobs.map((job) => this.row(job))}
      </tbody>
    </table>`;
  }

  private row(job: KeptJob) {
    const here = job.id === this.here;
    return html`<tr class=${here ? "here" : ""}>
      <th scope="row">
        ${
          this.renaming === job.id
            ? html`<input
                class="title"
                aria-label="New title of ${job.title}"
                .value=${job.title}
                @keydown=${(event: KeyboardEvent) => this.onTitleKey(event, job)}
                @blur=${(event: FocusEvent) => this.keepTitle(job, (event.target as HTMLInputElement).value)}
              />`
            : html`<button
                class="job"
                aria-current=${here || nothing}
                @click=${() => (here ? this.close() : this.ask({ act: "open", id: job.id }))}
              >
                ${job.title}
              </button>`
        }
      </th>
      <td>${job.thread}</td>
      <td>${this.progress(job.route)}</td>
      <td>${whenChanged(job.changed, new Date())}</td>
      <td class="acts">
        ${this.doing("Rename", job, () => void this.rename(job))} ${this.doing("Copy", job, () => this.ask({ act: "copy", id: job.id }))}
        ${this.doing("To a file", job, () => this.ask({ act: "export", id: job.id }))}
        ${here ? html`<span class="muted">open now</span>` : this.doing("Delete", job, () => this.drop(job))}
      </td>
    </tr>`;
  }

  private doing(word: string, { title }: KeptJob, act: () => void) {
    return html`<button class="act" @click=${act}>${word}<span class="sr"> ${title}</span></button>`;
  }

  private async rename({ id }: KeptJob) {
    this.renaming = id;
    await this.updateComplete;
    const field = this.renderRoot.querySelector<HTMLInputElement>("input.title");
    field?.focus();
    field?.select();
  }

  private onTitleKey(event: KeyboardEvent, job: KeptJob) {
    if (event.isComposing || (event.key !== "Enter" && event.key !== "Escape")) return;
    // Escape drops the title; the shelf stays open.
    event.preventDefault();
    event.stopPropagation();
    this.keepTitle(job, event.key === "Enter" ? (event.target as HTMLInputElement).value : job.title);
  }

  private keepTitle(job: KeptJob, typed: string) {
    // Taking the field away blurs it, which would keep the title a second time.
    if (this.renaming !== job.id) return;
    this.renaming = "";
    const title = typed.trim();
    if (title !== "" && title !== job.title) this.ask({ act: "rename", id: job.id, title });
  }

  private progress(route: string) {
    const letters = [...route];
    const count = (which: string) => letters.filter((letter) => which.includes(letter)).length;
    const signed = count("sb");
    const cautions = count("cb");
    const told = `${signed} of ${letters.length} signed off${cautions > 0 ? `, cautions or errors on ${cautions}` : ""}`;
    return html`<span class="progress">
      ${letters.slice(0, 12).map((letter) => html`<i class=${letter} aria-hidden="true"></i>`)}<em>${told}</em>
    </span>`;
  }

  private wayBack() {
    return html`<div role="status">
      ${this.removed.map(
        (job) => html`<p class="undo">
          Deleted: ${job.title}. It can be put back until this page is closed.
          <button
            class="act"
            @click=${() => {
              this.removed = this.removed.filter((other) => other !== job);
              this.ask({ act: "restore", id: job.id });
            }}
          >
            Undo delete<span class="sr"> of ${job.title}</span>
          </button>
        </p>`,
      )}
    </div>`;
  }

  private card(template: TemplateCard) {
    return html`<li>
      <b>${template.title}</b>
      <p>${template.purpose}</p>
      <button class="act go" @click=${() => this.ask({ act: "start", template })}>Start a copy<span class="sr"> of ${template.title}</span></button>
    </li>`;
  }

  private drop(job: KeptJob) {
    this.removed = [...this.removed, job];
    this.ask({ act: "remove", id: job.id });
  }

  private onBackdrop(event: MouseEvent) {
    // The dialog's children cover it, so that a click on itself is one outside.
    if (event.target === this.dialog) this.close();
  }

  private ask(act: ShelfAct) {
    this.dispatchEvent(new CustomEvent<ShelfAct>("shelf", { detail: act }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "shelf-dialog": ShelfDialog;
  }
}
