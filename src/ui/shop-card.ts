/** The shop card as it stands on paper and, the same, on the screen before it is printed. */
import { html, nothing, type TemplateResult } from "lit";
import type { Card, CardLine } from "../job/card.ts";
import { type Step, type Steps, stopText } from "../job/steps.ts";
import { manyNotes, type PassSheet, pagesOf, roomyMeasures } from "./card-layout.ts";

/**
 * One A5 page, and another for passes that it has no room for.
 *
 * @param figure the drawing, when the job names one
 * @param printed when it is printed, as the card says it
 */
export function shopCard(card: Card, figure: TemplateResult | undefined, printed: string): TemplateResult[] {
  const notes = notesOf(card);
  const pages = pagesOf(card, notes);
  return pages.map((page, index) => {
    const number = pages.length > 1 ? `, card ${index + 1} of ${pages.length}` : "";
    return html`<article class="card" aria-label="Shop card${number}">
      <div class="frame"></div>
      ${zones}
      <div class="in">
        <header><b>${card.heading}</b><span>${card.under}${number}</span></header>
        ${page.first ? settings(card, figure) : nothing} ${passes(page, card)}
        ${page.first ? [measure(card), rest(card, notes, printed)] : nothing}
      </div>
    </article>`;
  });
}

const marks = (names: string) => [...names].map((name) => html`<i>${name}</i>`);
const zones = html`<div class="zones over" aria-hidden="true">${marks("1234")}</div>
  <div class="zones under" aria-hidden="true">${marks("1234")}</div>
  <div class="zones before" aria-hidden="true">${marks("ABCDEF")}</div>
  <div class="zones after" aria-hidden="true">${marks("ABCDEF")}</div>`;

function settings({ settings: lines }: Card, figure: TemplateResult | undefined): TemplateResult {
  return html`<div class="set ${figure ? "drawn" : ""}">
    ${figure ? html`<div class="figure">${figure}</div>` : nothing}
    <dl>
      ${lines.map(
        ({ label, value, key }) => html`<div class=${key ? "key" : ""}>
          <dt>${label}</dt>
          <dd class=${value.length > 12 ? "words" : ""}>${value}</dd>
        </div>`,
      )}
    </dl>
  </div>`;
}

function passes(
  { steps, columns, height, spare }: PassSheet,
  { plan }: Card,
): TemplateResult | typeof nothing {
  if (!plan) return nothing;
  if (plan.steps.length === 0) return html`<div class="passes"><p>${plan.trouble ?? ""}</p></div>`;
  if (steps.length === 0) return nothing;
  const rows: (Step | undefined)[] = spare ? [...steps, undefined] : [...steps];
  const deep = Math.ceil(rows.length / columns);
  const bundles = Array.from({ length: columns }, (_, index) => rows.slice(index * deep, (index + 1) * deep));
  return html`<div class="passes c${columns} ${height}">
    ${bundles.map(
      (part) => html`<table>
        <thead>
          <tr>
            <th class="no" scope="col">Pass</th>
            <th scope="col">${plan.back ? "Back, div" : "Wind, div"}</th>
            <th scope="col">Stop at</th>
            <th class="done" scope="col">Done</th>
          </tr>
        </thead>
        <tbody>
          ${part.map((step) => passRow(step, plan))}
        </tbody>
      </table>`,
    )}
  </div>`;
}

function passRow(step: Step | undefined, { perTurn, back }: Steps): TemplateResult {
  const box = html`<td class="done"><i></i></td>`;
  if (!step) return html`<tr><td class="no"></td><td></td><td></td>${box}</tr>`;
  if (step.to && step.wind !== undefined) {
    const cross = step.kind === "straight in";
    return html`<tr>
      <th class="no" scope="row">${step.pass}</th>
      <td>${back ? "" : "+"}${step.wind}</td>
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
  return html`<dl class="measure ${lines.length > roomyMeasures ? "tight" : ""}">
    ${lines.map(field)}
    <div class="own"><dt>Measured</dt><dd></dd></div>
  </dl>`;
}

/** What is said once is not said twice: a job may have the words about the manual among its own. */
function notesOf({ cautions, warnings, plan }: Card): readonly string[] {
  const manual = cautions.some((text) => /\bmanual\b/i.test(text));
  const kinds = new Set(plan?.steps.map(({ kind }) => kind));
  const letters = [
    ...(kinds.has("straight in") ? ["X: cross slide, straight in, counted from its own touch-off."] : []),
    ...(kinds.has("spring") ? ["S: same reading again."] : []),
  ];
  return [
    ...warnings,
    ...cautions,
    ...(manual ? [] : ["The lathe's manual and shop rules come first."]),
    ...(letters.length > 0 ? [letters.join(" ")] : []),
    ...(plan?.back
      ? ["Both slides are wound back. Stops count back from touch-off: the dial runs down."]
      : []),
    "Not an inspection record.",
  ];
}

function rest({ warnings, facts }: Card, notes: readonly string[], printed: string): TemplateResult {
  return html`<div class="rest">
    <ol class=${notes.length > manyNotes ? "many" : ""}>
      ${notes.map((text, at) => html`<li class=${at < warnings.length ? "now" : ""}>${text}</li>`)}
    </ol>
    <dl class="facts">
      ${facts.map(field)}
      <div class="wide"><dt>Printed</dt><dd>${printed}</dd></div>
      <div class="wide last"><dt>Cut by, date</dt><dd></dd></div>
    </dl>
  </div>`;
}

function field({ label, value }: CardLine): TemplateResult {
  return html`<div><dt>${label}</dt><dd>${value}</dd></div>`;
}
