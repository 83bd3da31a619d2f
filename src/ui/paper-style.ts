/** Paper: white ground, black does the work, blue only what is to be set. Pattern and weight survive a mono printer. */
import { css } from "lit";

/** The tokens as they stand on paper, whatever the ground on the screen. */
export const paperColours = css`
  --paper: #ffffff;
  --paper-2: #ffffff;
  --ink: #17212b;
  --ink-2: #505b64;
  --rule: #d3d6d2;
  --rule-2: #78828a;
  --blue: #27379b;
  --blue-wash: #e6e9f8;
  --metal: #e7e8e3;
  --metal-2: #d8dbd7;
  --hatch: #8e979d;
  --chip: #c6cef0;
  --chip-2: #dde2f6;
  --caution: #6e4300;
  --caution-hatch: #e3be6b;
  --error: #9c1c17;
`;

export const paperStyle = css`
  :host {
    display: none;
    ${paperColours}
    --k: 1;
    color: var(--ink);
    font: 400 11px/1.3 var(--sans);
    print-color-adjust: exact;
    -webkit-print-color-adjust: exact;
  }
  @media print {
    :host {
      display: block;
    }
  }
  .top {
    display: flex;
    gap: 12px;
    justify-content: space-between;
    padding-bottom: 6px;
    font-size: 11px;
    color: var(--ink-2);
  }
  .top b {
    color: var(--ink);
    font-size: 14px;
  }
  .behind {
    margin: 0 0 6px;
    font-weight: 700;
  }
  .bundle + .bundle {
    break-before: page;
  }
  table {
    table-layout: fixed;
    border-collapse: collapse;
    font-size: 13px;
  }
  tr {
    break-inside: avoid;
  }
  td,
  tbody th {
    height: 22px;
    padding: 2px 6px;
    overflow-wrap: anywhere;
    vertical-align: middle;
  }
  table.grid td,
  table.grid th {
    border: 1px solid var(--rule);
  }
  thead th,
  tbody th {
    font-weight: 400;
    font-size: 11px;
    color: var(--ink-2);
    text-align: center;
  }
  td.right {
    text-align: right;
  }
  td.center {
    text-align: center;
  }
  td.head {
    font-weight: 700;
    border-bottom: 2px solid var(--ink);
  }
  td.column {
    color: var(--ink-2);
    border-bottom: 1px solid var(--rule-2);
  }
  td.note {
    color: var(--ink-2);
  }
  td.input {
    border-bottom: 2px solid var(--ink-2);
  }
  td.key {
    color: var(--blue);
    font-weight: 700;
  }
  td.bold {
    font-weight: 700;
  }
  td.plate {
    padding: 0;
    vertical-align: top;
  }
  /* As high as its width makes it: a share of a cell that spans rows would be a share of one row. */
  td.plate .drawing {
    height: auto;
  }
  td.italic {
    font-style: italic;
  }
  td.shade {
    background: var(--metal);
  }
  td.edge-top {
    border-top: 1.5px solid var(--ink);
  }
  td.edge-bottom {
    border-bottom: 1.5px solid var(--ink);
  }
  td.edge-left {
    border-left: 1.5px solid var(--ink);
  }
  td.edge-right {
    border-right: 1.5px solid var(--ink);
  }
  td.error {
    color: var(--error);
    border: 1px dotted var(--error);
  }
  td.caution {
    border-left: 6px double var(--caution);
    color: var(--caution);
  }
  td small {
    display: block;
    font-size: 10px;
  }
`;
