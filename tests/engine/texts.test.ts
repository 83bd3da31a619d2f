import { expect, test } from "vitest";
import { LaidOver } from "../../src/engine/texts.ts";

const pieces = [{ A1: "1", B1: "2" }, { A9: "3" }];
const under = Object.assign({}, ...pieces) as Record<string, string>;

test("Texts laid over others read as a map that was typed over, and leave the others alone", () => {
  const texts = new LaidOver((cell) => under[cell], pieces);
  expect([...texts]).toEqual(Object.entries(under));
  texts.set("B1", "typed");
  texts.set("C4", "new");
  texts.delete("A9");
  texts.set("D1", "gone again");
  texts.delete("D1");
  expect([...texts]).toEqual([
    ["A1", "1"],
    ["B1", "typed"],
    ["C4", "new"],
  ]);
  expect([...texts.keys()]).toEqual(["A1", "B1", "C4"]);
  expect(texts.size).toBe(3);
  expect([texts.get("A9"), texts.has("A9"), texts.get("B1"), texts.has("D1")]).toEqual([
    undefined,
    false,
    "typed",
    false,
  ]);
  expect(under).toEqual({ A1: "1", B1: "2", A9: "3" });
});
