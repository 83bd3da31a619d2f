import { engagementTravel, usableMarks } from "../lathe/engage.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

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

/** Of a lead, in a turn of the wheel: what is less adds up to nothing over a thread. */
const STILL = 5e-6;

export const engageFunctions: readonly SheetFunction[] = [
  declare({
    name: "ENGAGE.MARKS",
    family: "half nuts",
    summary: "Marks of the thread indicator on which the half nuts may be closed every time they come round.",
    params: [
      lead,
      leadscrewLead,
      {
        name: "wheel_teeth",
        type: "number",
        unit: "teeth",
        doc: "Teeth of the indicator's wheel on the leadscrew, whole, 1 to 1000.",
      },
      { name: "marks", type: "number", doc: "Marks on its dial, numbered from 1; whole, 1 to 1000." },
      {
        name: "first",
        type: "number",
        optional: true,
        doc: "Mark on which the first cut was started, 1 to marks. Left out: the last mark.",
      },
    ],
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
    compute: (threadLead, leadscrew, teeth, marks, first) => {
      const { usable, creep } = usableMarks(threadLead, leadscrew, teeth, marks, first);
      if (usable.length === 0) {
        return { value: "", note: "no mark may be used twice: keep the half nuts closed and reverse" };
      }
      const value = usable.join(",");
      if (creep <= STILL) return value;
      return {
        value,
        note: `each turn of the wheel is ${creep.toFixed(5)} of a lead off, and it adds up`,
      };
    },
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
