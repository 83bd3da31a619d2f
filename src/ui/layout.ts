/** Which of the three layouts the window has room for. */
export type Layout = "card" | "strip" | "phone";

/** Under 1100 px the route card becomes a strip of operations, under 600 px it lies on top. Fingers need the room sooner. */
export function layoutFor(width: number, touch: boolean): Layout {
  if (width < 600) return "phone";
  return width < (touch ? 1240 : 1100) ? "strip" : "card";
}

/**
 * Window width from which all words of the rail stand side by side, px.
 *
 * @param k what the type is multiplied by
 */
export function roomForWords(layout: Layout, k: number, touch: boolean): number {
  const words = 190 + 870 * k + (touch ? 40 : 0);
  return layout === "card" ? words + 82 + 110 * k : words + (touch ? 98 : 84) + 20 + 130 * k;
}
