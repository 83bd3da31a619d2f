/** Numbers of other programs, put as they are typed here, and what was taken for granted where one may mean two things. */
import { groupsByComma, hasDecimalComma, readDecimal, thousands } from "../job/decimal.ts";

export interface PastedNumbers {
  readonly rows: string[][];
  /** "read 1,234 as 1.234"; undefined where nothing was doubtful. */
  readonly read: string | undefined;
}

/** A comma is a decimal comma; of thousands only where a number of the same block, such as 1,234.5, shows it. */
export function asNumbersHere(rows: readonly (readonly string[])[]): PastedNumbers {
  const some = (is: (text: string) => boolean) => rows.some((row) => row.some(is));
  const grouped = some(groupsByComma) && !some(hasDecimalComma);
  const doubts: string[] = [];
  const read = rows.map((row) =>
    row.map((text) => {
      const found = readDecimal(text);
      const number = (grouped ? thousands(text) : undefined) ?? found?.text ?? text;
      if (found ? found.doubtful : number !== text) doubts.push(`${text.trim()} as ${number}`);
      return number;
    }),
  );
  const more = doubts.length > 1 ? ` and ${doubts.length - 1} more the same way` : "";
  return { rows: read, read: doubts.length === 0 ? undefined : `read ${doubts[0]}${more}` };
}
