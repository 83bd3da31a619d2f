/** The shop card: a drawing frame with zone marks on A5, laid out in millimetres. Type never under 9 px. */
import { css } from "lit";

export const cardStyle = css`
  .card {
    position: relative;
    box-sizing: border-box;
    width: 148mm;
    height: 210mm;
    padding: 9.5mm;
    background: #ffffff;
    color: #17212b;
    font: 400 12px/1.3 var(--sans);
    overflow: hidden;
    break-after: page;
    break-inside: avoid;
  }
  .card:last-child {
    break-after: auto;
  }
  .card *,
  .card *::before {
    box-sizing: border-box;
  }
  .frame {
    position: absolute;
    inset: 5mm;
    border: 0.25mm solid var(--ink);
  }
  .in {
    position: relative;
    display: flex;
    flex-direction: column;
    height: 100%;
    border: 0.7mm solid var(--ink);
    background: #ffffff;
  }
  .zone {
    position: absolute;
    display: grid;
    place-items: center;
    font-size: 9px;
    line-height: 1;
  }
  .zones {
    position: absolute;
    display: grid;
  }
  .zones.over,
  .zones.under {
    left: 5mm;
    right: 5mm;
    height: 4.5mm;
    grid-template-columns: repeat(4, 1fr);
  }
  .zones.over {
    top: 5mm;
  }
  .zones.under {
    bottom: 5mm;
  }
  .zones.before,
  .zones.after {
    top: 5mm;
    bottom: 5mm;
    width: 4.5mm;
    grid-template-rows: repeat(6, 1fr);
  }
  .zones.before {
    left: 5mm;
  }
  .zones.after {
    right: 5mm;
  }
  .zones i {
    display: grid;
    place-items: center;
    font-size: 9px;
    font-style: normal;
    line-height: 1;
  }
  .over i + i,
  .under i + i {
    border-left: 0.25mm solid var(--ink);
  }
  .before i + i,
  .after i + i {
    border-top: 0.25mm solid var(--ink);
  }
  .card header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 1mm 4mm;
    padding: 1.6mm 3mm;
    border-bottom: 0.3mm solid var(--ink);
    font-size: 12px;
  }
  .card header b {
    font-size: 21px;
    line-height: 1.15;
  }
  .set {
    display: grid;
    grid-template-columns: 1fr;
    border-bottom: 0.6mm solid var(--ink);
  }
  .set.drawn {
    grid-template-columns: 55mm 1fr;
  }
  .figure {
    display: grid;
    border-right: 0.3mm solid var(--ink);
    min-height: 0;
  }
  .figure svg {
    width: 100%;
    height: auto;
    max-height: 68mm;
  }
  .set dl {
    margin: 0;
    font-size: 11px;
    line-height: 1.2;
  }
  .set dl div {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 2mm;
    padding: 0.55mm 2mm;
  }
  .set div + div {
    border-top: 0.2mm solid var(--rule-2);
  }
  .set dd {
    flex: 1;
    min-width: min-content;
    margin: 0;
    font-weight: 700;
    text-align: right;
  }
  .set .key {
    font-weight: 700;
    font-size: 12.5px;
  }
  .set .key dd {
    font-size: 19px;
    color: var(--blue);
  }
  .set .key dd.words {
    font-size: 13.5px;
  }
  .passes {
    display: grid;
    flex: none;
    border-bottom: 0.6mm solid var(--ink);
  }
  .passes.c2 {
    grid-template-columns: 1fr 1fr;
  }
  .passes.c3 {
    grid-template-columns: 1fr 1fr 1fr;
  }
  .passes table {
    width: 100%;
    align-self: start;
    border-collapse: collapse;
    table-layout: fixed;
    font-size: 12px;
  }
  .passes table + table {
    border-left: 0.3mm solid var(--ink);
  }
  .passes th,
  .passes td {
    height: var(--step);
    padding: 0 2mm;
    /* No type is higher than the row that was reckoned for it. */
    line-height: 1;
    border-bottom: 0.2mm solid var(--rule-2);
    text-align: right;
    white-space: nowrap;
  }
  .passes thead th {
    height: 4.6mm;
    font-size: 10px;
    font-weight: 400;
    color: var(--ink-2);
  }
  .passes .no {
    width: 15%;
    text-align: left;
    font-weight: 400;
    font-size: 12px;
    color: inherit;
  }
  .passes .stop {
    font-weight: 700;
    font-size: var(--stop);
  }
  .passes .say {
    text-align: left;
    white-space: normal;
    font-size: 10.5px;
    line-height: 1.05;
  }
  .passes .done {
    width: 14%;
  }
  .passes td.done {
    font-size: 0;
  }
  .passes .done i {
    display: inline-block;
    width: 3.6mm;
    height: 3.6mm;
    border: 0.3mm solid var(--ink);
    vertical-align: middle;
  }
  .passes.h6 {
    --step: 6.2mm;
    --stop: 17px;
  }
  .passes.h5 {
    --step: 5mm;
    --stop: 15px;
  }
  .passes.c3 th,
  .passes.c3 td {
    padding: 0 1mm;
  }
  .passes.c3 thead th {
    font-size: 9px;
  }
  .passes.c3 .done {
    width: 19%;
  }
  .passes.c3 .say {
    font-size: 9.5px;
  }
  .passes.h3 {
    --step: 3.9mm;
    --stop: 12px;
  }
  .passes.h3 .done i {
    width: 3.1mm;
    height: 3.1mm;
  }
  .passes.h4 {
    --step: 4.2mm;
    --stop: 13px;
  }
  .measure {
    display: flex;
    margin: 0;
    border-bottom: 0.3mm solid var(--ink);
  }
  .measure div {
    /* As wide as its value: a longer label wraps. */
    flex: 0 0 min-content;
    padding: 0.8mm 1.2mm;
    border-left: 0.2mm solid var(--ink);
  }
  .measure div:first-child {
    border-left: 0;
  }
  .measure .own {
    flex: 1;
  }
  .measure.tight dt {
    font-size: 9px;
  }
  .measure.tight dd {
    font-size: 10px;
  }
  .measure dt {
    font-size: 10px;
    color: var(--ink-2);
  }
  .measure dd {
    min-height: 4.5mm;
    margin: 0;
    font-weight: 700;
    font-size: 11px;
    white-space: nowrap;
  }
  .rest {
    display: grid;
    flex: 1;
    grid-template-columns: 1fr 56mm;
    min-height: 0;
  }
  .rest ol {
    margin: 0;
    padding: 1.2mm 2mm 1mm 6.5mm;
    font-size: 9.6px;
    line-height: 1.2;
  }
  .rest ol.many {
    font-size: 9px;
    line-height: 1.12;
  }
  .rest li.now {
    font-weight: 700;
  }
  .facts {
    display: grid;
    grid-template-columns: 1fr 1fr;
    align-self: end;
    margin: 0;
    border-top: 0.6mm solid var(--ink);
    border-left: 0.6mm solid var(--ink);
  }
  .facts div {
    min-width: 0;
    padding: 0.3mm 1.6mm;
    border-bottom: 0.2mm solid var(--ink);
    border-left: 0.2mm solid var(--ink);
  }
  .facts div:nth-child(odd) {
    border-left: 0;
  }
  .facts div.wide {
    grid-column: 1 / 3;
    border-left: 0;
  }
  .facts div.last {
    border-bottom: 0;
  }
  .facts dt {
    font-size: 9px;
    line-height: 1.2;
    color: var(--ink-2);
  }
  .facts dd {
    margin: 0;
    min-height: 3.6mm;
    font-weight: 700;
    font-size: 10.5px;
    line-height: 1.2;
    overflow-wrap: anywhere;
  }
`;
