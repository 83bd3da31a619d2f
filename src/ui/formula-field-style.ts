/** The look of a formula while it is typed: references in the inks of the grid, and the list of offers. */
import { css } from "lit";

export const formulaFieldStyle = css`
  :host {
    display: block;
    min-width: 0;
  }
  .field,
  .cm-editor {
    height: 100%;
  }
  .cm-editor.cm-focused {
    outline: var(--ring) solid var(--blue);
    outline-offset: -3px;
  }
  .cm-scroller {
    height: 100%;
    overflow: auto;
    scrollbar-width: none;
    font-family: var(--formula) !important;
    line-height: 1.3 !important;
  }
  .cm-content {
    padding: calc((var(--line, 32px) - 1.4em) / 2) 0 !important;
    caret-color: var(--ink) !important;
  }
  .cm-line {
    padding: 0 var(--s2) !important;
  }
  .cm-matchingBracket {
    background: color-mix(in srgb, var(--blue) 22%, transparent) !important;
    outline: 0;
  }
  .cm-editor:not(.cm-focused) .cm-matchingBracket {
    background: none !important;
    outline: 0;
  }
  .cm-nonmatchingBracket {
    background: none !important;
    color: var(--error) !important;
    outline: 1px dotted var(--error);
  }
  .part-function {
    font-weight: 700;
  }
  .part-text {
    color: var(--ink-2);
  }
  .part-number,
  .part-sign,
  .part-bracket {
    color: var(--ink);
  }
  .ink {
    text-decoration: underline 2px;
    text-underline-offset: 4px;
  }
  .a1 {
    color: var(--arg1);
    text-decoration-style: solid;
  }
  .a2 {
    color: var(--arg2);
    text-decoration-style: dashed;
  }
  .a3 {
    color: var(--arg3);
    text-decoration-style: dotted;
  }
  .a4 {
    color: var(--arg4);
    text-decoration-style: double;
  }
  .cm-tooltip {
    border: 2px solid var(--ink) !important;
    background: var(--paper) !important;
    color: var(--ink);
    z-index: 20;
  }
  .cm-tooltip-autocomplete > ul {
    max-height: 46vh !important;
    min-width: min(420px, 90vw) !important;
    max-width: 90vw !important;
    font-family: var(--sans) !important;
  }
  .cm-tooltip-autocomplete > ul > li {
    display: flex;
    gap: var(--s4);
    align-items: center;
    justify-content: space-between;
    min-height: max(28px, var(--target) - 8px);
    padding: 2px var(--s3) !important;
    border-bottom: 1px solid var(--rule);
  }
  .cm-tooltip-autocomplete > ul > li[aria-selected] {
    background: var(--blue) !important;
    color: var(--on-blue) !important;
  }
  .cm-completionMatchedText {
    text-decoration: none !important;
    font-weight: 700;
  }
  .cm-completionDetail {
    display: none;
  }
  .words {
    overflow: hidden;
    max-width: 62%;
    font-size: var(--t-label);
    text-overflow: ellipsis;
    white-space: nowrap;
    color: var(--ink-2);
  }
  li[aria-selected] .words {
    color: var(--on-blue);
  }
  .cm-completionInfo {
    max-width: 420px;
    padding: var(--s2) var(--s3) !important;
    font-family: var(--formula);
    font-size: var(--t-note);
  }
`;
