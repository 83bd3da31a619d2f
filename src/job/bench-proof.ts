/**
 * What the reading proves: nothing yet, that the thread is in its limits, or what is still to be cut.
 *
 * The limits are those over wires (`wire_target_max`, `wire_target`, `wire_target_min`) or between balls (`ball_max`,
 * `ball_target`, `ball_min`); a screw's reading falls as it is cut, a nut's grows. Where the job has a cell named
 * `verdict`, that has to agree: it may know how sure the reading is. A reading that was taken for another thread or wire
 * (taken-for.ts) proves nothing.
 */
import type { CellFormat } from "./document.ts";
import { showValue } from "./format.ts";
import type { Job } from "./job.ts";
import { namedArea, namedNumber, namedShown, namedWords } from "./named.ts";

export interface Proof {
  readonly state:
    | "no cell"
    | "no reading"
    | "of another"
    | "too much left"
    | "in limits"
    | "past"
    | "doubtful"
    | "no limits";
  /** What is proven, or still to be, in a sentence. */
  readonly words: string;
  /** Radial depth from the reading to the one aimed at; 0 when that is reached or passed. */
  readonly rest?: number;
  readonly reading?: number;
  /** The reading cannot be one of this thread: nothing but another one is asked for. */
  readonly again?: true;
}

/** Names of the readings that are wanted, and which way the reading goes as the thread is cut. */
export interface Wanted {
  readonly over: "wires" | "balls";
  readonly first: string;
  readonly aim: string;
  readonly last: string;
  readonly grows: boolean;
}

const overWires: Wanted = {
  over: "wires",
  first: "wire_target_max",
  aim: "wire_target",
  last: "wire_target_min",
  grows: false,
};
const betweenBalls: Wanted = {
  over: "balls",
  first: "ball_min",
  aim: "ball_target",
  last: "ball_max",
  grows: true,
};

/** How this job is measured. */
export function wantedIn(job: Job): Wanted {
  return namedArea(job, "ball_target") ? betweenBalls : overWires;
}

export function proofOf(job: Job): Proof {
  if (!namedArea(job, "measured")) {
    return {
      state: "no cell",
      words:
        "Still to be proven: this job has no cell named measured. Gauge it, or try the part it goes with.",
    };
  }
  const reading = namedNumber(job, "measured");
  if (reading === undefined) {
    const shown = shownText(job, "measured");
    const none = shown === "" ? "no reading has been taken" : `the reading ${shown} is no number`;
    return { state: "no reading", words: `Still to be proven: ${none}.` };
  }
  const was = namedWords(job, "measured_for");
  const now = namedWords(job, "reading_for");
  if (was !== undefined && now !== undefined && was !== now) {
    const { over } = wantedIn(job);
    return {
      state: "of another",
      words: `Still to be proven: the reading ${sizeText(job, reading, takenFormat(job))} was taken for ${was}. Measure again over the ${over} for ${now}.`,
    };
  }
  return proofOfReading(job, reading);
}

/** What a reading proves that may not be the last one. */
export function proofOfReading(job: Job, reading: number): Proof {
  const { first, aim, last, grows, over } = wantedIn(job);
  // Both ways the reading comes down to the aim, and is past the last limit below it.
  const toward = grows ? -1 : 1;
  const wanted = namedNumber(job, aim);
  const from = namedNumber(job, first);
  const to = namedNumber(job, last);
  const shown = sizeText(job, reading);
  const rest = wanted === undefined ? undefined : Math.max(0, toward * (reading - wanted)) / 2;
  const found = { reading, ...(rest === undefined ? {} : { rest }) };
  const between = `${shownText(job, grows ? first : last)} to ${shownText(job, grows ? last : first)}`;
  const depth = namedNumber(job, "depth");
  if (wanted !== undefined && depth !== undefined && Math.abs(reading - wanted) / 2 > depth)
    return {
      ...found,
      state: "doubtful",
      again: true,
      words: `${shown} is off by more than the whole depth of the thread: look at the ${over} and the unit, and measure again. Take it out of the log.`,
    };
  if (to !== undefined && toward * (reading - to) < 0)
    return {
      ...found,
      state: "past",
      words: `${shown} is past the ${grows ? "largest" : "smallest"} reading, ${shownText(job, last)}. Nothing puts it back: stop.`,
    };
  if (from === undefined || to === undefined) {
    if (rest !== undefined && rest > 0)
      return { ...found, state: "too much left", words: `${shown} is not yet what is aimed at.` };
    return {
      ...found,
      state: "no limits",
      words: `Still to be proven: this job names no limits for the reading over ${over}. Gauge it, or try the part it goes with.`,
    };
  }
  if (toward * (reading - from) > 0)
    return {
      ...found,
      state: "too much left",
      words: `${shown} is not in its limits yet, ${between}.`,
    };
  const verdict = namedWords(job, "verdict");
  if (verdict !== undefined && !/^in\b/i.test(verdict))
    return { ...found, state: "doubtful", words: `Still to be proven: the sheet's verdict is "${verdict}".` };
  return {
    ...found,
    state: "in limits",
    words: `${shown} is in its limits, ${between}: stop cutting.`,
  };
}

function sizeText(job: Job, value: number, format: CellFormat = { as: "length" }): string {
  return showValue(value, format, job.unit).text;
}

/** Format of the reading in the unit that it was taken in, where that is not the job's; undefined where it is. */
function takenFormat(job: Job): CellFormat | undefined {
  const area = namedArea(job, "measured")!;
  const { format } = job.cell(area.sheet, area.top, area.left);
  return format.unit === undefined ? undefined : format;
}

function shownText(job: Job, name: string): string {
  return namedShown(job, name) ?? "";
}
