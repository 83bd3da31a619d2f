/** The look of words that act: on the rail, in its menus, in messages and on the shelf. */
import { css } from "lit";

export const wordStyle = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  button,
  input {
    font: inherit;
    color: inherit;
  }
  :focus-visible {
    outline: var(--ring) solid var(--blue);
    outline-offset: -3px;
  }
  .word {
    position: relative;
    min-width: 44px;
    padding: 0 var(--s3);
    border: 0;
    background: none;
    font-size: var(--t-cell);
    white-space: nowrap;
    cursor: pointer;
    transition: background-color var(--quick);
  }
  .word:hover {
    background: var(--blue-wash);
    color: var(--blue-deep);
  }
  .word[aria-pressed="true"] {
    color: var(--blue);
    font-weight: 700;
    box-shadow: inset 0 -4px 0 var(--blue);
  }
  .word[aria-disabled="true"] {
    color: var(--ink-2);
    text-decoration: line-through 1px;
    background: none;
    cursor: default;
  }
  .act {
    min-height: max(26px, var(--target) - 10px);
    padding: 2px var(--s3);
    border: 1px solid var(--rule-2);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    cursor: pointer;
  }
  .act:hover {
    background: var(--blue-wash);
    color: var(--blue-deep);
  }
  .act.go {
    border-color: var(--blue);
    background: var(--blue);
    color: var(--on-blue);
    font-weight: 700;
  }
  .act.go:focus-visible,
  .act:focus-visible {
    outline-offset: 2px;
  }
  .sr {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .hatch {
    flex: none;
    align-self: stretch;
    width: 14px;
    background: repeating-linear-gradient(
      45deg,
      var(--caution-hatch) 0 3px,
      var(--caution-wash) 3px 7px
    );
  }
  @media (forced-colors: active) {
    .word[aria-pressed="true"] {
      border-bottom: 4px solid Highlight;
    }
    .hatch {
      border: 1px solid CanvasText;
    }
  }
`;
