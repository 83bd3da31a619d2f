/** The rows or the columns of a sheet as they show: hidden ones take no place, frozen ones stay while the others scroll. */
import type { Span } from "./grid-window.ts";

export class GridLines {
  /** How many there are, hidden ones included. */
  readonly all: number;
  /** How many show. */
  readonly count: number;
  /** False where the view has no room for lines that stay: then all of them scroll. */
  roomy = true;
  /** How many of those that show are to be frozen. */
  private readonly wanted: number;
  /** undefined when none is hidden: then the place of a line is its number. */
  private readonly shown: readonly number[] | undefined;

  /** @param frozen first lines that stay, hidden ones included */
  constructor(all: number, hidden: readonly Span[], frozen: number) {
    this.all = all;
    const gone = new Set<number>();
    for (const { first, last } of hidden)
      for (let line = first; line <= Math.min(last, all - 1); line++) gone.add(line);
    // A sheet of which nothing shows could not be brought back by hand.
    const some = gone.size > 0 && gone.size < all;
    this.shown = some
      ? Array.from({ length: all }, (_, i) => i).filter((line) => !gone.has(line))
      : undefined;
    this.count = this.shown?.length ?? all;
    this.wanted = frozen === 0 ? 0 : this.placeOf(Math.min(frozen, all));
  }

  /** How many of those that show are frozen. */
  get frozen(): number {
    return this.roomy ? this.wanted : 0;
  }

  /** The line at a place, counted from 0 among those that show; the last one past the end. */
  at(place: number): number {
    const within = Math.max(0, Math.min(this.count - 1, place));
    return this.shown ? this.shown[within]! : within;
  }

  /** The place of a line; of the next one that shows when it is hidden. */
  placeOf(line: number): number {
    const { shown } = this;
    if (!shown) return line;
    let [low, high] = [0, shown.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (shown[middle]! < line) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  isHidden(line: number): boolean {
    return this.shown !== undefined && this.shown[this.placeOf(line)] !== line;
  }

  /** True when lines just before this one are hidden. */
  isAfterHidden(line: number): boolean {
    return this.shown !== undefined && !this.isHidden(line) && (line > 0 ? this.isHidden(line - 1) : false);
  }

  /** The nearest line that shows: itself, else the one after, else the one before. */
  near(line: number): number {
    return this.isHidden(line) ? this.at(this.placeOf(line)) : line;
  }

  /** The line that is `by` places on; hidden ones are passed over. */
  step(line: number, by: number): number {
    const place = this.placeOf(line);
    const from = this.isHidden(line) && by > 0 ? place - 1 : place;
    return this.at(from + by);
  }

  /** The lines to draw: those that are frozen, and apart from them the ones in view with `pinned` in its place among them. */
  drawn(view: Span, pinned: number): { frozen: number[]; scrolled: number[] } {
    const frozen = Array.from({ length: this.frozen }, (_, place) => this.at(place));
    const scrolled: number[] = [];
    for (let line = view.first; line <= view.last; line++)
      if (!this.isHidden(line) && this.placeOf(line) >= this.frozen) scrolled.push(line);
    const away = !scrolled.includes(pinned) && this.placeOf(pinned) >= this.frozen && !this.isHidden(pinned);
    if (away) scrolled.push(pinned);
    return { frozen, scrolled: scrolled.sort((a, b) => a - b) };
  }
}
