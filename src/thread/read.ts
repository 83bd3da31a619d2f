/** From a designation to the thread it names. */
import { catalogue } from "./catalogue.ts";
import { mostStarts, unreadable } from "./grammar.ts";
import { type Asked, basicByForm, type Fit, type Series } from "./series.ts";
import { plainText } from "./text.ts";
import type { Limits, Member, Thread } from "./thread.ts";

const seriesByWord: ReadonlyMap<string, Series> = new Map(
  catalogue.flatMap((series) => series.words.map((word) => [word, series] as const)),
);

// Sheets ask for the same few designations over and over.
const known = new Map<string, Thread>();
const mostKnown = 4096;

/**
 * The thread that a designation names, as the standards write it; case, spaces, x or ×, comma or point and inch marks
 * are forgiven.
 *
 * @param designation such as "M10x1.5-6g", "1/4-20 UNC", "1/2 BSW", "2 BA nut", or a note of THREAD.CUSTOM
 * @throws Unreadable saying what was read and where reading stopped
 */
export function readThread(designation: string): Thread {
  const before = known.get(designation);
  if (before) return before;
  const thread = read(designation);
  if (known.size >= mostKnown) known.clear();
  known.set(designation, thread);
  return thread;
}

const wordPattern = /[a-z]+(?:[\s-]+(?:acme|butt))?/gi;

function read(designation: string): Thread {
  let text = plainText(designation);
  if (text === "") throw unreadable(designation, "it is empty");
  let hand: Thread["hand"] = "right";
  let nut = false;
  let starts: number | undefined;
  // Most designations have none of these words.
  if (sharedWords.test(text)) {
    text = text.replace(
      /[\s-]*(?<![a-z])(?:(LH|left[\s-]?hand(?:ed)?)|RH|right[\s-]?hand(?:ed)?)\b/gi,
      (_, left) => {
        if (left !== undefined) hand = "left";
        return "";
      },
    );
    text = text.replace(/[\s-]*\bnut\b/gi, () => {
      nut = true;
      return "";
    });
    if (!/^custom/i.test(text)) {
      text = text.replace(/[\s,(-]*\b(\d+)[\s-]?starts?\b\)?/gi, (_, count) => {
        starts = Number(count);
        return "";
      });
    }
  }
  if (starts !== undefined && (starts < 1 || starts > mostStarts)) {
    throw unreadable(designation, `starts must be from 1 to ${mostStarts}, got ${starts}`);
  }
  const found = findSeries(text);
  if (!found) {
    const bare = /^[\d\s./x*-]+$/i.test(text);
    throw unreadable(
      designation,
      bare ? "it does not say which series (M, UNC, UNF, BSW, BA ...)" : "no thread series in it is known",
    );
  }
  const asked = found.series.read(
    { text: designation, before: found.before, after: found.after, nut, starts },
    found.series,
  );
  return build(designation, asked, starts ?? asked.starts, nut, hand);
}

const sharedWords = /[lr]h|hand|nut|start/i;

function findSeries(text: string): { series: Series; before: string; after: string } | undefined {
  for (const match of text.matchAll(wordPattern)) {
    const whole = match[0].toLowerCase().replace(/[\s-]/g, "");
    const first = /^[a-z]+/i.exec(match[0])![0];
    const series = seriesByWord.get(whole);
    if (series) return cut(text, match.index, match[0].length, series);
    const firstSeries = seriesByWord.get(first.toLowerCase());
    if (firstSeries) return cut(text, match.index, first.length, firstSeries);
  }
  return undefined;
}

function cut(text: string, at: number, length: number, series: Series) {
  const before = text.slice(0, at).replace(/[\s-]+$/, "");
  const after = text.slice(at + length).replace(/^[\s-]+/, "");
  return { series, before, after };
}

function build(text: string, asked: Asked, starts: number, nut: boolean, hand: Thread["hand"]): Thread {
  const { series, major, pitch } = asked;
  const form = asked.form ?? series.form;
  const rest = asked.rest.replace(/^[\s,-]+/, "").trim();
  const given = rest === "" ? undefined : series.classes.read(rest, nut);
  if (rest !== "" && !given) {
    if (rest.includes("/"))
      throw unreadable(text, `"${rest}" is a fit: write the class of the screw or of the nut alone`);
    throw unreadable(
      text,
      `read ${asked.written}, stopped at "${rest}"; classes of ${series.name}: ${series.classes.accepted}`,
    );
  }
  const member: Member = given?.member ?? (nut ? "internal" : (series.member ?? "external"));
  const fit: Fit = given ?? { member, name: series.classes.usual(member, major) };
  const basic = (series.basic ?? ((D, P) => basicByForm(form, D, P)))(major, pitch, asked.name);
  if (!(basic.minor.external > 0 && basic.minor.internal > 0)) {
    throw unreadable(
      text,
      `pitch ${pitch} ${series.unit} leaves no core in a diameter of ${major} ${series.unit}`,
    );
  }
  const other: Member = member === "external" ? "internal" : "external";
  const otherFit = (given && series.classes.mate?.(fit.name)) ?? series.classes.usual(other, major);
  const fits =
    member === "external"
      ? { external: fit.name, internal: otherFit }
      : { external: otherFit, internal: fit.name };
  const limitsOf = (of: Member): Limits => {
    // A series that only nuts have says nothing of screws.
    if (!series.limits || (series.member ?? of) !== of) return noLimits;
    return series.limits({ name: asked.name, major, pitch, ...basic, member: of, fit: fits[of] });
  };
  const limitsNote = typeof series.limitsNote === "function" ? series.limitsNote(pitch) : series.limitsNote;
  if (asked.starts > 1 && asked.starts !== starts) {
    throw unreadable(text, `${asked.written} has ${asked.starts} starts, not ${starts}`);
  }
  const suffix = `${given || nut ? series.classes.write(fit) : ""}${asked.starts === starts ? "" : ` ${starts} starts`}`;
  return {
    designation: `${asked.written}${suffix}${hand === "left" ? " LH" : ""}`,
    series: series.name,
    standard: series.standard,
    unit: series.unit,
    member,
    fits,
    hand,
    starts,
    pitch,
    loadFlank: form.loadFlank,
    clearanceFlank: form.clearanceFlank,
    taper: series.taper ?? 0,
    major,
    ...basic,
    depth: { external: form.depth.external(pitch), internal: form.depth.internal(pitch) },
    ...(form.rootRadius && { rootRadius: form.rootRadius(pitch) }),
    ...(form.rootFlat && { rootFlat: form.rootFlat(pitch) }),
    ...(form.crestFlat && { crestFlat: form.crestFlat(pitch) }),
    ...(form.crestRadius && { crestRadius: form.crestRadius(pitch) }),
    form,
    limits: (of = member) => limitsOf(of),
    ...(series.note !== undefined && { note: series.note }),
    ...(limitsNote !== undefined && { limitsNote }),
  };
}

const noLimits: Limits = { major: {}, pitch: {}, minor: {} };
