/** One cell of the grid as a template: its looks, its name and what it says of itself. No arithmetic, no commands. */
import { html, nothing, type TemplateResult } from "lit";
import { ifDefined } from "lit/directives/if-defined.js";
import { isErrorValue } from "../engine/values.ts";
import { type NumberParts, type Shown, showValue } from "../job/format.ts";
import type { CellView } from "../job/job.ts";
import { drawnIn } from "./drawing-cell.ts";
import type { GridGeometry } from "./grid-geometry.ts";
import type { Area } from "./grid-window.ts";
import { noSlot, roomOf, type Slot } from "./slots.ts";

export interface CellState {
  readonly view: CellView;
  /** The cell, or the merged range that it shows. */
  readonly area: Area;
  readonly active: boolean;
  readonly selected: boolean;
  /** Last column that its text may run on over. */
  readonly runsTo: number;
  readonly slot: Slot | undefined;
  readonly unit: "mm" | "in";
  /** Whether the cell in hand comes from this one, or goes to it. */
  readonly traced: "from" | "to" | undefined;
  /** Which reference of the formula in hand this cell belongs to, from 1, and whether it is the first of it. */
  readonly reference: { readonly number: number; readonly first: boolean } | undefined;
  /** Rows that it is high: of a merged range those that show. */
  readonly rows: number;
  /** Stays where it is while the columns scroll. */
  readonly frozen: boolean;
  /** Stands in the cell instead of its value while it is edited. */
  readonly editor: TemplateResult | string | undefined;
}

/** Type size of cells, px, for judging what fits. */
const typeSize = 14;
/** Of letters and figures in a row, px on the average at the most. */
const widestLetter = 9;
/** Of the number of a reference, or the word that says how a cell is traced, px. */
const tagWidth = 36;

export function cellTemplate(state: CellState, geometry: GridGeometry): TemplateResult {
  const { view, area, active, selected, editor } = state;
  const drawn = editor === undefined ? drawnIn(state, geometry) : undefined;
  const shown = showValue(view.value, view.format, state.unit);
  const says = descriptionOf(view);
  const wide = area.right > area.left;
  const high = area.bottom > area.top;
  const fixed = view.spilledFrom !== undefined || view.locked;
  return html`<div
    role="gridcell"
    class="${classesOf(state, shown, geometry)}${drawn ? " plate" : ""}"
    aria-rowindex=${area.top + 2}
    aria-colindex=${area.left + 2}
    aria-colspan=${wide ? area.right - area.left + 1 : nothing}
    aria-rowspan=${high ? area.bottom - area.top + 1 : nothing}
    aria-selected=${selected ? "true" : "false"}
    aria-readonly=${fixed ? "true" : nothing}
    aria-invalid=${shown.error ? "true" : nothing}
    aria-haspopup=${view.choices?.length ? "listbox" : nothing}
    aria-description=${ifDefined(says)}
    title=${ifDefined(shown.error || view.caution !== undefined ? says : undefined)}
    tabindex=${active ? 0 : -1}
  >${editor === undefined ? tagOf(state, shown, geometry) : nothing}${
    editor ?? drawn ?? contentOf(state, shown, geometry)
  }</div>`;
}

/**
 * Which reference the cell is, or how it is traced: a number or a word where that has room beside what the cell shows,
 * else a narrow mark in its padding. It never hides a letter.
 */
function tagOf(state: CellState, shown: Shown, geometry: GridGeometry) {
  const { view, area, reference, traced } = state;
  if (!reference?.first && !traced) return nothing;
  const letters = shown.error ? shown.error.code.length + shown.error.words.length + 1 : shown.text.length;
  const free = edgesBetween(area, geometry) - letters * widestLetter * geometry.scale;
  const room = free > tagWidth && state.runsTo === area.right && !view.choices?.length;
  const place = !room ? "slim" : shown.align === "right" && !shown.error ? "before" : "after";
  return html`<i class="${reference ? "tag" : "trace"} ${place}" aria-hidden="true">${reference?.number ?? traced}</i>`;
}

function contentOf(state: CellState, shown: Shown, geometry: GridGeometry) {
  if (shown.error) {
    const { code, words } = shown.error;
    return html`<b>${code}</b>${words === "" ? nothing : html` <span class="words">${words}</span>`}`;
  }
  if (shown.parts && shown.align === "right") return numberTemplate(shown.parts, state, geometry);
  if (state.runsTo > state.area.right) {
    return html`<span class="run ${geometry.runOn(state.area.left, state.runsTo)}">${shown.text}</span>`;
  }
  return shown.text;
}

// All in one line of text, so that the name of the cell reads as it shows: "1.3554 mm". The unit lane lies over the
// padding, and the white space before the unit belongs to the name.
function numberTemplate(parts: NumberParts, state: CellState, geometry: GridGeometry) {
  // A caution hatches 18 px of the cell, and its figures are bold.
  const hatched = state.view.caution !== undefined || state.view.format.role === "caution";
  const free = edgesBetween(state.area, geometry) - (hatched ? 24 : 0);
  const width = free / (typeSize * geometry.scale);
  const room = roomOf(parts, state.slot ?? noSlot, width);
  const degree = parts.degree ? html`<i class="deg">°</i>` : nothing;
  const lane = room.lane > 0 ? geometry.lane(room.lane) : "";
  const unit = parts.unit === "" ? nothing : html`<span class="u ${lane}"> ${parts.unit}</span>`;
  return html`<span class="n ${geometry.room(room.fraction + room.lane)}">${parts.integer}${parts.fraction}${degree}</span>${unit}`;
}

/** Room between the paddings, px. */
function edgesBetween(area: Area, { edges }: GridGeometry): number {
  return edges[area.right + 1]! - edges[area.left]! - 17;
}

function classesOf(state: CellState, shown: Shown, geometry: GridGeometry): string {
  const { view, area } = state;
  const { role, bold, italic, shade, border } = view.format;
  const holds = shown.text !== "";
  const caution = view.caution !== undefined || (role === "caution" && holds);
  const list = ["c", `k${area.left}`, shown.align];
  if (area.right > area.left) list.push(geometry.wide(area.left, area.right));
  if (area.bottom > area.top) list.push(geometry.high(state.rows), "tall");
  if (role !== undefined && role !== "caution") list.push(role);
  if (view.choices?.length) list.push("choice");
  if (bold) list.push("bold");
  if (italic) list.push("italic");
  if (shade) list.push("shade");
  for (const edge of border ?? []) list.push(`edge-${edge}`);
  // Formulas of templates are all locked: ruled as well, they would hide what a person has locked by hand.
  if (view.locked && !view.text.startsWith("=")) list.push("locked");
  if ((view.note ?? view.taken) !== undefined) list.push("noted");
  if (state.frozen) list.push("fz");
  if (view.stale) list.push("stale");
  if (caution) list.push("caution");
  if (shown.error) list.push("error");
  if (view.spilledFrom !== undefined) list.push("spilled");
  if (state.runsTo > area.right) list.push("runs");
  if (state.selected) list.push("range");
  if (state.active) list.push("active");
  if (state.editor !== undefined) list.push("edit");
  if (state.reference) list.push(`r${state.reference.number}`);
  else if (state.traced) list.push("traced", state.traced);
  return list.join(" ");
}

/** What a cell says beyond its value: the error in full, the caution, the remark, where the value comes from. */
export function descriptionOf(view: CellView): string | undefined {
  const parts: string[] = [];
  if (isErrorValue(view.value)) {
    const { message, from } = view.value;
    if (message !== "") parts.push(message);
    if (from !== undefined) parts.push(`began in ${from}`);
  }
  if (view.stale) parts.push("not reckoned yet");
  if (view.caution) parts.push(view.caution);
  if (view.taken) parts.push(view.taken);
  if (view.note) parts.push(view.note);
  if (view.locked) parts.push("locked");
  if (view.spilledFrom !== undefined) parts.push(`filled by the formula in ${view.spilledFrom}`);
  return parts.length === 0 ? undefined : parts.join("; ");
}
