/** The look of the list of threads. */
import { css } from "lit";

export const threadListStyle = css`
  dialog {
    width: min(1120px, 100vw - 48px);
    height: min(760px, 100dvh - 48px);
    max-height: none;
  }
  .body {
    padding: 0 var(--s4) var(--s4);
  }
  .foot {
    justify-content: flex-start;
  }
  .foot p {
    margin: 0;
  }
  .try {
    display: grid;
    gap: 4px;
    padding: var(--s3) 0 0;
  }
  .try label {
    display: flex;
    flex-wrap: wrap;
    gap: var(--s2) var(--s3);
  }
  .try input {
    flex: 0 1 320px;
    min-width: 0;
    min-height: max(34px, var(--target));
    padding: 2px var(--s2);
    border: 0;
    border-bottom: 2px solid var(--blue);
    background: var(--blue-wash);
    color: var(--ink);
  }
  .try p {
    min-height: 2.7em;
    margin: 0;
    overflow-wrap: anywhere;
  }
  .try .not {
    color: var(--caution);
  }
  table {
    width: 100%;
    border: 2px solid var(--ink);
    border-collapse: collapse;
    background: var(--paper);
    font-size: var(--t-note);
  }
  [role="columnheader"] {
    position: sticky;
    top: 0;
    background: var(--paper-2);
    font-weight: 400;
    color: var(--ink-2);
    box-shadow: inset 0 -1.5px 0 var(--ink);
  }
  th,
  td {
    padding: 5px 10px;
    border-bottom: 1px solid var(--rule);
    text-align: left;
    vertical-align: top;
    overflow-wrap: anywhere;
  }
  th + th,
  th + td,
  td + td {
    border-left: 1px solid var(--rule);
  }
  th[scope="row"] {
    width: 17%;
  }
  .written {
    width: 22%;
    color: var(--blue-deep);
  }
  bdi {
    display: inline-block;
    margin-right: 0.7em;
    white-space: nowrap;
  }
  .memory {
    box-shadow: inset 8px 0 0 var(--caution-wash);
    border-left: 3px solid var(--caution-hatch);
    padding-left: 14px;
  }
  td span {
    display: none;
  }
  @media (max-width: 700px) {
    dialog {
      width: 100vw;
      height: 100dvh;
      max-height: none;
      border: 0;
    }
    table,
    tbody,
    tr,
    th[scope="row"],
    td,
    .written {
      display: block;
      width: auto;
    }
    thead {
      position: absolute;
      clip-path: inset(50%);
    }
    tr {
      padding: 6px 0;
      border-bottom: 1.5px solid var(--ink);
    }
    th,
    td,
    th + td,
    td + td {
      padding: 2px 10px;
      border: 0;
    }
    td.memory {
      border-left: 3px solid var(--caution-hatch);
    }
    td span {
      display: inline;
      color: var(--ink-2);
    }
  }
`;
