import { describe, expect, test } from "vitest";
import { type DialTurn, dialAngle, dialFace, figureStep } from "../../src/drawing/dial-face.ts";

describe("the face of a dial", () => {
  test("turns clockwise from zero at the top, a full turn in 360 degrees", () => {
    expect(dialAngle(0, 50)).toBe(0);
    expect(dialAngle(12.5, 50)).toBe(90);
    expect(dialAngle(100, 250)).toBe(144);
  });

  test("has no more than twelve figures, at steps that are read without thinking", () => {
    expect([12, 25, 40, 50, 100, 125, 200, 250, 1000].map(figureStep)).toEqual([
      1, 5, 5, 5, 10, 20, 20, 50, 100,
    ]);
  });

  // 10 of 40 stands a quarter of a turn clockwise from the top; five on, an eighth further; five back, an eighth before.
  test.each([
    [{ perTurn: 40, from: 10, to: 15, by: 5 }, 135, "1", "+5", "divisions"],
    [{ perTurn: 40, from: 10, to: 5, by: 5, back: true }, 45, "0", "5", "divisions back"],
    [{ perTurn: 40, from: 2, to: 37, by: 5, back: true }, -27, "0", "5", "divisions back"],
    [{ perTurn: 40, from: 10, to: 9, by: 1, back: true }, 81, "0", "1", "division back"],
  ] as const)("%o points the way that is wound", (turn, tip, clockwise, figure, words) => {
    const drawn = written(dialFace(turn as DialTurn));
    const path = (name: string) =>
      new RegExp(`class=${name} d="([^"]+)"`).exec(drawn.replace(/class="(\w+)"/g, "class=$1"))![1]!;
    const angleOf = ([x, y]: readonly [number, number]) => (Math.atan2(x - 200, 200 - y) * 180) / Math.PI;
    const first = (d: string) => /^M(-?[\d.]+) (-?[\d.]+)/.exec(d)!.slice(1).map(Number) as [number, number];
    expect(angleOf(first(path("point")))).toBeCloseTo(tip, 1);
    expect(angleOf(first(path("to")))).toBeCloseTo(tip, 1);
    expect(angleOf(first(path("sweep")))).toBeCloseTo((turn.from / 40) * 360, 1);
    // The arc's fifth figure: 1 is clockwise on paper.
    expect(path("sweep").split("A")[1]!.split(" ")[4]).toBe(clockwise);
    expect(drawn).toContain(`>${figure}<`);
    expect(drawn).toContain(`>${words}<`);
  });
});

/** A template as the text that it becomes. */
function written(part: unknown): string {
  if (Array.isArray(part)) return part.map(written).join("");
  if (typeof part !== "object" || part === null || !("strings" in part))
    return typeof part === "symbol" ? "" : String(part);
  const { strings, values } = part as { strings: readonly string[]; values: readonly unknown[] };
  return strings.map((text, i) => text + (i < values.length ? written(values[i]) : "")).join("");
}
