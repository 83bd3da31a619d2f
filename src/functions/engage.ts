import {
  bestWheel,
  engagementTravel,
  type Marks,
  startMarks,
  travelPerTurn,
  usableMarks,
} from "../lathe/engage.ts";
import { declare, type Param, type Result, type SheetFunction } from "./declare.ts";

const lead = {
  name: "lead",
  type: "number",
  unit: "length",
  doc: "Lead of the thread, not the pitch, above 0; best as the gears cut it, from GEAR.LEAD.",
} as const satisfies Param;
const leadscrewLead = {
  name: "leadscrew_lead",
  type: "number",
  unit: "length",
  doc: "Lead of the leadscrew, above 0.",
} as const satisfies Param;

const noLead = {
  when: "the lead is not above 0",
  gives: "#NUM!",
  says: "lead must be greater than 0, got 0",
} as const;

const wheelTeeth = {
  name: "wheel_teeth",
  type: "number",
  unit: "teeth",
  doc: "Teeth of the indicator's wheel on the leadscrew, whole, 1 to 1000.",
} as const satisfies Param;
const dialMarks = {
  name: "marks",
  type: "number",
  doc: "Marks on its dial, numbered from 1 as they come round; whole, 1 to 1000.",
} as const satisfies Param;
const firstMark = {
  name: "first",
  type: "number",
  optional: true,
  doc: "Mark on which the first cut was started, 1 to marks. Left out: the last mark.",
} as const satisfies Param;

/** Of a lead, in a turn of the wheel: what is less adds up to nothing over a thread. */
const STILL = 5e-6;

function listed({ usable, creep }: Marks, none: string): Result {
  if (usable.length === 0) return { value: "", note: none };
  const value = usable.join(",");
  if (creep <= STILL) return value;
  return { value, note: `each turn of the wheel is ${creep.toFixed(5)} of a lead off, and it adds up` };
}

export const engageFunctions: readonly SheetFunction[] = [
  declare({
    name: "ENGAGE.MARKS",
    family: "half nuts",
    summary: "Marks of the thread indicator on which the half nuts may be closed every time they come round.",
    params: [lead, leadscrewLead, wheelTeeth, dialMarks, firstMark],
    returns: {
      type: "text",
      doc: 'The marks, "4,8"; empty when there is none: keep the half nuts closed and reverse. A note says when a turn of the wheel is not quite a whole number of leads.',
    },
    failures: [
      { ...noLead, formula: "=ENGAGE.MARKS(0, 3, 16, 8)" },
      {
        when: "the wheel has half a tooth",
        formula: "=ENGAGE.MARKS(1.5, 3, 16.5, 8)",
        gives: "#NUM!",
        says: "wheel_teeth must be a whole number of 1 or more, got 16.5",
      },
      {
        when: "the first mark is not on the dial",
        formula: "=ENGAGE.MARKS(1.5, 3, 16, 8, 9)",
        gives: "#NUM!",
        says: "first must be from 1 to 8, got 9",
      },
    ],
    examples: [
      { formula: "=ENGAGE.MARKS(1/12, 1/8, 16, 8)", value: "1,2,3,4,5,6,7,8" },
      { formula: "=ENGAGE.MARKS(1/11, 1/8, 16, 8)", value: "4,8" },
      { formula: "=ENGAGE.MARKS(1/11, 1/8, 16, 8, 1)", value: "1,5" },
      { formula: "=ENGAGE.MARKS(2/23, 1/8, 16, 8)", value: "8" },
      { formula: "=ENGAGE.MARKS(4/45, 1/8, 16, 8)", value: "" },
      { formula: "=ENGAGE.MARKS(1.25, 3, 16, 8)", value: "" },
      { formula: "=ENGAGE.MARKS(1.5, 3, 16, 8)", value: "1,2,3,4,5,6,7,8" },
      { formula: "=ENGAGE.MARKS(1.25, 3, 20, 20)", value: "5,10,15,20" },
      { formula: "=ENGAGE.MARKS(1.75, 3, 14, 2)", value: "1,2" },
      { formula: "=ENGAGE.MARKS(1.5, 2, 16, 8)", value: "" },
    ],
    source: "geometry",
    compute: (threadLead, leadscrew, teeth, marks, first) =>
      listed(
        usableMarks(threadLead, leadscrew, teeth, marks, first),
        "no mark may be used twice: keep the half nuts closed and reverse",
      ),
  }),
  declare({
    name: "ENGAGE.START",
    family: "half nuts",
    summary: "Marks of the thread indicator that bring the tool into one start of a thread of several.",
    params: [
      { ...lead, doc: "Lead of the thread, pitch x starts, above 0; best as the gears cut it." },
      { name: "starts", type: "number", doc: "Starts of the thread, whole, 1 to 1000." },
      {
        name: "start",
        type: "number",
        doc: "Which of them, 1 to starts; 1 is the one that was begun on the mark first.",
      },
      leadscrewLead,
      wheelTeeth,
      dialMarks,
      firstMark,
    ],
    returns: {
      type: "text",
      doc: 'The marks, "2,6", every time they come round; empty when there is none. Starts are counted the way the carriage runs while cutting, as START.SHIFT advances them.',
    },
    failures: [
      {
        when: "the thread has no such start",
        formula: "=ENGAGE.START(1/4, 2, 3, 1/8, 16, 8)",
        gives: "#NUM!",
        says: "start must be from 1 to 2, got 3",
      },
      {
        when: "the lead is not above 0",
        formula: "=ENGAGE.START(0, 2, 1, 1/8, 16, 8)",
        gives: "#NUM!",
        says: "lead must be greater than 0, got 0",
      },
    ],
    examples: [
      {
        formula: "=ENGAGE.START(1/2, 2, 1, 1/8, 16, 8)",
        value: "2,4,6,8",
        source: "every second mark is 4 pitches of 1/8 on: one lead of 1/2",
      },
      {
        formula: "=ENGAGE.START(1/2, 2, 2, 1/8, 16, 8)",
        value: "1,3,5,7",
        source: "the marks between are 2 pitches of 1/8 on: half a lead",
      },
      {
        formula: "=ENGAGE.START(1/2, 4, 2, 1/8, 32, 16)",
        value: "",
        source: "marks are 1/4 of travel apart: none is a quarter of a lead on",
      },
      {
        formula: "=ENGAGE.START(3, 3, 2, 1, 12, 12)",
        value: "2,5,8,11",
        source: "mark 2 runs 2 pitches of 1 behind, which of a lead of 3 is 1 ahead",
      },
    ],
    source: "geometry",
    compute: (threadLead, starts, start, leadscrew, teeth, marks, first) =>
      listed(
        startMarks(threadLead, starts, start, leadscrew, teeth, marks, first),
        `no mark may be relied on for start ${start}: advance the slide, or turn the work or a gear on`,
      ),
  }),
  declare({
    name: "ENGAGE.WHEEL",
    family: "half nuts",
    summary: "Which wheel of the thread indicator to put on: the one whose usable marks come soonest.",
    params: [
      lead,
      leadscrewLead,
      { name: "wheels", type: "numbers", unit: "teeth", doc: "Teeth of the wheels at hand, one a cell." },
      {
        name: "marks",
        type: "numbers",
        doc: "Marks on the dial: one number for all wheels, or one for each in the same order.",
      },
    ],
    returns: {
      type: "number",
      unit: "teeth",
      doc: "Teeth of that wheel; of equal ones the first listed. The wait is counted in pitches of the leadscrew.",
    },
    failures: [
      {
        when: "no wheel serves",
        formula: "=ENGAGE.WHEEL(1.25, 3, {14;16}, {2;8})",
        gives: "#N/A",
        says: "keep the half nuts closed and reverse",
      },
      {
        when: "there are other numbers of wheels and marks",
        formula: "=ENGAGE.WHEEL(1.25, 3, {14;16;20}, {2;8})",
        gives: "#NUM!",
        says: "one for each of the 3 wheels, got 2",
      },
    ],
    examples: [
      {
        formula: "=ENGAGE.WHEEL(1.25, 3, {14;15;16;20}, {2;3;8;20})",
        value: 15,
        source:
          "1.25 goes into 15 (and 60) whole times: 15 teeth at every mark 3 times 5 pitches, 20 teeth every 5",
      },
      {
        formula: "=ENGAGE.WHEEL(1.75, 3, {14;15;16;20}, {2;3;8;20})",
        value: 14,
        source: "7 pitches of 3 are 12 leads of 1.75: only 14 teeth are whole sevens",
      },
    ],
    source: "geometry",
    compute: (threadLead, leadscrew, wheels, marks) =>
      wheels[bestWheel(threadLead, leadscrew, wheels, marks)]!,
  }),
  declare({
    name: "ENGAGE.TURN",
    family: "half nuts",
    summary: "Length that goes by while the thread indicator turns once: the longest wait for a mark.",
    params: [leadscrewLead, wheelTeeth],
    returns: { type: "number", unit: "length", doc: "wheel_teeth x leadscrew_lead." },
    failures: [
      {
        when: "the wheel has no teeth",
        formula: "=ENGAGE.TURN(3, 0)",
        gives: "#NUM!",
        says: "wheel_teeth must be a whole number of 1 or more, got 0",
      },
    ],
    examples: [{ formula: "=ENGAGE.TURN(1/8, 16)", value: 2, source: "16 teeth on 8 per inch" }],
    source: "geometry",
    compute: travelPerTurn,
  }),
  declare({
    name: "ENGAGE.TRAVEL",
    family: "half nuts",
    summary: "Carriage travel, against a stop, after which the half nuts may close with no indicator.",
    params: [lead, leadscrewLead],
    returns: {
      type: "number",
      unit: "length",
      doc: "Least common multiple of both leads, as exact fractions. Very long when the gears only come near the lead: then keep the half nuts closed and reverse.",
    },
    failures: [
      { ...noLead, formula: "=ENGAGE.TRAVEL(0, 3)" },
      {
        when: "the leadscrew has no lead",
        formula: "=ENGAGE.TRAVEL(1.75, -3)",
        gives: "#NUM!",
        says: "leadscrew_lead must be greater than 0, got -3",
      },
    ],
    examples: [
      { formula: "=ENGAGE.TRAVEL(1.75, 3)", value: 21 },
      { formula: "=ENGAGE.TRAVEL(1.5, 3.175)", value: 190.5 },
    ],
    source: "geometry",
    compute: engagementTravel,
  }),
];
