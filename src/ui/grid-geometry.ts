/**
 * Places and widths of the grid in one style sheet made by script: the content policy allows no style attributes.
 * Rules for spans and paddings are added when first asked for.
 */
import { columnName } from "../engine/address.ts";
import type { SheetDocument } from "../job/document.ts";
import type { GridLines } from "./grid-lines.ts";
import { unitGap, unitSize } from "./slots.ts";

const defaultWidth = 96;

export class GridGeometry {
  readonly styles = new CSSStyleSheet();
  /** Left edge of every column from the row heads on, and the right edge of the last, px. */
  edges: readonly number[] = [0, defaultWidth];
  /** Of the type; 1 is normal. */
  scale = 1;
  /** Height of a row, px. */
  row = 28;
  private known = new Set<string>();
  private made = "";
  private drawn = false;

  /**
   * @param zone width of the row heads, px
   * @param scale of the type
   * @param widest that a column may be, px
   */
  lay(
    sheet: SheetDocument | undefined,
    columns: GridLines,
    zone: number,
    scale: number,
    widest: number,
  ): void {
    this.scale = scale;
    const widths = Array.from({ length: columns.all }, (_, index) =>
      columns.isHidden(index)
        ? 0
        : Math.round(Math.min(widest, (sheet?.columns[columnName(index)] ?? defaultWidth) * scale)),
    );
    const made = `${zone} ${widths.join(" ")}`;
    if (made === this.made) return;
    this.made = made;
    const edges = [0];
    for (const width of widths) edges.push(edges.at(-1)! + width);
    this.edges = edges;
    this.known = new Set();
    this.drawn = false;
    const rules = widths.map((width, index) => `.k${index}{left:${zone + edges[index]!}px;width:${width}px}`);
    this.styles.replaceSync(`${rules.join("")}.canvas,.heads,.row{width:${zone + edges.at(-1)!}px}`);
  }

  /** Draws a column at a width while it is being dragged; laying the sheet again ends it. */
  draw(column: number, width: number): void {
    const drawn = `.k${column}.k${column}{width:${Math.max(24, width)}px}`;
    if (this.drawn) this.styles.deleteRule(this.styles.cssRules.length - 1);
    this.styles.insertRule(drawn, this.styles.cssRules.length);
    this.drawn = true;
  }

  /** Class that makes a cell as wide as columns `first` to `last`. */
  wide(first: number, last: number): string {
    return this.rule(`w${first}-${last}`, `width:${this.edges[last + 1]! - this.edges[first]!}px`);
  }

  /** Class that lets text run on over columns `first` to `last`. */
  runOn(first: number, last: number): string {
    return this.rule(`m${first}-${last}`, `max-width:${this.edges[last + 1]! - this.edges[first]! - 16}px`);
  }

  /** Class that makes a cell `rows` high. */
  high(rows: number): string {
    return this.rule(`h${rows}`, `height:calc(var(--row) * ${rows})`);
  }

  /** Class that leaves room on the right, hundredths of an em. */
  room(hundredths: number): string {
    const whole = Math.max(0, Math.round(hundredths));
    return this.rule(`p${whole}`, `padding-right:${whole / 100}em`);
  }

  /** Class of a unit that stands in a lane on the right, hundredths of the em of its figure. */
  lane(hundredths: number): string {
    const whole = Math.round(hundredths);
    // The unit's own em is smaller than that of its figure, and the gap before it is no part of it.
    return this.rule(
      `u${whole}`,
      `position:absolute;left:calc(100% - 8px - ${((whole - unitGap) / 100 / unitSize).toFixed(3)}em)`,
    );
  }

  private rule(name: string, text: string): string {
    if (!this.known.has(name)) {
      this.known.add(name);
      // Doubled, so that it outweighs the rule of the column and of the cell.
      this.styles.insertRule(`.${name}.${name}{${text}}`);
    }
    return name;
  }
}
