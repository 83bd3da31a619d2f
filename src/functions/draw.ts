/** DRAW.*: drawings. A function checks and reckons what a drawing shows; putting it on paper is left to who paints. */
import { usableList } from "../lathe/figure-checks.ts";
import { readTrain } from "../lathe/gears.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { drawGrooveFunctions } from "./draw-groove.ts";
import { drawLinesFunctions } from "./draw-lines.ts";
import { drawSetoverFunctions } from "./draw-setover.ts";
import { drawThreadFunctions } from "./draw-thread.ts";

const geometry = "geometry; drawn as ISO 128 and ISO 129 ask";

export const drawFunctions: readonly SheetFunction[] = [
  ...drawSetoverFunctions,
  ...drawThreadFunctions,
  ...drawGrooveFunctions,
  declare({
    name: "DRAW.TRAIN",
    family: "drawing",
    summary: "Change gears by their pitch circles: spindle, studs, leadscrew and where they mesh.",
    params: [
      {
        name: "train",
        type: "text",
        doc: 'Drivers over driven, from the spindle on, as GEAR.TRAIN gives it: "30/80" or "65/50 × 20/55".',
      },
    ],
    returns: {
      type: "drawing",
      doc: "As text: the train and the turns of the leadscrew to one of the spindle.",
    },
    failures: [
      {
        when: "the text is no train",
        formula: '=DRAW.TRAIN("65 50")',
        gives: "#VALUE!",
        says: 'like "30/80" or "65/50 × 20/55"',
      },
    ],
    examples: [
      {
        formula: '=DRAW.TRAIN("40/60")',
        value: "Change gears 40/60: leadscrew 0.66667 to 1",
        source: "40/60 by hand",
      },
      {
        formula: '=DRAW.TRAIN("65/50 × 20/55")',
        value: "Change gears 65/50 × 20/55: leadscrew 0.47273 to 1",
        source: "65/50 x 20/55 by hand",
      },
    ],
    source: geometry,
    compute: (text) => {
      const train = readTrain(text);
      const ratio = train.reduce((product, [driver, driven]) => (product * driver) / driven, 1);
      const pairs = train.map(([driver, driven]) => `${driver}/${driven}`).join(" × ");
      const box = /box\s+(\d+)/i.exec(text)?.[1];
      return {
        value: `Change gears ${pairs}${box === undefined ? "" : `, box ${box}`}: leadscrew ${Number(ratio.toFixed(5))} to 1`,
        figure: { kind: "train", train, ratio, ...(box === undefined ? {} : { box: Number(box) }) },
      };
    },
  }),
  declare({
    name: "DRAW.MARKS",
    family: "drawing",
    summary: "Dial of the thread indicator with the marks on which the half nuts may be closed.",
    params: [
      {
        name: "usable",
        type: "text",
        doc: 'Marks that may be used, as ENGAGE.MARKS lists them: "4,8"; "" when there is none.',
      },
      { name: "marks", type: "number", doc: "Marks on the dial, whole, 1 to 200." },
    ],
    returns: { type: "drawing", doc: "As text: which marks." },
    failures: [
      {
        when: "a mark is not on the dial",
        formula: '=DRAW.MARKS("4,9",8)',
        gives: "#NUM!",
        says: "usable marks must be from 1 to 8, got 9",
      },
      {
        when: "the list cannot be read",
        formula: '=DRAW.MARKS("all",8)',
        gives: "#VALUE!",
        says: "numbers with commas between",
      },
      {
        when: "there are too many marks to draw",
        formula: '=DRAW.MARKS("1",201)',
        gives: "#NUM!",
        says: "marks must be from 1 to 200",
      },
    ],
    examples: [
      { formula: '=DRAW.MARKS("4,8",8)', value: "Half nuts: close on marks 4, 8 of 8" },
      { formula: '=DRAW.MARKS("",8)', value: "Half nuts: none of 8 marks may be used twice" },
      {
        formula: "=DRAW.MARKS(ENGAGE.MARKS(1/12,1/8,16,8),8)",
        value: "Half nuts: close on any of 8 marks",
        source: "12 per inch on 8 per inch, 16 teeth: every mark is a whole quarter inch, which is 3 leads",
      },
    ],
    source: geometry,
    compute: (text, count) => {
      const { usable, marks } = usableList(text, count);
      const which =
        usable.length === 0
          ? `none of ${marks} marks may be used twice`
          : usable.length === marks
            ? `close on any of ${marks} marks`
            : `close on ${usable.length === 1 ? "mark" : "marks"} ${usable.join(", ")} of ${marks}`;
      return { value: `Half nuts: ${which}`, figure: { kind: "marks", usable, marks } };
    },
  }),
  ...drawLinesFunctions,
];
