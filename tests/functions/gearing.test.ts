// What the functions of gears, half nuts and drills say beside their value; the values stand in tests/lathe.
import { expect, test } from "vitest";
import { drillFunctions } from "../../src/functions/drill.ts";
import { engageFunctions } from "../../src/functions/engage.ts";
import { gearFunctions } from "../../src/functions/gears.ts";
import { speedFunctions } from "../../src/functions/speed.ts";
import { Unreadable } from "../../src/thread/failures.ts";
import { caller, parted } from "./call.ts";

const call = caller([...gearFunctions, ...engageFunctions, ...drillFunctions, ...speedFunctions]);

test("the lead that GEAR.CUT reads from a train is the one that GEAR.LEAD reckons from its gears", () => {
  expect(call("GEAR.CUT", "65/50 × 20/55", 3.175)).toBe(call("GEAR.LEAD", 3.175, 65, 50, 20, 55));
  expect(call("GEAR.CUT", "30/80", 4)).toBe(call("GEAR.LEAD", 4, 30, 80));
});

test("half of a second pair is refused by the name of what is missing", () => {
  expect(() => call("GEAR.LEAD", 3.175, 65, 50, undefined, 55)).toThrow(Unreadable);
  expect(() => call("GEAR.LEAD", 3.175, 65, 50, undefined, 55)).toThrow("driver2 is missing");
  expect(() => call("GEAR.LEAD", 3.175, 65, 50, 20)).toThrow("driven2 is missing");
});

test("where no mark may be used the answer is empty and a note says what to do", () => {
  expect(parted(call("ENGAGE.MARKS", 1.25, 3, 16, 8))).toEqual({
    value: "",
    note: "no mark may be used twice: keep the half nuts closed and reverse",
  });
});

test("marks that are exact carry no note, marks that creep say by how much", () => {
  expect(parted(call("ENGAGE.MARKS", 1 / 11, 1 / 8, 16, 8))).toEqual({ value: "4,8", note: "" });
  expect(parted(call("ENGAGE.MARKS", 1, 1.00005, 1, 1))).toEqual({
    value: "1",
    note: "each turn of the wheel is 0.00005 of a lead off, and it adds up",
  });
});

test("where no mark finds a start a note says what else to do", () => {
  expect(parted(call("ENGAGE.START", 1 / 2, 4, 2, 1 / 8, 32, 16))).toEqual({
    value: "",
    note: "no mark may be relied on for start 2: advance the slide, or turn the work or a gear on",
  });
  expect(parted(call("ENGAGE.START", 1 / 2, 2, 2, 1 / 8, 16, 8)).note).toBe("");
});

test("a surface speed names the table it comes from", () => {
  const note = (...given: string[]) => parted(call("SPEED.MATERIAL", ...given)).note;
  expect(note("cast iron", "mm", "HSS", "finishing")).toBe(
    "80 ft/min: table 7.1 of a lathe operator's manual",
  );
  expect(note("stainless steel", "mm")).toBe("15 ft/min: common practice, no source");
  expect(note("brass", "in")).toContain("from memory");
  expect(note("brass", "in", "carbide")).toContain("maker's chart for uncoated carbide");
});

test("a drill past the end of its series carries a note, one inside it none", () => {
  expect(parted(call("DRILL.NEAREST", 6, "number"))).toEqual({
    value: "No. 1",
    note: "the size is above the largest number drill",
  });
  expect(parted(call("DRILL.NEAREST", 0.1))).toEqual({
    value: "0.3 mm",
    note: "the size is below the smallest stock drill",
  });
  expect(call("DRILL.NEAREST", 8.48)).toBe("8.5 mm");
});

test("a drill whose size is from memory says so, one that a printed table confirms does not", () => {
  expect(parted(call("DRILL.SIZE", "#13", "in"))).toEqual({
    value: 0.185,
    note: "the size of No. 13 is from memory",
  });
  expect(call("DRILL.SIZE", "#7", "in")).toBe(0.201);
  expect(parted(call("DRILL.NEAREST", 0.1402, "number", "nearest", "in"))).toEqual({
    value: "No. 28",
    note: "the size of No. 28 is from memory",
  });
  expect(call("DRILL.NEAREST", 0.257, "letter", "nearest", "in")).toBe("F");
});
