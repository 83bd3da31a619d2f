/** THREAD functions that tell which thread a measured one is. */
import { candidates, matchThread, nothingFits } from "../thread/match.ts";
import { readThread } from "../thread/read.ts";
import { tellApart } from "../thread/tellapart.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { designationParam, notedText, unitParam, unreadableDesignation } from "./designated.ts";
import { member } from "./member.ts";

const toleranceParam = {
  name: "tolerance",
  type: "number",
  unit: "length",
  optional: true,
  doc: "Largest difference of the lead; left out, 1 % of the pitch (common practice, no source).",
} as const;

const includedParam = {
  name: "included",
  type: "number",
  unit: "deg",
  optional: true,
  doc: "Included angle, when it is known: drops the others.",
} as const;

const pitchParam = {
  name: "pitch",
  type: "number",
  unit: "length",
  doc: "Measured pitch, or lead for several starts, above 0.",
} as const;

const source = "Sizes of the standards; the order is common practice, no source";

/** Failures of a measurement, for both functions that take one. */
const failuresOf = (name: string) =>
  [
    {
      when: "no thread fits",
      formula: `=${name}(10,7.77)`,
      gives: "#N/A",
      says: "no thread with a lead of 7.77",
    },
    {
      when: "a size is not above 0",
      formula: `=${name}(-1,1)`,
      gives: "#NUM!",
      says: "major must be greater than 0",
    },
  ] as const;

export const threadMatch: readonly SheetFunction[] = [
  declare({
    name: "THREAD.MATCH",
    family: "thread",
    summary: "Which thread has this major diameter and pitch? The likeliest is rank 1.",
    params: [
      {
        name: "major",
        type: "number",
        unit: "length",
        doc: "Measured over the crests, above 0. A used screw measures under its basic size.",
      },
      pitchParam,
      { name: "rank", type: "number", fallback: 1, doc: "1 for the likeliest candidate, 2 for the next ..." },
      unitParam,
      toleranceParam,
      includedParam,
    ],
    returns: {
      type: "text",
      doc: "Designation; threads that only the angle tells apart are named together. THREAD.CANDIDATES says how far each is off.",
    },
    failures: failuresOf("THREAD.MATCH"),
    examples: [
      { formula: '=THREAD.MATCH(0.248,0.05,1,"in")', value: "1/4-20 UNC or 1/4 BSW" },
      { formula: '=THREAD.MATCH(0.248,0.05,1,"in",,55)', value: "1/4 BSW" },
      { formula: "=THREAD.MATCH(9.9,1.5)", value: "M10 or Tr 10x1.5" },
    ],
    source,
    compute: (major, pitch, rank, unit, tolerance, included) => {
      const named = matchThread({ major, pitch, unit, tolerance, included }, rank);
      return notedText(named.split(" or ").map(readThread), named);
    },
  }),
  declare({
    name: "THREAD.CANDIDATES",
    family: "thread",
    summary: "Which threads come near a measured one, and how far is each off? The likeliest first.",
    params: [
      {
        name: "major",
        type: "number",
        unit: "length",
        doc: "Measured over the crests of a screw, or the bore of a nut when member says so; above 0.",
      },
      pitchParam,
      { name: "count", type: "number", fallback: 6, doc: "Most rows, a whole number from 1 to 100." },
      unitParam,
      toleranceParam,
      includedParam,
      { ...member, doc: "What was measured: the major diameter of a screw, or the bore of a nut." },
      {
        name: "along",
        type: "text",
        options: ["not known", "parallel", "tapers"],
        fallback: "not known",
        doc: "Whether the diameter stays the same along the thread: drops the others.",
      },
    ],
    returns: {
      type: "block",
      doc: "A row for each candidate, in the order of THREAD.MATCH; columns: rank (equal when equally near), designation, basic diameter, measured less basic, lead, threads per inch, measured lead less lead, included angle, form, remarks: other threads of the same figures, doubts.",
    },
    failures: [
      ...failuresOf("THREAD.CANDIDATES"),
      {
        when: "count is no whole number in its range",
        formula: "=THREAD.CANDIDATES(10,1.5,0)",
        gives: "#NUM!",
        says: "count must be a whole number from 1 to 100, got 0",
      },
    ],
    examples: [
      {
        formula: "=INDEX(THREAD.CANDIDATES(9.9,1.5),1,4)",
        value: -0.1,
        within: 1e-9,
        source: "ISO 261: M10 is 10 mm; 9.9 - 10",
      },
      {
        formula: '=INDEX(THREAD.CANDIDATES(0.495,0.0832,1,"in",,55),1,2)',
        value: "1/2 BSW",
        source: "BS 84: 1/2 in, 12 threads per inch",
      },
      {
        formula: '=INDEX(THREAD.CANDIDATES(0.495,0.0832,1,"in",,55),1,7)',
        value: -0.000133333,
        within: 1e-9,
        source: "0.0832 - 1/12",
      },
      {
        formula: '=INDEX(THREAD.CANDIDATES(20.9,25.4/14,1,"mm",,55,"external","tapers"),1,2)',
        value: "R 1/2",
        source: "ISO 7-1: 20.955 mm, 14 threads per inch, taper 1 in 16",
      },
      {
        formula: '=INDEX(THREAD.CANDIDATES(8.4,1.5,1,"mm",,60,"internal"),1,2)',
        value: "M10",
        source: "ISO 724: minor diameter of the nut 8.376 mm",
      },
    ],
    source,
    compute: (major, pitch, count, unit, tolerance, included, member, along) => {
      if (!Number.isInteger(count) || count < 1 || count > 100)
        throw new RangeError(`count must be a whole number from 1 to 100, got ${count}`);
      const tapers = along === "not known" ? undefined : along === "tapers";
      const measured = { major, pitch, unit, tolerance, included, member, tapers };
      const found = candidates(measured).slice(0, count);
      if (found.length === 0) throw nothingFits(measured);
      return found.map((each) => [
        each.rank,
        each.designation,
        each.basic,
        each.off,
        each.lead,
        perInch(each.lead, unit),
        each.leadOff,
        each.included,
        each.form,
        [
          ...(each.also.length === 0 ? [] : [`also ${each.also.join(", ")}`]),
          ...(each.note === undefined ? [] : [each.note]),
        ].join("; "),
      ]);
    },
  }),
  declare({
    name: "THREAD.TELLAPART",
    family: "thread",
    summary: "What to measure to tell two threads apart, with both figures.",
    params: [
      designationParam,
      { name: "other", type: "text", doc: "The other thread, written likewise." },
      unitParam,
      { name: "pitches", type: "number", fallback: 10, doc: "Length to compare, in pitches; from 1 up." },
    ],
    returns: { type: "text", doc: "The differences, the easiest to see first." },
    failures: [
      unreadableDesignation('=THREAD.TELLAPART("M10","ten")'),
      {
        when: "pitches is not a whole number from 1 up",
        formula: '=THREAD.TELLAPART("M10","M12","mm",0)',
        gives: "#NUM!",
        says: "pitches must be a whole number from 1 up, got 0",
      },
    ],
    examples: [
      {
        formula: '=THREAD.TELLAPART("1/2-12 BSW","1/2-13 UNC")',
        value:
          "measure 10 pitches: 21.17 against 19.54 mm; included angle 55 against 60 degrees; crests made rounded against flat",
        source: "10 x 25.4/12 and 10 x 25.4/13; BS 84, ASME B1.1",
      },
      {
        formula: '=THREAD.TELLAPART("G 1/2","R 1/2")',
        value: "measure the diameter at two places: parallel against growing 1 in 16",
        source: "ISO 228-1, ISO 7-1",
      },
    ],
    source: "Standards of the designated threads; the order is common practice, no source",
    compute: (designation, other, unit, pitches) => {
      const [one, two] = [readThread(designation), readThread(other)];
      return notedText([one, two], tellApart(one, two, unit, pitches));
    },
  }),
];

/** Threads per inch of a lead; the reciprocal of 1/n need not be n in binary. */
function perInch(lead: number, unit: "mm" | "in"): number {
  return Number(((unit === "in" ? 1 : 25.4) / lead).toPrecision(12));
}
