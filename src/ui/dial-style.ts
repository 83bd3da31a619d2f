/** The look of a slide's dial at the bench. */
import { css } from "lit";

export const dialStyle = css`
  .face {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2.5;
  }
  .tick {
    stroke: var(--ink);
    stroke-width: 1;
  }
  .long {
    stroke: var(--ink);
    stroke-width: 2.4;
  }
  .figure,
  .word {
    fill: var(--ink);
    font-family: var(--sans);
  }
  .word {
    fill: var(--ink-2);
  }
  .by {
    fill: var(--blue);
    font-family: var(--sans);
    font-weight: 700;
  }
  .from {
    stroke: var(--ink-2);
    stroke-width: 2;
    stroke-dasharray: 6 4;
  }
  .to {
    stroke: var(--blue);
    stroke-width: 6;
  }
  .sweep {
    fill: none;
    stroke: var(--blue);
    stroke-width: 10;
  }
  .point {
    fill: var(--blue);
  }
`;
