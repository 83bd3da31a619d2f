/** The look of the sheet: zone marks of a drawing frame, cells by what they are for. Colours come from tokens.css. */
import { css } from "lit";

export const gridStyle = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    display: flex;
    flex-direction: column;
    position: relative;
    min-height: 0;
    height: 100%;
    background: var(--paper);
    color: var(--ink);
    font: 400 var(--t-cell) / 1.35 var(--sans);
    --zone: calc(var(--head-h) + 14px);
  }
  .probe {
    position: absolute;
    visibility: hidden;
    pointer-events: none;
    height: var(--row);
    width: calc(100px * var(--k));
  }
  /* The page takes the folded drawings away where the cells would have no room beside them. */
  drawing-fold {
    display: var(--fold, block);
  }
  .scroll {
    position: relative;
    flex: 1;
    min-height: 0;
    overflow: auto;
    touch-action: pan-x pan-y;
    overscroll-behavior: contain;
    scrollbar-width: thin;
    scrollbar-color: var(--rule-2) var(--paper-2);
  }
  .canvas {
    position: relative;
  }

  /* zone marks */
  .heads {
    position: sticky;
    top: 0;
    z-index: 9;
    height: var(--head-h);
    background: var(--paper-2);
    border-bottom: var(--l-thick) solid var(--ink);
  }
  .hc,
  .rh {
    position: absolute;
    top: 0;
    display: grid;
    place-items: center;
    background: var(--paper-2);
    color: var(--ink-2);
    font-size: var(--t-label);
    line-height: 1;
    user-select: none;
    cursor: default;
  }
  .hc {
    height: calc(var(--head-h) - var(--l-thick));
    padding-bottom: 2px;
  }
  .hc::after {
    content: "";
    position: absolute;
    right: 0;
    bottom: 0;
    height: 8px;
    border-right: 1px solid var(--ink);
  }
  .rh {
    position: sticky;
    left: 0;
    z-index: 7;
    width: var(--zone);
    height: var(--row);
    border-right: var(--l-thick) solid var(--ink);
  }
  .rh::after {
    content: "";
    position: absolute;
    right: 0;
    bottom: 0;
    width: 8px;
    border-bottom: 1px solid var(--ink);
  }
  .corner {
    z-index: 9;
    height: calc(var(--head-h) - var(--l-thick));
  }
  .on {
    color: var(--blue);
    font-weight: 700;
  }
  .hc.on::before,
  .rh.on::before {
    content: "";
    position: absolute;
    border: solid transparent;
  }
  .hc.on::before {
    left: 50%;
    bottom: 0;
    margin-left: -5px;
    border-width: 0 5px 5px;
    border-bottom-color: var(--blue);
  }
  .rh.on::before {
    top: 50%;
    right: 0;
    margin-top: -6px;
    border-width: 6px 0 6px 7px;
    border-left-color: var(--blue);
  }

  /* cells */
  .row {
    position: absolute;
    left: 0;
    height: var(--row);
  }
  /* What stays while the sheet scrolls is in the flow, all of it in one place; "left" then holds it apart. */
  .row,
  .heads {
    display: grid;
    grid-template-columns: 100%;
    align-items: start;
  }
  .rh,
  .fz {
    grid-area: 1 / 1;
    justify-self: start;
  }
  .frozen {
    position: sticky;
    top: var(--head-h);
    height: 0;
    z-index: 8;
  }
  .frozen .row {
    background: var(--paper);
  }
  .frozen .row:last-child {
    box-shadow: 0 2px 0 var(--rule-2);
  }
  /* Lines are hidden before this one. */
  .hc.gone {
    box-shadow: inset 3px 0 0 var(--rule-2);
  }
  .rh.gone {
    box-shadow: inset 0 3px 0 var(--rule-2);
  }
  .c {
    position: absolute;
    top: 0;
    height: var(--row);
    padding: 0 8px;
    border-right: 1px solid var(--rule);
    border-bottom: 1px solid var(--rule);
    line-height: calc(var(--row) - 1px);
    overflow: hidden;
    white-space: nowrap;
    text-overflow: ellipsis;
    font-variant-numeric: tabular-nums;
    outline: 0;
    cursor: default;
    user-select: none;
  }
  .c.fz,
  .hc.fz {
    position: sticky;
    z-index: 5;
  }
  .hc.fz {
    z-index: 8;
  }
  .c.fz.active {
    z-index: 6;
  }
  .fz {
    background: var(--paper);
  }
  .hc.fz {
    background: var(--paper-2);
  }
  .right {
    text-align: right;
  }
  .center {
    text-align: center;
  }
  .runs {
    overflow: visible;
    z-index: 1;
  }
  .run {
    display: inline-block;
    vertical-align: top;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .tall {
    z-index: 1;
    padding-top: 4px;
    background: var(--paper);
    line-height: 1.35;
    white-space: pre-line;
  }
  .u {
    font-size: 0.86em;
    color: var(--ink-2);
    font-weight: 400;
  }
  .deg {
    font-style: normal;
    font-weight: 400;
    color: var(--ink-2);
  }
  .label {
    border-right-color: transparent;
  }
  .bold {
    font-weight: 700;
  }
  .italic {
    font-style: italic;
  }
  .shade {
    background: var(--paper-2);
  }
  .edge-top {
    border-top: 1px solid var(--ink);
  }
  .edge-right {
    border-right-color: var(--ink);
  }
  .edge-bottom {
    border-bottom-color: var(--ink);
  }
  .edge-left {
    border-left: 1px solid var(--ink);
  }
  /* Fine upright ruling. */
  .locked {
    background-image: repeating-linear-gradient(90deg, var(--rule) 0 1px, transparent 1px 6px);
  }
  /* A balloon, as a drawing marks what is explained elsewhere. */
  .noted {
    background-image: radial-gradient(
      circle at calc(100% - 6px) 6px,
      transparent 1.8px,
      var(--ink-2) 2.2px 3.2px,
      transparent 3.6px
    );
  }
  .head {
    z-index: 1;
    border-right-color: transparent;
    border-bottom: 1.5px solid var(--ink);
    font-size: calc(15px * var(--k));
    font-weight: 700;
  }
  .note {
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  .column {
    display: grid;
    align-content: end;
    padding-bottom: 2px;
    border-bottom: 1.5px solid var(--ink);
    font-size: var(--t-label);
    font-weight: 700;
    line-height: 1.05;
    white-space: pre-line;
  }
  .input {
    background: var(--blue-wash);
  }
  .input::after {
    content: "";
    position: absolute;
    left: 6px;
    right: 6px;
    bottom: 2px;
    border-bottom: var(--l-thick) solid var(--blue);
  }
  .choice {
    padding-right: 26px;
  }
  .choice::before {
    content: "";
    position: absolute;
    right: 9px;
    top: 50%;
    margin-top: -3px;
    border: solid transparent;
    border-width: 7px 5px 0;
    border-top-color: var(--blue);
  }
  .key {
    color: var(--blue);
    font-weight: 700;
  }
  .key .u,
  .key .deg,
  .caution .u,
  .caution .deg {
    color: inherit;
  }
  @media (hover: hover) {
    .c:not(.input, .caution, .active, .range):hover {
      background: var(--paper-2);
      transition: background-color var(--quick);
    }
  }
  .caution {
    padding-left: 26px;
    color: var(--caution);
    background:
      linear-gradient(var(--caution-wash), var(--caution-wash)) right / calc(100% - 18px) 100% no-repeat,
      repeating-linear-gradient(45deg, var(--caution-hatch) 0 3px, var(--caution-wash) 3px 7px);
  }
  .caution .n {
    font-weight: 700;
  }
  .error {
    color: var(--error);
  }
  .error .words {
    font-size: var(--t-label);
  }
  .error::after {
    content: "";
    position: absolute;
    left: 6px;
    right: 6px;
    bottom: 3px;
    height: 3px;
    border: 0;
    background: radial-gradient(circle at 2px 1.5px, var(--error) 1.3px, transparent 1.6px) 0 0 / 6px 3px;
  }
  .range:not(.active, .caution, .input) {
    background: color-mix(in srgb, var(--blue-wash) 70%, var(--paper));
  }
  .active {
    z-index: 3;
    outline: var(--ring) solid var(--blue);
    outline-offset: calc(-1 * var(--ring));
  }
`;
