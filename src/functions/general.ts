/** The general functions that the engine brings, for completion and help; what they do is the open standard's business. */
import { mathematics } from "./general/mathematics.ts";
import { others } from "./general/others.ts";
import { statistics } from "./general/statistics.ts";

export interface GeneralFunction {
  readonly name: string;
  /** `NAME(arguments)`. */
  readonly call: string;
  readonly summary: string;
}

export const generalFunctions: readonly GeneralFunction[] = [mathematics, statistics, others]
  .flatMap((text) => text.trim().split("\n"))
  .map((line) => {
    const [, call, summary] = /^(.+?\)): (.+)$/.exec(line)!;
    return { name: call!.slice(0, call!.indexOf("(")), call: call!, summary: summary! };
  })
  .sort((a, b) => (a.name < b.name ? -1 : 1));
