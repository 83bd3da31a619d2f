/** The commands on cells that ask for something first. */
import { cellName, columnName, sheetPrefix } from "../engine/address.ts";
import { allowedAt, allowedProblem, setAllowed } from "../job/allowed.ts";
import { replaceFormats, setChoices, setNote, setWidths } from "../job/blocks.ts";
import type { Allowed, CellFormat, Edge, Role, ShowAs } from "../job/document.ts";
import { oneStep } from "../job/one-step.ts";
import { rangeName } from "../job/references.ts";
import type { Answers, Field } from "./ask-dialog.ts";
import type { Ready } from "./cell-commands.ts";
import type { Refused } from "./grid-commands.ts";

type Done = Promise<string | Refused | undefined>;

const text = (answers: Answers, name: string) => String(answers[name] ?? "").trim();

export async function askNote(on: Ready): Done {
  const { row, column } = on.active;
  const answers = await on.ask({
    title: `Note of ${cellName(row, column)}`,
    fields: [{ name: "note", label: "Note", kind: "lines", value: on.map.view(row, column).note ?? "" }],
    go: "Keep",
  });
  if (!answers) return undefined;
  setNote(on.job, on.sheet, row, column, text(answers, "note"));
  return on.job.canUndo;
}

export async function askWidth(on: Ready): Done {
  const { left, right } = on.area;
  const now = on.map.sheet?.columns[columnName(left)] ?? 96;
  const answers = await on.ask({
    title:
      left === right
        ? `Width of column ${columnName(left)}`
        : `Width of columns ${columnName(left)} to ${columnName(right)}`,
    fields: [
      {
        name: "width",
        label: "Width, px",
        kind: "line",
        value: String(now),
        hint: "24 to 1000; 96 is the usual",
      },
    ],
    go: "Set",
    problem: (given) => {
      const width = Number(text(given, "width"));
      return width >= 24 && width <= 1000 ? undefined : "a width is a number from 24 to 1000";
    },
  });
  if (!answers) return undefined;
  const width = Number(text(answers, "width"));
  const columns = Array.from({ length: right - left + 1 }, (_, i) => left + i);
  setWidths(on.job, on.sheet, new Map(columns.map((column) => [column, width])));
  return on.job.canUndo;
}

export async function askName(on: Ready): Done {
  const place = `${sheetPrefix(on.sheet)}${rangeName(on.area)}`;
  const { names } = on.job.document;
  const now = Object.keys(names).find((name) => names[name] === place);
  const answers = await on.ask({
    title: `Name ${rangeName(on.area)}`,
    fields: [
      {
        name: "name",
        label: "Name",
        kind: "line",
        value: now ?? "",
        hint: "Letters, digits, points and underscores; formulas can use it anywhere in the job",
      },
    ],
    go: "Name it",
    problem: (given) => {
      const name = text(given, "name");
      const taken = Object.keys(names).find((other) => other.toLowerCase() === name.toLowerCase());
      if (taken !== undefined && names[taken] !== place) return `${taken} stands for ${names[taken]} already`;
      return on.job.setName(name, place);
    },
  });
  return answers ? on.job.canUndo : undefined;
}

export async function askLimits(on: Ready): Done {
  const { row, column } = on.active;
  const { choices = [] } = on.map.view(row, column);
  const now: Allowed = (on.map.sheet && allowedAt(on.map.sheet, row, column)) ?? {};
  const bound = (given: Answers, name: string) => {
    const typed = text(given, name);
    return typed === "" ? undefined : Number.isNaN(Number(typed)) ? typed : Number(typed);
  };
  const read = (given: Answers): Allowed => {
    const least = bound(given, "least");
    const most = bound(given, "most");
    const message = text(given, "message");
    return {
      ...(least === undefined ? {} : { least }),
      ...(most === undefined ? {} : { most }),
      ...(given.whole === true ? { whole: true } : {}),
      ...(given.listed === true ? { listed: true } : {}),
      ...(message === "" ? {} : { message }),
    };
  };
  const answers = await on.ask({
    title: `Choices and limits of ${rangeName(on.area)}`,
    text: "A value outside is kept as typed, and the cell carries a caution.",
    fields: [
      {
        name: "choices",
        label: "Words to choose from, one a line",
        kind: "lines",
        value: choices.join("\n"),
      },
      { name: "listed", label: "these words and no others", kind: "yes", value: now.listed ?? false },
      {
        name: "least",
        label: "Least",
        kind: "line",
        value: String(now.least ?? ""),
        hint: "a number, or with its unit: 0.2 mm",
      },
      { name: "most", label: "Most", kind: "line", value: String(now.most ?? "") },
      { name: "whole", label: "whole numbers only", kind: "yes", value: now.whole ?? false },
      {
        name: "message",
        label: "What the caution says",
        kind: "line",
        value: now.message ?? "",
        hint: "left empty, it says what the limits are",
      },
    ],
    go: "Set",
    problem: (given) => allowedProblem(read(given)),
  });
  if (!answers) return undefined;
  const allowed = read(answers);
  oneStep(on.job, `Set the choices and limits of ${rangeName(on.area)} in ${on.sheet}`, (draft) => {
    setChoices(draft, on.sheet, on.area, text(answers, "choices").split("\n"));
    setAllowed(draft, on.sheet, on.area, Object.keys(allowed).length > 0 ? allowed : undefined);
  });
  return on.job.canUndo;
}

const showAs: readonly (readonly [ShowAs, string])[] = [
  ["plain", "as it is"],
  ["decimals", "fixed decimals"],
  ["length", "length in the job's unit"],
  ["angle", "degrees"],
  ["dms", "degrees, minutes, seconds"],
  ["fraction", "inches to the nearest 64th"],
  ["thou", "thousandths of an inch"],
  ["turns", "dial turns and divisions"],
  ["percent", "percent"],
  ["date", "date"],
  ["text", "text"],
];

const roles: readonly (readonly [Role | "", string])[] = [
  ["", "nothing special"],
  ["input", "blank to fill in"],
  ["key", "what the hand sets"],
  ["head", "heading"],
  ["label", "label"],
  ["column", "heading of a column"],
  ["note", "note"],
  ["caution", "caution while it holds words"],
];

const edges: readonly Edge[] = ["top", "right", "bottom", "left"];

export async function askFormat(on: Ready): Done {
  const { format } = on.map.view(on.active.row, on.active.column);
  const fields: Field[] = [
    { name: "as", label: "Show numbers as", kind: "one of", value: format.as ?? "plain", options: showAs },
    {
      name: "places",
      label: "Decimals",
      kind: "line",
      value: String(format.places ?? ""),
      hint: "nothing: as usual for it",
    },
    {
      name: "unit",
      label: "Unit beside the number",
      kind: "line",
      value: format.unit ?? "",
      hint: "as div or rev/min; a length has the job's by itself",
    },
    {
      name: "perTurn",
      label: "Divisions in a turn",
      kind: "line",
      value: String(format.perTurn ?? ""),
      hint: "for dial turns: a number, or the name of a cell",
    },
    { name: "role", label: "What the cell is", kind: "one of", value: format.role ?? "", options: roles },
    {
      name: "align",
      label: "Stands",
      kind: "one of",
      value: format.align ?? "",
      options: [
        ["", "as usual"],
        ["left", "left"],
        ["center", "in the middle"],
        ["right", "right"],
      ],
    },
    { name: "bold", label: "bold", kind: "yes", value: format.bold ?? false },
    { name: "italic", label: "slanted", kind: "yes", value: format.italic ?? false },
    { name: "shade", label: "darker ground", kind: "yes", value: format.shade ?? false },
    ...edges.map(
      (edge): Field => ({
        name: edge,
        label: `line ${edge === "top" || edge === "bottom" ? `at the ${edge}` : `on the ${edge}`}`,
        kind: "yes",
        value: format.border?.includes(edge) ?? false,
      }),
    ),
  ];
  const answers = await on.ask({
    title: `Format of ${rangeName(on.area)}`,
    fields,
    go: "Set",
    problem: (given) => {
      const places = text(given, "places");
      return places === "" || /^(\d|1[0-5])$/.test(places)
        ? undefined
        : "decimals are a whole number from 0 to 15";
    },
  });
  if (!answers) return undefined;
  const perTurn = text(answers, "perTurn");
  const border = edges.filter((edge) => answers[edge] === true);
  const wanted: CellFormat = {
    as: text(answers, "as") as ShowAs,
    ...(text(answers, "places") === "" ? {} : { places: Number(text(answers, "places")) }),
    ...(text(answers, "unit") === "" ? {} : { unit: text(answers, "unit") }),
    ...(perTurn === "" ? {} : { perTurn: Number(perTurn) >= 1 ? Number(perTurn) : perTurn }),
    ...(text(answers, "role") === "" ? {} : { role: text(answers, "role") as Role }),
    ...(text(answers, "align") === ""
      ? {}
      : { align: text(answers, "align") as "left" | "right" | "center" }),
    ...(answers.bold === true ? { bold: true } : {}),
    ...(answers.italic === true ? { italic: true } : {}),
    ...(answers.shade === true ? { shade: true } : {}),
    ...(border.length > 0 ? { border } : {}),
  };
  replaceFormats(on.job, on.sheet, on.area, wanted);
  return on.job.canUndo;
}
