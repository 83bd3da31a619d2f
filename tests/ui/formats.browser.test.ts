/** Every way of showing a number, set by its question and read as the cell says it. */
import { expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import { keys, show } from "./grid-page.ts";
import { realJob, toolOf } from "./real-job.ts";

const dialog = page.getByRole("dialog");

// What a person who writes figures on a drawing expects of each; 46354 days after 30 December 1899 is 28 November 2026
// by the calendar of ISO/IEC 26300-2.
const shown = [
  { way: "fixed decimals", decimals: "3", typed: "1.25", as: "decimals", says: /^1\.250$/ },
  { way: "length in the job's unit", decimals: "2", typed: "12.7", as: "length", says: /^12\.70 mm$/ },
  { way: "degrees", decimals: "1", typed: "27.5", as: "angle", says: /^27\.5\s?°$/ },
  { way: "degrees, minutes, seconds", typed: "27.5", as: "dms", says: /^27°\s?30['′]/ },
  { way: "inches to the nearest 64th", typed: "0.4375", as: "fraction", says: /^7\/16/ },
  { way: "thousandths of an inch", typed: "0.02", as: "thou", says: /^20(\.0)? thou/ },
  { way: "percent", decimals: "1", typed: "0.125", as: "percent", says: /^12\.5\s?%$/ },
  { way: "date", typed: "46354", as: "date", says: /28.*(Nov|11).*2026|2026-11-28/ },
  { way: "text", typed: "'007", as: "text", says: /^007$/ },
];

test.each(shown)("$typed is shown as $way", async ({ way, decimals, typed, as, says }) => {
  const job = realJob({ B2: typed });
  await show(job, "B2");
  await keys("{Shift>}{F10}{/Shift}");
  await page.getByRole("menuitem", { name: "Format...", exact: true }).click();
  await userEvent.selectOptions(dialog.getByRole("combobox", { name: "Show numbers as" }), way);
  if (decimals) await userEvent.fill(dialog.getByRole("textbox", { name: /^Decimals/ }), decimals);
  await dialog.getByRole("button", { name: "Set" }).click();
  expect(toolOf(job).formats.B2).toMatchObject({ as });
  await expect.element(page.getByRole("gridcell", { name: says })).toBeVisible();
  await keys("{Control>}z{/Control}");
  expect(toolOf(job).formats.B2).toBeUndefined();
});
