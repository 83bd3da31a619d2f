/** From what a designation asks for to the thread with all its figures. */
import { NothingFound } from "./failures.ts";
import { Misread, unreadable } from "./grammar.ts";
import { offTable } from "./offtable.ts";
import { type Asked, basicByForm, type Classes, type Fit } from "./series.ts";
import type { Limits, Member, Thread } from "./thread.ts";

const noLimits: Limits = { major: {}, pitch: {}, minor: {} };

/**
 * The thread that is asked for.
 *
 * @param text the designation, for messages
 * @param starts as written in words, else those of the pitch and lead
 * @throws Unreadable when the class cannot be read or the numbers leave no thread
 */
export function build(
  text: string,
  asked: Asked,
  starts: number,
  nut: boolean,
  hand: Thread["hand"],
): Thread {
  const { series, major, pitch, name } = asked;
  const form = asked.form ?? series.form;
  const stated = readClass(text, asked, nut);
  const member: Member = stated?.member ?? (nut ? "internal" : (series.member ?? "external"));
  const fit: Fit = stated ?? { member, name: series.classes.usual(member, major) };
  const fits = bothFits(asked, fit, stated !== undefined);
  const { pitchDia, minor } = series.basic ? series.basic(major, pitch) : basicByForm(form, major, pitch);
  if (!(minor.external > 0 && minor.internal > 0)) {
    throw unreadable(
      text,
      `pitch ${pitch} ${series.unit} leaves no core in a diameter of ${major} ${series.unit}`,
      { read: asked.written, at: "" },
    );
  }
  if (asked.starts > 1 && asked.starts !== starts) {
    throw unreadable(text, `${asked.written} has ${asked.starts} starts, not ${starts}`, {
      read: asked.written,
      at: `${starts} starts`,
    });
  }
  const suffix = stated || nut ? series.classes.write(fit) : "";
  const inWords = asked.starts === starts ? "" : ` ${starts} starts`;
  const thread: Writable<Thread> = {
    designation: `${asked.written}${suffix}${inWords}${hand === "left" ? " LH" : ""}`,
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
    pitchDia,
    minor,
    depth: { external: form.depth.external(pitch), internal: form.depth.internal(pitch) },
    form,
    limits: (of = member) => {
      if (!series.limits) {
        const why = series.noLimits === undefined ? "" : `: ${series.noLimits}`;
        throw new NothingFound(`no limits of size are held for ${series.name} threads${why}`);
      }
      // A series that only nuts have says nothing of screws.
      if ((series.member ?? of) !== of) return noLimits;
      return series.limits({ name, major, pitch, pitchDia, minor, member: of, fit: fits[of] });
    },
  };
  if (!stated && fit.name !== "") thread.classTaken = fit.name;
  addRootAndCrest(thread);
  if (series.gauge) thread.gauge = series.gauge(name, major, pitch, { pitchDia, minor });
  addDoubts(thread, asked);
  return thread;
}

/** A class of fit that the series does not have. */
export class Misclassed extends Misread {}

function readClass(text: string, { series, written, rest }: Asked, nut: boolean): Fit | undefined {
  const left = rest.replace(/^[\s,-]+/, "").trim();
  if (left === "") return undefined;
  const fit = series.classes.read(left, nut) ?? series.classes.read(bareClass(left), nut);
  if (fit) return fit;
  const why = left.includes("/")
    ? `"${left}" is a fit: write the class of the screw or of the nut alone`
    : /^x/i.test(left)
      ? `behind x a pitch is wanted as ${series.name} threads have it`
      : (notHeld(series.classes, left) ?? `classes of ${series.name}: ${series.classes.accepted}`);
  throw new Misclassed(text, why, { read: written, at: left });
}

function notHeld({ notHeld, accepted }: Classes, text: string): string | undefined {
  return notHeld?.names.test(bareClass(text)) ? `${notHeld.why}; classes held: ${accepted}` : undefined;
}

/** Class that is written as "(medium)", "medium fit", "class 2A" or "6 g". */
function bareClass(text: string): string {
  return text
    .replace(/[()]|\b(?:class|fit)\b/gi, "")
    .replace(/(?<=\d)\s+(?=[a-h]\b)/gi, "")
    .replace(/^[\s,-]+|\s+$/g, "");
}

function bothFits({ series, major }: Asked, fit: Fit, stated: boolean): Readonly<Record<Member, string>> {
  const other: Member = fit.member === "external" ? "internal" : "external";
  const otherFit =
    (stated ? series.classes.mate?.(fit.name) : undefined) ?? series.classes.usual(other, major);
  return fit.member === "external"
    ? { external: fit.name, internal: otherFit }
    : { external: otherFit, internal: fit.name };
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

function addRootAndCrest(thread: Writable<Thread>): void {
  const { form, pitch: P } = thread;
  if (form.rootRadius) thread.rootRadius = form.rootRadius(P);
  if (form.rootFlat) thread.rootFlat = form.rootFlat(P);
  if (form.crestFlat) thread.crestFlat = form.crestFlat(P);
  if (form.crestRadius) thread.crestRadius = form.crestRadius(P);
}

function addDoubts(thread: Writable<Thread>, asked: Asked): void {
  const { series, name } = asked;
  const { pitch, fits, member } = thread;
  const limitsNote =
    typeof series.limitsNote === "function"
      ? series.limitsNote({ name, pitch, fits, member })
      : series.limitsNote;
  const off = offTable(asked);
  const notes = off === undefined ? series.note : series.note === undefined ? off : `${off}; ${series.note}`;
  if (notes !== undefined) thread.note = notes;
  if (limitsNote !== undefined) thread.limitsNote = limitsNote;
}
