/** Line types and inks of drawings (ISO 128): the shape of a line says what it is, ink and pattern what state it is in. */
import { css } from "lit";

export const drawingStyle = css`
  .drawing {
    display: block;
    width: 100%;
    height: 100%;
    font-family: var(--sans);
    font-variant-numeric: tabular-nums;
  }
  .drawing path {
    fill: none;
    stroke: none;
    stroke-linejoin: round;
  }
  .drawing text {
    fill: var(--ink);
    stroke: var(--paper);
    stroke-width: 3px;
    stroke-linejoin: round;
    paint-order: stroke;
  }
  .drawing .bold {
    font-weight: 700;
  }
  .drawing text.muted {
    fill: var(--ink-2);
  }
  .drawing text.set {
    fill: var(--blue);
  }
  .drawing text.warn {
    fill: var(--caution);
  }
  .drawing text.on-set {
    fill: var(--on-blue);
    stroke: var(--blue);
  }

  /* surfaces */
  .drawing .metal {
    fill: var(--metal);
  }
  .drawing .metal-2 {
    fill: var(--metal-2);
  }
  .drawing .paper {
    fill: var(--paper);
  }
  .drawing .chip {
    fill: var(--chip);
  }
  .drawing .chip-2 {
    fill: var(--chip-2);
  }
  .drawing .open {
    fill: none;
  }

  /* lines */
  .drawing .outline {
    stroke: var(--ink);
    stroke-width: 1.8px;
  }
  .drawing .thin {
    stroke: var(--ink);
    stroke-width: 0.9px;
  }
  .drawing .faint {
    stroke: var(--rule-2);
    stroke-width: 0.9px;
  }
  .drawing .grid {
    stroke: var(--rule);
    stroke-width: 0.9px;
  }
  .drawing .axis {
    stroke: var(--ink-2);
    stroke-width: 0.9px;
    stroke-dasharray: 14 3 2 3;
  }
  .drawing .phantom {
    stroke: var(--ink-2);
    stroke-width: 1.1px;
    stroke-dasharray: 12 3 2 3 2 3;
  }
  .drawing .pitch-circle {
    stroke: var(--ink-2);
    stroke-width: 0.9px;
    stroke-dasharray: 14 3 2 3;
  }
  .drawing .flank {
    stroke: var(--ink-2);
    stroke-width: 1.2px;
    stroke-dasharray: 7 4;
  }
  .drawing .lining {
    stroke: var(--hatch);
    stroke-width: 0.8px;
  }
  .drawing path.set {
    stroke: var(--blue);
    stroke-width: 2.6px;
  }
  .drawing path.set[data-part="setting"],
  .drawing path.set[data-part="infeed"] {
    stroke-dasharray: 16 3 3 3;
  }
  .drawing path.thin.set,
  .drawing .set-thin {
    stroke: var(--blue);
    stroke-width: 1.2px;
    stroke-dasharray: none;
  }
  .drawing .set-fill,
  .drawing .fill-set {
    fill: var(--blue);
  }
  .drawing .fill-ink {
    fill: var(--ink);
  }
  .drawing .set-ring {
    fill: var(--paper);
    stroke: var(--blue);
    stroke-width: 1.8px;
  }
  .drawing .set-zone {
    fill: var(--paper);
    stroke: var(--ink);
    stroke-width: 0.9px;
  }
  .drawing .zone-lining {
    stroke: var(--ink-2);
    stroke-width: 0.9px;
  }

  /* layers of the groove */
  .drawing .layer {
    stroke: var(--ink);
    stroke-width: 0.7px;
  }
  .drawing .layer.next {
    fill: var(--blue);
    stroke: var(--blue);
  }
  .drawing .layer.to-come {
    fill: var(--paper);
    stroke: var(--ink-2);
    stroke-width: 0.9px;
    stroke-dasharray: 4 3;
  }
  .drawing .warn-ground {
    fill: var(--caution-wash);
    stroke: var(--caution);
    stroke-width: 1.2px;
  }
  .drawing .warn-lining {
    stroke: var(--caution);
    stroke-width: 0.9px;
  }

  /* plots: pattern, sign and ink */
  .drawing .series {
    stroke-width: 2px;
  }
  .drawing .series-1 {
    stroke: var(--ink);
  }
  .drawing .series-2 {
    stroke: var(--arg2);
    stroke-dasharray: 8 4;
  }
  .drawing .series-3 {
    stroke: var(--arg3);
    stroke-dasharray: 2 3;
  }
  .drawing .series-4 {
    stroke: var(--arg1);
    stroke-dasharray: 12 3 2 3;
  }
  .drawing .series-sign {
    fill: var(--paper);
    stroke-width: 1.4px;
  }
  .drawing .series-sign-1 {
    stroke: var(--ink);
  }
  .drawing .series-sign-2 {
    stroke: var(--arg2);
  }
  .drawing .series-sign-3 {
    stroke: var(--arg3);
  }
  .drawing .series-sign-4 {
    stroke: var(--arg1);
  }
  .drawing .column-1,
  .drawing .column-2,
  .drawing .column-3,
  .drawing .column-4 {
    stroke: var(--ink);
    stroke-width: 1.2px;
    fill: var(--chip);
  }
  .drawing .column-2,
  .drawing .column-4 {
    fill: var(--paper);
  }
  @media (forced-colors: active) {
    .drawing .metal,
    .drawing .metal-2,
    .drawing .chip,
    .drawing .chip-2,
    .drawing .column-1 {
      fill: Canvas;
    }
    .drawing .lining {
      stroke: GrayText;
    }
  }
`;
