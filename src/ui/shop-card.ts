/** The shop card as it stands on paper and, the same, on the screen before it is printed. */
import { html, nothing, type TemplateResult } from "lit";
import type { Card, CardLine } from "../job/card.ts";
import { type Step, stopText } from "../job/steps.ts";

/** Heights on the card, mm: all of it, head, a line of settings, measuring, notes with the title block, head of the passes. */
const all = 189;
const parts = { head: 11, setting: 5.2, measure: 11, rest: 40, heads: 5 } as const;
/** Heights of a pass, mm, the roomiest first. */
const steps = [
  { name: "h6", height: 6.2 },
  { name: "h5", height: 5 },
  { name: "h4", height: 4.2 },
  { name: "h3", height: 3.9 },
] as const;
const mostColumns = 3;
/** Lines of settings that are as high as the drawing beside them. */
const mostOfFigure = 13;

interface PassSheet {
  readonly steps: readonly Step[];
  readonly first: boolean;
  readonly columns: number;
  /** Class of the height that a pass has. */
  readonly height: string;
  /** A row for what was not planned, on the last card. */
  readonly spare: boolean;
}

/**
 * One A5 page, and another for passes that it has no room for.
 *
 * @param figure the drawing, when the job names one
 * @param printed when it is printed, as the card says it
 */
export function shopCard(card: Card, figure: TemplateResult | undefined, printed: string): TemplateResult[] {
  const pages = pagesOf(card);
  return pages.map((page, index) => {
    const number = pages.length > 1 ? `, card ${index + 1} of ${pages.length}` : "";
    return html`<article class="card" aria-label="Shop card${number}">
      <div class="frame"></div>
      ${zones}
      <div class="in">
        <header><b>${card.heading}</b><span>${card.under}${number}</span></header>
        ${page.first ? settings(card, figure) : nothing} ${passes(page, card)}
        ${page.first ? [measure(card), rest(card, printed)] : nothing}
      </div>
    </article>`;
  });
}

/** As many passes on the first card as it has room for, in columns that are no longer than they must be. */
function pagesOf(card: Card): PassSheet[] {
  const settings = Math.max(card.settings.length, card.drawing ? mostOfFigure : 0);
  const taken =
    parts.head + settings * parts.setting + parts.rest + (card.measure.length > 0 ? parts.measure : 0);
  const pages: PassSheet[] = [];
  let left = card.plan.steps;
  do {
    const first = pages.length === 0;
    const room = all - (first ? taken : parts.head) - parts.heads;
    const wanted = left.length + 1;
    const tightest = steps.at(-1)!.height;
    const columns = Math.ceil(wanted / 2) * tightest <= room ? 2 : mostColumns;
    const deep = Math.min(Math.ceil(wanted / columns), Math.floor(room / tightest));
    const step = steps.find(({ height }) => deep * height <= room) ?? steps.at(-1)!;
    const here = left.slice(0, columns * deep);
    left = left.slice(here.length);
    pages.push({ steps: here, first, columns, height: step.name, spare: left.length === 0 });
  } while (left.length > 0);
  return pages;
}

const marks = (names: string) => [...names].map((name) => html`<i>${name}</i>`);
const zones = html`<div class="zones over" aria-hidden="true">${marks("1234")}</div>
  <div class="zones under" aria-hidden="true">${marks("1234")}</div>
  <div class="zones before" aria-hidden="true">${marks("ABCDEF")}</div>
  <div class="zones after" aria-hidden="true">${marks("ABCDEF")}</div>`;

function settings({ settings: lines }: Card, figure: TemplateResult | undefined): TemplateResult {
  return html`<div class="set ${figure ? "drawn" : ""}">
    ${figure ? html`<div class="figure">${figure}</div>` : nothing}
    <table>
      <tbody>
        ${lines.map(
          ({ label, value, key }) => html`<tr class=${key ? "key" : ""}>
            <th scope="row">${label}</th>
            <td class=${value.length > 12 ? "words" : ""}>${value}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

function passes({ steps, columns, height, spare }: PassSheet, { plan }: Card): TemplateResult {
  if (steps.length === 0) return html`<div class="passes"><p>${plan.trouble ?? ""}</p></div>`;
  const rows: (Step | undefined)[] = spare ? [...steps, undefined] : [...steps];
  const deep = Math.ceil(rows.length / columns);
  const bundles = Array.from({ length: columns }, (_, index) => rows.slice(index * deep, (index + 1) * deep));
  return html`<div class="passes c${columns} ${height}">
    ${bundles.map(
      (part) => html`<table>
        <thead>
          <tr>
            <th class="no" scope="col">Pass</th>
            <th scope="col">Wind, div</th>
            <th scope="col">Stop at</th>
            <th class="done" scope="col">Done</th>
          </tr>
        </thead>
        <tbody>
          ${part.map((step) => passRow(step, plan.perTurn))}
        </tbody>
      </table>`,
    )}
  </div>`;
}

function passRow(step: Step | undefined, perTurn: number | undefined): TemplateResult {
  const box = html`<td class="done"><i></i></td>`;
  if (!step) return html`<tr><td class="no"></td><td></td><td></td>${box}</tr>`;
  if (step.to && step.wind !== undefined) {
    const cross = step.kind === "straight in";
    return html`<tr>
      <th class="no" scope="row">${step.pass}</th>
      <td>+${step.wind}</td>
      <td class="stop">${stopText(step.to, cross ? undefined : perTurn)}</td>
      ${box}
    </tr>`;
  }
  const words = {
    scratch: "scratch, check pitch",
    measure: "isolate, measure",
    spring: "same reading again",
  };
  const short = { scratch: "", measure: "", spring: "S", slide: step.pass, "straight in": "X" }[step.kind];
  return html`<tr>
    ${short === "" ? html`<td class="no"></td>` : html`<th class="no" scope="row">${short}</th>`}
    <td class="say" colspan="2">${step.kind === "slide" || step.kind === "straight in" ? step.what : words[step.kind]}</td>
    ${box}
  </tr>`;
}

function measure({ measure: lines }: Card): TemplateResult | typeof nothing {
  if (lines.length === 0) return nothing;
  return html`<dl class="measure">
    ${lines.map(field)}
    <div><dt>Measured</dt><dd></dd></div>
  </dl>`;
}

function rest({ cautions, warnings, facts }: Card, printed: string): TemplateResult {
  const notes = [
    ...warnings.map((text) => html`<li class="now">${text}</li>`),
    ...cautions.map((text) => html`<li>${text}</li>`),
    html`<li>X: cross slide, straight in, counted from its own touch-off. S: same reading again.</li>`,
    html`<li>The lathe's manual and the shop's rules come first. Not an inspection record.</li>`,
  ];
  return html`<div class="rest">
    <ol class=${notes.length > 8 ? "many" : ""}>
      ${notes}
    </ol>
    <dl class="facts">
      ${[...facts, { label: "Printed", value: printed, key: false }].map(field)}
      <div class="wide"><dt>Cut by, date</dt><dd></dd></div>
    </dl>
  </div>`;
}

function field({ label, value }: CardLine): TemplateResult {
  return html`<div><dt>${label}</dt><dd>${value}</dd></div>`;
}
