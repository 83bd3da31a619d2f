import axe from "axe-core";
import { beforeAll, describe, expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import type { SheetDocument } from "../../src/job/document.ts";
import { createJob } from "../../src/job/job.ts";
import { drawingActions, pngOf, svgText } from "../../src/ui/save-drawing.ts";
import { madeDocument } from "../job/made.ts";
import { cell, click, focused, grid, keys, show } from "./grid-page.ts";

const sheet: SheetDocument = {
  name: "Tool",
  columns: { A: 150, B: 100, D: 360 },
  rows: 200,
  columnCount: 26,
  cells: {
    A1: "Set-over",
    B1: "26.5",
    A2: "Flank",
    B2: "27.5",
    D1: '=DRAW.SETOVER(B1,"bed",B2)',
    A20: '=DRAW.TRAIN("40/60")',
  },
  formats: {},
  choices: {},
  notes: {},
  merged: ["D1:D18"],
};

const document_ = madeDocument([sheet]);

const job = () => createJob(document_);
const figure = () => job().cell("Tool", 0, 3).figure!;

beforeAll(() => document.fonts.load("400 12px B612"));

describe("in the grid", () => {
  test("a drawing fills the merged cells that it stands in, and the cell is named by what it shows", async () => {
    await show(job());
    const drawn = page.getByRole("gridcell", {
      name: /^Plan view, headstock left: the top slide set over 26\.5°/,
    });
    await expect.element(drawn).toHaveAttribute("aria-rowspan", "18");
    const place = cell("D1")!.getBoundingClientRect();
    const picture = cell("D1")!.querySelector("svg")!.getBoundingClientRect();
    expect(picture.width).toBeGreaterThan(place.width - 3);
    expect(picture.height).toBeGreaterThan(place.height - 3);
    const { violations } = await axe.run(document.querySelector("sheet-grid")!);
    expect(violations.map(({ id }) => id)).toEqual([]);
  });

  test("it follows the cells it is drawn from", async () => {
    await show(job(), "B1");
    const setting = () => cell("D1")!.querySelector("[data-part=setting]")!.getAttribute("d");
    const before = setting();
    await keys("20{Enter}");
    await expect.poll(setting).not.toBe(before);
    await expect.element(page.getByRole("gridcell", { name: /set over 20\.0°/ })).toBeVisible();
  });

  test("a setting past the flank has the caution's bar, and says so", async () => {
    await show(job(), "B1");
    await keys("30{Enter}");
    await expect.poll(() => cell("D1")!.classList.contains("caution")).toBe(true);
    expect(getComputedStyle(cell("D1")!).backgroundImage).toContain("repeating-linear-gradient");
    expect(cell("D1")!.getAttribute("aria-description")).toMatch(/past the trailing flank/);
    expect(cell("D1")!.textContent).toContain("past the flank by 2.5°");
  });

  test("while it is edited its formula stands there, and Escape brings the drawing back", async () => {
    await show(job(), "D1");
    await keys("{F2}");
    await expect
      .element(page.getByRole("textbox", { name: "Cell D1" }))
      .toHaveValue('=DRAW.SETOVER(B1,"bed",B2)');
    expect(cell("D1")!.querySelector("svg")).toBeNull();
    await keys("{Escape}");
    await expect.poll(() => cell("D1")!.querySelector("svg")).not.toBeNull();
    await expect.poll(focused).toBe("D1");
  });

  test("where there is too little room its text stands in the cell", async () => {
    await show(job());
    expect(cell("A20")!.querySelector("svg")).toBeNull();
    expect(cell("A20")!.textContent).toContain("Change gears 40/60");
  });

  test("copied, it carries its formula", async () => {
    const own = job();
    await show(own, "D1");
    await keys("{Control>}c{/Control}");
    await click("F1");
    await keys("{Control>}v{/Control}");
    await expect.poll(() => own.cell("Tool", 0, 5).text).toMatch(/^=DRAW\.SETOVER\(/);
  });

  test("on a phone it folds above the columns and can be folded away", async () => {
    await page.viewport(390, 844);
    try {
      await show(job());
      const word = page.getByRole("button", { name: "Plan view" });
      await expect.element(word).toHaveAttribute("aria-expanded", "true");
      const picture = () =>
        grid().shadowRoot!.querySelector("drawing-fold")!.shadowRoot!.querySelector("svg");
      await expect.poll(picture).not.toBeNull();
      const top = cell("A1")!.getBoundingClientRect().top;
      expect(picture()!.getBoundingClientRect().bottom).toBeLessThanOrEqual(top);
      await userEvent.click(word);
      await expect.element(word).toHaveAttribute("aria-expanded", "false");
      await expect.poll(() => cell("A1")!.getBoundingClientRect().top).toBeLessThan(top - 100);
    } finally {
      await page.viewport(1280, 800);
    }
  });
});

describe("saved", () => {
  test("as SVG it needs nothing but itself: its inks are colours, and its words are there", () => {
    const text = svgText(figure());
    const saved = new DOMParser().parseFromString(text, "image/svg+xml");
    expect(saved.querySelector("parsererror")).toBeNull();
    expect(text).not.toMatch(/var\(|class=|style=|<!--/);
    expect(saved.querySelector("title")!.textContent).toMatch(/^Plan view/);
    const setting = saved.querySelector("[data-part=setting]")!;
    // --blue of the paper ground, #27379b.
    expect(setting.getAttribute("stroke")).toBe("rgb(39, 55, 155)");
    expect([...saved.querySelectorAll("text")].map((one) => one.textContent)).toContain("63.5°");
  });

  test("on slate it has the inks of slate", () => {
    document.documentElement.dataset.theme = "slate";
    // --blue and --paper of slate, #a4b4ff and #1a2228.
    expect(svgText(figure())).toMatch(/rgb\(164, 180, 255\)/);
    expect(svgText(figure())).toContain("#1a2228");
    delete document.documentElement.dataset.theme;
  });

  test("as PNG it is a picture of twice the size with ink on it", async () => {
    const blob = await pngOf(figure());
    expect(blob.type).toBe("image/png");
    const picture = await createImageBitmap(blob);
    expect([picture.width, picture.height]).toEqual([1440, 1080]);
    const canvas = new OffscreenCanvas(1440, 1080).getContext("2d")!;
    canvas.drawImage(picture, 0, 0);
    const { data } = canvas.getImageData(0, 0, 1440, 1080);
    let blue = 0;
    for (let i = 0; i < data.length; i += 4)
      if (data[i] === 39 && data[i + 1] === 55 && data[i + 2] === 155) blue += 1;
    expect(blue).toBeGreaterThan(500);
  });

  test("a cell with a drawing offers both, any other cell nothing", () => {
    expect(drawingActions(job().cell("Tool", 0, 3)).map(({ word }) => word)).toEqual([
      "Save drawing as SVG",
      "Save drawing as PNG",
    ]);
    expect(drawingActions(job().cell("Tool", 0, 0))).toEqual([]);
  });
});
