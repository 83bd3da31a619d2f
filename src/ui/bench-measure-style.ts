/** The side of the bench view that takes a reading, and what forced colours need. */
import { css } from "lit";

export const benchMeasureStyle = css`
  .measure {
    display: flex;
    flex-wrap: wrap;
    gap: 16px 40px;
    align-self: stretch;
    width: 100%;
  }
  .measure p {
    margin: 0 0 10px;
  }
  .measure label {
    display: grid;
    gap: 6px;
    color: var(--ink-2);
  }
  .measure input {
    width: min(9em, 100%);
    padding: 6px 12px;
    border: 0;
    border-bottom: 3px solid var(--blue);
    background: var(--blue-wash);
    color: var(--ink);
    font-size: 48px;
    font-weight: 700;
    text-align: right;
  }
  .acts {
    display: flex;
    gap: 12px;
    margin-top: 14px;
  }
  .measure .act {
    min-height: 60px;
    padding: 4px 28px;
  }
  .verdict {
    margin: 0;
  }
  .verdict div {
    display: flex;
    gap: 24px;
    justify-content: space-between;
    padding: 3px 0;
    border-bottom: 1px solid var(--rule);
  }
  .verdict dd {
    margin: 0;
    font-weight: 700;
  }
  .measure table {
    border-collapse: collapse;
    align-self: start;
  }
  .measure caption {
    text-align: left;
    color: var(--ink-2);
  }
  .measure th,
  .measure td {
    padding: 3px 12px 3px 0;
    border-bottom: 1px solid var(--rule);
    font-weight: 400;
    text-align: left;
  }
  .measure td {
    font-weight: 700;
    text-align: right;
  }
  @media (forced-colors: active) {
    .pad.next {
      border: 3px solid Highlight;
    }
  }
`;
