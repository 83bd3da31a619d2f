/** What a job file must hold. Keys that are not named here are kept as they are. */
import * as v from "valibot";
import { parseCell, parseRange, splitSheet } from "../engine/address.ts";
import { limits } from "../engine/gate.ts";
import type { JobDocument } from "./document.ts";
import { parseLines } from "./lines-shown.ts";
import { nameProblem, sheetNameProblem } from "./names.ts";
import { mostSet } from "./signed.ts";

export const currentVersion = 1;

const text = v.string("must be text");
const whole = (least: number, most: number) =>
  v.pipe(
    v.number("must be a number"),
    v.integer("must be a whole number"),
    v.minValue(least, `must be at least ${least}`),
    v.maxValue(most, `may be at most ${most}`),
  );
const isCell = (text: string) =>
  parseCell(text) !== undefined && isInside(text) && !text.includes("$") && text === text.toUpperCase();
const isInside = (text: string) => {
  const range = parseRange(text);
  return range !== undefined && range.bottom < limits.rows && range.right < limits.columns;
};
const cell = v.pipe(v.string(), v.check(isCell, `must be a cell such as B2, up to row ${limits.rows}`));
const range = v.pipe(v.string(), v.check(isInside, "must be a cell such as B2 or a range such as B2:C9"));
const place = v.pipe(
  v.string("must be text"),
  v.check(
    (text) => isInside(splitSheet(text)?.rest ?? ""),
    "must be a cell or range with its sheet, such as Thread!B2",
  ),
);
const format = v.looseObject({
  as: v.exactOptional(
    v.picklist(
      ["plain", "decimals", "length", "angle", "dms", "fraction", "thou", "percent", "date", "turns", "text"],
      "must be one of plain, decimals, length, angle, dms, fraction, thou, percent, date, turns, text",
    ),
  ),
  places: v.exactOptional(whole(0, 15)),
  unit: v.exactOptional(text),
  role: v.exactOptional(
    v.picklist(
      ["input", "key", "head", "label", "note", "caution", "column"],
      "must be one of input, key, head, label, note, caution, column",
    ),
  ),
  perTurn: v.exactOptional(
    v.union([v.pipe(v.number(), v.minValue(1)), v.string()], "must be a number from 1 up, or a name"),
  ),
  bold: v.exactOptional(v.boolean("must be true or false")),
  italic: v.exactOptional(v.boolean("must be true or false")),
  shade: v.exactOptional(v.boolean("must be true or false")),
  border: v.exactOptional(
    v.array(
      v.picklist(["top", "right", "bottom", "left"], "must be top, right, bottom or left"),
      "must be a list of edges",
    ),
  ),
  align: v.exactOptional(v.picklist(["left", "right", "center"], "must be left, right or center")),
});

const bound = v.exactOptional(
  v.union([v.number(), v.string()], "must be a number, or a number with its unit"),
);
const allowed = v.looseObject({
  least: bound,
  most: bound,
  whole: v.exactOptional(v.boolean("must be true or false")),
  listed: v.exactOptional(v.boolean("must be true or false")),
  message: v.exactOptional(text),
});
const areLines = (text: string) => {
  const found = parseLines(text);
  return found !== undefined && found.last < (found.axis === "row" ? limits.rows : limits.columns);
};

const signedFor = v.looseObject(
  {
    result: v.exactOptional(text),
    set: v.exactOptional(
      v.pipe(
        v.array(text, "must be a list of texts"),
        v.maxLength(mostSet, `may have ${mostSet} texts at most`),
      ),
    ),
  },
  "must be what was signed off, in braces",
);

const sheet = v.looseObject(
  {
    name: v.pipe(
      v.string("must be text"),
      v.rawCheck(({ dataset, addIssue }) => {
        const problem = dataset.typed ? sheetNameProblem(dataset.value, []) : undefined;
        if (problem) addIssue({ message: problem });
      }),
    ),
    operation: v.exactOptional(whole(0, 9999)),
    result: v.exactOptional(cell),
    signedOff: v.exactOptional(v.boolean("must be true or false")),
    signedFor: v.exactOptional(signedFor),
    columns: v.optional(
      v.record(
        v.pipe(v.string(), v.regex(/^[A-Z]{1,3}$/, "must be the letters of a column")),
        whole(0, 4000),
        "must be column widths by letter",
      ),
      {},
    ),
    rows: v.optional(whole(1, limits.rows), 200),
    columnCount: v.optional(whole(1, limits.columns), 26),
    cells: v.record(cell, text, "must be cells with their text"),
    formats: v.optional(v.record(range, format, "must be formats by cell or range"), {}),
    choices: v.optional(
      v.record(cell, v.array(text, "must be a list of words"), "must be lists by cell"),
      {},
    ),
    notes: v.optional(v.record(cell, text, "must be remarks by cell"), {}),
    merged: v.optional(v.array(range, "must be a list of ranges"), []),
    locked: v.exactOptional(v.array(range, "must be a list of ranges")),
    allowed: v.exactOptional(v.record(range, allowed, "must be limits by cell or range")),
    hidden: v.exactOptional(
      v.array(
        v.pipe(v.string(), v.check(areLines, "must be rows such as 5:7 or columns such as C:D")),
        "must be a list of rows and columns",
      ),
    ),
    freeze: v.exactOptional(cell),
  },
  "must be a sheet with name and cells",
);

const check = v.looseObject({
  value: v.union([v.number(), v.string()], "must be a number or text"),
  within: v.exactOptional(v.pipe(v.number("must be a number"), v.minValue(0, "must be at least 0"))),
  source: text,
});

const name = v.pipe(
  v.string(),
  v.rawCheck(({ dataset, addIssue }) => {
    const problem = dataset.typed ? nameProblem(dataset.value) : undefined;
    if (problem) addIssue({ message: problem });
  }),
);

export const jobSchema = v.pipe(
  v.looseObject(
    {
      format: v.literal("halfangle job", 'must be "halfangle job": this is another kind of file'),
      version: v.literal(currentVersion, `must be ${currentVersion}`),
      title: text,
      purpose: v.optional(text, ""),
      scenario: v.optional(text, ""),
      source: v.optional(text, ""),
      cautions: v.optional(v.array(text, "must be a list of texts"), []),
      names: v.optional(v.record(name, place, "must be places by name"), {}),
      sheets: v.pipe(
        v.array(sheet, "must be a list of sheets"),
        v.minLength(1, "a job has at least one sheet"),
        v.maxLength(200),
      ),
      check: v.optional(v.record(place, check, "must be expected values by cell"), {}),
    },
    "must be an object",
  ),
  v.rawCheck(({ dataset, addIssue }) => {
    if (dataset.typed)
      for (const found of contradictions(dataset.value as unknown as JobDocument)) addIssue(found as never);
  }),
);

interface Contradiction {
  readonly message: string;
  readonly path: readonly { readonly key: string | number }[];
}

/** What each part alone cannot tell: sheets that are named twice, names and checks that point nowhere. */
function contradictions(document: JobDocument): Contradiction[] {
  const found: Contradiction[] = [];
  const add = (message: string, ...keys: (string | number)[]) =>
    found.push({ message, path: keys.map(step) });
  const sheets = document.sheets.map((each) => each.name);
  sheets.forEach((each, i) => {
    const problem = sheetNameProblem(each, sheets.slice(0, i));
    if (problem) add(problem, "sheets", i, "name");
  });
  const seen = new Set<string>();
  for (const [each, target] of Object.entries(document.names)) {
    if (seen.has(each.toLowerCase())) add("differs from another name in capitals only", "names", each);
    seen.add(each.toLowerCase());
    if (!sheets.includes(splitSheet(target)!.sheet))
      add(`there is no sheet "${splitSheet(target)!.sheet}"`, "names", each);
  }
  for (const target of Object.keys(document.check)) {
    if (!sheets.includes(splitSheet(target)!.sheet))
      add(`there is no sheet "${splitSheet(target)!.sheet}"`, "check", target);
  }
  return found;
}

// The library keeps more in a step of a path; only the key is read here.
function step(key: string | number): { key: string | number } & Record<string, unknown> {
  return { type: "unknown", origin: "value", input: undefined, value: undefined, key };
}
