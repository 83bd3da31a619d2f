/** Looks of what lies over the cells: references of a formula, the cell being written, selection and grips. */
import { css } from "lit";

const chain = css`var(--blue) 0 14px, transparent 14px 17px, var(--blue) 17px 20px, transparent 20px 23px`;

export const gridMarksStyle = css`
  /* references of the formula in hand */
  .tag {
    position: absolute;
    top: 50%;
    width: 18px;
    height: 18px;
    margin-top: -9px;
    border-radius: 50%;
    color: var(--paper);
    font: 700 12px/18px var(--sans);
    text-align: center;
  }
  .tag.before {
    left: 4px;
  }
  .tag.after {
    right: 4px;
  }
  .tag.slim {
    left: 2px;
    width: 5px;
    overflow: hidden;
    border-radius: 0;
    color: transparent;
  }
  .r1 {
    outline: 2px solid var(--arg1);
    background: var(--arg1-wash);
  }
  .r2 {
    outline: 2px dashed var(--arg2);
    background: var(--arg2-wash);
  }
  .r3 {
    outline: 2px dotted var(--arg3);
    background: var(--arg3-wash);
  }
  .r4 {
    outline: 2px double var(--arg4);
    background: var(--arg4-wash);
  }
  .r1,
  .r2,
  .r3,
  .r4 {
    outline-offset: -2px;
  }
  .r1 .tag {
    background: var(--arg1);
  }
  .r2 .tag {
    background: var(--arg2);
  }
  .r3 .tag {
    background: var(--arg3);
  }
  .r4 .tag {
    background: var(--arg4);
  }

  /* what the cell in hand comes from and goes to, while Why is open */
  .traced.from {
    outline: 2px dashed var(--ink-2);
    outline-offset: -3px;
  }
  .traced.to {
    outline: 2px dotted var(--ink-2);
    outline-offset: -3px;
  }
  .trace {
    position: absolute;
    top: 4px;
    padding: 0 3px;
    color: var(--ink-2);
    font: 400 12px/1.2 var(--sans);
  }
  .trace.before {
    left: 4px;
  }
  .trace.after {
    right: 4px;
  }
  /* Within the padding, so that no letter is under it: out of the cell, or into it. */
  .trace.slim {
    left: 3px;
    top: 50%;
    width: 5px;
    height: 10px;
    margin-top: -5px;
    padding: 0;
    overflow: hidden;
    background: var(--ink-2);
    clip-path: polygon(100% 0, 100% 100%, 0 50%);
    color: transparent;
    forced-color-adjust: none;
  }
  .traced.to .trace.slim {
    clip-path: polygon(0 0, 0 100%, 100% 50%);
  }

  /* Values of an earlier edit, where newer ones are late. */
  .late .stale {
    font-style: italic;
    color: var(--ink-2);
    background: repeating-linear-gradient(90deg, var(--rule-2) 0 6px, transparent 6px 10px) left 8px bottom 3px /
      calc(100% - 16px) 1px no-repeat;
  }

  /* editing */
  .edit {
    z-index: 6;
    padding: 0;
    overflow: visible;
    background: var(--paper);
  }
  .edit:has(textarea),
  .edit:has(formula-field) {
    outline: 0;
  }
  .edit formula-field {
    position: absolute;
    z-index: 6;
    left: 0;
    top: 0;
    width: max-content;
    min-width: 100%;
    max-width: min(640px, 80vw);
    min-height: var(--row);
    max-height: calc(6 * var(--row));
    overflow: auto;
    background: var(--paper);
    font: 400 var(--t-cell) / 1.2 var(--formula);
    text-align: left;
    --line: var(--row);
  }
  .edit::before,
  .edit::after {
    display: none;
  }
  .typed {
    display: block;
    overflow: hidden;
    padding: 0 8px;
  }
  textarea {
    display: block;
    resize: none;
    line-height: calc(var(--row) - 2 * var(--ring));
    overflow: hidden;
    width: auto;
    min-width: 100%;
    min-height: 100%;
    padding: 0 calc(8px - var(--ring));
    border: var(--ring) solid var(--blue);
    border-radius: 0;
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    font-family: var(--formula);
    font-weight: 400;
    text-align: left;
    outline: 0;
    field-sizing: content;
    user-select: text;
  }

  /* overlays */
  .box {
    position: absolute;
    z-index: 4;
    pointer-events: none;
    background:
      repeating-linear-gradient(90deg, ${chain}) top / 100% 2px no-repeat,
      repeating-linear-gradient(90deg, ${chain}) bottom / 100% 2px no-repeat,
      repeating-linear-gradient(${chain}) left / 2px 100% no-repeat,
      repeating-linear-gradient(${chain}) right / 2px 100% no-repeat;
  }
  .held {
    position: absolute;
    z-index: 4;
    pointer-events: none;
    outline: 2px dashed var(--ink-2);
    outline-offset: -2px;
  }
  .fill {
    position: absolute;
    z-index: 6;
    width: 24px;
    height: 24px;
    margin: -12px 0 0 -12px;
    cursor: crosshair;
    touch-action: none;
  }
  .fill::before {
    content: "";
    position: absolute;
    left: 6px;
    top: 6px;
    width: 11px;
    height: 11px;
    background: var(--blue);
    /* A wedge in the corner, as those on the zone marks: this way it goes on. */
    clip-path: polygon(100% 0, 100% 100%, 0 100%);
  }
  .width {
    position: absolute;
    right: -6px;
    top: 0;
    bottom: 0;
    z-index: 1;
    width: 12px;
    cursor: col-resize;
    touch-action: none;
  }
  @media (pointer: coarse) {
    .fill,
    .width {
      display: none;
    }
    /* The chosen column has its grip: 24 px to see, 44 to touch. */
    .hc.on .width {
      display: block;
      right: -22px;
      width: 44px;
    }
    .hc.on .width::before {
      content: "";
      position: absolute;
      left: 10px;
      top: 3px;
      bottom: 3px;
      width: 24px;
      border: 2px solid var(--blue);
      border-width: 0 2px;
    }
  }
  .grip {
    position: absolute;
    width: 44px;
    height: 44px;
    display: grid;
    place-items: center;
    touch-action: none;
    pointer-events: none;
  }
  .grip::before {
    content: "";
    width: 14px;
    height: 14px;
    border: 2px solid var(--blue);
    border-radius: 50%;
    background: var(--paper);
  }
  .grip.from {
    left: -22px;
    top: -22px;
  }
  .grip.to {
    right: -22px;
    bottom: -22px;
  }
  /* Of whole rows and columns the corners are far away: their grips keep in view. */
  .box.rows,
  .box.columns {
    display: flex;
    justify-content: space-between;
  }
  .box.rows {
    flex-direction: column;
  }
  .box.rows .grip,
  .box.columns .grip {
    flex: none;
    position: sticky;
  }
  .box.rows .grip {
    inset: auto auto auto calc(var(--zone) + 72px);
    margin-block: -22px;
  }
  .box.columns .grip {
    inset: calc(var(--head-h) + 60px) auto auto;
    margin-inline: -22px;
  }
  /* A single cell has a ring of its own; a finger finds the grip there that draws a range from it. */
  .box.one {
    background: none;
  }
  .box.one .from {
    display: none;
  }
  @media not (pointer: coarse) {
    .box.one {
      display: none;
    }
  }
  @media (pointer: coarse) {
    .grip {
      pointer-events: auto;
    }
  }
  [hidden] {
    display: none;
  }
  .sr {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media (forced-colors: active) {
    .range {
      outline: 1px dotted Highlight;
    }
    .active {
      outline: var(--ring) solid Highlight;
    }
    .caution {
      border-left: 18px double CanvasText;
      padding-left: 8px;
    }
    .error::after {
      border-bottom: 3px dotted CanvasText;
    }
  }
`;
