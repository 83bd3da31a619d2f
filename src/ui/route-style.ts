/** The look of the route card, as a card at the left, as a strip at the left, and as a strip on top. */
import { css } from "lit";

export const routeStyle = css`
  :host {
    display: block;
    min-width: 0;
    min-height: 0;
    background: var(--card);
  }
  /* The edge of the card lies behind the operations: the one in hand covers it and runs into the sheet. */
  .card,
  .strip {
    background: linear-gradient(var(--ink), var(--ink)) right / 2px 100% no-repeat;
  }
  nav {
    display: flex;
    flex-direction: column;
    height: 100%;
  }
  .head {
    display: flex;
    flex: none;
    align-items: center;
    gap: var(--s2);
    height: var(--rail);
    padding: 0 var(--s3);
    font-size: calc(16px * var(--k));
    font-weight: 700;
    letter-spacing: 0.01em;
  }
  .job {
    padding: var(--s2) var(--s3) var(--s3);
    border-top: 1px solid var(--card-line);
    border-bottom: 2px solid var(--ink);
  }
  .job b {
    display: block;
    font-size: var(--t-cell);
    line-height: 1.3;
    overflow-wrap: anywhere;
  }
  .job span {
    display: -webkit-box;
    overflow: hidden;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 3;
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  ol {
    flex: 1;
    min-height: 0;
    margin: 0;
    padding: 0;
    overflow: hidden auto;
    list-style: none;
    scrollbar-width: thin;
  }
  li {
    display: flex;
    position: relative;
    border-bottom: 1px solid var(--card-line);
  }
  .op {
    flex: 1;
    min-width: 0;
    padding: 0;
    border: 0;
    background: none;
    text-align: left;
    cursor: pointer;
    transition: background-color var(--quick);
  }
  .op:hover {
    background: color-mix(in srgb, var(--ink) 7%, transparent);
  }
  .no {
    font-weight: 700;
    line-height: 1;
  }
  .nm {
    display: -webkit-box;
    overflow: hidden;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    overflow-wrap: anywhere;
    font-weight: 700;
    line-height: 1.25;
  }
  .res {
    display: -webkit-box;
    overflow: hidden;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    overflow-wrap: anywhere;
    font-size: var(--t-label);
    line-height: 1.3;
    color: var(--ink-2);
  }
  /* As values that are not those of now: slanted, muted, a broken rule. */
  .for {
    display: block;
    overflow-wrap: anywhere;
    font-size: var(--t-label);
    font-style: italic;
    line-height: 1.3;
    color: var(--ink-2);
    border-bottom: 1.5px dashed var(--rule-2);
  }
  .box {
    display: grid;
    position: relative;
    flex: none;
    place-items: center;
    width: max(36px, min(var(--target), 48px));
    cursor: pointer;
  }
  .box input {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    margin: 0;
    opacity: 0;
    cursor: pointer;
  }
  .square {
    display: grid;
    place-items: center;
    width: 20px;
    height: 20px;
    border: 1.5px solid var(--rule-2);
    background: transparent;
    pointer-events: none;
  }
  .box:hover .square {
    border-color: var(--ink);
  }
  .box input:focus-visible + .square {
    outline: var(--ring) solid var(--blue);
    outline-offset: 2px;
  }
  .square svg {
    width: 14px;
    height: 14px;
  }
  .square path {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2.2;
  }
  .other .square {
    border-style: dashed;
    border-color: var(--ink-2);
  }
  .other .square path {
    stroke: var(--ink-2);
    stroke-width: 1.4;
    stroke-dasharray: 2 2;
  }
  .here {
    z-index: 1;
    background: var(--paper);
    box-shadow: inset 5px 0 0 var(--blue);
  }
  .here .op:hover {
    background: none;
  }
  .here .no {
    color: var(--blue);
  }
  .warn .res {
    color: var(--caution);
  }
  .wrong .res {
    color: var(--error);
  }
  .errors {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 8px;
    align-items: center;
    color: var(--error);
  }
  .tally .errors b {
    color: var(--error);
  }
  .warn .square {
    border-color: var(--caution);
    background: repeating-linear-gradient(45deg, var(--caution-hatch) 0 2px, var(--caution-wash) 2px 5px);
  }
  .name {
    position: absolute;
    inset: 4px 4px 4px calc(28px + 20px * var(--k));
    min-width: 0;
    padding: 0 6px;
    border: 0;
    border-bottom: 2px solid var(--blue);
    border-radius: 0;
    background: var(--blue-wash);
    font-weight: 700;
  }
  .add {
    border-bottom: 1px dashed var(--rule-2);
  }
  .add .no,
  .add .nm {
    font-weight: 400;
    color: var(--ink-2);
  }
  .tally {
    display: grid;
    gap: 6px;
    padding: var(--s3);
    border-top: 1px solid var(--card-line);
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  .tally b {
    color: var(--ink);
  }

  /* card */
  .card .op {
    display: grid;
    grid-template-columns: calc(24px + 20px * var(--k)) minmax(0, 1fr);
    align-items: center;
    min-height: max(var(--target), 37px + 20px * var(--k));
  }
  .card .words {
    padding-block: 3px;
  }
  .card .no {
    display: grid;
    align-self: stretch;
    place-items: center;
    margin-right: 10px;
    border-right: 1px solid var(--card-line);
    font-size: calc(17px * var(--k));
  }
  .card .no.long {
    font-size: calc(14px * var(--k));
  }
  .card .here {
    margin-top: -1px;
    border-block: 2px solid var(--ink);
  }
  /* strip at the left */
  .strip .head {
    justify-content: center;
    padding: 0;
  }
  .strip .head .mark {
    width: 40px;
    height: 36px;
  }
  .strip ol {
    border-top: 2px solid var(--ink);
  }
  .strip li {
    height: max(56px, min(76px, var(--target) + 24px));
  }
  .strip .op {
    padding: 0 0 20px 7px;
  }
  /* Under number and box, over the whole width. */
  .strip .nm {
    display: block;
    position: absolute;
    right: 4px;
    bottom: 5px;
    left: 7px;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    font-size: var(--t-label);
    font-weight: 400;
    pointer-events: none;
  }
  .strip .box {
    padding: 0 2px 20px 0;
  }
  .strip .no {
    font-size: 22px;
  }
  .strip .box {
    width: max(36px, var(--target));
  }
  .strip .here {
    margin-top: -1px;
    border-block: 2px solid var(--ink);
  }
  .strip .add {
    height: calc(max(48px, var(--target)) + 1px);
  }
  .strip .add .op {
    padding-bottom: 0;
  }
  .strip .add .no {
    font-size: 15px;
  }
  .strip .name,
  .phone .name {
    position: fixed;
    inset: auto;
    z-index: 20;
    width: 260px;
    height: 48px;
    border: 2px solid var(--ink);
    border-bottom: 3px solid var(--blue);
  }

  /* strip on top */
  .phone {
    border-block: 1.5px solid var(--ink);
  }
  .phone ol {
    display: flex;
    overflow: auto hidden;
    scrollbar-width: none;
  }
  .phone li {
    flex: 1 0 max(48px, var(--target));
    min-height: max(48px, var(--target));
    border: 0;
  }
  .phone li + li .op {
    box-shadow: inset 1px 0 var(--card-line);
  }
  .phone .op {
    text-align: center;
  }
  .phone .no {
    font-size: 18px;
  }
  .phone .here {
    box-shadow: inset 0 5px 0 var(--blue);
  }
  .phone .ok:not(.warn)::after {
    content: "";
    position: absolute;
    bottom: 6px;
    left: 50%;
    width: 14px;
    margin-left: -7px;
    border-bottom: 3px solid var(--holds);
  }
  .phone .wrong .no,
  .strip .wrong .no {
    color: var(--error);
    text-decoration: underline dotted 3px;
    text-underline-offset: 4px;
  }
  .phone .warn::after {
    content: "";
    position: absolute;
    bottom: 3px;
    left: 8px;
    right: 8px;
    height: 6px;
    background: repeating-linear-gradient(45deg, var(--caution) 0 2px, var(--caution-wash) 2px 5px);
  }
  @media (forced-colors: active) {
    .here {
      outline: 3px solid Highlight;
      outline-offset: -3px;
    }
  }
`;
