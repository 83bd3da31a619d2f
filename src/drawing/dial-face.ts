/** A slide's dial as it stands at the lathe: where it was, where it goes, and by how much. Numbers in, SVG out. */
import { nothing, type SVGTemplateResult, svg } from "lit";

const size = 400;
const centre = size / 2;
const rim = 176;

export interface DialTurn {
  /** Divisions in a full turn, above 0. */
  readonly perTurn: number;
  /** Division on the dial before and after, 0 to perTurn. */
  readonly from: number;
  readonly to: number;
  /** Divisions wound, 0 or more; more than a turn goes round more than once. */
  readonly by: number;
  /** Wound back: the figures run down. */
  readonly back?: boolean;
}

/** Angle of a division, degrees clockwise from the top. */
export function dialAngle(division: number, perTurn: number): number {
  return (division / perTurn) * 360;
}

/** Divisions between figured marks: the smallest of 1, 2, 5, 10 ... that leaves no more than 12 figures. */
export function figureStep(perTurn: number): number {
  for (let ten = 1; ; ten *= 10) {
    const step = [1, 2, 5].map((n) => n * ten).find((n) => perTurn / n <= 12);
    if (step !== undefined) return step;
  }
}

/** `role=img` and its words are the caller's. */
export function dialFace({ perTurn, from, to, by, back = false }: DialTurn): SVGTemplateResult {
  const figured = figureStep(perTurn);
  const fine = perTurn <= 125 ? 1 : figured / 5;
  const ticks = Array.from({ length: Math.ceil(perTurn / fine - 1e-9) }, (_, index) => index * fine);
  return svg`<circle class="face" cx=${centre} cy=${centre} r=${rim} />
    ${ticks.map((division) => tick(division, perTurn, figured))}
    ${hand("from", from, perTurn, 30)}
    ${hand("to", to, perTurn, 32)}
    ${by > 0 ? sweep(from, by, perTurn, back ? -1 : 1) : nothing}
    <text class="by" x=${centre} y=${centre + 12} text-anchor="middle" font-size="84">${by > 0 && !back ? `+${by}` : by}</text>
    <text class="word" x=${centre} y=${centre + 46} text-anchor="middle" font-size="24">${by === 1 ? "division" : "divisions"}${back ? " back" : ""}</text>`;
}

function tick(division: number, perTurn: number, figured: number) {
  const long = isMultiple(division, figured);
  const middle = isMultiple(division, figured / 2);
  const angle = dialAngle(division, perTurn);
  const [x1, y1] = at(angle, rim);
  const [x2, y2] = at(angle, rim - (long ? 26 : middle ? 18 : 11));
  const [x, y] = at(angle, rim - 46);
  return svg`<path class=${long ? "long" : "tick"} d="M${x1} ${y1}L${x2} ${y2}" />
    ${long ? svg`<text class="figure" x=${x} y=${y + 8} text-anchor="middle" font-size="22">${division}</text>` : nothing}`;
}

function hand(name: "from" | "to", division: number, perTurn: number, length: number) {
  const angle = dialAngle(division, perTurn);
  const [x1, y1] = at(angle, rim + 2);
  const [x2, y2] = at(angle, rim - length);
  return svg`<path class=${name} d="M${x1} ${y1}L${x2} ${y2}" />`;
}

/** Arrow outside the rim, from the last stop to the next; a turn and more is drawn as nearly all round. */
function sweep(from: number, by: number, perTurn: number, way: 1 | -1) {
  const start = dialAngle(from, perTurn);
  const turn = Math.min(350, dialAngle(by, perTurn));
  const radius = rim + 13;
  const head = Math.min(7, turn / 2);
  const neck = start + way * (turn - head);
  const [x1, y1] = at(start, radius);
  const [x2, y2] = at(neck, radius);
  const large = turn - head > 180 ? 1 : 0;
  const [tipX, tipY] = at(start + way * turn, radius);
  const [outX, outY] = at(neck, radius + 11);
  const [inX, inY] = at(neck, radius - 11);
  return svg`<path class="sweep" d="M${x1} ${y1}A${radius} ${radius} 0 ${large} ${way === 1 ? 1 : 0} ${x2} ${y2}" />
    <path class="point" d="M${tipX} ${tipY}L${outX} ${outY}L${inX} ${inY}Z" />`;
}

function at(angle: number, radius: number): [number, number] {
  const turn = (angle * Math.PI) / 180;
  const round = (n: number) => Math.round(n * 100) / 100;
  return [round(centre + radius * Math.sin(turn)), round(centre - radius * Math.cos(turn))];
}

function isMultiple(value: number, of: number): boolean {
  const times = value / of;
  return Math.abs(times - Math.round(times)) < 1e-9;
}
