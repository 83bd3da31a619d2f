/**
 * The shop card of a job: what to set, wind and expect on one page. Words and figures only, as the sheets show them.
 *
 * A job says what goes on its card by names: `card_settings` and `card_measure` are ranges of words beside values, and
 * `card_drawing` a cell with a drawing. Without them there stands what the sheets mark as set by hand (card-lines.ts), else
 * the results of the operations. The passes are those of the range named `plan`.
 */
import { parseCell } from "../engine/address.ts";
import { behindWords } from "./behind.ts";
import { markedLines, measureLines, setoverDrawing } from "./card-lines.ts";
import { cellText } from "./format.ts";
import type { Job } from "./job.ts";
import { inventedName, latheSheet } from "./lathe.ts";
import { type NamedArea, namedArea, namedShown, namedValue, namedWords } from "./named.ts";
import { scenarioOf, stillInvented } from "./scenario.ts";
import { answerOf } from "./signed.ts";
import { type Steps, stepsOf } from "./steps.ts";

export interface CardLine {
  readonly label: string;
  readonly value: string;
  /** What the hand goes and sets. */
  readonly key: boolean;
}

export interface Card {
  readonly heading: string;
  /** Hand, starts, pitch and angle in words. */
  readonly under: string;
  readonly settings: readonly CardLine[];
  /** Undefined when the job has no plan. */
  readonly plan: Steps | undefined;
  readonly measure: readonly CardLine[];
  readonly cautions: readonly string[];
  /** Cautions that the sheets show now. */
  readonly warnings: readonly string[];
  readonly facts: readonly CardLine[];
  /** Cell of the drawing. */
  readonly drawing: NamedArea | undefined;
}

/** Rows read of a range; a card has room for far fewer. */
const mostLines = 40;

export function cardOf(job: Job): Card {
  const { document } = job;
  const settings = linesIn(job, namedArea(job, "card_settings"));
  const marked = settings.length > 0 ? [] : markedLines(job);
  const measure = linesIn(job, namedArea(job, "card_measure"));
  return {
    heading: namedWords(job, "thread") ?? document.title,
    under: underOf(job),
    settings: [settings, marked, resultsOf(job)].find((lines) => lines.length > 0) ?? [],
    plan: namedArea(job, "plan") ? stepsOf(job) : undefined,
    measure: measure.length > 0 ? measure : measureLines(job),
    cautions: document.cautions,
    warnings: warningsOf(job),
    facts: factsOf(job),
    drawing: namedArea(job, "card_drawing") ?? setoverDrawing(job),
  };
}

function underOf(job: Job): string {
  const starts = namedValue(job, "starts");
  const hand = namedWords(job, "hand");
  const counted = typeof starts === "number" ? (starts === 1 ? "one start" : `${starts} starts`) : undefined;
  const pitch = namedShown(job, "pitch");
  const included = namedShown(job, "included");
  return [hand && `${hand} hand`, counted, pitch && `pitch ${pitch}`, included].filter(Boolean).join(", ");
}

function factsOf(job: Job): CardLine[] {
  const named = (label: string, name: string): CardLine[] => {
    const value = namedShown(job, name);
    return value ? [{ label, value, key: false }] : [];
  };
  return [
    { label: "Job", value: job.document.title, key: false },
    ...named("Lathe", "lathe"),
    ...named("Leadscrew", "leadscrew"),
    ...named("Issue", "issue"),
    { label: "Unit", value: `${job.unit}, degrees`, key: false },
    ...(scenarioOf(job) === "" ? [] : [{ label: "Scenario", value: "invented", key: false }]),
  ];
}

/** Words and the value beside them; a row without words or without a value is left out. */
function linesIn(job: Job, area: NamedArea | undefined): CardLine[] {
  if (!area) return [];
  const lines: CardLine[] = [];
  for (let row = area.top; row <= Math.min(area.bottom, area.top + mostLines - 1); row++) {
    const label = cellText(job.cell(area.sheet, row, area.left), job.unit);
    const cell = job.cell(area.sheet, row, area.right);
    const value = cellText(cell, job.unit);
    if (label !== "" && value !== "") lines.push({ label, value, key: cell.format.role === "key" });
  }
  return lines;
}

function resultsOf(job: Job): CardLine[] {
  return job.document.sheets.flatMap((sheet) => {
    const value = answerOf(job, sheet)?.text ?? "";
    return value === "" ? [] : [{ label: sheet.name, value, key: false }];
  });
}

function warningsOf(job: Job): string[] {
  const found: string[] = [];
  for (const sheet of job.document.sheets) {
    for (const [range, { role }] of Object.entries(sheet.formats)) {
      const at = role === "caution" ? parseCell(range) : undefined;
      const value = at && job.cell(sheet.name, at.row, at.column).value;
      if (typeof value === "string" && value !== "") found.push(`${sheet.name}: ${value}`);
    }
  }
  // A job that tells by a cell what of it is still invented says so on its card.
  const lathe = namedArea(job, inventedName);
  // On a lathe's own sheet it is among the cautions.
  const ofLathe = lathe && lathe.sheet !== latheSheet ? namedWords(job, inventedName) : undefined;
  const scenario = namedArea(job, "scenario") ? scenarioOf(job) : "";
  return [behindWords(job), ...found, scenario, stillInvented(ofLathe ?? "")].filter((words) => words !== "");
}
