/** Why a cell shows what it shows, on a job small enough to follow by hand. */
import { describe, expect, test } from "vitest";
import { sheetFunctions } from "../../src/functions/index.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob } from "../../src/job/job.ts";
import { labelOf, mostLinks, sensitivityOf, whyOf } from "../../src/job/why.ts";

const job = createJob(
  readJob(
    JSON.stringify({
      format: "halfangle job",
      version: 1,
      title: "Made up",
      names: { depth: "Job!B2", setover: "Job!B3" },
      sheets: [
        {
          name: "Job",
          cells: {
            A2: "Depth",
            B2: "1.2",
            A3: "Set-over",
            B3: "27",
            A4: "Travel",
            B4: "=FLANK.INFEED(depth,setover)",
            A5: "Twice that",
            B5: "=B4*2",
            A6: "All",
            B6: "=SUM(B2:B5)",
            A7: "Too steep",
            B7: "=FLANK.INFEED(depth,95)",
            A8: "After it",
            B8: "=B7+1",
            D1: "Chip",
            D2: "5",
          },
          formats: {
            B3: { as: "angle", places: 1 },
            B4: { as: "decimals", places: 4 },
            D1: { role: "column" },
          },
        },
        { name: "Next", cells: { A1: "=Job!B4+depth" } },
      ],
    }),
  ),
);
const why = async (cell: string, sheet = "Job") => {
  const place = { sheet, row: Number(cell.slice(1)) - 1, column: cell.charCodeAt(0) - 65 };
  return whyOf(
    job,
    place,
    sheetFunctions,
    await job.readers(place, mostLinks),
    await sensitivityOf(job, place),
  );
};

describe("why", () => {
  test("fills the formula in with the values as the sheet shows them", async () => {
    // 1.2 / cos 27 = 1.34678...
    expect(await why("B4")).toMatchObject({
      address: "B4",
      label: "Travel",
      value: "1.3468",
      formula: "=FLANK.INFEED(depth,setover)",
      filled: "=FLANK.INFEED(1.2,27.0°)",
    });
    expect((await why("B6")).filled).toBe("=SUM([4 cells])");
  });

  test("names what a cell comes from and what it goes to, on every sheet", async () => {
    expect((await why("B4")).comesFrom.map(({ address, label, value }) => [address, label, value])).toEqual([
      ["B2", "Depth", "1.2"],
      ["B3", "Set-over", "27.0°"],
    ]);
    expect((await why("B4")).goesTo.map(({ address }) => address)).toEqual(["B5", "B6", "Next A1"]);
    expect((await why("B2")).goesTo.map(({ address }) => address)).toEqual(["B4", "B6", "B7", "Next A1"]);
    expect((await why("A1", "Next")).comesFrom.map(({ address }) => address)).toEqual(["Job B4", "Job B2"]);
  });

  test("says what a little more of each input does", async () => {
    // 1.2/cos 27: 1 % more depth is 0.01347 more travel; 28 degrees instead of 27 is 1.2(1/cos 28 - 1/cos 27) = 0.01230.
    expect((await why("B4")).ifWrong).toEqual(["1 % more depth: +0.0135", "1° more set-over: +0.0123"]);
    expect((await why("B2")).ifWrong).toEqual([]);
  });

  test("leads from an error to the cell where it began", async () => {
    expect((await why("B7")).error).toMatchObject({ code: "#NUM!", from: undefined });
    expect((await why("B7")).error!.message).toContain("setover");
    expect((await why("B8")).error!.from).toMatchObject({ address: "B7", label: "Too steep" });
  });

  test("shows the functions that a formula calls, with their source, and none that stand in quotes", async () => {
    expect((await why("B4")).functions.map(({ name }) => name)).toEqual(["FLANK.INFEED"]);
    expect((await why("B2")).functions).toEqual([]);
  });

  test("takes its words from the left of a cell, else from the head of its column", async () => {
    expect(labelOf(job, { sheet: "Job", row: 1, column: 3 })).toBe("Depth");
    expect(labelOf(job, { sheet: "Job", row: 8, column: 3 })).toBe("Chip");
    expect(labelOf(job, { sheet: "Next", row: 5, column: 5 })).toBe("");
  });

  test("says in words what a cell is that no formula fills, and calls a heading a heading", async () => {
    expect(await why("D1")).toMatchObject({
      label: "Heading of a column",
      is: "Words, as they were typed: nothing is reckoned here.",
      words: true,
    });
    expect(await why("B2")).toMatchObject({
      label: "Depth",
      is: "A figure that was typed here.",
      words: false,
    });
    expect((await why("A2")).is).toBe("Words that were typed here.");
    expect((await why("F9")).is).toBe("An empty cell.");
    expect((await why("B4")).is).toBeUndefined();
  });
});
