/**
 * ISO metric threads: M with the sizes of ISO 261, any other diameter and pitch as a special, and MJ with its large root
 * radius. Source: ISO 68-1, 261, 724, 965-1; MJ: ISO 5855-1 and -2, from memory.
 */
import { isoForm, largeRoot, times } from "./form.ts";
import { byPitch, findSize, unreadable } from "./grammar.ts";
import { isPreferredPitch, metricClass, metricLimits, positionNote } from "./metriclimits.ts";
import type { Asked, Classes, Parts, Series, Size } from "./series.ts";

// Diameter, then its pitches; the coarse one first. A leading 0 says that the size has no coarse pitch.
const coarseAndFine = `1 .25 .2|1.1 .25 .2|1.2 .25 .2|1.4 .3 .2|1.6 .35 .2|1.8 .35 .2|2 .4 .25|2.2 .45 .25|2.5 .45 .35
3 .5 .35|3.5 .6 .35|4 .7 .5|4.5 .75 .5|5 .8 .5|5.5 0 .5|6 1 .75|7 1 .75|8 1.25 1 .75|9 1.25 1 .75|10 1.5 1.25 1 .75
11 1.5 1 .75|12 1.75 1.5 1.25 1|14 2 1.5 1.25 1|15 0 1.5 1|16 2 1.5 1|17 0 1.5 1|18 2.5 2 1.5 1|20 2.5 2 1.5 1
22 2.5 2 1.5 1|24 3 2 1.5 1|25 0 2 1.5 1|26 0 1.5|27 3 2 1.5 1|28 0 2 1.5 1|30 3.5 3 2 1.5 1|32 0 2 1.5|33 3.5 3 2 1.5
35 0 1.5|36 4 3 2 1.5|38 0 1.5|39 4 3 2 1.5|40 0 3 2 1.5|42 4.5 4 3 2 1.5|45 4.5 4 3 2 1.5|48 5 4 3 2 1.5|50 0 3 2 1.5
52 5 4 3 2 1.5|55 0 4 3 2 1.5|56 5.5 4 3 2 1.5|58 0 4 3 2 1.5|60 5.5 4 3 2 1.5|62 0 4 3 2 1.5|64 6 4 3 2 1.5
65 0 4 3 2 1.5|68 6 4 3 2 1.5|70 0 6 4 3 2 1.5|72 0 6 4 3 2 1.5|75 0 4 3 2 1.5|76 0 6 4 3 2 1.5|78 0 2
80 0 6 4 3 2 1.5|82 0 2|85 0 6 4 3 2|90 0 6 4 3 2|95 0 6 4 3 2|100 0 6 4 3 2|105 0 6 4 3 2|110 0 6 4 3 2|115 0 6 4 3 2
120 0 6 4 3 2|125 0 8 6 4 3 2|130 0 8 6 4 3 2|135 0 6 4 3 2|140 0 8 6 4 3 2|145 0 6 4 3 2|150 0 8 6 4 3 2|155 0 6 4 3
160 0 8 6 4 3|165 0 6 4 3|170 0 8 6 4 3|175 0 6 4 3|180 0 8 6 4 3|185 0 6 4 3|190 0 8 6 4 3|195 0 6 4 3|200 0 8 6 4 3
205 0 6 4 3|210 0 8 6 4 3|215 0 6 4 3|220 0 8 6 4 3|225 0 6 4 3|230 0 8 6 4 3|235 0 6 4 3|240 0 8 6 4 3|245 0 6 4 3
250 0 8 6 4 3|255 0 6 4|260 0 8 6 4|265 0 6 4|270 0 8 6 4|275 0 6 4|280 0 8 6 4|285 0 6 4|290 0 8 6 4|295 0 6 4
300 0 8 6 4`;

/** @param table "diameter pitch pitch ..." rows apart by | or line; the first pitch 0 where none is coarse */
export function pitchSizes(table: string): readonly Size[] {
  return table.split(/[|\n]/).map((row) => {
    const [name = "", ...pitches] = row.split(" ");
    return { name, major: Number(name), pitches: pitches.map(Number) };
  });
}

const coarseOrFine =
  /^(\d*\.?\d+)(?:\s*mm\b)?(?:\s*[x*]\s*(\d*\.?\d+)(?:\s*mm\b)?)?[\s,-]*\b(coarse|fine)\b/i;

/** M12, M12x1.5 and so on, also with the word coarse or fine where it says which pitch is meant, or agrees with it. */
function readMetric(parts: Parts, series: Series): Asked {
  const found = parts.before === "" ? coarseOrFine.exec(parts.after) : null;
  if (!found) return byPitch(parts, series);
  const [all, diameter = "", stated, word = ""] = found;
  const head = `${series.name}${diameter}`;
  const [coarse = 0, ...fine] = findSize(series.sizes, Number(diameter))?.pitches ?? [];
  const kind = word.toLowerCase();
  const pitches = kind === "fine" ? fine : coarse === 0 ? [] : [coarse];
  const meant = stated === undefined ? pitches : pitches.filter((pitch) => pitch === Number(stated));
  if (meant.length === 1)
    return byPitch({ ...parts, after: `${diameter}x${meant[0]}${parts.after.slice(all.length)}` }, series);
  const choice = (some: readonly number[]) => some.map((pitch) => `${head}x${pitch}`).join(" or ");
  const read = stated === undefined ? head : `${head}x${stated}`;
  const why =
    pitches.length === 0
      ? `${head} has no ${kind} pitch in ISO 261: write ${choice(fine) || "the pitch"}`
      : stated === undefined
        ? `${head} has several fine pitches: write ${choice(fine)}`
        : `${read} is not ${kind}: that is ${choice(pitches)}`;
  throw unreadable(parts.text, why, { read, at: parts.after.slice(all.length - word.length) });
}

export const metricClasses: Classes = {
  read(text, nut) {
    const parts = metricClass.exec(text);
    if (!parts) return undefined;
    const [, first = "", second] = parts;
    const internal = /[EFGH]/.test(first);
    if (second !== undefined && /[EFGH]/.test(second) !== internal) return undefined;
    if (nut && !internal) return undefined;
    // E and F are positions of screws only.
    if (internal && /[EF]/.test(text)) return undefined;
    return {
      member: internal ? "internal" : "external",
      name: second === first ? first : first + (second ?? ""),
    };
  },
  usual: (member, major) =>
    major <= 1.4 ? (member === "internal" ? "5H" : "6h") : member === "internal" ? "6H" : "6g",
  write: (fit) => `-${fit.name}`,
  accepted: "screw 3 to 9 with a to h such as 6g or 5g6g; nut 4 to 8 with G or H such as 6H",
};

export const metric: Series = {
  name: "M",
  words: ["m"],
  standard: "ISO 261, ISO 724, ISO 965-1",
  unit: "mm",
  form: isoForm,
  sizes: pitchSizes(coarseAndFine),
  perInch: false,
  read: readMetric,
  list: (size, pitch) => (pitch === size.pitches[0] ? `M${size.name}` : `M${size.name}x${pitch}`),
  classes: metricClasses,
  loosest: "8g",
  limits: metricLimits,
  limitsNote: ({ pitch, fits }) =>
    isPreferredPitch(pitch)
      ? positionNote(fits.external)
      : `limits by the formulas of ISO 965-1, which tables no pitch of ${pitch} mm`,
};

const H = Math.sqrt(3) / 2;
/** From the largest root radius to the smallest, on diameter. */
const rootSpreadMJ = 2 * (largeRoot.most - largeRoot.least);

export const metricMJ: Series = {
  ...metric,
  name: "MJ",
  words: ["mj"],
  standard: "ISO 5855",
  form: {
    ...isoForm,
    name: "MJ",
    dedendum: times((3 / 16) * H),
    depth: { external: times((2 / 3) * H), internal: times((9 / 16) * H) },
    rootRadius: times(largeRoot.most),
    rootFlat: times(5 / 16),
  },
  list: (size, pitch) => `MJ${size.name}x${pitch}`,
  classes: {
    ...metricClasses,
    usual: (member, major) => (member === "external" ? "4h6h" : major <= 5 ? "4H6H" : "4H5H"),
  },
  loosest: "4h6h",
  limits: (fitted) => metricLimits(fitted, rootSpreadMJ),
  limitsNote: "class limits of MJ are from memory of ISO 5855-2: check them before relying on them",
};
