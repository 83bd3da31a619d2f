/** The look of the function guide: steps of the job, then the functions, then the one that is chosen. */
import { css } from "lit";

export const guideStyle = css`
  dialog {
    width: min(1100px, 100vw - 32px);
    height: min(760px, 100dvh - 32px);
  }
  .find {
    display: flex;
    flex: 2 1 260px;
    gap: var(--s2);
    align-items: center;
  }
  .find input {
    flex: 1;
    min-width: 0;
    min-height: max(34px, var(--target));
    padding: 2px var(--s2);
    border: 0;
    border-bottom: 2px solid var(--blue);
    background: var(--blue-wash);
  }
  h1 {
    flex: 0 1 auto;
  }
  .guide {
    display: grid;
    grid-template-columns: auto minmax(220px, 1fr) minmax(320px, 1.6fr);
    min-height: 0;
  }
  .steps {
    display: grid;
    align-content: start;
    border-right: 1px solid var(--rule-2);
    background: var(--card);
    overflow: auto;
  }
  .steps .word {
    min-height: max(36px, var(--target));
    padding: 0 var(--s4);
    text-align: left;
  }
  .steps .word[aria-pressed="true"] {
    background: var(--paper);
    box-shadow: inset 5px 0 0 var(--blue);
  }
  .list {
    margin: 0;
    padding: 0;
    list-style: none;
    border-right: 1px solid var(--rule-2);
    overflow: auto;
  }
  .list button {
    width: 100%;
    min-height: max(44px, var(--target));
    padding: 4px var(--s3);
    border: 0;
    border-bottom: 1px solid var(--rule);
    background: none;
    text-align: left;
    cursor: pointer;
  }
  .list button:hover {
    background: var(--blue-wash);
  }
  .list button[aria-current="true"] {
    box-shadow: inset 5px 0 0 var(--blue);
    background: var(--blue-wash);
  }
  .list small {
    display: block;
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  .one {
    padding: var(--s4);
    overflow: auto;
  }
  .one h2 {
    margin: 0 0 4px;
    font-size: var(--t-head);
    overflow-wrap: anywhere;
  }
  .one h3 {
    margin: var(--s4) 0 4px;
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  .one p {
    margin: 0;
  }
  .one dl {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 4px var(--s3);
    margin: 0;
  }
  .one dt {
    font-weight: 700;
  }
  .one dd {
    margin: 0;
  }
  .example {
    display: flex;
    flex-wrap: wrap;
    gap: var(--s2) var(--s3);
    align-items: center;
    padding: 4px 0;
    border-bottom: 1px solid var(--rule);
  }
  .example code {
    flex: 1 1 220px;
    font: inherit;
    overflow-wrap: anywhere;
  }
  .example .act {
    min-height: max(30px, var(--target));
  }
  .none {
    padding: var(--s4);
    color: var(--ink-2);
  }
  @media (max-width: 820px) {
    .guide {
      grid-template-columns: 1fr;
      grid-template-rows: max-content minmax(120px, 1fr) minmax(160px, 1.4fr);
      overflow-y: auto;
    }
    .steps {
      display: flex;
      border-right: 0;
      border-bottom: 1px solid var(--rule-2);
    }
    .steps .word {
      flex: none;
    }
    .list {
      border-right: 0;
      border-bottom: 2px solid var(--ink);
    }
  }
`;
