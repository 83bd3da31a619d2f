import { css, svg } from "lit";

/** The mark: half the angle of a thread filled in, on its axis. */
export const mark = svg`<svg class="mark" viewBox="0 0 30 26" aria-hidden="true">
  <path class="axis" d="M15 1V25" />
  <path class="half" d="M15 23L4 3H15Z" />
  <path class="other" d="M15 23L26 3H15" />
</svg>`;

export const markStyle = css`
  .mark {
    flex: none;
    width: 30px;
    height: 26px;
  }
  .mark path {
    fill: none;
  }
  .mark .axis {
    stroke: var(--ink-2);
    stroke-width: 1.2;
    stroke-dasharray: 7 2 2 2;
  }
  .mark .half {
    fill: var(--blue);
  }
  .mark .other {
    stroke: var(--ink);
    stroke-width: 1.8;
    stroke-linejoin: round;
  }
`;
