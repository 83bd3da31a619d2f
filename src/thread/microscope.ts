/**
 * The thread of microscope objectives, 0.8 in and 36 threads per inch of Whitworth form, with a screw well under size.
 *
 * Source: ASME B1.11 and ISO 8038-1 (RMS); limits of the major diameters as printed, 0.7952 to 0.7982 for the objective
 * and 0.8000 to 0.8030 for the nosepiece; those of the other diameters from memory.
 */
import { whitworthForm } from "./form.ts";
import { unreadable } from "./grammar.ts";
import { type Asked, type Fitted, noClasses, type Parts, type Series, type Size } from "./series.ts";
import { fractionValue, inchSize } from "./text.ts";
import type { Limits } from "./thread.ts";
import { whitworthBasic } from "./whitworth.ts";

const size: Size = { name: "0.8", major: 0.8, pitches: [36] };

function limits({ member }: Fitted): Limits {
  if (member === "internal")
    return { major: { min: 0.8, max: 0.803 }, pitch: { min: 0.7822, max: 0.7852 }, minor: {} };
  return {
    major: { max: 0.7982, min: 0.7952 },
    pitch: { max: 0.7804, min: 0.7774 },
    minor: { max: 0.7626 },
  };
}

const pattern = new RegExp(String.raw`^(${inchSize})(?:\s*[-x*\s]\s*(?:1\s*/\s*)?36)?(?![\d/])`);

/** The only size may be left out; 0.7965, the middle of the screw's limits, names it too. */
function readObjective(parts: Parts, series: Series): Asked {
  const given = parts.before === "" ? parts.after : parts.before;
  const found = pattern.exec(given);
  const named = found ? fractionValue(found[1]!) : size.major;
  if (named !== size.major && named !== 0.7965) {
    throw unreadable(parts.text, "the microscope objective thread has one size, 0.8-36 RMS");
  }
  const left = given.slice(found?.[0].length ?? 0).trim();
  return {
    series,
    name: size.name,
    major: size.major,
    pitch: 1 / 36,
    starts: 1,
    rest: parts.before === "" ? left : `${left} ${parts.after}`.trim(),
    written: series.list(size, 36),
  };
}

export const objective: Series = {
  name: "RMS",
  words: ["rms", "amo"],
  standard: "ASME B1.11, ISO 8038-1",
  unit: "in",
  form: whitworthForm,
  perInch: true,
  sizes: [size],
  read: readObjective,
  list: () => "0.8-36 RMS",
  classes: noClasses,
  basic: whitworthBasic,
  limits,
  limitsNote:
    "limits of the pitch and minor diameter of RMS are from memory of ASME B1.11: check them before relying on them",
};
