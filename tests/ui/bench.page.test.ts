/** The bench view on the built page: by keys alone, by a gloved finger alone, and what a reading changes. */
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openPage, touchContext, useBrowser } from "./page.ts";

useBrowser();

/** Steps before the first measuring one: the scratch pass and twelve slide passes. */
const toMeasuring = 13;

async function atBench(page: Page): Promise<Locator> {
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  const bench = page.getByRole("dialog", { name: "Bench" });
  await bench.getByRole("heading", { name: "Scratch pass" }).waitFor();
  return bench;
}

async function press(page: Page, key: string, times: number): Promise<void> {
  for (let time = 0; time < times; time++) await page.keyboard.press(key);
}

/** Types a reading where the field stands open. */
async function read(page: Page, bench: Locator, text: string): Promise<void> {
  await bench.getByRole("textbox", { name: /^Reading/ }).fill(text);
  await page.keyboard.press("Enter");
}

test("at the bench any key goes on, arrows go back, and the place outlives the page", async () => {
  const page = await openPage(await newContext());
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  const bench = page.getByRole("dialog", { name: "Bench" });
  await bench.getByRole("heading", { name: "Scratch pass" }).waitFor();
  expect(await faults(page)).toEqual([]);
  for (const key of ["g", " ", "ArrowRight", "ArrowLeft", "Enter"]) await page.keyboard.press(key);
  await bench.getByRole("heading", { name: "Pass 3 of 12" }).waitFor();
  await bench.getByRole("img", { name: "Dial: from 23 on by 7 to 30" }).waitFor();
  await page.reload();
  await bench.getByRole("heading", { name: "Pass 3 of 12" }).waitFor();
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
  await page.reload();
  await page.getByRole("grid").waitFor();
  expect(await bench.isVisible()).toBe(false);
});

test("the keys of a number never go on: they open the reading with what was typed", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  const field = bench.getByRole("textbox", { name: /^Reading/ });
  await press(page, "PageDown", 3);
  await bench.getByRole("heading", { name: "Pass 3 of 12" }).waitFor();
  await page.keyboard.type("13.2");
  expect(await field.inputValue()).toBe("13.2");
  await bench.getByRole("heading", { name: "Pass 3 of 12" }).waitFor();
  await bench.getByRole("button", { name: "Drop" }).click();
  for (const key of [".", ",", "-"]) {
    await page.keyboard.press(key);
    expect(await field.inputValue()).toBe(key);
    await bench.getByRole("heading", { name: "Pass 3 of 12" }).waitFor();
    await page.keyboard.press("Escape");
  }
  // On a spring pass the first figure is no step either, and a comma is a point.
  await press(page, "PageDown", 13);
  await bench.getByRole("heading", { name: /^Spring pass/ }).waitFor();
  await page.keyboard.type("12,965");
  await page.keyboard.press("Enter");
  await bench.getByText("12.9650 mm is not in its limits yet").waitFor();
  await bench.getByRole("row", { name: "spring pass 12.9650 mm" }).waitFor();
  expect(await bench.getByRole("row").count()).toBe(1);
});

test("on a measuring step a number goes into its field, and M only brings the hand there", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  const field = bench.getByRole("textbox", { name: /^Reading/ });
  await press(page, "PageDown", toMeasuring);
  await bench.getByRole("heading", { name: "Measuring 1 of 2" }).waitFor();
  await page.keyboard.press("m");
  await page.keyboard.press("m");
  expect(await field.inputValue()).toBe("");
  await bench.getByRole("button", { name: "Keep" }).focus();
  await page.keyboard.type("12.69 mm");
  expect(await field.inputValue()).toBe("12.69 mm");
  await bench.getByRole("heading", { name: "Measuring 1 of 2" }).waitFor();
});

test("a reading that what was wound contradicts is said to, with both depths, and no third beside them", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", 2);
  await bench.getByRole("heading", { name: "Pass 2 of 12" }).waitFor();
  // 23 divisions of 0.02 cos 26.5 are 0.412 of the 1.329 that 72 of them and 2 straight in make.
  await bench.getByText("depth of the plan").waitFor();
  await page.keyboard.type("14.5");
  await page.keyboard.press("Enter");
  await bench.getByText("14.5000 mm is not in its limits yet").waitFor();
  await bench.getByText("too big: go on").waitFor();
  expect(await bench.getByText("measure again before you go on").count()).toBe(0);
  // (13.2 - 12.692) / 2
  await page.keyboard.type("13.2");
  await page.keyboard.press("Enter");
  await bench
    .getByText(
      "What was wound so far should have left 0.917 mm, this reading leaves 0.254 mm: measure again before you go on.",
    )
    .waitFor();
  // It goes on from the reading all the same: 0.214 less what is kept is 11 divisions of 0.0179.
  await bench.getByText("11 divisions in all, then measure").waitFor();
  expect(await bench.getByText("0.917 left").count()).toBe(0);
  expect(await bench.getByText("too big: go on").count()).toBe(0);
  await bench.getByText("Left, by the reading").waitFor();
  expect(await faults(page)).toEqual([]);
  await page.keyboard.press("PageDown");
  await bench
    .getByText("The last reading does not go with what was wound: measure again before you go on.")
    .waitFor();
});

test("a doubtful reading is taken out of the log at the bench, and the one before it holds again", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", 2);
  await page.keyboard.type("14.5");
  await page.keyboard.press("Enter");
  await bench.getByRole("row", { name: "pass 2 14.5000 mm" }).waitFor();
  await page.keyboard.type("13.2");
  await page.keyboard.press("Enter");
  await bench.getByText("measure again before you go on").waitFor();
  await bench.getByRole("button", { name: "Take out 13.2000 mm after pass 2" }).click();
  await bench.getByText("14.5000 mm is not in its limits yet").waitFor();
  expect(await bench.getByText("measure again before you go on").count()).toBe(0);
  // It asks again for what it asked for before.
  await bench.getByText("Left, by the reading").waitFor();
  expect(await bench.getByRole("row").count()).toBe(1);
  expect(await faults(page)).toEqual([]);
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await bench.waitFor();
  await page.keyboard.press("m");
  await bench.getByRole("row", { name: "pass 2 13.2000 mm" }).waitFor();
});

test("a reading typed at the bench stands in the job and can be undone", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await page.keyboard.press("m");
  await page.keyboard.type("12.7");
  await page.keyboard.press("Enter");
  await bench.getByRole("row", { name: "scratch pass 12.7000 mm" }).waitFor();
  await bench.getByRole("button", { name: "Done in its limits leave the bench" }).waitFor();
  // A scratch has cut nothing yet.
  await bench.getByText("measure again before you go on").waitFor();
  expect(await faults(page)).toEqual([]);
  await bench.getByRole("button", { name: "Drop" }).click();
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await atBench(page);
  await page.keyboard.press("m");
  await bench.getByText("no reading yet").first().waitFor();
});

test.each([
  [1180, 820],
  [390, 844],
])(
  "on a tablet and a phone of %i by %i the pads are large and nothing lies over another part",
  async (width, height) => {
    const page = await openPage(await touchContext(width, height));
    await page.getByRole("button", { name: "More" }).click();
    await page.getByRole("button", { name: "Bench", exact: true }).click();
    const bench = page.getByRole("dialog", { name: "Bench" });
    const next = bench.getByRole("button", { name: /^Next/ });
    // A second blow on a pad that comes at once is not taken for a step.
    const heading = bench.getByRole("heading");
    await expect
      .poll(
        async () => {
          const before = await heading.textContent();
          if (!before?.includes("Pass 4")) await next.tap();
          return before;
        },
        { timeout: 10_000 },
      )
      .toContain("Pass 4");
    const boxes = await Promise.all(
      [
        next,
        bench.getByRole("button", { name: /^Back/ }),
        bench.locator(".main"),
        bench.locator(".facts"),
        bench.locator(".top"),
      ].map((part) => part.boundingBox()),
    );
    for (const box of boxes) {
      expect(box!.x).toBeGreaterThanOrEqual(0);
      expect(box!.x + box!.width).toBeLessThanOrEqual(width + 1);
    }
    for (const pad of boxes.slice(0, 2)) {
      expect(pad!.width).toBeGreaterThan(96);
      expect(pad!.height).toBeGreaterThan(96);
    }
    const [, , main, facts, top] = boxes;
    expect(top!.y + top!.height).toBeLessThanOrEqual(main!.y + 1);
    expect(main!.y + main!.height).toBeLessThanOrEqual(facts!.y + 1);
    const cut = await bench
      .locator(".main")
      .evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
    expect(cut).toBeLessThanOrEqual(0);
  },
);

test("a measuring step shows the limits, and the last one is not done before a reading is in them", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", toMeasuring);
  const limits = ["Largest 12.7580 mm", "Aim at 12.6920 mm", "Smallest 12.6260 mm", "Wires 1.1000 mm"];
  const shown = async () =>
    (await bench.locator(".verdict div").allInnerTexts()).map((line) => line.replace(/\s+/g, " "));
  await bench.getByRole("heading", { name: "Measuring 1 of 2" }).waitFor();
  expect(await shown()).toEqual(expect.arrayContaining(limits));
  await press(page, "PageDown", 10);
  await bench.getByRole("heading", { name: "Measuring 2 of 2" }).waitFor();
  expect(await shown()).toEqual(expect.arrayContaining(limits));
  await bench.getByText("Still to be proven: no reading has been taken.").waitFor();
  expect(await bench.getByRole("button", { name: /^Done/ }).count()).toBe(0);
  // What stands at the end takes the reading instead.
  await bench.getByRole("button", { name: "Measure not proven: measure" }).click();
  await page.keyboard.type("12.69");
  await page.keyboard.press("Enter");
  await bench.getByText("12.6900 mm is in its limits, 12.6260 mm to 12.7580 mm: stop cutting.").waitFor();
  await bench.getByText("in limits: stop").waitFor();
  await bench.getByRole("button", { name: "Done in its limits leave the bench" }).waitFor();
  expect(await faults(page)).toEqual([]);
  await bench.getByRole("button", { name: "Done in its limits leave the bench" }).click();
  await bench.waitFor({ state: "hidden" });
});

test("the bench starts again at pass 1 when that is said twice, and undo brings the reading back", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", 20);
  await bench.getByRole("heading", { name: "Measuring 2 of 2" }).waitFor();
  await read(page, bench, "12.69");
  await bench.getByRole("button", { name: /^Done/ }).waitFor();
  const again = bench.getByRole("button", { name: "Start again at pass 1" });
  await again.click();
  expect(await faults(page)).toEqual([]);
  // Keys do not go on while it is asked, and Escape leaves all as it is.
  await page.keyboard.press("PageDown");
  await page.keyboard.press("Escape");
  await bench.getByRole("heading", { name: "Measuring 2 of 2" }).waitFor();
  await bench.getByRole("button", { name: /^Done/ }).waitFor();
  await again.click();
  await bench.getByRole("button", { name: "Yes, start again" }).click();
  await bench.getByRole("heading", { name: "Scratch pass" }).waitFor();
  expect(await again.count()).toBe(0);
  await press(page, "PageDown", 30);
  await bench.getByText("Still to be proven: no reading has been taken.").waitFor();
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await bench.getByRole("button", { name: /^Done/ }).waitFor();
});

test("after a reading the next steps are those that it asks for, and undo brings the planned ones back", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", toMeasuring);
  await bench.getByRole("img", { name: "Step 14 of 19" }).waitFor();
  // (12.95 - 12.692) / 2 = 0.129 less 0.04 is 4.97 divisions of 0.02 cos 26.5: one pass of 4.
  await read(page, bench, "12.95");
  await bench
    .getByText(
      "Next: 1 pass on the top slide, 4 divisions in all, then measure. The rest is kept for the cross slide.",
    )
    .waitFor();
  await press(page, "PageDown", 1);
  // Twelve passes ended at 1 turn + 22 of 50.
  await bench.getByRole("img", { name: "Dial: from 22 on by 4 to 26" }).waitFor();
  await press(page, "PageDown", 1);
  // 0.064 is three divisions of 0.02.
  await read(page, bench, "12.82");
  await bench
    .getByText("Next: 3 divisions straight in on the cross slide, 2 spring passes, then measure.")
    .waitFor();
  await press(page, "PageDown", 20);
  await bench.getByRole("heading", { name: "Measuring 3 of 3" }).waitFor();
  // It is still the reading before the cuts, so that nothing is done.
  await bench.getByText("12.8200 mm is not in its limits yet").waitFor();
  await page.reload();
  await bench.getByRole("heading", { name: "Measuring 3 of 3" }).waitFor();
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
});

test("a reading that is taken back asks for nothing any more", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", toMeasuring);
  await read(page, bench, "12.95");
  await bench.getByRole("img", { name: "Step 14 of 16" }).waitFor();
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await bench.getByRole("img", { name: "Step 14 of 19" }).waitFor();
  await bench.getByText("no reading has been taken").waitFor();
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
  await page.getByRole("button", { name: "Redo", exact: true }).click();
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await bench.getByRole("img", { name: "Step 14 of 16" }).waitFor();
});

test("what is no reading is not kept, and the field says why", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", toMeasuring);
  await read(page, bench, "12..7");
  await bench.getByRole("alert").filter({ hasText: '"12..7" is no reading' }).waitFor();
  expect(await bench.getByRole("textbox").inputValue()).toBe("12..7");
  expect(await bench.getByRole("textbox").evaluate((field) => field.matches(":focus"))).toBe(true);
  expect(await bench.getByRole("row").count()).toBe(0);
});

test("a reading for another thread is not taken for one of this, and the changed plan is said", async () => {
  const page = await openPage(await newContext());
  const bench = await atBench(page);
  await press(page, "PageDown", toMeasuring);
  await read(page, bench, "12.69");
  await bench.getByRole("button", { name: "Done in its limits leave the bench" }).waitFor();
  await bench.getByRole("button", { name: "Leave", exact: true }).click();
  await page.getByRole("gridcell", { name: "1/2-12 BSW", exact: true }).click();
  await page.keyboard.type("7/16-14 BSW");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await bench
    .getByText("The plan is another one than when you last stood here, so it starts at step 1")
    .waitFor();
  await bench.getByRole("heading", { name: "Scratch pass" }).waitFor();
  // With nothing done there, the place in the first plan is kept for it.
  const leave = bench.getByRole("button", { name: "Leave", exact: true });
  await leave.click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await bench.getByRole("heading", { name: "Measuring" }).waitFor();
  await leave.click();
  await page.getByRole("button", { name: "Redo", exact: true }).click();
  await page.getByRole("button", { name: "Bench", exact: true }).click();
  await bench.getByRole("heading", { name: "Scratch pass" }).waitFor();
  await press(page, "PageDown", 30);
  await bench.getByText(/^Still to be proven: the reading 12.6900 mm was taken for 1\/2-12 BSW/).waitFor();
  expect(await bench.getByRole("button", { name: /^Done/ }).count()).toBe(0);
});

test("in gloves the screen is asked to stay lit, one blow is one step, and every target is large", async () => {
  const context = await touchContext(390, 844);
  await context.addInitScript(() => {
    const lock = { release: () => Promise.resolve() };
    const request = (kind: string) => {
      document.documentElement.setAttribute("data-lit", kind);
      return Promise.resolve(lock);
    };
    Object.defineProperty(navigator, "wakeLock", { value: { request } });
  });
  const page = await openPage(context);
  await page.getByRole("button", { name: "More" }).tap();
  await page.getByRole("button", { name: "gloves, lathe stopped" }).tap();
  await page.clock.install();
  await page.clock.pauseAt(new Date(Date.now() + 60_000));
  await page.getByRole("button", { name: "More" }).tap();
  await page.getByRole("button", { name: "Bench", exact: true }).tap();
  await page.locator("html[data-lit=screen]").waitFor({ state: "attached" });
  const bench = page.getByRole("dialog", { name: "Bench" });
  const next = bench.getByRole("button", { name: /^Next/ });
  await next.tap();
  await bench.getByRole("heading", { name: "Pass 1 of 12" }).waitFor();
  await next.tap();
  await next.tap();
  await page.clock.runFor(400);
  await next.tap();
  await bench.getByRole("heading", { name: "Pass 2 of 12" }).waitFor();
  expect(await bench.getByText("The screen may go dark").count()).toBe(0);
  await page.clock.runFor(400);
  await bench.getByRole("button", { name: "Measure", exact: true }).tap();
  for (const part of [...(await bench.getByRole("button").all()), bench.getByRole("textbox")]) {
    const box = await part.boundingBox();
    expect(box!.height).toBeGreaterThanOrEqual(52);
    expect(box!.width).toBeGreaterThanOrEqual(60);
    expect(box!.x + box!.width).toBeLessThanOrEqual(390);
  }
  await bench.getByRole("textbox").fill("12.8");
  await bench.getByRole("button", { name: "Keep" }).tap();
  await bench.getByText("12.8000 mm is not in its limits yet").waitFor();
  const lines = await bench.locator(".verdict div").all();
  // The limits are in sight without a finger on the page.
  const main = (await bench.locator(".main").boundingBox())!;
  for (const line of lines.slice(0, 4)) {
    const box = (await line.boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(main.y + main.height);
  }
});
