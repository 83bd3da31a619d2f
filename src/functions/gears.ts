import {
  leadCut,
  leadError,
  leadErrorMillionths,
  leadOfText,
  roomForLeadError,
  wheelOf,
} from "../lathe/gears.ts";
import { Unreadable } from "../thread/failures.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { gearSearchFunctions } from "./gear-search.ts";

const leadscrewLead = {
  name: "leadscrew_lead",
  type: "number",
  unit: "length",
  doc: "Lead of the leadscrew, above 0; multiply it by any fixed gearbox ratio. 8 per inch: 1/8 in or 3.175 mm.",
} as const satisfies Param;
const noLeadscrew = {
  when: "the leadscrew has no lead",
  gives: "#NUM!",
  says: "leadscrew_lead must be greater than 0, got 0",
} as const;
const source = "geometry";

export const gearFunctions: readonly SheetFunction[] = [
  declare({
    name: "GEAR.LEAD",
    family: "gears",
    summary: "Lead that change gears cut: leadscrew lead x drivers / driven.",
    params: [
      leadscrewLead,
      { name: "driver", type: "number", unit: "teeth", doc: "Gear on the spindle side, whole, 1 or more." },
      { name: "driven", type: "number", unit: "teeth", doc: "Gear that it drives, whole, 1 or more." },
      {
        name: "driver2",
        type: "number",
        unit: "teeth",
        optional: true,
        doc: "Second driver of a compound train, on the stud with the first driven gear.",
      },
      {
        name: "driven2",
        type: "number",
        unit: "teeth",
        optional: true,
        doc: "Second driven gear; goes with driver2.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "In the unit of the leadscrew lead." },
    failures: [
      { ...noLeadscrew, formula: "=GEAR.LEAD(0, 30, 80)" },
      {
        when: "a gear has half a tooth",
        formula: "=GEAR.LEAD(4, 30.5, 80)",
        gives: "#NUM!",
        says: "driver must be a whole number of 1 or more, got 30.5",
      },
      {
        when: "half of the second pair is missing",
        formula: "=GEAR.LEAD(3.175, 65, 50, 20)",
        gives: "#VALUE!",
        says: "driven2 is missing",
      },
    ],
    examples: [
      { formula: "=GEAR.LEAD(4, 30, 80)", value: 1.5 },
      {
        formula: "=GEAR.LEAD(3.175, 65, 50, 20, 55)",
        value: 1.5009091,
        source: "1.5 and the error 0.0009091, computed independently",
      },
    ],
    source,
    compute: (leadscrew, driver, driven, driver2, driven2) => {
      if (driver2 === undefined && driven2 === undefined) return leadCut(leadscrew, [[driver, driven]]);
      if (driver2 === undefined || driven2 === undefined) {
        const missing = driver2 === undefined ? "driver2" : "driven2";
        throw new Unreadable(`${missing} is missing: the second pair is a driver and a driven gear`);
      }
      return leadCut(leadscrew, [
        [driver, driven],
        [driver2, driven2],
      ]);
    },
  }),
  declare({
    name: "GEAR.CUT",
    family: "gears",
    summary: "Lead that a train cuts, the train as GEAR.TRAIN gives it.",
    params: [
      {
        name: "train",
        type: "text",
        doc: 'Drivers over driven, from the spindle on: "30/80" or "65/50 × 20/55"; x, X and * stand for the cross. ", box 3" behind it means a gearbox.',
      },
      leadscrewLead,
      {
        name: "ratios",
        type: "numbers",
        unit: "ratio",
        optional: true,
        doc: "Ratios of the gearbox, position by position; needed where the train names a box.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "In the unit of the leadscrew lead." },
    failures: [
      {
        when: "the text is no train",
        formula: '=GEAR.CUT("65 50 20 55", 3.175)',
        gives: "#VALUE!",
        says: 'like "30/80" or "65/50 × 20/55"',
      },
      { ...noLeadscrew, formula: '=GEAR.CUT("30/80", 0)' },
      {
        when: "the gearbox is not described",
        formula: '=GEAR.CUT("30/80, box 2", 4)',
        gives: "#VALUE!",
        says: "ratios are missing",
      },
      {
        when: "the gearbox has no such position",
        formula: '=GEAR.CUT("30/80, box 4", 4, {0.5;1;2})',
        gives: "#NUM!",
        says: "train must name a box from 1 to 3, got 4",
      },
    ],
    examples: [
      {
        formula: '=GEAR.CUT("65/50 × 20/55", 3.175)',
        value: 1.5009091,
        source: "1.5 and the error 0.0009091, computed independently",
      },
      { formula: '=GEAR.CUT("30/80", 4)', value: 1.5 },
      { formula: '=GEAR.CUT("30/80, box 3", 4, {0.5;1;2})', value: 3, source: "4 x 30/80 x 2 by hand" },
    ],
    source,
    compute: (train, leadscrew, ratios) => leadOfText(train, leadscrew, ratios),
  }),
  ...gearSearchFunctions,
  declare({
    name: "GEAR.TEETH",
    family: "gears",
    summary: "Teeth of one wheel of a train.",
    params: [
      {
        name: "train",
        type: "text",
        doc: 'As GEAR.TRAIN or GEAR.BOXTRAIN gives it: "65/50 × 20/55".',
      },
      {
        name: "place",
        type: "number",
        fallback: 1,
        doc: "1 the first driver, 2 the wheel it drives, 3 and 4 the second pair; whole.",
      },
    ],
    returns: { type: "number", unit: "teeth", doc: "Of that wheel." },
    failures: [
      {
        when: "the train has no such wheel",
        formula: '=GEAR.TEETH("30/80", 3)',
        gives: "#N/A",
        says: "place must be at most 2",
      },
      {
        when: "the text is no train",
        formula: '=GEAR.TEETH("30 80")',
        gives: "#VALUE!",
        says: "cannot read",
      },
    ],
    examples: [
      { formula: '=GEAR.TEETH("65/50 × 20/55")', value: 65, source: "as it is written" },
      { formula: '=GEAR.TEETH("65/50 × 20/55, box 2", 4)', value: 55, source: "as it is written" },
    ],
    source,
    compute: wheelOf,
  }),
  declare({
    name: "GEAR.ERROR",
    family: "gears",
    summary: "How far a lead is off, in one turn or accumulated over a length.",
    params: [
      { name: "lead_wanted", type: "number", unit: "length", doc: "Above 0." },
      { name: "lead_cut", type: "number", unit: "length", doc: "What the gears cut, above 0." },
      {
        name: "length",
        type: "number",
        unit: "length",
        optional: true,
        doc: "Length of engagement, 0 or more. Left out: the error of one turn.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "Plus: too long." },
    failures: [
      {
        when: "no lead is wanted",
        formula: "=GEAR.ERROR(0, 1.5)",
        gives: "#NUM!",
        says: "lead_wanted must be greater than 0, got 0",
      },
      {
        when: "the length is negative",
        formula: "=GEAR.ERROR(1.5, 1.501, -25)",
        gives: "#NUM!",
        says: "length must be 0 or more, got -25",
      },
    ],
    examples: [
      { formula: "=GEAR.ERROR(1.5, GEAR.LEAD(3.175, 65, 50, 20, 55))", value: 0.0009091, within: 5e-8 },
      { formula: "=GEAR.ERROR(1.5, GEAR.LEAD(3.175, 65, 50, 20, 55), 25)", value: 0.0151515, within: 5.1e-8 },
    ],
    source,
    compute: leadError,
  }),
  declare({
    name: "GEAR.PPM",
    family: "gears",
    summary: "How far a lead is off, in millionths of it.",
    params: [
      { name: "lead_wanted", type: "number", unit: "length", doc: "Above 0." },
      { name: "lead_cut", type: "number", unit: "length", doc: "What the gears cut, above 0." },
    ],
    returns: { type: "number", doc: "Parts per million; plus: too long. 1000 is 1 mm in a metre." },
    failures: [
      {
        when: "no lead is cut",
        formula: "=GEAR.PPM(1.5, 0)",
        gives: "#NUM!",
        says: "lead_cut must be greater than 0, got 0",
      },
    ],
    examples: [
      {
        formula: "=GEAR.PPM(1.5, GEAR.LEAD(3.175, 65, 50, 20, 55))",
        value: 606.0606,
        within: 5e-5,
        source: "1651/1100 over 3/2 is 3302/3300 by hand: 2/3300",
      },
      {
        formula: "=GEAR.PPM(1/1.27, 63/80)",
        value: 125,
        source: "63 x 1.27 / 80 is 1.000125 by hand",
      },
    ],
    source,
    compute: leadErrorMillionths,
  }),
  declare({
    name: "FIT.LEADERROR",
    family: "gears",
    summary: "Room on the pitch diameter that a lead error over the engagement uses up.",
    params: [
      {
        name: "error",
        type: "number",
        unit: "length",
        doc: "Lead error accumulated over the length of engagement; too short uses up as much as too long.",
      },
      {
        name: "included",
        type: "number",
        unit: "deg",
        doc: "Included angle of the thread, between 0 and 180.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "On diameter: the size of the error x cot(A/2)." },
    failures: [
      {
        when: "the flanks do not lean",
        formula: "=FIT.LEADERROR(0.01, 0)",
        gives: "#NUM!",
        says: "included must be between 0 and 180 degrees, got 0",
      },
    ],
    examples: [{ formula: "=FIT.LEADERROR(0.0151515, 60)", value: 0.0262432, within: 5.1e-8 }],
    source,
    compute: roomForLeadError,
  }),
];
