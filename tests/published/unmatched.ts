/** Every published row about a thread with which we do not agree to its own rounding, and why. */
export const unmatched: Readonly<Record<string, string>> = {
  "metric:M2:cat:minor-diameter-d3-min-6g":
    "misprint: 1.407 in that catalogue; d3 max 1.490 less Td2 0.067 less 0.0387 P is 1.408, and its other rows follow that rule",
  "whitworth:BSW-9/16:basic-minor-diameter":
    "another rule: 0.4559 in that table; BS 84 rounds the depth of 12 threads per inch to 0.0534, so 0.5625 - 0.1068 = 0.4557",
  "ba_cycle:BA-form:radius/P-2/11-approximation":
    "an older approximation, half a per cent off the tangent radius that BS 93 prints",
  "ba_cycle:BA-11:threads-per-inch-approx": "printed as approximate: 82.0, where 25.4 / 0.31 is 81.94",
  "whitworth:BSF-1-1/8:tapping-drill":
    "misprint: 26.50, where the nut's minor diameter ends at 25.70; the rest of that table would have 25.50",
  // The other tapping drills of these lists are the largest stock drill within the nut's limits, or for a taper thread the
  // smallest one over the basic bore.
  "pipe:G-1-1/2:tapping-drill": "a shop's choice: 45.5, where the nut's minor diameter ends at 45.485",
  "pipe:Rc-1:tapping-drill": "a shop's choice: 30.4, which the usual stock of metric drills has not",
  "pipe:Rc-1-1/2:tapping-drill":
    "a shop's choice: 44.5, less than the basic bore of 44.845; other lists have 45.0",
  "pipe:Rc-2:tapping-drill": "a shop's choice: 56.75, which the usual stock of metric drills has not",
};
