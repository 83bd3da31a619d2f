/** The look of the entry line: balloon with its leader, formula, what it gives, and the lane of dimensions. */
import { css } from "lit";

export const entryStyle = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    display: block;
    position: relative;
    background: var(--paper);
    color: var(--ink);
    border-bottom: 1px solid var(--rule-2);
    font: 400 var(--t-cell) / 1.35 var(--sans);
    /* Targets are 36 at the desk, 52 under a finger: the line grows with them. */
    --line: max(calc(32px * var(--k)), calc(var(--target) - 4px));
  }
  section {
    display: grid;
    grid-template: calc(var(--line) + 8px) minmax(calc(34px * var(--k)), auto) / calc(16px + 44px * var(--k)) minmax(0, 1fr) auto;
  }
  .balloon {
    grid-row: 1 / 3;
    display: grid;
    place-items: center;
    position: relative;
  }
  .balloon b {
    display: grid;
    place-items: center;
    position: relative;
    z-index: 1;
    min-width: calc(44px * var(--k));
    height: calc(44px * var(--k));
    padding: 0 4px;
    border: 2px solid var(--blue);
    border-radius: calc(22px * var(--k));
    background: var(--paper);
    color: var(--blue);
    font-size: var(--t-cell);
    line-height: 1;
  }
  .balloon::after {
    content: "";
    position: absolute;
    left: 50%;
    top: 50%;
    bottom: 0;
    border-left: 1.5px solid var(--blue);
  }
  textarea {
    display: block;
    overflow: hidden;
    resize: none;
    white-space: pre;
    align-self: end;
    width: 100%;
    min-width: 0;
    height: var(--line);
    padding: calc((var(--line) - var(--l-thick) - 1.2em) / 2) var(--s2);
    border: 0;
    border-bottom: var(--l-thick) solid var(--rule-2);
    border-radius: 0;
    background: none;
    color: var(--ink);
    font: 400 var(--t-entry) / 1.2 var(--formula);
    letter-spacing: 0.01em;
    outline: 0;
  }
  formula-field {
    align-self: end;
    height: var(--line);
    border-bottom: var(--l-thick) solid var(--rule-2);
    font: 400 var(--t-entry) / 1.2 var(--formula);
  }
  .argument b {
    color: var(--ink);
  }
  .argument i {
    color: var(--ink-2);
  }
  /* While it is written, text of several lines lies over the lane below. */
  .several.editing textarea,
  .several.editing formula-field,
  .several textarea:focus,
  .several formula-field:focus-within {
    position: relative;
    z-index: 3;
    align-self: start;
    margin-top: 8px;
    height: calc(var(--line) + 34px * var(--k));
    overflow: auto;
    background: var(--blue-wash);
  }
  textarea:focus-visible {
    outline: var(--ring) solid var(--blue);
    outline-offset: -3px;
  }
  .gives {
    grid-column: 3;
    align-self: end;
    display: flex;
    align-items: center;
    max-width: 46vw;
    height: var(--line);
    padding: 0 var(--s3);
    border-bottom: var(--l-thick) solid var(--rule-2);
    font-weight: 700;
    font-size: var(--t-entry);
    white-space: nowrap;
  }
  .gives b {
    overflow: hidden;
    text-overflow: ellipsis;
  }
  /* Of an earlier text. What comes within 300 ms is not worth a change of looks. */
  .gives .late {
    animation: late 1ms 300ms forwards;
  }
  @keyframes late {
    to {
      font-style: italic;
      color: var(--ink-2);
    }
  }
  .gives .u {
    margin: 0 0.4em;
    font-weight: 400;
    font-size: 0.82em;
    color: var(--ink-2);
  }
  .editing textarea,
  .editing formula-field,
  .editing .gives {
    border-bottom-color: var(--blue);
    background: var(--blue-wash);
  }
  .lane {
    grid-column: 2;
    align-self: center;
    display: flex;
    flex-wrap: wrap;
    gap: 2px var(--s4);
    min-width: 0;
    padding: 4px var(--s2);
    font-size: var(--t-note);
    line-height: 1.3;
    color: var(--ink-2);
  }
  .lane.whole {
    grid-column: 2 / 4;
  }
  .dims {
    display: contents;
    list-style: none;
  }
  .dim {
    display: flex;
    align-items: baseline;
    gap: 6px;
    white-space: nowrap;
  }
  .dim i {
    position: relative;
    align-self: center;
    width: 30px;
    height: 9px;
    border: solid currentColor;
    border-width: 0 1px;
  }
  .dim i::before {
    content: "";
    position: absolute;
    left: 1px;
    right: 1px;
    top: 4px;
    border-top: 1px var(--pattern) currentColor;
  }
  .dim i::after {
    content: "";
    position: absolute;
    left: 0;
    right: 0;
    top: 1px;
    height: 7px;
    background:
      conic-gradient(from 65deg at 0 50%, currentColor 50deg, transparent 0) left / 8px 7px no-repeat,
      conic-gradient(from 245deg at 100% 50%, currentColor 50deg, transparent 0) right / 8px 7px no-repeat;
  }
  .a1 {
    color: var(--arg1);
    --pattern: solid;
  }
  .a2 {
    color: var(--arg2);
    --pattern: dashed;
  }
  .a3 {
    color: var(--arg3);
    --pattern: dotted;
  }
  .a4 {
    color: var(--arg4);
    --pattern: double;
  }
  .wrong {
    color: var(--error);
    overflow-wrap: anywhere;
  }
  .caution {
    padding-left: 24px;
    color: var(--caution);
    background:
      linear-gradient(var(--caution-wash), var(--caution-wash)) right / calc(100% - 16px) 100% no-repeat,
      repeating-linear-gradient(45deg, var(--caution-hatch) 0 3px, var(--caution-wash) 3px 7px);
    padding-right: 8px;
  }
  .acts {
    grid-column: 3;
    align-self: center;
    display: flex;
    gap: 2px;
    padding-right: var(--s2);
  }
  button {
    min-height: max(calc(26px * var(--k)), calc(var(--target) - 8px));
    padding: 0 10px;
    border: 1px solid var(--rule-2);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-size: var(--t-label);
    cursor: pointer;
  }
  button.go {
    border-color: var(--blue);
    background: var(--blue);
    color: var(--on-blue);
    font-weight: 700;
  }
  button:focus-visible {
    outline: var(--ring) solid var(--blue);
    outline-offset: 2px;
  }
  kbd {
    margin-left: 4px;
    font: inherit;
    font-weight: 400;
  }
  @media (pointer: coarse) {
    kbd {
      display: none;
    }
  }
  @media (max-width: 599px) {
    section {
      grid-template-columns: calc(12px + 40px * var(--k)) minmax(0, 1fr) auto;
    }
    .lane,
    .lane.whole {
      grid-column: 2 / 4;
      min-height: calc(48px * var(--k));
      max-height: calc(72px * var(--k));
      overflow-y: auto;
    }
    /* While editing the acts stand where the value stood, so that the sheet below does not move. */
    .acts {
      grid-area: 1 / 3;
      align-self: end;
    }
    .editing .gives {
      display: none;
    }
    .gives {
      padding: 0 var(--s2);
    }
  }
`;
