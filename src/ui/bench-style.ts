/** The bench view: read at arm's length, struck with a gloved hand while the lathe stands. */
import { css } from "lit";

export const benchStyle = css`
  dialog {
    width: 100vw;
    height: 100dvh;
    max-width: none;
    max-height: none;
    margin: 0;
    padding: 0;
    border: 0;
    background: var(--paper);
    color: var(--ink);
    font: 400 20px/1.3 var(--sans);
    overflow: hidden;
    --big: min(182px, 15.4vw, 21vh);
  }
  dialog:focus-visible {
    outline: none;
  }
  dialog[open] {
    display: grid;
    grid-template:
      "back top next" minmax(72px, auto)
      "back main next" minmax(0, 1fr)
      "back facts next" auto
      "back say next" auto / min(168px, 15vw) minmax(0, 1fr) min(208px, 18vw);
  }
  .pad {
    display: grid;
    align-content: center;
    justify-items: center;
    gap: 12px;
    padding: 8px;
    border: 0;
    background: var(--paper-2);
    color: var(--ink);
    font-size: 30px;
    font-weight: 700;
    cursor: pointer;
  }
  .pad svg {
    width: 56px;
    height: 76px;
  }
  .pad span {
    min-height: 2.6em;
    font-size: 20px;
    font-weight: 400;
    text-align: center;
  }
  .pad.back {
    grid-area: back;
    border-right: 2px solid var(--ink);
  }
  .pad.next {
    grid-area: next;
    background: var(--blue);
    color: var(--on-blue);
  }
  .pad[aria-disabled="true"] {
    background: var(--paper-2);
    color: var(--ink-2);
    cursor: default;
  }
  .pad:focus-visible {
    outline: 4px solid var(--ink);
    outline-offset: -8px;
  }
  .pad.next:focus-visible {
    outline-color: var(--on-blue);
  }
  .pad.next[aria-disabled="true"]:focus-visible {
    outline-color: var(--ink);
  }
  .top {
    grid-area: top;
    display: flex;
    flex-wrap: wrap;
    gap: 8px 20px;
    align-items: center;
    padding: 8px 20px;
    border-bottom: 1px solid var(--rule-2);
  }
  h1 {
    margin: 0;
    font-size: 32px;
  }
  h1 small {
    font-size: 22px;
    font-weight: 400;
    color: var(--ink-2);
  }
  .stairs {
    flex: 1;
    min-width: 120px;
    max-width: 460px;
    height: 56px;
  }
  .stair {
    stroke: var(--ink);
    stroke-width: 1.5;
    fill: none;
  }
  .stair.done {
    fill: var(--ink);
  }
  .stair.next {
    fill: var(--blue);
    stroke: var(--blue);
  }
  .stair.come.other {
    stroke-dasharray: 4 3;
  }
  .letter {
    fill: var(--ink);
    font-family: var(--sans);
  }
  .letter.done {
    fill: var(--paper);
  }
  .letter.next {
    fill: var(--on-blue);
  }
  .top .act {
    min-height: 60px;
    padding: 4px 20px;
    font-size: 19px;
  }
  .main {
    grid-area: main;
    display: flex;
    gap: 24px;
    align-items: center;
    justify-content: center;
    min-height: 0;
    padding: 12px 20px;
    overflow: auto;
  }
  .dial {
    flex: 1 1 0;
    min-width: 0;
    max-width: 480px;
    height: 100%;
    max-height: 480px;
  }
  .readout {
    flex: 1 1 0;
    min-width: 0;
  }
  .readout p {
    margin: 0;
    font-size: min(28px, 4.6vw);
    color: var(--ink-2);
  }
  .big {
    display: grid;
    grid-template-columns: 1fr minmax(0, 44%);
    gap: 0.18em;
    align-items: baseline;
    font-size: var(--big);
    line-height: 0.98;
  }
  .big b {
    text-align: right;
  }
  .big span {
    font-size: min(32px, 2.5vw);
    color: var(--ink-2);
    white-space: nowrap;
  }
  .readout .add {
    margin-top: 10px;
    padding-top: 10px;
    border-top: 2px solid var(--ink);
    font-size: min(34px, max(20px, 2.6vw));
    color: var(--ink);
  }
  .add b {
    font-size: 1.3em;
    color: var(--blue);
  }
  .words p {
    margin: 0;
    font-size: min(64px, 8vw);
    font-weight: 700;
    line-height: 1.2;
    text-align: center;
  }
  .facts {
    grid-area: facts;
    display: flex;
    border-top: 2px solid var(--ink);
  }
  .facts dl {
    flex: 1 1 0;
    min-width: min-content;
    margin: 0;
    padding: 8px 14px;
    border-right: 1px solid var(--ink);
  }
  .facts dt {
    font-size: 18px;
    color: var(--ink-2);
  }
  .facts dd {
    margin: 0;
    font-size: min(29px, 2.3vw);
    font-weight: 700;
    line-height: 1.2;
  }
  .facts small {
    display: block;
    font-size: 18px;
    font-weight: 400;
    color: var(--ink-2);
  }
  .groove {
    flex: 1 1 180px;
    min-height: 110px;
    max-height: 130px;
    padding: 6px 12px;
  }
  .groove svg {
    width: 100%;
    height: 100%;
    max-height: 120px;
  }
  .saybar {
    grid-area: say;
    display: flex;
    gap: 16px;
    align-items: center;
    padding-right: 16px;
    background: var(--caution-wash);
    color: var(--caution);
    border-top: 1px solid var(--caution-hatch);
    font-size: 19px;
  }
  .saybar .hatch {
    width: 56px;
    min-height: 56px;
  }
  .saybar span {
    padding: 6px 0;
  }
  .answers {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 8px;
    vertical-align: middle;
  }
  .answers .act {
    min-height: 60px;
    padding: 4px 24px;
  }
  .none {
    grid-area: 1 / 1 / -1 / -1;
    align-self: center;
    justify-self: center;
    padding: 24px;
    text-align: center;
  }
  .none .act {
    min-height: 60px;
    padding: 4px 32px;
  }
  /* However much there is to say below, the figures keep their room. */
  @media (min-width: 761px) and (orientation: landscape) {
    .main {
      container-type: size;
    }
    .big {
      font-size: min(var(--big), max(64px, 50cqh - 72px));
    }
  }
  @media (max-width: 760px), (orientation: portrait) {
    .facts {
      flex-wrap: wrap;
    }
    .facts dl {
      flex: 1 1 auto;
    }
    dialog {
      --big: min(120px, 20vw, 12vh);
      overflow: auto;
    }
    dialog[open] {
      grid-template:
        "top top" auto
        "main main" minmax(220px, 1fr)
        "facts facts" auto
        "say say" auto
        "back next" minmax(96px, auto) / 1fr 2fr;
    }
    .big {
      grid-template-columns: 1fr 76px;
    }
    .big span {
      font-size: 15px;
    }
    .pad {
      align-content: center;
      gap: 2px;
      font-size: 24px;
    }
    .pad svg {
      width: 30px;
      height: 36px;
    }
    .pad span {
      min-height: 0;
      font-size: 16px;
    }
    .pad.back {
      border-right: 0;
      border-top: 2px solid var(--ink);
    }
    .main {
      gap: 8px;
      padding: 8px 12px;
    }
    .dial {
      max-height: 40vh;
    }
    .top {
      gap: 6px;
      padding: 6px 12px;
    }
    .stairs {
      order: 5;
      flex-basis: 100%;
      height: 40px;
    }
    h1 {
      flex: 1;
      font-size: 24px;
    }
    .top .act {
      min-width: 60px;
      min-height: 52px;
      padding: 4px 8px;
      font-size: 17px;
    }
    .facts dl {
      padding: 4px 10px;
    }
    .facts dt,
    .facts small {
      font-size: 15px;
    }
    .facts dd {
      font-size: 21px;
    }
    .saybar {
      font-size: 15px;
    }
    .saybar .hatch {
      width: 24px;
    }
    .groove {
      display: none;
    }
  }
  @media (max-height: 620px) and (orientation: landscape) {
    .facts dd {
      font-size: 22px;
    }
    .facts dt,
    .facts small,
    .saybar {
      font-size: 15px;
    }
    .groove {
      display: none;
    }
    .saybar .hatch {
      min-height: 34px;
    }
  }
`;
