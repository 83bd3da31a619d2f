/**
 * How long the page's own thread was busy at a stretch, from the browser's trace: every task with how long it took and
 * how much of that was its own computing. Shorter ones than the 50 ms that a page can be told of are seen too.
 */
import type { CDPSession, Page } from "playwright-core";

export interface Busy {
  /** The longest task, ms. */
  readonly longest: number;
  /** The most that a task computed, ms: without the time in which other programs had the processor. */
  readonly own: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly ts: number;
  readonly args?: {
    readonly name?: string;
    readonly chrome_mojo_event_info?: { readonly mojo_interface_tag?: string };
  };
}

/** A task that begins with a message begins this long before it at most, us. */
const grain = 200;

const categories = ["disabled-by-default-devtools.timeline", "toplevel", "__metadata"];

export async function busyDuring(page: Page, act: () => Promise<unknown>): Promise<Busy> {
  const session = await page.context().newCDPSession(page);
  await session.send("Tracing.start", {
    transferMode: "ReportEvents",
    traceConfig: { recordMode: "recordAsMuchAsPossible", includedCategories: categories },
  });
  await act();
  const events = await ended(session);
  await session.detach();
  const pages = new Set(
    events
      .filter(({ name, args }) => name === "thread_name" && args?.name === "CrRendererMain")
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  // What the driver of the browser asks of the page is no work of the page.
  const asked = new Set<string>();
  for (const { name, ts, pid, tid, args } of events) {
    if (name !== "Receive mojo message") continue;
    if (args?.chrome_mojo_event_info?.mojo_interface_tag !== "blink.mojom.DevToolsSession") continue;
    for (let at = Math.floor(ts / grain) - 1; at <= ts / grain; at++) asked.add(`${pid} ${tid} ${at}`);
  }
  let [longest, own] = [0, 0];
  for (const { name, ph, ts, pid, tid, dur = 0, tdur = 0 } of events) {
    if (name !== "RunTask" || ph !== "X" || !pages.has(`${pid} ${tid}`)) continue;
    if (asked.has(`${pid} ${tid} ${Math.floor(ts / grain)}`)) continue;
    longest = Math.max(longest, dur / 1000);
    own = Math.max(own, tdur / 1000);
  }
  return { longest, own };
}

async function ended(session: CDPSession): Promise<TraceEvent[]> {
  const events: TraceEvent[] = [];
  session.on("Tracing.dataCollected", ({ value }) => {
    for (const event of value) events.push(event as unknown as TraceEvent);
  });
  const complete = new Promise<unknown>((done) => session.once("Tracing.tracingComplete", done));
  await session.send("Tracing.end");
  await complete;
  return events;
}
