/** Declarations made up for the tests of the engine: one for each way in which a function can behave. */
import { declare, type SheetFunction } from "../../src/functions/declare.ts";
import { NothingFound, Unreadable } from "../../src/thread/failures.ts";

const about = {
  family: "form",
  summary: "Made up for a test.",
  returns: { type: "number", doc: "A number." },
  failures: [],
  examples: [],
  source: "made up",
} as const;

export const samples: readonly SheetFunction[] = [
  declare({
    ...about,
    name: "TEST.ADD",
    params: [
      { name: "first", type: "number", doc: "Any number." },
      { name: "second", type: "number", doc: "Any number.", fallback: 10 },
      { name: "third", type: "number", doc: "Added where given.", optional: true },
    ],
    compute: (first, second, third) => first + second + (third ?? 0),
  }),
  declare({
    ...about,
    name: "TEST.SIDE",
    returns: { type: "text", doc: "The words as they came." },
    params: [
      { name: "designation", type: "text", doc: "Any text." },
      {
        name: "side",
        type: "text",
        doc: "Which side.",
        options: ["external", "internal"],
        fallback: "external",
      },
    ],
    compute: (designation, side) => `${designation}/${side}`,
  }),
  declare({
    ...about,
    name: "TEST.SUM",
    params: [{ name: "gears", type: "numbers", doc: "Numbers, one a cell." }],
    compute: (gears) => gears.reduce((sum, gear) => sum + gear, 0),
  }),
  declare({
    ...about,
    name: "TEST.DOUBTFUL",
    params: [{ name: "bore", type: "number", doc: "Any number." }],
    compute: (bore) => (bore > 8 ? { value: bore, note: `bore ${bore} is above 8` } : bore),
  }),
  declare({
    ...about,
    name: "TEST.ROWS",
    returns: { type: "block", doc: "Rows numbered from 1." },
    params: [{ name: "rows", type: "number", doc: "At least 1." }],
    compute: (rows) => {
      if (!(rows >= 1)) throw new RangeError(`rows must be at least 1, got ${rows}`);
      return Array.from({ length: rows }, (_, i) => [i + 1, i === 0 ? "" : `row ${i + 1}`]);
    },
  }),
  declare({
    ...about,
    name: "TEST.POISON",
    params: [{ name: "kind", type: "number", doc: "Which promise to break." }],
    compute: (kind) => {
      const broken: Record<number, () => unknown> = {
        1: () => JSON.parse("{"),
        2: () => undefined,
        3: () => ({ a: 1 }),
        4: () => Number.NaN,
        5: () => Number.POSITIVE_INFINITY,
        6: () => [[1]],
        7: () => null,
        8: () => new Array(-1),
        9: () => {
          throw new RangeError("pitch must be above 0, got -1");
        },
        10: () => {
          throw new Unreadable("designation cannot be read: M10z");
        },
        11: () => {
          throw new NothingFound("no wire fits");
        },
      };
      return broken[kind]!() as number;
    },
  }),
];
