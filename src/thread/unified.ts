/** Unified inch threads: UNC, UNF, UNEF, the constant pitches UN, and specials UNS. Source: ASME B1.1. */
import { type Form, largeRoot, times, unifiedForm } from "./form.ts";
import { findSize, inchSizes, numberSize, readInchSize, unreadable } from "./grammar.ts";
import type { Asked, Classes, Parts, Series, Size } from "./series.ts";
import { fractionText } from "./text.ts";
import type { Member } from "./thread.ts";
import { nutTolerance, type UnifiedRules, unifiedLimits } from "./unifiedlimits.ts";

const coarse = `1/4 20|5/16 18|3/8 16|7/16 14|1/2 13|9/16 12|5/8 11|3/4 10|7/8 9|1 8|1-1/8 7|1-1/4 7|1-3/8 6|1-1/2 6|1-3/4 5
2 4.5|2-1/4 4.5|2-1/2 4|2-3/4 4|3 4|3-1/4 4|3-1/2 4|3-3/4 4|4 4`;
const fine = `1/4 28|5/16 24|3/8 24|7/16 20|1/2 20|9/16 18|5/8 18|3/4 16|7/8 14|1 12|1-1/8 12|1-1/4 12|1-3/8 12|1-1/2 12`;
const extraFine = `1/4 32|5/16 32|3/8 32|7/16 28|1/2 28|9/16 24|5/8 24|11/16 24|3/4 20|13/16 20|7/8 20|15/16 20|1 20
1-1/16 18|1-1/8 18|1-3/16 18|1-1/4 18|1-5/16 18|1-3/8 18|1-7/16 18|1-1/2 18|1-9/16 18|1-5/8 18|1-11/16 18`;

/** "number threads" rows of the number sizes. */
function numberSizes(table: string): readonly Size[] {
  return table.split("|").map((row) => {
    const [number = "", tpi = ""] = row.split(" ");
    return { name: number, major: numberSize(Number(number)), pitches: [Number(tpi)] };
  });
}

export const coarseSizes: readonly Size[] = [
  ...numberSizes("1 64|2 56|3 48|4 40|5 40|6 32|8 32|10 24|12 24"),
  ...inchSizes(coarse),
];
export const fineSizes: readonly Size[] = [
  ...numberSizes("0 80|1 72|2 64|3 56|4 48|5 44|6 40|8 36|10 32|12 28"),
  ...inchSizes(fine),
];
export const extraFineSizes: readonly Size[] = [...numberSizes("12 32"), ...inchSizes(extraFine)];

/** Sizes of the constant-pitch series, every sixteenth up to 2 in, every eighth up to 4, every quarter up to 6. */
const constantPitches: readonly (readonly [tpi: number, from: number, to: number])[] = [
  [4, 2.5, 6],
  [6, 1.375, 6],
  [8, 1, 6],
  [12, 0.5625, 6],
  [16, 0.375, 6],
  [20, 0.25, 3],
  [28, 0.25, 1.5],
  [32, 0.25, 1],
];

function constantSizes(): readonly Size[] {
  const sizes: Size[] = [];
  for (let sixteenths = 4; sixteenths <= 96; sixteenths += sixteenths < 32 ? 1 : sixteenths < 64 ? 2 : 4) {
    const major = sixteenths / 16;
    const pitches = constantPitches
      .filter(([, from, to]) => major >= from && major <= to)
      .map(([tpi]) => tpi);
    sizes.push({ name: fractionText(major), major, pitches });
  }
  return sizes;
}

function class2(member: Member): string {
  return member === "internal" ? "2B" : "2A";
}

const classes: Classes = {
  read(text, nut) {
    const found = /^([123])\s*([AB])$/i.exec(text);
    if (!found || (nut && /a/i.test(text))) return undefined;
    const name = found[0].replace(/\s/g, "").toUpperCase();
    return { member: name.endsWith("B") ? "internal" : "external", name };
  },
  usual: class2,
  mate: (name) => name[0] + (name.endsWith("A") ? "B" : "A"),
  write: (fit) => `-${fit.name}`,
  accepted: "screw 1A, 2A, 3A; nut 1B, 2B, 3B",
};

/** What one Unified series differs in from the next. */
interface Variant {
  readonly name: string;
  readonly words: readonly string[];
  readonly sizes: readonly Size[];
  readonly engagement: UnifiedRules["engagement"];
  /** Any size and pitch is taken. */
  readonly special?: true;
}

const standardLength = (D: number): number => D;
const nineThreads = (_: number, P: number): number => 9 * P;
/** 4-, 6- and 8-UN are reckoned like the coarse series. */
const byThreads = (D: number, P: number): number => (P > 1 / 8.5 ? D : 9 * P);

const variants: readonly Variant[] = [
  { name: "UNC", words: ["unc"], sizes: coarseSizes, engagement: standardLength },
  { name: "UNF", words: ["unf"], sizes: fineSizes, engagement: standardLength },
  { name: "UNEF", words: ["unef"], sizes: extraFineSizes, engagement: nineThreads },
  { name: "UN", words: ["un"], sizes: constantSizes(), engagement: byThreads },
  { name: "UNS", words: ["uns"], sizes: [], engagement: nineThreads, special: true },
];

/** What the flat-root, round-root and large-radius families differ in. */
interface Family {
  readonly letter: "" | "R" | "J";
  readonly form: Form;
  readonly standard: string;
  readonly screwDrop: number;
  readonly leastRoot?: number;
  readonly nutDrop: number;
  readonly usual: Classes["usual"];
  readonly limitsNote?: string;
}

/** The series of one family: UNC, UNF ... or UNRC, UNRF ... */
function family({
  letter,
  form,
  standard,
  screwDrop,
  leastRoot,
  nutDrop,
  usual,
  limitsNote,
}: Family): readonly Series[] {
  const rename = (name: string) => `UN${letter}${name.slice(2)}`;
  const members: Series[] = variants.map((variant) => ({
    name: rename(variant.name),
    words: variant.words.map((word) => rename(word).toLowerCase()),
    standard,
    unit: "in",
    form,
    sizes: variant.sizes,
    numberSizes: true,
    perInch: true,
    read: (parts: Parts, series: Series) => readUnified(parts, series, variant, members),
    list: (size, tpi) => `${size.name}-${tpi} ${rename(variant.name)}`,
    classes: { ...classes, usual },
    ...(limitsNote !== undefined && { limitsNote }),
    loosest: "1A",
    limits: unifiedLimits({
      engagement: variant.engagement,
      screwDrop,
      ...(leastRoot !== undefined && { leastRoot }),
      nutDrop,
      nutTolerance,
    }),
  }));
  return members;
}

function readUnified(parts: Parts, series: Series, variant: Variant, members: readonly Series[]): Asked {
  const { name, major, tpi, rest } = readInchSize(parts, series);
  const tabled = findSize(series.sizes, major);
  const threads = tpi ?? (variant.name === "UN" ? undefined : tabled?.pitches[0]);
  if (threads === undefined) {
    throw unreadable(
      parts.text,
      `${name} ${series.name} needs its threads per inch, such as ${name}-20 ${series.name}`,
    );
  }
  const home = members.find((member) => findSize(member.sizes, major)?.pitches.includes(threads));
  // A pitch of the coarse, fine or extra-fine series is designated by that series, whoever calls it UN or UNS.
  const generic = variant.name === "UN" || variant.special === true;
  const actual = generic ? (home ?? members.at(-1)!) : series;
  if (!generic && !tabled?.pitches.includes(threads)) {
    const usual = tabled
      ? `${name} ${series.name} has ${tabled.pitches.join(" or ")} threads per inch, not ${threads}`
      : `${series.name} has no size ${name}`;
    const other = `${name}-${threads} ${(home ?? members.at(-1)!).name}`;
    throw unreadable(parts.text, `${usual}; perhaps ${other} is meant`);
  }
  return {
    series: actual,
    name,
    major,
    pitch: 1 / threads,
    starts: 1,
    rest,
    written: `${name}-${threads} ${actual.name}`,
  };
}

export const unified: readonly Series[] = family({
  letter: "",
  form: unifiedForm,
  standard: "ASME B1.1",
  screwDrop: 1.08253175,
  nutDrop: 1.08253175,
  usual: class2,
});

const H = Math.sqrt(3) / 2;

/**
 * Rounded root at maximum material: two arcs of the least radius 0.108 P (H/8) leave the flanks H/4 from the sharp root,
 * as far in as the nut's crest reaches, and run into a flat of P/16 that lies 11H/16 below the crest. A tool that is one
 * arc of H/8 cuts H/16 deeper, which the standard permits. Source: ASME B1.1, design profile of the external UNR thread.
 */

export const unifiedRounded: readonly Series[] = family({
  letter: "R",
  form: {
    ...withoutRootFlat(unifiedForm),
    name: "Unified, rounded root",
    depth: { external: times((11 / 16) * H), internal: unifiedForm.depth.internal },
    rootRadius: times(H / 8),
    rootFlat: times(1 / 16),
  },
  standard: "ASME B1.1",
  screwDrop: 1.19078493,
  nutDrop: 1.08253175,
  usual: class2,
});

function withoutRootFlat({ rootFlat: _, ...form }: Form): Form {
  return form;
}

/** Root radius of 5H/24 at most, and a nut that is bored wider to clear it. */
export const unifiedJ: readonly Series[] = family({
  letter: "J",
  form: {
    ...withoutRootFlat(unifiedForm),
    name: "Unified, large root radius",
    dedendum: times((3 / 16) * H),
    depth: { external: times((2 / 3) * H), internal: times((9 / 16) * H) },
    rootRadius: times(largeRoot.most),
  },
  standard: "ASME B1.15",
  screwDrop: (4 / 3) * H,
  leastRoot: largeRoot.least,
  nutDrop: (9 / 8) * H,
  usual: (member) => (member === "internal" ? "3B" : "3A"),
  limitsNote: "class limits of UNJ are from memory of ASME B1.15: check them before relying on them",
});
