/** The side of the bench view that takes a reading, what is said of a dial that runs down, and forced colours. */
import { css } from "lit";

export const benchMeasureStyle = css`
  .measure {
    display: flex;
    flex-wrap: wrap;
    gap: 16px 40px;
    align-self: stretch;
    width: 100%;
  }
  .measure label {
    display: grid;
    gap: 6px;
    color: var(--ink-2);
  }
  .measure input {
    width: 100%;
    min-width: 0;
    padding: 6px 12px;
    border: 0;
    border-bottom: 3px solid var(--blue);
    background: var(--blue-wash);
    color: var(--ink);
    font-size: 48px;
    font-weight: 700;
    text-align: right;
  }
  .take {
    display: flex;
    flex: 1 1 320px;
    flex-wrap: wrap;
    gap: 0 16px;
    align-items: end;
    align-content: start;
    max-width: 620px;
  }
  .take label {
    flex: 1 1 9em;
  }
  .take p {
    flex-basis: 100%;
  }
  .measure .problem {
    min-height: 0;
    margin: 6px 0 0;
    color: var(--error);
  }
  .measure .proof {
    margin: 14px 0 0;
  }
  .proof {
    margin: 14px 0 0;
    padding: 8px 14px;
    border-left: 6px solid var(--caution);
    background: var(--caution-wash);
    color: var(--ink);
    font-size: 21px;
  }
  .proof.holds {
    border-left-color: var(--holds);
    background: none;
    font-weight: 700;
  }
  .proof.wrong {
    border-left-color: var(--error);
    background: var(--error-wash);
    font-weight: 700;
  }
  .proof.doubted {
    border-left-color: var(--error);
    background: var(--error-wash);
  }
  .words .proof {
    font-size: 24px;
    font-weight: 400;
    text-align: left;
  }
  .acts {
    display: flex;
    gap: 12px;
  }
  .measure .act {
    min-height: 60px;
    padding: 4px 28px;
  }
  .verdict {
    flex: 1 1 300px;
    max-width: 460px;
    margin: 0;
  }
  .verdict div {
    display: flex;
    gap: 24px;
    justify-content: space-between;
    padding: 3px 0;
    border-bottom: 1px solid var(--rule);
  }
  .add small {
    display: block;
    font-size: 20px;
    color: var(--ink-2);
  }
  .verdict dd {
    margin: 0;
    text-align: right;
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
  .measure .other td {
    color: var(--ink-2);
    font-weight: 400;
  }
  @media (max-width: 760px), (orientation: portrait) {
    .measures {
      display: none;
    }
    .measure {
      gap: 10px 24px;
      align-content: start;
    }
    .measure input {
      font-size: 36px;
    }
    .measure .proof {
      margin-top: 10px;
      padding: 4px 10px;
      font-size: 17px;
    }
    .measure .act {
      padding: 4px 16px;
    }
    .verdict div {
      padding: 2px 0;
      font-size: 18px;
    }
  }
  @media (forced-colors: active) {
    .pad.next {
      border: 3px solid Highlight;
    }
  }
`;
