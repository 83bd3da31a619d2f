import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import "../../src/ui/tokens.css";
import { ascent, descent, widthOf } from "../../src/drawing/lettering.ts";
import {
  drawn,
  passesAsked,
  passesFigure,
  seed,
  setoverFigures,
  threadFigure,
  threads,
  wiresFigure,
} from "./figures.ts";
import { faults, openPlate, plate, show } from "./measured.ts";

beforeAll(openPlate);

const sizes = fc.tuple(fc.integer({ min: 150, max: 900 }), fc.integer({ min: 110, max: 800 }));

describe("measured by the browser, no text lies over another and nothing leaves the frame", () => {
  const chosen = threads(200);
  const rooms = fc.sample(sizes, { ...seed, numRuns: 200 });

  test("in the profiles of 200 threads", () => {
    chosen.forEach((text, i) => {
      const [width, height] = rooms[i]!;
      expect([text, width, height, faults(show(threadFigure(text), width, height))]).toEqual([
        text,
        width,
        height,
        [],
      ]);
    });
  });

  test("in the wires or balls of the same threads", () => {
    let seen = 0;
    chosen.forEach((text, i) => {
      const figure = wiresFigure(text);
      const [width, height] = rooms[i]!;
      if (!figure) return;
      seen += 1;
      expect([text, width, height, faults(show(figure, width, height))]).toEqual([text, width, height, []]);
    });
    expect(seen).toBeGreaterThan(150);
  });

  test("in 200 set-overs and 200 grooves", () => {
    const plans = fc.sample(setoverFigures, { ...seed, numRuns: 200 });
    const share = fc.double({ min: -1.4, max: 1.5, noNaN: true });
    const grooves = fc.sample(passesAsked(share), { ...seed, numRuns: 200 }).map(passesFigure);
    [...plans, ...grooves].forEach((figure, i) => {
      const [width, height] = rooms[i % 200]!;
      expect([JSON.stringify(figure), width, height, faults(show(figure, width, height))]).toEqual([
        JSON.stringify(figure),
        width,
        height,
        [],
      ]);
    });
  });

  test("in trains, thread indicators and plots", () => {
    const figures = [
      drawn("TRAIN", "40/60"),
      drawn("TRAIN", "65/50 × 20/55"),
      drawn("TRAIN", "20/127 × 100/30 × 40/50, box 3"),
      drawn("MARKS", "1,2,3,4,5,6,7,8", 8),
      drawn("MARKS", "", 16),
      drawn("MARKS", "7,60", 120),
      drawn("LINES", [0, 1, 2], [4, 8, 6], [1, 2, 3], undefined, undefined, "pass; slide, mm; plan; cut"),
      drawn("LINES", [1, 2, 3, 4], [5, -3, 2, 1], undefined, undefined, undefined, "pass; mm", "columns"),
    ];
    for (const { figure } of figures) {
      for (const [width, height] of rooms.slice(0, 40)) {
        expect([figure.kind, width, height, faults(show(figure, width, height))]).toEqual([
          figure.kind,
          width,
          height,
          [],
        ]);
      }
    }
  });
});

test("a drawing scales into its place: twice the place, twice every line", () => {
  const picture = show(threadFigure("M12-6g"), 400, 300);
  const line = () => picture.querySelector("[data-part=profile]")!.getBoundingClientRect();
  const before = line();
  plate.style.width = "800px";
  plate.style.height = "600px";
  const after = line();
  expect(after.width / before.width).toBeCloseTo(2, 3);
  expect(after.height / before.height).toBeCloseTo(2, 3);
  expect((after.left * 300) / (before.left * 300)).toBeCloseTo(2, 3);
});

test("it is one picture with its description, and holds no style of its own", () => {
  const { figure } = drawn("SETOVER", 26.5, "bed", 27.5);
  const picture = show(figure, 400, 500);
  expect(picture.getAttribute("role")).toBe("img");
  expect(picture.getAttribute("aria-label")).toMatch(
    /set over 26\.5° from the line square to the lathe axis/,
  );
  expect(picture.querySelectorAll("[style], style, script, foreignObject")).toHaveLength(0);
});

test("words that look like markup stay words", () => {
  const { figure } = drawn("LINES", [1, 2], [3, 4], undefined, undefined, undefined, "<b>x</b>; <img src=x>");
  const picture = show(figure, 500, 300);
  expect(picture.querySelector("img, b")).toBeNull();
  expect(picture.textContent).toContain("<b>x</b>");
});

test("letters are as wide as the layout takes them to be, or a little narrower where they are kerned", () => {
  const canvas = document.createElement("canvas").getContext("2d")!;
  const texts = [
    "63.5°",
    "0, along the bed",
    "handle right",
    "major ø12.700",
    "−1.5 × 20/55 ±½",
    "AVATo Wm @%",
    "'|!;:",
  ];
  for (const weight of [400, 700]) {
    canvas.font = `${weight} 100px B612`;
    for (const text of texts) {
      const { width, fontBoundingBoxAscent, fontBoundingBoxDescent } = canvas.measureText(text);
      expect(widthOf(text, 100)).toBeGreaterThanOrEqual(width - 0.1);
      expect(widthOf(text, 100)).toBeLessThan(1.06 * width);
      expect(fontBoundingBoxAscent).toBeLessThanOrEqual(100 * ascent + 0.5);
      expect(fontBoundingBoxDescent).toBeLessThanOrEqual(100 * descent + 0.5);
    }
  }
  for (let code = 32; code < 127; code++) {
    const letter = String.fromCharCode(code);
    const over = widthOf(letter, 100) - canvas.measureText(letter).width;
    expect([letter, over >= -0.1 && over < 0.6]).toEqual([letter, true]);
  }
});

describe("on either ground", () => {
  /** Contrast of two colours as WCAG 2.2 has it. */
  function contrast(one: string, other: string): number {
    const light = (colour: string) => {
      const [r, g, b] = [...colour.matchAll(/[\d.]+/g)].slice(0, 3).map(([value]) => {
        const share = Number(value) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
    };
    const [a, b] = [light(one), light(other)].sort((x, y) => y - x);
    return (a! + 0.05) / (b! + 0.05);
  }

  test.each(["paper", "slate"])("%s: text stands out 4.5 to 1 and lines with a meaning 3 to 1", (ground) => {
    document.documentElement.dataset.theme = ground;
    const { figure } = drawn("SETOVER", 29.5, "bed", 27.5);
    const picture = show(figure, 400, 500);
    const probe = document.createElement("i");
    probe.style.color = "var(--paper)";
    document.body.append(probe);
    const paper = getComputedStyle(probe).color;
    for (const text of picture.querySelectorAll("text")) {
      const { fill } = getComputedStyle(text);
      // Text in blue stands on blue only where it is the paper's colour there.
      expect([text.textContent, contrast(fill, paper) >= 4.5]).toEqual([text.textContent, true]);
    }
    for (const line of picture.querySelectorAll(".outline, .set, .axis, .thin, .faint")) {
      if (line.localName !== "path") continue;
      const { stroke } = getComputedStyle(line);
      expect([line.getAttribute("class"), contrast(stroke, paper) >= 3]).toEqual([
        line.getAttribute("class"),
        true,
      ]);
    }
    delete document.documentElement.dataset.theme;
  });

  test("set and flank differ in weight and line pattern, not in ink alone", () => {
    const { figure } = drawn("SETOVER", 20, "bed", 27.5);
    const picture = show(figure, 400, 500);
    const [set, flank] = ["setting", "flank"].map((part) =>
      getComputedStyle(picture.querySelector(`[data-part=${part}]`)!),
    );
    expect(Number.parseFloat(set!.strokeWidth)).toBeGreaterThan(2 * Number.parseFloat(flank!.strokeWidth));
    expect(set!.strokeDasharray).not.toBe(flank!.strokeDasharray);
    const texts = [...picture.querySelectorAll("text")];
    expect(getComputedStyle(texts.find((text) => text.textContent === "20.0°")!).fontWeight).toBe("700");
    expect(getComputedStyle(texts.find((text) => text.textContent === "flank 27.5°")!).fontWeight).toBe(
      "400",
    );
  });
});
