import { expect, test } from "vitest";
import { freeTitle } from "../../src/job/titles.ts";

test.each([
  ["Bolt", [], "Bolt"],
  ["Bolt", ["Nut"], "Bolt"],
  ["Bolt", ["Bolt"], "Bolt 2"],
  ["Bolt", ["Bolt", "Bolt 2"], "Bolt 3"],
  ["Bolt 2", ["Bolt", "Bolt 2"], "Bolt 3"],
  // The number belongs to the title.
  ["M12 x 1", ["M12 x 1"], "M12 x 1 2"],
])("%s beside %j is called %s", (title, taken, called) => {
  expect(freeTitle(title, taken)).toBe(called);
});
