/** What comes out of the printer, read back from the PDF. */
import { readFileSync } from "node:fs";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openJob, openPage, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

interface Sheet {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  readonly words: string;
  /** Pieces of text that stand outside of the sheet. */
  readonly outside: readonly string[];
}

/** The pages that the browser would print now. */
async function printed(page: Page): Promise<Sheet[]> {
  const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  const document = await getDocument({ data, verbosity: 0 }).promise;
  const pages = Array.from({ length: document.numPages }, (_, index) => document.getPage(index + 1));
  return Promise.all(
    pages.map(async (waited) => {
      const one = await waited;
      const { width, height } = one.getViewport({ scale: 1 });
      const items = (await one.getTextContent()).items.filter(
        (item) => "str" in item && item.str.trim() !== "",
      );
      const pieces = items as { str: string; width: number; transform: number[] }[];
      const outside = pieces.filter(
        ({ transform: at, width: wide }) =>
          at[4]! < 0 || at[4]! + wide > width + 1 || at[5]! < 0 || at[5]! > height,
      );
      const mm = (points: number) => Math.round((points * 25.4) / 72);
      return {
        width: mm(width),
        height: mm(height),
        words: pieces.map(({ str }) => str).join(" "),
        outside: outside.map(({ str }) => str),
      };
    }),
  );
}

async function desk(): Promise<Page> {
  const context = await newContext();
  // The dialog of the browser itself would wait for somebody to answer it.
  await context.addInitScript(() => {
    globalThis.print = () => document.documentElement.setAttribute("data-printed", "yes");
  });
  return openPage(context);
}

/** What of the card stands outside of its frame, by part and words. */
function sticksOut(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const frame = document.querySelector("print-area")!.shadowRoot!.querySelector(".in")!;
    const { bottom, right } = frame.getBoundingClientRect();
    return [...frame.querySelectorAll("*")]
      .filter((part) => {
        const box = part.getBoundingClientRect();
        return box.bottom > bottom + 1 || box.right > right + 1;
      })
      .map((part) => `${part.localName} ${part.textContent}`);
  });
}

test("the shop card is one A5 page with what to set, wind and expect, and nothing of it is cut off", async () => {
  const page = await desk();
  await page.getByRole("button", { name: "Card", exact: true }).last().click();
  await page.getByRole("article", { name: "Shop card" }).waitFor();
  expect(await faults(page)).toEqual([]);
  await page.getByRole("button", { name: "Print the card" }).click();
  await page.locator("html[data-printed=yes]").waitFor();
  const sheets = await printed(page);
  expect(sheets).toHaveLength(1);
  expect(sheets[0]).toMatchObject({ width: 148, height: 210, outside: [] });
  for (const word of ["1/2-12 BSW", "26.50°", "170 rev/min", "1 + 22", "Done", "Not an inspection record"])
    expect(sheets[0]!.words).toContain(word);
  const cut = await page.evaluate(() => {
    const area = document.querySelector("print-area")!.shadowRoot!;
    return [...area.querySelectorAll(".in")].map(
      ({ scrollHeight, clientHeight }) => scrollHeight - clientHeight,
    );
  });
  expect(cut).toEqual([0]);
});

const fullJob = readFileSync("sheets/full-thread-job.json", "utf8");

test.each([
  { thread: "M20x2.5-6g", unit: "in", hand: "right", says: ["61.00°", "100/127", "0.79275 in"] },
  { thread: "Tr 24x10 P5-7e", unit: "mm", hand: "left", says: ["76.00°", "2 starts", "left hand"] },
  { thread: "2 BA", unit: "mm", hand: "right", says: ["47.5°"] },
])(
  "the card of $thread in $unit is one page with room for all of it",
  async ({ thread, unit, hand, says }) => {
    const page = await desk();
    const job = JSON.parse(fullJob);
    Object.assign(job.sheets[0].cells, { B2: thread, B3: unit, B5: hand });
    await openJob(page, "job.json", JSON.stringify(job));
    await page.getByRole("gridcell", { name: thread, exact: true }).waitFor();
    await page.getByRole("button", { name: "Card", exact: true }).last().click();
    await page.getByRole("article", { name: "Shop card" }).getByText(says[0]!).first().waitFor();
    const sheets = await printed(page);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]!.outside).toEqual([]);
    for (const words of [thread, ...says]) expect(sheets[0]!.words).toContain(words);
    await page.emulateMedia({ media: "print" });
    expect(await sticksOut(page)).toEqual([]);
  },
);

test.each([
  {
    template: "full-thread-job",
    cells: { thread: "1/2-13 UNC-2A" },
    // ASME B1.1: major 0.4985 to 0.4876, the middle in mm; half of 60 less a degree.
    says: ["12.5235 mm", "29.00°", "40/65", "0 + 13", "1 + 6"],
  },
  {
    template: "full-thread-job",
    cells: { thread: "Tr 24x5-7e", hand: "left" },
    says: ["76.00°", "handle left, wind in", "2 + 41"],
  },
  {
    template: "internal-thread",
    cells: { thread: "M16x2-6H" },
    // In a bore the cut is put on by winding back.
    says: ["Set-over from square", "handle left, wind back", "Back, div", "the dial runs down", "14.0514 mm"],
  },
  {
    template: "taper-pipe",
    cells: { thread: "3/4-14 NPT" },
    // ASME B1.20.1: L1 0.339 in; half of the taper over 6 in.
    says: ["0.33900 in", "0.18750 in", "Set-over from square"],
  },
])(
  "the card of $template for $cells.thread says what to set, each thing once, and is not cut off",
  async ({ template, cells, says }) => {
    const context = await newContext({ locale: "en-US" });
    const page = await openPage(context);
    const job = JSON.parse(readFileSync(`sheets/${template}.json`, "utf8"));
    for (const [name, text] of Object.entries(cells)) {
      const [sheet, cell] = job.names[name].split("!");
      job.sheets.find((one: { name: string }) => one.name === sheet).cells[cell] = text;
    }
    await openJob(page, "job.json", JSON.stringify(job));
    await page.getByRole("gridcell", { name: cells.thread, exact: true }).waitFor();
    await page.getByRole("button", { name: "Card", exact: true }).last().click();
    await page.getByRole("article", { name: "Shop card" }).getByText(says[0]!).first().waitFor();
    const sheets = await printed(page);
    expect(sheets).toHaveLength(1);
    const { words, outside } = sheets[0]!;
    expect(outside).toEqual([]);
    for (const word of says) expect(words.replace(/\s+/g, " ")).toContain(word);
    // A date that is the same in every country, and the manual once.
    expect(words).toMatch(/Printed +\d{1,2} [A-Z][a-z]{2} \d{4}, \d\d:\d\d/);
    expect(words.match(/manual/g)).toHaveLength(1);
    expect(words).not.toContain("No range of this job is named plan");
    await page.emulateMedia({ media: "print" });
    expect(await sticksOut(page)).toEqual([]);
  },
);

test("a sheet is printed on the paper that was chosen, with its headings on every page", async () => {
  const page = await desk();
  await page.getByRole("button", { name: "Print", exact: true }).click();
  expect(await faults(page)).toEqual([]);
  await page.getByRole("radio", { name: "A5" }).check();
  await page.getByRole("radio", { name: "every sheet of the job" }).check();
  const sheets = await printed(page);
  expect(sheets.length).toBeGreaterThan(8);
  expect(sheets.flatMap(({ outside }) => outside)).toEqual([]);
  for (const { width, height, words } of sheets) {
    expect([width, height]).toEqual([148, 210]);
    expect(words).toMatch(/ A +B/);
  }
  expect(sheets[0]!.words).toContain("as its standard writes it");
  await page.emulateMedia({ media: "print" });
  // On white, and every drawing as wide and high as it was laid out for, by the width that it got.
  expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe("rgba(0, 0, 0, 0)");
  const shapes = await page.locator("print-area td.plate svg").evaluateAll((drawings) =>
    drawings.map((drawing) => {
      const { width, height } = drawing.getBoundingClientRect();
      const [, , wide, high] = drawing.getAttribute("viewBox")!.split(" ").map(Number);
      return { width, ratio: (height / width) * (wide! / high!) };
    }),
  );
  expect(shapes.length).toBeGreaterThan(4);
  for (const { width, ratio } of shapes) {
    expect(width).toBeGreaterThan(60);
    expect(ratio).toBeCloseTo(1, 1);
  }
});

test("grid and headings can be left off, and Letter can lie on its side", async () => {
  const page = await desk();
  await page.getByRole("button", { name: "Print", exact: true }).click();
  await page.getByRole("radio", { name: "Letter" }).check();
  await page.getByRole("checkbox", { name: "across the long side" }).check();
  await page.getByRole("checkbox", { name: /^letters and numbers/ }).uncheck();
  const [sheet] = await printed(page);
  expect(sheet).toMatchObject({ width: 279, height: 216, outside: [] });
  expect(sheet!.words).not.toMatch(/ A +B/);
});

test("a wide sheet that is not scaled goes on across pages, and no column is lost", async () => {
  const page = await desk();
  const wide = JSON.parse(sampleText);
  for (let column = 0; column < 20; column++)
    wide.sheets[0].cells[`${String.fromCharCode(65 + column)}9`] = `column ${column + 1}`;
  await openJob(page, "wide.json", JSON.stringify(wide));
  await page.getByRole("gridcell", { name: "column 3", exact: true }).waitFor();
  await page.getByRole("button", { name: "Print", exact: true }).click();
  await page.getByRole("checkbox", { name: "scaled to the width of the page" }).uncheck();
  const sheets = await printed(page);
  expect(sheets.length).toBeGreaterThan(1);
  const words = sheets.map((sheet) => sheet.words).join(" ");
  for (let column = 1; column <= 20; column++) expect(words).toContain(`column ${column}`);
  expect(sheets.flatMap(({ outside }) => outside)).toEqual([]);
});

test("hidden rows and columns are left out, and the looks of a cell go with it", async () => {
  const page = await desk();
  const job = JSON.parse(sampleText);
  Object.assign(job.sheets[0], { hidden: ["C:C", "5:5"] });
  Object.assign(job.sheets[0].cells, { C2: "not for paper", D2: "for paper", B5: "not this row" });
  Object.assign(job.sheets[0].formats, { D2: { italic: true, shade: true, border: ["top"] } });
  await openJob(page, "hidden.json", JSON.stringify(job));
  await page.getByRole("gridcell", { name: "for paper", exact: true }).waitFor();
  const [sheet] = await printed(page);
  expect(sheet!.words).toContain("for paper");
  expect(sheet!.words).not.toMatch(/not for paper|not this row/);
  const classes = await page
    .locator("print-area td.italic")
    .evaluateAll((cells) => cells.map((cell) => cell.className.split(" ").sort().join(" ")));
  expect(classes).toEqual(["edge-top italic left shade"]);
});

test("the browser's own print command prints the sheet in hand", async () => {
  const page = await desk();
  await page.getByRole("button", { name: "Set-over", exact: false }).first().click();
  const [sheet] = await printed(page);
  expect(sheet!.words).toContain("Angle of the top slide");
  expect(sheet!.words).not.toContain("Shelf");
});
