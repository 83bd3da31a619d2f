/** The shop card as it stands on paper and, the same, on the screen before it is printed. */
import { html, nothing, type TemplateResult } from "lit";
import type { Card, CardLine } from "../job/card.ts";
import { type Step, stopText } from "../job/steps.ts";

/** Rows of the pass table for the first card and for one that goes on; the rest of the card takes the room left. */
const roomFor = { first: 48, next: 105 } as const;

interface PassSheet {
  readonly steps: readonly Step[];
  readonly first: boolean;
}

/**
 * One A5 page, and another for passes that it has no room for.
 *
 * @param figure the drawing, when the job names one
 * @param printed when it is printed, as the card says it
 */
export function shopCard(card: Card, figure: TemplateResult | undefined, printed: string): TemplateResult[] {
  const pages = pagesOf(card.plan.steps);
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

function pagesOf(steps: readonly Step[]): PassSheet[] {
  const pages: PassSheet[] = [{ steps: steps.slice(0, roomFor.first), first: true }];
  for (let at = roomFor.first; at < steps.length; at += roomFor.next)
    pages.push({ steps: steps.slice(at, at + roomFor.next), first: false });
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

function passes({ steps, first }: PassSheet, { plan }: Card): TemplateResult {
  if (steps.length === 0) return html`<div class="passes"><p>${plan.trouble ?? ""}</p></div>`;
  // One spare row, for what was not planned.
  const rows: (Step | undefined)[] = [...steps, undefined];
  const columns = rows.length > 32 ? 3 : 2;
  const deep = Math.ceil(rows.length / columns);
  const height = !first || deep > 13 ? "h4" : deep > 10 ? "h5" : "h6";
  const parts = Array.from({ length: columns }, (_, index) => rows.slice(index * deep, (index + 1) * deep));
  return html`<div class="passes c${columns} ${height}">
    ${parts.map(
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
  const short = { scratch: "", measure: "", spring: "S", slide: step.pass, "straight in": "X" }[step.kind];
  return html`<tr>
    ${short === "" ? html`<td class="no"></td>` : html`<th class="no" scope="row">${short}</th>`}
    <td class="say" colspan="2">${step.kind === "spring" ? "same reading again" : step.what}</td>
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
