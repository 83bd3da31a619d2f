/** Where the parts of the page stand, in each of the three layouts. */
import { css } from "lit";

export const appStyle = css`
  :host {
    display: block;
    /* Zoomed in far, or with a keyboard over half of the screen, the page gets longer than the window and scrolls. */
    min-height: 100vh;
    min-height: 100dvh;
  }
  .house {
    display: grid;
    position: relative;
    height: 100vh;
    height: 100dvh;
    min-height: var(--least);
    grid-template:
      "card rail" var(--rail)
      "card entry" auto
      "card find" auto
      "card sheet" minmax(0, 1fr)
      "card foot" auto / calc(82px + 110px * var(--k)) minmax(0, 1fr);
    --least: 420px;
  }
  .house.strip {
    /* A number and a sign-off box side by side, each as wide as the hand needs. */
    grid-template-columns: calc(2 * max(41px, var(--target)) + 2px) minmax(0, 1fr);
    --least: 360px;
  }
  .house.phone {
    grid-template:
      "rail" 54px
      "card" auto
      "entry" auto
      "find" auto
      "sheet" minmax(160px, 1fr)
      "foot" auto / minmax(0, 1fr);
    --least: 480px;
  }
  why-drawer {
    grid-area: sheet;
    justify-self: end;
    width: min(340px, 100%);
    z-index: 7;
    border-top: 1px solid var(--rule-2);
  }
  /* It stands beside the cells or under them, never over the one that is asked about. */
  .house.why:not(.roomy) sheet-grid {
    margin-right: 340px;
  }
  @media (max-width: 700px) {
    .house.why:not(.roomy) why-drawer {
      align-self: end;
      width: 100%;
      height: 55%;
    }
    .house.why:not(.roomy) sheet-grid {
      align-self: start;
      height: 45%;
      margin-right: 0;
      --fold: none;
    }
  }
  .house.why.roomy {
    grid-template:
      "card rail rail" var(--rail)
      "card entry entry" auto
      "card find find" auto
      "card sheet why" minmax(0, 1fr)
      "card foot foot" auto / calc(82px + 110px * var(--k)) minmax(0, 1fr) 290px;
  }
  .house.why.roomy why-drawer {
    grid-area: why;
    width: auto;
  }
  /* Landmarks for a screen reader; the parts inside them are laid out here. */
  header,
  main,
  footer {
    display: contents;
  }
  route-card {
    grid-area: card;
  }
  rail-words {
    grid-area: rail;
  }
  entry-line {
    grid-area: entry;
    min-width: 0;
    z-index: 5;
  }
  sheet-grid {
    grid-area: sheet;
    min-width: 0;
    min-height: 0;
    background: var(--paper);
  }
  /* Over the sheet it would hide what it has found. */
  find-bar {
    grid-area: find;
    justify-self: end;
    max-width: 100%;
    z-index: 9;
  }
  /* The cells need the room. */
  .house.phone:has(find-bar[shown]) sheet-grid {
    --fold: none;
  }
  title-block {
    grid-area: foot;
    z-index: 2;
  }
  said-line {
    grid-area: sheet;
    align-self: end;
    justify-self: center;
    width: min(720px, 100% - 24px);
    margin-bottom: 12px;
    z-index: 8;
  }
  .skip {
    position: absolute;
    top: 4px;
    left: 4px;
    z-index: 30;
    padding: 10px 16px;
    border: 2px solid var(--ink);
    background: var(--paper);
    color: var(--blue);
    font-weight: 700;
    transform: translateY(-200%);
  }
  .skip:focus {
    transform: none;
  }
  .drop {
    display: none;
    position: absolute;
    inset: 0;
    z-index: 40;
    place-items: center;
    border: 4px dashed var(--blue);
    background: color-mix(in srgb, var(--blue-wash) 88%, transparent);
    color: var(--blue-deep);
    font-size: var(--t-set);
    font-weight: 700;
    pointer-events: none;
  }
  .dropping .drop {
    display: grid;
  }
  .wait {
    grid-area: sheet;
    padding: var(--s5);
    color: var(--ink-2);
  }
  @media (max-height: 560px) {
    .house.card,
    .house.strip {
      --least: 320px;
    }
  }
`;
