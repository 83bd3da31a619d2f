/** The engine's errors in the words of the sheet: which cell, what was given, what is accepted. */
import { DetailedCellError } from "hyperformula";
import type { CellValue, ErrorValue } from "./values.ts";

export const unreadableFormula =
  "the formula cannot be read: look for a missing operator, separator or argument";

const byError: Readonly<Record<string, string>> = {
  "#CYCLE!": "the cell depends on itself",
  "#DIV/0!": "division by zero",
  "#REF!": "a reference points to a cell or sheet that does not exist",
  "#N/A": "no value was found",
  "#NUM!": "the result is no finite number",
  "#VALUE!": "an argument has the wrong type",
  "#NAME?": "a name or function is not known",
  "#SPILL!": "there is no room for the block",
  "#ERROR!": unreadableFormula,
};

// Only where the engine's own words do not tell what to do.
const byMessage: Readonly<Record<string, string>> = {
  "Cell range not allowed.": "one value is wanted here, not a range",
  "Wrong number of arguments.": "the function has too few or too many arguments",
  "Value cannot be coerced to number.": "a number is wanted, got text or an empty value",
  "NaN or infinite value encountered.": "the result is no finite number",
  "Sheet does not exist.": "the sheet that the formula names does not exist",
};

/** What the engine answered as a value of the sheet. @param here the cell it stands in, as `Sheet!A1` */
export function cellValueOf(given: unknown, here?: string): CellValue {
  if (given instanceof DetailedCellError) return errorOf(given, here);
  if (typeof given === "number")
    return Number.isFinite(given) ? given : { error: "#NUM!", message: byError["#NUM!"]! };
  if (typeof given === "string" || typeof given === "boolean") return given;
  return null;
}

function errorOf(given: DetailedCellError, here: string | undefined): ErrorValue {
  const from = given.address === undefined || given.address === here ? {} : { from: given.address };
  return { error: given.value, message: inOurWords(given), ...from };
}

function inOurWords({ message, value }: DetailedCellError): string {
  const unknown = /^(?:Function name|Named expression) (.+) not recognized\.$/.exec(message);
  if (unknown) return `${unknown[1]} is not known: no function or name is called that`;
  if (message.startsWith("Parsing error")) return unreadableFormula;
  return byMessage[message] ?? (message === "" ? (byError[value] ?? value) : sentence(message));
}

function sentence(message: string): string {
  // Own messages already are lower case without a full stop; abbreviations at the beginning stay as they are.
  const start =
    /^[A-Z][a-z]/.test(message) && message.endsWith(".")
      ? message[0]!.toLowerCase() + message.slice(1)
      : message;
  return start.endsWith(".") ? start.slice(0, -1) : start;
}
