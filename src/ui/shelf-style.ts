/** The look of the shelf. */
import { css } from "lit";

export const shelfStyle = css`
  dialog {
    width: min(1180px, 100vw - 48px);
    max-width: none;
    height: min(760px, 100vh - 48px);
    max-height: none;
    padding: 0;
    border: 2px solid var(--ink);
    background: var(--desk);
    color: var(--ink);
    font: 400 var(--t-cell) / 1.35 var(--sans);
    overflow: hidden;
  }
  dialog[open] {
    display: grid;
    grid-template-rows: auto minmax(0, 1fr) auto;
  }
  dialog::backdrop {
    background: color-mix(in srgb, var(--ink) 45%, transparent);
  }
  :host-context([data-theme="slate"]) dialog::backdrop {
    background: rgb(0 0 0 / 60%);
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 0;
    min-height: var(--rail);
    padding: 4px var(--s3) 4px var(--s4);
    border-bottom: 2px solid var(--ink);
    background: var(--paper-2);
  }
  .head .word {
    min-height: var(--target);
  }
  .head .act {
    min-height: var(--target);
    margin-left: var(--s2);
  }
  h1 {
    margin: 0 var(--s4) 0 var(--s3);
    font-size: calc(16px * var(--k));
  }
  .gap {
    flex: 1;
  }
  .body {
    display: grid;
    align-content: start;
    gap: 14px;
    padding: 18px 28px;
    overflow-y: auto;
  }
  h2 {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 14px;
    margin: 0;
    font-size: calc(20px * var(--k));
  }
  h2 span {
    font-size: var(--t-note);
    font-weight: 400;
    color: var(--ink-2);
  }
  table {
    width: 100%;
    border: 2px solid var(--ink);
    border-collapse: collapse;
    background: var(--paper);
    font-size: calc(15px * var(--k));
  }
  thead th {
    padding: 4px 14px;
    border-bottom: 1.5px solid var(--ink);
    font-size: var(--t-label);
    font-weight: 400;
    text-align: left;
    color: var(--ink-2);
  }
  th + th,
  td {
    border-left: 1px solid var(--rule);
  }
  td {
    padding: 0 14px;
    white-space: nowrap;
  }
  tbody th,
  td {
    height: max(40px, var(--target) + 4px);
    border-bottom: 1px solid var(--rule);
  }
  tbody th {
    width: 30%;
    padding: 0;
    text-align: left;
  }
  .job {
    width: 100%;
    height: 100%;
    min-height: inherit;
    padding: 8px 14px;
    border: 0;
    background: none;
    font-weight: 700;
    text-align: left;
    cursor: pointer;
  }
  .job:hover {
    background: var(--blue-wash);
    color: var(--blue-deep);
    text-decoration: underline 2px;
    text-underline-offset: 3px;
  }
  .here {
    background: var(--blue-wash);
    box-shadow: inset 5px 0 0 var(--blue);
  }
  .progress {
    display: flex;
    flex-wrap: wrap;
    gap: 3px;
    align-items: center;
  }
  .progress i {
    width: 16px;
    height: 16px;
    border: 1.5px solid var(--rule-2);
  }
  .progress .s {
    border-color: var(--ink);
    background: var(--ink);
  }
  .progress .c,
  .progress .b {
    border-color: var(--caution);
    background: repeating-linear-gradient(45deg, var(--caution-hatch) 0 2px, var(--caution-wash) 2px 5px);
  }
  .progress em {
    margin-left: 8px;
    font-size: var(--t-note);
    font-style: normal;
    color: var(--ink-2);
  }
  .acts {
    width: 1%;
    text-align: right;
  }
  .acts .act {
    margin-left: 2px;
  }
  input.title {
    width: calc(100% - 16px);
    min-height: max(30px, var(--target));
    margin: 0 8px;
    padding: 0 6px;
    border: 1px solid var(--rule-2);
    background: var(--blue-wash);
    color: var(--ink);
    font-weight: 700;
  }
  .muted {
    font-size: var(--t-note);
    color: var(--ink-2);
  }
  .none,
  .undo {
    margin: 0;
    padding: 10px 14px;
    border: 1.5px dashed var(--rule-2);
    background: var(--paper);
  }
  .undo {
    display: flex;
    gap: var(--s3);
    align-items: center;
    justify-content: space-between;
  }
  .rack {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, calc(230px * var(--k))), 1fr));
    gap: 14px;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .rack li {
    display: flex;
    flex-direction: column;
    gap: 4px;
    padding: 10px 12px 12px;
    border: 1.5px solid var(--ink);
    background: var(--card);
  }
  .rack b {
    font-size: calc(16px * var(--k));
  }
  .rack p {
    flex: 1;
    margin: 0 0 8px;
    font-size: var(--t-note);
    color: var(--ink-2);
  }
  .rack .act {
    align-self: start;
    min-height: max(30px, var(--target) - 4px);
  }
  .foot {
    display: flex;
    gap: var(--s3);
    min-height: 44px;
    padding: 6px var(--s3);
    border-top: 2px solid var(--ink);
    background: var(--paper-2);
    font-size: var(--t-note);
  }
  .foot p {
    align-self: center;
    margin: 0;
  }
  @media (max-width: 700px) {
    dialog {
      width: 100vw;
      height: 100vh;
      border: 0;
    }
    .body {
      padding: 14px;
    }
    .gap {
      flex-basis: 100%;
    }
    tr {
      display: grid;
      grid-template-columns: 1fr auto auto;
    }
    thead {
      display: none;
    }
    tbody th {
      grid-column: 1 / -1;
      width: auto;
      height: auto;
      border: 0;
    }
    td:nth-of-type(2) {
      grid-column: 1 / -1;
      grid-row: 2;
    }
    td {
      align-content: center;
      border-left: 0;
      overflow: hidden;
      text-overflow: ellipsis;
    }
    .acts {
      grid-column: 1 / -1;
      grid-row: 4;
      width: auto;
      white-space: normal;
      text-align: left;
    }
  }
`;
