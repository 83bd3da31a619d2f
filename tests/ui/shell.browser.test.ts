import { afterEach, expect, test } from "vitest";
import { Autosave, type Saved } from "../../src/ui/autosave.ts";
import { fileName } from "../../src/ui/files.ts";
import { Keep, type KeptJob } from "../../src/ui/keep.ts";
import { whenChanged } from "../../src/ui/saved-words.ts";
import { Settings } from "../../src/ui/settings.ts";

const stores: string[] = [];

function openKeep(): Promise<Keep> {
  const name = `test ${crypto.randomUUID()}`;
  stores.push(name);
  return Keep.open(name);
}

afterEach(() => {
  localStorage.clear();
  for (const name of stores.splice(0)) indexedDB.deleteDatabase(name);
});

const job: KeptJob = {
  id: "a",
  text: "{}",
  title: "Bolt",
  thread: "M10",
  route: "so",
  changed: 1,
  revision: 1,
};

test("a job written on an outdated state is refused, and what is kept stays", async () => {
  const keep = await openKeep();
  expect(await keep.write(job)).toBe(true);
  expect(await keep.write({ ...job, title: "Second", revision: 2 })).toBe(true);
  expect(await keep.write({ ...job, title: "From another tab", revision: 2 })).toBe(false);
  expect(await keep.list()).toMatchObject([{ title: "Second", revision: 2 }]);
});

test("a record set aside is out of the list and not lost", async () => {
  const keep = await openKeep();
  await keep.write(job);
  await keep.setAside("a", "cut short");
  expect(await keep.list()).toEqual([]);
  expect(await keep.read("a")).toBeUndefined();
});

test("a text in parts is never put together of two revisions", async () => {
  const keep = await openKeep();
  const large = { ...job, text: "", parts: 2 };
  await keep.write(large, [
    [0, () => "old"],
    [1, () => "old"],
  ]);
  await keep.write({ ...large, revision: 2 }, [[1, () => "new"]]);
  await expect(keep.source(large)).rejects.toThrow("another tab has just written it");
  expect(await new Response(await keep.source({ ...large, revision: 2 })).text()).toBe("oldnew");
});

test("the parts of a record set aside stay, those of a removed one go when the page is opened anew and alone", async () => {
  const keep = await openKeep();
  const large = { ...job, text: "", parts: 2 };
  const texts: [number, () => string][] = [
    [0, () => "first"],
    [1, () => "second"],
  ];
  for (const id of ["a", "b", "c"]) await keep.write({ ...large, id }, texts);
  await keep.setAside("a", "cut short");
  await keep.remove("b");
  const name = stores.at(-1)!;
  let again = await Keep.open(name);
  const textOf = async (id: string) => new Response(await again.source({ ...large, id })).text();
  expect(await textOf("b")).toBe("firstsecond");
  // As when those that had it open are gone.
  await navigator.locks.request(name, { steal: true }, () => undefined);
  again = await Keep.open(name);
  await expect.poll(() => textOf("b").catch((error) => error.message)).toContain("is missing");
  await expect(textOf("b")).rejects.toThrow("a part of its text is missing");
  expect(await textOf("a")).toBe("firstsecond");
  expect(await textOf("c")).toBe("firstsecond");
});

test("where the person stood is read back, and nonsense in its place is left alone", async () => {
  const keep = await openKeep();
  const standing = { sheet: "Thread", cells: { Thread: { row: 3, column: 1 } } };
  await keep.stand("a", standing);
  await keep.stand("b", { sheet: "Thread", cells: { Thread: { row: -1, column: 0.5 } } });
  expect(await keep.standing("a")).toEqual(standing);
  expect(await keep.standing("b")).toBeUndefined();
});

test("changes made while one is being written are written after it, the last one last", async () => {
  const keep = await openKeep();
  const told: Saved[] = [];
  let title = "one";
  const snapshot = () => ({ text: "{}", title, thread: "", route: "" });
  const autosave = new Autosave(
    keep,
    "a",
    0,
    snapshot,
    (saved) => told.push(saved),
    () => false,
  );
  autosave.touch();
  title = "two";
  autosave.touch();
  title = "three";
  autosave.touch();
  await autosave.flush();
  expect(await keep.list()).toMatchObject([{ title: "three" }]);
  expect(told.map(({ state }) => state)).toEqual(["kept", "kept"]);
  autosave.stop();
});

test("after another tab has written, nothing more is written here", async () => {
  const keep = await openKeep();
  await keep.write({ ...job, title: "theirs", revision: 5 });
  const told: Saved[] = [];
  const snapshot = () => ({ text: "{}", title: "mine", thread: "", route: "" });
  const autosave = new Autosave(
    keep,
    "a",
    1,
    snapshot,
    (saved) => told.push(saved),
    () => true,
  );
  autosave.touch();
  await autosave.flush();
  autosave.touch();
  await autosave.flush();
  expect(told).toEqual([{ state: "overtaken" }]);
  expect(await keep.list()).toMatchObject([{ title: "theirs" }]);
});

test("settings that make no sense are passed over", () => {
  localStorage.setItem("halfangle.settings", '{"ground":"green","hand":3,"large":true}');
  const root = document.createElement("html");
  const settings = new Settings(root);
  expect(root.dataset).toMatchObject({ theme: settings.ground, hand: "desk", type: "large" });
  settings.choose({ hand: "gloves" });
  expect(root.dataset.hand).toBe("gloves");
  settings.forgetHand();
  expect(root.dataset.hand).toBe("desk");
});

test("the shelf names days as people do", () => {
  const now = new Date(2026, 10, 25, 9, 30);
  const at = (...parts: [number, number, number, number, number]) =>
    whenChanged(new Date(...parts).getTime(), now);
  expect(at(2026, 10, 25, 0, 5)).toBe("today 00:05");
  expect(at(2026, 10, 24, 23, 59)).toBe("yesterday");
  expect(at(2026, 10, 2, 8, 0)).toBe("2 Nov");
  expect(at(2025, 11, 31, 8, 0)).toBe("31 Dec 2025");
});

test("a title becomes a file name that every system takes", () => {
  expect(fileName("Vice screw: 3/8-26, Ø 9.5")).toBe("vice-screw-3-8-26-ø-9-5.json");
  expect(fileName("../..")).toBe("job.json");
});
