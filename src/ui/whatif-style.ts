/** The look of the fields in the panels Trial and Seek. */
import { css } from "lit";

export const whatIfStyle = css`
  dialog {
    width: min(720px, 100vw - 32px);
  }
  dialog[open] {
    grid-template-rows: auto minmax(0, 1fr) auto auto;
  }
  form {
    display: contents;
  }
  .field {
    display: grid;
    align-items: stretch;
    gap: 2px;
    min-height: auto;
    font-size: var(--t-note);
    color: var(--ink-2);
  }
  .field input,
  .field select {
    min-width: 0;
    min-height: max(34px, var(--target));
    padding: 2px var(--s2);
    border: 0;
    border-bottom: 2px solid var(--blue);
    border-radius: 0;
    background: var(--blue-wash);
    color: var(--ink);
    font: 400 var(--t-cell) / 1.35 var(--sans);
  }
  .field input[aria-invalid="true"] {
    border-bottom: 3px dotted var(--error);
  }
  .told {
    min-height: 1.35em;
    margin: 0;
    font-size: var(--t-note);
    color: var(--ink-2);
    overflow-wrap: anywhere;
  }
  .told.wrong {
    color: var(--error);
  }
  .three {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, calc(92px * var(--k))), 1fr));
    gap: var(--s2) var(--s3);
  }
  fieldset.part {
    display: grid;
    gap: var(--s2);
    padding-top: var(--s2);
    border-top: 1px solid var(--rule-2);
  }
  fieldset.part > legend {
    float: left;
    color: var(--ink);
    font-size: var(--t-cell);
    font-weight: 700;
  }
  fieldset.part > legend + * {
    clear: both;
  }
  /* Always in sight, however far the fields are scrolled. */
  .sum {
    margin: 0;
    min-height: calc(2.7em + 2 * var(--s2));
    padding: var(--s2) var(--s4);
    border-top: 1px solid var(--rule-2);
    overflow-wrap: anywhere;
  }
  .sum.wrong {
    border-top: 3px dotted var(--error);
    color: var(--error);
  }
  .sum.good {
    border-top: 2px solid var(--ink);
    font-weight: 700;
  }
  progress {
    display: block;
    width: 100%;
    height: 10px;
    margin-top: 4px;
    accent-color: var(--blue);
  }
`;
