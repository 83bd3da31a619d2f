/** What the panels for paper share. */
import { css } from "lit";

export const panelStyle = css`
  dialog {
    width: min(640px, 100vw - 32px);
    max-width: none;
    max-height: calc(100dvh - 32px);
    padding: 0;
    border: 2px solid var(--ink);
    background: var(--paper);
    color: var(--ink);
    font: 400 var(--t-cell) / 1.35 var(--sans);
    overflow: hidden;
  }
  dialog[open] {
    display: grid;
    grid-template-rows: auto minmax(0, 1fr) auto;
  }
  dialog::backdrop {
    background: rgb(15 21 25 / 55%);
  }
  .head,
  .foot {
    display: flex;
    flex-wrap: wrap;
    gap: 4px var(--s2);
    align-items: center;
    min-height: var(--rail);
    padding: 4px var(--s4);
    background: var(--paper-2);
  }
  .head {
    border-bottom: 2px solid var(--ink);
  }
  .foot {
    justify-content: flex-end;
    border-top: 1px solid var(--rule-2);
  }
  .head .act,
  .foot .act {
    min-height: max(34px, var(--target));
    padding: 2px var(--s4);
  }
  h1 {
    flex: 1;
    margin: 0;
    font-size: var(--t-head);
  }
  .body {
    display: grid;
    gap: var(--s3);
    align-content: start;
    /* A row that may shrink lays its field over the next one where the panel is low. */
    grid-auto-rows: max-content;
    padding: var(--s4);
    overflow: auto;
  }
  fieldset {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--s5);
    margin: 0;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0;
    color: var(--ink-2);
    font-size: var(--t-note);
  }
  label {
    display: inline-flex;
    gap: var(--s2);
    align-items: center;
    min-height: max(32px, var(--target));
  }
  input[type="radio"],
  input[type="checkbox"] {
    width: 20px;
    height: 20px;
    margin: 0;
    accent-color: var(--blue);
  }
  .remark {
    margin: 0;
    min-height: 1.4em;
    color: var(--caution);
  }
`;
