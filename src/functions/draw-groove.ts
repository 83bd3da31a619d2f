/** DRAW.PASSES: the groove in the layers that the passes take. */

import { requireWhole, requireWithin } from "../lathe/bounds.ts";
import { grooveOf } from "../lathe/chip-area.ts";
import { requireDepths } from "../lathe/figure-checks.ts";
import { alongSetover, cutGroove, deviationFrom } from "../lathe/groove.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { setover } from "./slides.ts";
import { included } from "./toolform.ts";

export const drawGrooveFunctions: readonly SheetFunction[] = [
  declare({
    name: "DRAW.PASSES",
    family: "drawing",
    summary: "The groove in layers, pass by pass: done, next, to come, and what is cut outside the form.",
    params: [
      {
        name: "depths",
        type: "numbers",
        unit: "length",
        doc: "Radial depth after each pass, above 0, none less than the one before; blanks are passed over.",
      },
      setover,
      included,
      {
        name: "nose",
        type: "number",
        unit: "length",
        fallback: 0,
        doc: "Width of the flat or radius of the tool's nose; 0 when sharp.",
      },
      {
        name: "trailing_flank",
        type: "number",
        unit: "deg",
        optional: true,
        doc: "Trailing flank angle, 0 to the included angle; left out: half of it.",
      },
      {
        name: "shape",
        type: "text",
        options: ["flat", "radius"],
        fallback: "flat",
        doc: "What nose measures.",
      },
      {
        name: "next",
        type: "number",
        optional: true,
        doc: "Pass that comes next, 1 for the first; one more than there are when all are cut. Left out: all are drawn alike.",
      },
      {
        name: "direction",
        type: "text",
        options: ["in", "out"],
        fallback: "in",
        doc: '"in": the carriage runs toward the headstock, left, while cutting; "out": away from it, and the leading flank is on the right.',
      },
    ],
    returns: { type: "drawing", doc: "As text: passes, depth, and the overcut if there is one." },
    failures: [
      {
        when: "a depth is less than the one before it",
        formula: "=DRAW.PASSES({0.5;0.4},27,55)",
        gives: "#NUM!",
        says: "depths must not fall, got 0.4 after 0.5",
      },
      {
        when: "the set-over is outside -90 to 90",
        formula: "=DRAW.PASSES({0.5;0.8},90,55)",
        gives: "#NUM!",
        says: "setover must be between -90 and 90",
      },
      {
        when: "there is no such pass",
        formula: "=DRAW.PASSES({0.5;0.8},27,55,,,,4)",
        gives: "#NUM!",
        says: "next must be from 1 to 3, got 4",
      },
      {
        when: "the nose is negative",
        formula: "=DRAW.PASSES({0.5;0.8},27,55,-1)",
        gives: "#NUM!",
        says: "nose must be 0 or more",
      },
    ],
    examples: [
      {
        formula: "=DRAW.PASSES({0.5;0.8;1},27,55,0.1,,,2)",
        value: "Groove in 3 passes to depth 1, pass 2 next",
      },
      {
        formula: '=DRAW.PASSES({0.3;1.3554},35,55,0,27.5,"flat")',
        value: "Groove in 2 passes to depth 1.3554, overcut 0.1896",
        source: "SETOVER.MISCUT(1.3554,35,27.5,0.3), computed independently",
      },
    ],
    source: "geometry; all passes lie on one helix and the cutting edge in the axial plane",
    compute: (depths, setover, included, nose, trailingFlank, shape, next, direction) => {
      requireDepths(depths, setover);
      const tool = grooveOf(included, nose, trailingFlank, shape);
      const count = depths.length;
      const coming = next === undefined ? undefined : requireWhole("next", next, 1);
      if (coming !== undefined) requireWithin("next", coming, 1, count + 1);
      const { axial, radial } = alongSetover(1, setover);
      const places = depths.map((depth) => ({ axial: (depth * axial) / radial, radial: depth }));
      const layers = cutGroove(tool, places);
      const { trailing, leading } = deviationFrom(layers.at(-1)!.outline, tool, places.at(-1)!);
      // Where no more than rounding lies outside the form, nothing does.
      const overcut = Math.max(trailing, leading) < 1e-9 * depths.at(-1)! ? 0 : Math.max(trailing, leading);
      const layer = coming === undefined ? undefined : layers[coming - 1];
      const figure = {
        kind: "passes",
        depths,
        setover,
        leading: tool.leading,
        trailing: tool.trailing,
        nose,
        shape,
        ...(coming === undefined ? {} : { next: coming }),
        ...(layer ? { chip: { leading: layer.chip.leading, trailing: layer.chip.trailing } } : {}),
        overcut,
        direction,
      } as const;
      const state = coming === undefined ? "" : coming > count ? ", all cut" : `, pass ${coming} next`;
      const over = overcut > 0 ? `, overcut ${Number(overcut.toPrecision(4))}` : "";
      const value = `Groove in ${count} ${count === 1 ? "pass" : "passes"} to depth ${Number(depths.at(-1)!.toPrecision(5))}${state}${over}`;
      return {
        value,
        figure,
        ...(overcut > 0
          ? { note: `overcuts the form by ${Number(overcut.toPrecision(4))} along the axis` }
          : {}),
      };
    },
  }),
];
