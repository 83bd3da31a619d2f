/**
 * Jobs kept on this device, in IndexedDB: the text of the job file, what the shelf shows of it, and apart from that
 * where the person stood in it. A record that can't be read is set aside, never thrown away. Last values of large jobs
 * are kept besides, and thrown away whenever they are in the way.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { KnownValues } from "../job/job.ts";

export interface KeptJob {
  readonly id: string;
  /** The job file, as it would be saved. */
  readonly text: string;
  readonly title: string;
  readonly thread: string;
  /** A letter for each operation: s signed off, c with a caution or an error, b both, o open. */
  readonly route: string;
  /** Milliseconds since 1970. */
  readonly changed: number;
  /** Goes up by one each time it is written, so that one page notices the other's writing. */
  readonly revision: number;
  /** How many parts the text is kept in, apart, where it is very long; `text` is empty then. */
  readonly parts?: number;
}

/** Where the person stood. */
export interface Standing {
  readonly sheet: string;
  readonly cells: Readonly<Record<string, { readonly row: number; readonly column: number }>>;
}

interface Store extends DBSchema {
  jobs: { key: string; value: KeptJob };
  standing: { key: string; value: Standing };
  aside: { key: number; value: { readonly record: unknown; readonly reason: string; readonly when: number } };
  desk: { key: string; value: string };
  parts: { key: [id: string, part: number]; value: string };
  values: { key: string; value: KeptValues; indexes: { when: number } };
}

/** Last values of a job; they are shown only with the very revision that they are of. */
interface KeptValues {
  readonly revision: number;
  readonly when: number;
  readonly known: KnownValues;
}

/** What is kept of a job is not all there, or is none. */
export class Damaged extends Error {}

/** Jobs whose values are kept. */
const mostValues = 12;

export class Keep {
  private constructor(private readonly base: IDBPDatabase<Store>) {}

  /** @throws whatever the browser says where it lets nothing be kept */
  static async open(name = "halfangle"): Promise<Keep> {
    const base = await openDB<Store>(name, 3, {
      upgrade(made, from) {
        if (from < 1) {
          made.createObjectStore("jobs", { keyPath: "id" });
          made.createObjectStore("standing");
          made.createObjectStore("aside", { autoIncrement: true });
          made.createObjectStore("desk");
        }
        if (from < 3) made.createObjectStore("parts");
        if (from < 2) made.createObjectStore("values").createIndex("when", "when");
      },
      // A newer page in another tab wants to change the store: let go, the next write reports it.
      blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
    });
    const keep = new Keep(base);
    void whenAlone(name, () => keep.dropOrphans());
    return keep;
  }

  /** What is kept of jobs that were removed: a page that is open may still put their record back. */
  private async dropOrphans(): Promise<void> {
    const step = this.base.transaction(["jobs", "aside", "parts", "values"], "readwrite");
    const jobs = new Set(await step.objectStore("jobs").getAllKeys());
    for (const { record } of await step.objectStore("aside").getAll()) {
      const { id } = (record ?? {}) as Partial<KeptJob>;
      if (typeof id === "string") jobs.add(id);
    }
    const parts = step.objectStore("parts");
    for (const [id, part] of await parts.getAllKeys()) if (!jobs.has(id)) await parts.delete([id, part]);
    const values = step.objectStore("values");
    for (const id of await values.getAllKeys()) if (!jobs.has(id)) await values.delete(id);
    await step.done;
  }

  /** Newest first. Records that are none are left out. */
  async list(): Promise<KeptJob[]> {
    const found: unknown[] = await this.base.getAll("jobs");
    return found.filter(isKeptJob).sort((a, b) => b.changed - a.changed);
  }

  /** What is stored under `id`, unchecked: it may be from another version, or damaged. */
  async read(id: string): Promise<unknown> {
    return this.base.get("jobs", id);
  }

  /**
   * Writes the job, unless another page wrote it since `record.revision - 1`.
   * @returns false when it was overtaken, and then nothing was written
   */
  async write(record: KeptJob, texts: Texts = noTexts): Promise<boolean> {
    const step = this.base.transaction(["jobs", "parts"], "readwrite");
    const there: unknown = await step.objectStore("jobs").get(record.id);
    const overtaken = isKeptJob(there) && there.revision !== record.revision - 1;
    if (!overtaken) {
      await step.objectStore("jobs").put(record);
      // One after the other: each is a task of its own, and all of them are in or none.
      for (const [part, text] of texts) await step.objectStore("parts").put(text(), [record.id, part]);
      await step.objectStore("parts").delete(partsFrom(record.id, record.parts ?? 0));
    }
    await step.done;
    return !overtaken;
  }

  /**
   * The text of a job, put together outside the page's own memory where it is in parts.
   * @throws Damaged where a part of it is missing
   */
  async source({ id, text, parts, revision }: KeptJob): Promise<string | Blob> {
    if (parts === undefined) return text;
    // In one step, so that no part is of another revision.
    const step = this.base.transaction(["jobs", "parts"]);
    const there: unknown = await step.objectStore("jobs").get(id);
    if (isKeptJob(there) && there.revision !== revision) throw new Error("another tab has just written it");
    const all: Blob[] = [];
    for (let i = 0; i < parts; i++) {
      const found: unknown = await step.objectStore("parts").get([id, i]);
      if (typeof found !== "string") throw new Damaged("a part of its text is missing");
      all.push(new Blob([found]));
    }
    return new Blob(all);
  }

  /** Writes without looking first: the only way that still gets through while the page is being closed. */
  async writeAtOnce(record: KeptJob, texts: Texts = noTexts): Promise<void> {
    const step = this.base.transaction(["jobs", "parts"], "readwrite");
    const put = step.objectStore("jobs").put(record);
    for (const [part, text] of texts) void step.objectStore("parts").put(text(), [record.id, part]);
    void step.objectStore("parts").delete(partsFrom(record.id, record.parts ?? 0));
    step.commit();
    await put;
    await step.done;
  }

  /**
   * Its parts and values stay until no page is open that may put it back.
   * @returns the record, for that
   */
  async remove(id: string): Promise<KeptJob | undefined> {
    const step = this.base.transaction("jobs", "readwrite");
    const record = await step.store.get(id);
    await step.store.delete(id);
    await step.done;
    return record;
  }

  /**
   * Puts back a job that was removed, as it was; where another page has written it since, that stays.
   * @throws Damaged where a part of its text is missing
   */
  async restore(record: KeptJob): Promise<void> {
    const step = this.base.transaction(["jobs", "parts"], "readwrite");
    const parts = await step.objectStore("parts").count(partsFrom(record.id, 0));
    if (parts < (record.parts ?? 0)) throw new Damaged("a part of its text is missing");
    const there = await step.objectStore("jobs").getKey(record.id);
    if (there === undefined) await step.objectStore("jobs").put(record);
    await step.done;
  }

  /** Last values of the job as it was at `revision`, unchecked; undefined where there are none, and whatever goes wrong. */
  async values(id: string, revision: number): Promise<unknown> {
    const found: unknown = await this.base.get("values", id).catch(() => undefined);
    const { revision: of, known } = (found ?? {}) as Partial<KeptValues>;
    return of === revision ? known : undefined;
  }

  /** Keeps values, in place of those that were kept longest ago. */
  async keepValues(id: string, revision: number, known: KnownValues): Promise<void> {
    const step = this.base.transaction("values", "readwrite", { durability: "relaxed" });
    await step.store.put({ revision, when: Date.now(), known }, id);
    const all = await step.store.index("when").getAllKeys();
    for (const old of all.slice(0, -mostValues)) await step.store.delete(old);
    await step.done;
  }

  /** Makes room: they can all be reckoned again. */
  async dropValues(): Promise<void> {
    await this.base.clear("values");
  }

  async standing(id: string): Promise<Standing | undefined> {
    const found: unknown = await this.base.get("standing", id);
    return isStanding(found) ? found : undefined;
  }

  async stand(id: string, where: Standing): Promise<void> {
    await this.base.put("standing", where, id);
  }

  /** Moves a record that can't be read out of the way, with the reason. */
  async setAside(id: string, reason: string): Promise<void> {
    const step = this.base.transaction(["jobs", "aside"], "readwrite");
    const record: unknown = await step.objectStore("jobs").get(id);
    await step.objectStore("aside").add({ record, reason, when: Date.now() });
    await step.objectStore("jobs").delete(id);
    await step.done;
  }

  /** The job that was open last. */
  async lastOpen(): Promise<string | undefined> {
    return this.base.get("desk", "open");
  }

  async setLastOpen(id: string): Promise<void> {
    await this.base.put("desk", id, "open");
  }
}

/** Does the work if no other page has the store open. Others know from then on, until it is left, that this one has. */
async function whenAlone(store: string, work: () => Promise<void>): Promise<void> {
  // Where the browser does not tell of other pages there may be some.
  if (!("locks" in navigator)) return;
  const { locks } = navigator;
  await locks.request(store, { ifAvailable: true }, (lock) => lock && work()).catch(() => undefined);
  await locks.request(store, { mode: "shared" }, () => new Promise(() => {})).catch(() => undefined);
}

/** Parts of a text that have changed, by their number. */
export type Texts = Iterable<readonly [part: number, text: () => string]>;

const noTexts: Texts = [];

function partsFrom(id: string, first: number): IDBKeyRange {
  return IDBKeyRange.bound([id, first], [id, Number.POSITIVE_INFINITY]);
}

export function isKeptJob(found: unknown): found is KeptJob {
  if (typeof found !== "object" || found === null) return false;
  const { id, text, title, thread, route, changed, revision, parts } = found as Record<string, unknown>;
  if (parts !== undefined && !(Number.isInteger(parts) && (parts as number) > 0)) return false;
  return (
    [id, text, title, thread, route].every((part) => typeof part === "string") &&
    [changed, revision].every((part) => typeof part === "number")
  );
}

function isStanding(found: unknown): found is Standing {
  if (typeof found !== "object" || found === null) return false;
  const { sheet, cells } = found as Record<string, unknown>;
  if (typeof sheet !== "string" || typeof cells !== "object" || cells === null) return false;
  return Object.values(cells).every(
    (cell) =>
      Number.isInteger(cell?.row) && Number.isInteger(cell?.column) && cell.row >= 0 && cell.column >= 0,
  );
}
