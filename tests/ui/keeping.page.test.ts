import { expect, test } from "vitest";
import { holdReading } from "./held-reading.ts";
import { address, newContext, openFile, openJob, openPage, ready, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

test("signing off an operation is kept over a reload, with the operation that was in hand", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("button", { name: "20 Passes" }).click();
  await page.getByRole("checkbox", { name: "Sign off 20 Passes" }).check();
  await page.getByText("1 of 2 signed off").waitFor();
  await page.reload();
  await ready(page);
  expect(await page.getByRole("checkbox", { name: "Sign off 20 Passes" }).isChecked()).toBe(true);
  expect(await page.getByRole("button", { name: "20 Passes" }).getAttribute("aria-current")).toBe("page");
});

test("a sign-off is kept when the page is left before the values of the last edit have come", async () => {
  const context = await newContext();
  await context.addInitScript(() => {
    window.Worker = class extends Worker {
      override postMessage(message: unknown) {
        if (!("held" in window)) super.postMessage(message);
      }
    };
  });
  const page = await openPage(context);
  await openJob(page, "sample.json", sampleText);
  await page.evaluate(() => Object.assign(window, { held: true }));
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.type("8");
  await page.keyboard.press("Enter");
  await page.getByRole("checkbox", { name: "Sign off 20 Passes" }).check();
  await page.reload();
  await ready(page);
  await page.getByRole("checkbox", { name: "Sign off 20 Passes", checked: true }).waitFor();
});

test("a browser without storage says that nothing is kept, and the page works all the same", async () => {
  const context = await newContext();
  await context.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("storage is switched off", "SecurityError");
    };
  });
  const page = await openPage(context);
  const notes = page.getByRole("region", { name: "Notes" });
  await notes.getByText("Nothing is being kept here: storage is switched off. Save to a file.").waitFor();
  await page.getByRole("checkbox").first().check();
  await page.getByText("not kept", { exact: true }).waitFor();
});

test("a full disk is told while it is full, and no longer once there is room again", async () => {
  const context = await newContext();
  await context.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given) {
      if (this.name === "jobs" && !("room" in window))
        throw new DOMException("the disk is full", "QuotaExceededError");
      return put.apply(this, given);
    };
  });
  const page = await openPage(context);
  const trouble = page.getByText("Nothing is being kept here: the disk is full. Save to a file.");
  await trouble.waitFor();
  await page.evaluate(() => Object.assign(window, { room: true }));
  await trouble.waitFor({ state: "detached" });
  await page.getByText(/^here, \d\d:\d\d$/).waitFor();
});

test("a damaged record is set aside with the reason, and the page opens with the template", async () => {
  const context = await newContext();
  const page = await openPage(context);
  await openJob(page, "sample.json", sampleText);
  await page.getByText(/^here, \d\d:\d\d$/).waitFor();
  await page.evaluate(async () => {
    const base = await new Promise<IDBDatabase>((done) => {
      const asked = indexedDB.open("halfangle");
      asked.onsuccess = () => done(asked.result);
    });
    const jobs = base.transaction("jobs", "readwrite").objectStore("jobs");
    const all = await new Promise<{ title: string; text: string }[]>((done) => {
      const asked = jobs.getAll();
      asked.onsuccess = () => done(asked.result);
    });
    const sample = all.find(({ title }) => title.startsWith("Sample"))!;
    const put = jobs.put({ ...sample, text: sample.text.slice(0, 40) });
    await new Promise((done) => {
      put.onsuccess = done;
    });
    base.close();
  });
  await page.reload();
  await ready(page);
  const alert = page.getByRole("alert");
  await alert
    .getByText(/"Sample <b>bolt<\/b>" can't be read: .+ It has been set aside on this device, unchanged\./)
    .waitFor();
  const aside = await page.evaluate(
    () =>
      new Promise<{ reason: string }[]>((done) => {
        const asked = indexedDB.open("halfangle");
        asked.onsuccess = () => {
          const all = asked.result.transaction("aside").objectStore("aside").getAll();
          all.onsuccess = () => done(all.result);
        };
      }),
  );
  expect(aside).toHaveLength(1);
});

test("a job that cannot be read this time stays on the shelf, and is there the next time", async () => {
  const context = await newContext();
  await context.addInitScript(() => {
    const get = IDBObjectStore.prototype.get;
    IDBObjectStore.prototype.get = function (...given) {
      if (this.name === "parts" && sessionStorage.getItem("broken"))
        throw new DOMException("the disk does not answer", "UnknownError");
      return get.apply(this, given);
    };
  });
  const page = await openPage(context);
  await openJob(page, "sample.json", sampleText);
  /** Keeps the text of the sample in a part, as that of a very large job is. @returns false while it is not kept */
  const inParts = () =>
    page.evaluate(async () => {
      const asked = indexedDB.open("halfangle");
      await new Promise((done) => asked.addEventListener("success", done));
      const step = asked.result.transaction(["jobs", "parts"], "readwrite");
      const jobs = step.objectStore("jobs");
      const all = jobs.getAll();
      let done = false;
      all.addEventListener("success", () => {
        const sample = all.result.find(({ title }) => title.startsWith("Sample"));
        if (!sample) return;
        done = true;
        step.objectStore("parts").put(sample.text, [sample.id, 0]);
        jobs.put({ ...sample, text: "", parts: 1 });
      });
      await new Promise((over) => step.addEventListener("complete", over));
      asked.result.close();
      return done;
    });
  await expect.poll(inParts).toBe(true);
  await page.evaluate(() => sessionStorage.setItem("broken", "yes"));
  await page.reload();
  await ready(page);
  await page
    .getByText(`"Sample <b>bolt</b>" can't be read: the disk does not answer.`, { exact: true })
    .waitFor();
  await page.evaluate(() => sessionStorage.removeItem("broken"));
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  const shelf = page.getByRole("dialog", { name: "Shelf" });
  await shelf.getByRole("button", { name: "Sample <b>bolt</b>" }).first().click();
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
});

test("what is being typed as another job takes its place belongs to the job it was typed in", async () => {
  const context = await newContext();
  const letGo = await holdReading(context);
  const page = await openPage(context);
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
  await openFile(page, "long.json", `${" ".repeat(200_000)}${sampleText.replace("Sample", "Long")}`);
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.type("kept all the same");
  await letGo(page);
  await page.waitForFunction(() => document.title.includes("Long"));
  const texts = () =>
    page.evaluate(async () => {
      const asked = indexedDB.open("halfangle");
      await new Promise((done) => asked.addEventListener("success", done));
      const all = asked.result.transaction("jobs").objectStore("jobs").getAll();
      await new Promise((done) => all.addEventListener("success", done));
      asked.result.close();
      const typed = (all.result as { text: string; title: string }[]).filter(({ text }) =>
        text.includes("kept all the same"),
      );
      return typed.map(({ title }) => title);
    });
  await expect.poll(texts).toEqual(["Sample <b>bolt</b>"]);
});

test("two tabs on one job warn each other, and the one that is overtaken writes nothing more", async () => {
  const context = await newContext();
  const first = await openPage(context);
  await openJob(first, "sample.json", sampleText);
  await first.getByText(/^here, \d\d:\d\d$/).waitFor();
  const second = await openPage(context);
  const warning = "This job is open in another tab too. Change it in one of them only.";
  await first.getByRole("alert").getByText(warning).waitFor();
  await second.getByRole("alert").getByText(warning).waitFor();

  await second.getByRole("checkbox", { name: "Sign off 20 Passes" }).check();
  await second.getByText("1 of 2 signed off").waitFor();
  await first.getByRole("button", { name: "Load what it wrote" }).click();
  await first.getByRole("checkbox", { name: "Sign off 20 Passes", checked: true }).waitFor();
});

test("deleting a kept job on the shelf can be undone", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByText("Sample <b>bolt</b>", { exact: true }).first().waitFor();
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  const shelf = page.getByRole("dialog", { name: "Shelf" });
  const rows = shelf.getByRole("table").getByRole("row");
  await rows.nth(2).waitFor();
  await shelf.getByRole("button", { name: /^Delete/ }).click();
  await rows.nth(2).waitFor({ state: "detached" });
  await shelf.getByRole("button", { name: "Undo delete" }).click();
  await rows.nth(2).waitFor();
});

test("the page opens without a network once it has been opened", async () => {
  const context = await newContext();
  const page = await openPage(context);
  await openJob(page, "sample.json", sampleText);
  await page.getByText(/^here, \d\d:\d\d$/).waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  await page.goto(address);
  await ready(page);
  await page.getByRole("button", { name: "20 Passes" }).click();
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await page
    .getByRole("button", { name: /^Start a copy/ })
    .first()
    .waitFor();
  expect(await page.evaluate(() => document.fonts.check("14px B612"))).toBe(true);
});
