/** From a designation to the thread it names. */
import { build } from "./build.ts";
import { catalogue } from "./catalogue.ts";
import { mostStarts, unreadable } from "./grammar.ts";
import type { Series } from "./series.ts";
import { plainText } from "./text.ts";
import type { Thread } from "./thread.ts";

const seriesByWord: ReadonlyMap<string, Series> = new Map(
  catalogue.flatMap((series) => series.words.map((word) => [word, series] as const)),
);

// Sheets ask for the same few designations over and over.
const known = new Map<string, Thread>();
const mostKnown = 2048;

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
