import { describe, expect, test } from "vitest";
import { reckon } from "../src/job/reckoning.ts";

const file = JSON.stringify({
  format: "halfangle job",
  version: 1,
  title: "Made up",
  names: { depth: "Thread!B1", gears: "'Change gears'!A1:A4", set_over: "Thread!B2", both: "Thread!B1:C2" },
  sheets: [
    {
      name: "Thread",
      cells: {
        A1: "depth",
        B1: "0.92",
        B2: "27.5",
        B3: "=depth/COS(RADIANS(set_over))",
        B4: "=1/0",
        B5: "TRUE",
        B6: "=B4",
      },
    },
    { name: "Change gears", cells: { A1: "20", A2: "30", A3: "80", A4: "127", B1: "=SUM(gears)" } },
  ],
});

function run(...words: string[]) {
  return reckon(words, (path) => {
    if (path === "job.json") return file;
    if (path === "broken.json") return file.slice(0, 200);
    throw new Error("no such file");
  });
}

const lines = async (...words: string[]) => {
  const { out, err, status } = await run(...words);
  expect([err, status]).toEqual(["", 0]);
  expect(out.endsWith("\n")).toBe(true);
  return out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line));
};

describe("values", () => {
  test("formulas are reckoned without a job, one JSON value a line, at full precision", async () => {
    expect((await run("=1/3", '="a"&"b"', "=1=1", "=A1")).out).toBe(`${1 / 3}\n"ab"\ntrue\nnull\n`);
  });

  test("gets come first, then formulas, each in the order given", async () => {
    expect(
      await lines("=depth*2", "--get", "Thread!B2", "--job", "job.json", "=set_over", "--get", "depth"),
    ).toEqual([27.5, 0.92, 1.84, 27.5]);
  });

  test("a range is an array of arrays, an empty cell null, an error an object", async () => {
    const error = { error: "#DIV/0!", message: "division by zero" };
    expect(
      await lines(
        "--job",
        "job.json",
        "--get",
        "Thread!A1:B2",
        "--get",
        "Thread!B4:B6",
        "--get",
        "Thread!Z9",
        "=B6",
        "={1,2;3,4}",
      ),
    ).toEqual([
      [
        ["depth", 0.92],
        [null, 27.5],
      ],
      [[error], [true], [error]],
      null,
      error,
      [
        [1, 2],
        [3, 4],
      ],
    ]);
  });

  test("a quoted sheet, dollar signs and other letter case are understood", async () => {
    expect(
      await lines(
        "--job",
        "job.json",
        "--get",
        "'Change gears'!$B$1",
        "--get",
        "thread!b1",
        "--get",
        "DEPTH",
      ),
    ).toEqual([257, 0.92, 0.92]);
  });
});

describe("--set", () => {
  test("types a value into a named cell or an address, as in the grid", async () => {
    expect(
      await lines("--job", "job.json", "--set", "depth=2", "--set", "Thread!B2==30*2", "--get", "Thread!B3"),
    ).toEqual([2 / Math.cos(Math.PI / 3)]);
    expect(await lines("--job", "job.json", "--set", "Thread!A1=1/4-20 UNC", "--get", "Thread!A1")).toEqual([
      "1/4-20 UNC",
    ]);
    expect(await lines("--job", "job.json", "--set", "depth=", "--get", "depth")).toEqual([null]);
    expect(await lines("--job", "job.json", "--set", "depth=a=b", "--get", "depth")).toEqual(["a=b"]);
  });

  test("a range takes a list and empties the rest, row by row", async () => {
    expect(
      await lines("--job", "job.json", "--set", "gears=20, 65;127", "--get", "gears", "=SUM(gears)"),
    ).toEqual([[[20], [65], [127], [null]], 212]);
    expect(await lines("--job", "job.json", "--set", "both=1,2,3", "--get", "both")).toEqual([
      [
        [1, 2],
        [3, null],
      ],
    ]);
    expect(await lines("--job", "job.json", "--set", "gears=", "=COUNT(gears)")).toEqual([0]);
  });
});

describe("bad usage ends with status 2, a message on stderr and nothing on stdout", () => {
  test.each([
    [[], "nothing to reckon"],
    [["--frob"], "no option --frob"],
    [["-5"], "no option -5"],
    [["1+1"], 'a formula begins with "="'],
    [["--job"], "--job needs a value"],
    [["--get"], "--get needs a value"],
    [["--set", "depth"], "--set takes NAME=VALUE"],
    [["--job", "none.json", "=1"], "none.json cannot be read: no such file"],
    [["--job", "broken.json", "=1"], "broken.json, line 1: "],
    [["--job", "job.json", "--job", "job.json"], "once"],
    [["--job", "job.json", "--get", "dept"], 'no name "dept": the job has depth, gears'],
    [["--job", "job.json", "--set", "dept=1"], 'no name "dept"'],
    [["--job", "job.json", "--get", "Gone!A1"], 'no sheet "Gone"'],
    [["--job", "job.json", "--get", "Thread!A1:B2:C3"], "no name"],
    [["--job", "job.json", "--get", "Thread!A1:ZZZ1"], "larger than a sheet"],
    [["--job", "job.json", "--set", "gears=1,2,3,4,5"], "room for 4 values"],
    [["--get", "depth"], "no job was given"],
  ])("%j", async (words, message) => {
    const { out, err, status } = await run(...words);
    expect(err).toContain(message);
    expect({ out, status }).toEqual({ out: "", status: 2 });
  });

  test("a formula that fails is a value, not bad usage", async () => {
    expect(await lines("=1+", "=NOSUCH(1)")).toMatchObject([{ error: "#ERROR!" }, { error: "#NAME?" }]);
  });
});

describe("seeking", () => {
  test("gives the number found, which then stands in its cell", async () => {
    // depth / cos 60 = 2 depth, so that 3.2 is wanted of 1.6.
    expect(
      await lines(
        "--job",
        "job.json",
        "--set",
        "set_over=60",
        "--seek",
        "Thread!B3=3.2 by depth from 0 to 5",
        "--get",
        "depth",
      ),
    ).toEqual([expect.closeTo(1.6, 12), expect.closeTo(1.6, 12)]);
  });

  test("says why there is no such number", async () => {
    expect(await lines("--job", "job.json", "--seek", "B3=-3 by depth from 0 to 5")).toEqual([
      {
        error: "#N/A",
        message: expect.stringMatching(/^no solution: with depth from 0 to 5, Thread!B3 goes from 0 to /),
      },
    ]);
  });

  test.each([
    ["depth", /^reckon: --seek takes "NAME=VALUE by NAME from LOW to HIGH", got "depth"/],
    ["gone=1 by depth from 0 to 1", /there is no cell or name "gone"/],
    ["both=1 by depth from 0 to 1", /both is 4 cells/],
    ["B3=1 by gears from 0 to 1", /gears is 4 cells/],
    ["B3=1 by depth from 1 to 0", /the second limit must be more than the first/],
    ["B4=1 by depth from 0 to 1", /does not depend on depth/],
  ])("refuses %s", async (sought, message) => {
    const { out, err, status } = await run("--job", "job.json", "--seek", sought);
    expect([out, status]).toEqual(["", 2]);
    expect(err).toMatch(message);
  });
});

test("a what-if value is reckoned on the command line as in a cell", async () => {
  // 2.5 / cos 60 = 5
  expect(
    await lines(
      "--job",
      "job.json",
      "=MULTIPLE.OPERATIONS(Thread!B3, depth, 2.5, set_over, 60)",
      "--get",
      "depth",
    ),
  ).toEqual([0.92, expect.closeTo(5, 12)]);
});
