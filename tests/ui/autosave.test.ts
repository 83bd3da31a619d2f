import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { TextPart } from "../../src/job/file-parts.ts";
import { Autosave, type Saved } from "../../src/ui/autosave.ts";
import type { Keep, KeptJob, Texts } from "../../src/ui/keep.ts";

/** A keep whose writing is done when the test says so, in the order in which it was asked for. */
class SlowKeep {
  job: KeptJob | undefined;
  parts: string[] = [];
  full = false;
  private waiting: (() => void)[] = [];

  write(record: KeptJob, texts: Texts): Promise<boolean> {
    return this.later(() => {
      if (this.job && this.job.revision !== record.revision - 1) return false;
      this.put(record, texts);
      return true;
    });
  }

  writeAtOnce(record: KeptJob, texts: Texts): Promise<void> {
    return this.later(() => this.put(record, texts));
  }

  async dropValues(): Promise<void> {}

  async done(): Promise<void> {
    while (this.waiting.length > 0) {
      for (const step of this.waiting.splice(0)) step();
      await settled();
    }
  }

  private put(record: KeptJob, texts: Texts) {
    if (this.full) throw new Error("the disk is full");
    this.job = record;
    for (const [part, text] of texts) this.parts[part] = text();
    this.parts.length = record.parts ?? 0;
  }

  private later<T>(step: () => T): Promise<T> {
    return new Promise((done, fail) => {
      this.waiting.push(() => {
        try {
          done(step());
        } catch (error) {
          fail(error);
        }
      });
    });
  }
}

/** Everything that only waits for promises has gone on. */
const settled = () => vi.advanceTimersByTimeAsync(0);

const part = (text: string): TextPart => ({ of: [text], text: () => text });

function started(ready?: () => Promise<void> | undefined) {
  const keep = new SlowKeep();
  const told: Saved[] = [];
  const now: { title: string; texts: TextPart[] | undefined } = { title: "one", texts: undefined };
  const snapshot = () => ({ text: "", title: now.title, thread: "", route: "", texts: now.texts });
  const report = (saved: Saved) => told.push(saved);
  const autosave = new Autosave(keep as unknown as Keep, "a", 0, snapshot, report, () => false, ready);
  return { keep, told, now, autosave };
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

test("an edit whose values are still waited for is written when the page goes away", async () => {
  const { keep, autosave } = started(() => new Promise(() => {}));
  autosave.touch();
  autosave.flushAtOnce();
  await keep.done();
  expect(keep.job).toMatchObject({ title: "one", revision: 1 });
});

test("what is being written when the page goes away is asked for once more, at once", async () => {
  const { keep, told, now, autosave } = started();
  const lost = vi.spyOn(keep, "write").mockReturnValue(new Promise(() => {}));
  autosave.touch();
  expect(lost).toHaveBeenCalledOnce();
  autosave.flushAtOnce();
  await keep.done();
  expect(keep.job).toMatchObject({ title: "one" });
  now.title = "two";
  autosave.touch();
  autosave.flushAtOnce();
  await keep.done();
  expect(keep.job).toMatchObject({ title: "two" });
  expect(told.at(-1)).toMatchObject({ state: "kept", revision: keep.job?.revision });
});

test("a page that only went into the background goes on writing, and is not taken for another tab", async () => {
  const { keep, told, now, autosave } = started();
  for (const title of ["one", "two", "three"]) {
    now.title = title;
    autosave.touch();
    autosave.flushAtOnce();
  }
  await keep.done();
  now.title = "four";
  autosave.touch();
  const flushed = autosave.flush();
  await settled();
  await keep.done();
  await flushed;
  expect(keep.job).toMatchObject({ title: "four" });
  expect(told.map(({ state }) => state)).not.toContain("overtaken");
});

test("a part that was written as the page went into the background and taken back since is written again", async () => {
  const { keep, now, autosave } = started();
  const [head, first, second] = ["head", "first", "second"].map(part) as [TextPart, TextPart, TextPart];
  const save = async (texts: TextPart[], leaving: boolean) => {
    now.texts = texts;
    autosave.touch();
    if (leaving) autosave.flushAtOnce();
    await keep.done();
    await vi.advanceTimersByTimeAsync(300);
    await keep.done();
    expect(keep.parts).toEqual(texts.map((one) => one.text()));
  };
  await save([head, first], false);
  await save([head, second], true);
  await save([head, first], false);
  // One that is under way is no less sure.
  now.texts = [head, second];
  autosave.touch();
  await save([head, first], true);
});

test("a disk that is full as the page goes into the background is told, and it is tried again", async () => {
  const { keep, told, now, autosave } = started();
  autosave.touch();
  await keep.done();
  keep.full = true;
  now.title = "two";
  // So soon after the last time it is not written yet.
  autosave.touch();
  autosave.flushAtOnce();
  await keep.done();
  expect(told.at(-1)).toMatchObject({ state: "failing", reason: "the disk is full" });
  keep.full = false;
  await vi.advanceTimersByTimeAsync(5000);
  await keep.done();
  expect(told.at(-1)).toMatchObject({ state: "kept", revision: 2 });
  expect(keep.job).toMatchObject({ title: "two", revision: 2 });
});

test("what is changed while everything is written out is written out too", async () => {
  const { keep, now, autosave } = started();
  autosave.touch();
  const flushed = autosave.flush();
  await settled();
  for (const title of ["two", "three"]) {
    now.title = title;
    autosave.touch();
    // Only as much as was asked for by now is written.
    const [step] = (keep as unknown as { waiting: (() => void)[] }).waiting.splice(0);
    step?.();
    await settled();
  }
  await keep.done();
  await flushed;
  autosave.stop();
  expect(keep.job).toMatchObject({ title: "three" });
});
