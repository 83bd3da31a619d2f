/** Every published row about a thread with which we do not agree to its own rounding, and why. */

/** Figures of a thread itself. */
const figures: Readonly<Record<string, string>> = {
  "metric:M2:cat:minor-diameter-d3-min-6g":
    "misprint: 1.407 in that catalogue; d3 max 1.490 less Td2 0.067 less 0.0387 P is 1.408, and its other rows follow that rule",
  "whitworth:BSW-9/16:basic-minor-diameter":
    "another rule: 0.4559 in that table; BS 84 rounds the depth of 12 threads per inch to 0.0534, so 0.5625 - 0.1068 = 0.4557",
  "ba_cycle:BA-form:radius/P-2/11-approximation":
    "an older approximation, half a per cent off the tangent radius that BS 93 prints",
  "ba_cycle:BA-11:threads-per-inch-approx": "printed as approximate: 82.0, where 25.4 / 0.31 is 81.94",
};

/**
 * Drills that a list chooses for a tap by no rule that we could find. The other tapping drills of these lists are the
 * largest stock drill within the nut's limits; for a taper thread the smallest one over the basic bore; in a list for
 * three quarters of the thread the smallest one over that bore.
 */
const drillChoices: Readonly<Record<string, string>> = {
  "whitworth:BSF-1-1/8:tapping-drill":
    "misprint: 26.50, where the nut's minor diameter ends at 25.70; the rest of that table would have 25.50",
  "pipe:G-1-1/2:tapping-drill": "a shop's choice: 45.5, where the nut's minor diameter ends at 45.485",
  "pipe:Rc-1:tapping-drill": "a shop's choice: 30.4, which the usual stock of metric drills has not",
  "pipe:Rc-1-1/2:tapping-drill":
    "a shop's choice: 44.5, less than the basic bore of 44.845; other lists have 45.0",
  "pipe:Rc-2:tapping-drill": "a shop's choice: 56.75, which the usual stock of metric drills has not",
  "drills:ME-5/32-x-40:tapping-drill":
    "82 % in a list for 75 %: the stock drill below, 3.36 would be for 75 %",
  "drills:ME-3/16-x-40:tapping-drill":
    "81 % in a list for 75 %: the stock drill below, 4.15 would be for 75 %",
  "drills:Brass-5/16-x-26:tapping-drill":
    "63 % in a list for 75 %: a fine thread in thin brass, 7.00 would be for 75 %",
  "drills:Brass-3/8-x-26:tapping-drill":
    "58 % in a list for 75 %: a fine thread in thin brass, 8.59 would be for 75 %",
};

export const notMet = { figures, drillChoices } as const;
export const unmatched: Readonly<Record<string, string>> = { ...figures, ...drillChoices };
