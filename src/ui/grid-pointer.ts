/** Mouse, pen and finger on the grid: what they choose. A finger that moves pans the sheet and chooses nothing. */
import type { Spot } from "./grid-keys.ts";

export interface PointerHost {
  /** Row and column under the point, clamped to the sheet. */
  spotAt(event: PointerEvent): Spot;
  /** The same, with -1 where the point is on the zone marks. */
  markAt(event: PointerEvent): Spot;
  active(): Spot;
  choose(spot: Spot, extend: boolean): void;
  chooseRange(from: Spot, to: Spot): void;
  chooseBand(spot: Spot): void;
  /** Second tap, double click, or a touch of the wedge of a choice. */
  edit(): void;
  onWedge(event: PointerEvent, spot: Spot): boolean;
  corners(): { from: Spot; to: Spot };
}

export class GridPointer {
  private byFinger = false;
  /** Where the finger came down, and whether that cell was active by then. The page may move under it before it lifts. */
  private touched: { readonly spot: Spot; readonly again: boolean; readonly wedge: boolean } | undefined;

  constructor(
    private readonly scroll: HTMLElement,
    private readonly host: PointerHost,
  ) {
    scroll.addEventListener("pointerdown", (event) => this.onDown(event));
    scroll.addEventListener("click", (event) => this.onClick(event as PointerEvent));
    scroll.addEventListener("dblclick", (event) => {
      if (!this.byFinger && !inEditor(event)) host.edit();
    });
  }

  private onDown(event: PointerEvent) {
    if (inEditor(event) || !event.isPrimary || event.button !== 0) return;
    const { host } = this;
    const grip = gripOf(event);
    this.byFinger = event.pointerType === "touch";
    if (this.byFinger && !grip) {
      const spot = host.markAt(event);
      const again = key(spot) === key(host.active());
      this.touched = { spot, again, wedge: host.onWedge(event, spot) };
      return;
    }
    // A press on the scroll bar is beside the content.
    if (event.offsetX > this.scroll.clientWidth && event.target === this.scroll) return;
    event.preventDefault();
    const spot = host.markAt(event);
    if (grip) {
      const { from, to } = host.corners();
      const fixed = grip === "from" ? to : from;
      this.follow(event, (at) => host.chooseRange(fixed, at));
    } else if (spot.row < 0 || spot.column < 0) {
      host.chooseBand(spot);
    } else {
      host.choose(spot, event.shiftKey);
      if (host.onWedge(event, spot)) host.edit();
      else this.follow(event, (at) => host.choose(at, true));
    }
  }

  private follow(down: PointerEvent, move: (at: Spot) => void) {
    const { scroll } = this;
    scroll.setPointerCapture(down.pointerId);
    // The hand trembles inside a cell; only another cell is a move.
    let last = key(this.host.spotAt(down));
    const onMove = (event: PointerEvent) => {
      const at = this.host.spotAt(event);
      if (key(at) === last) return;
      last = key(at);
      move(at);
    };
    const end = () => {
      scroll.removeEventListener("pointermove", onMove);
      scroll.removeEventListener("pointerup", end);
      scroll.removeEventListener("pointercancel", end);
    };
    scroll.addEventListener("pointermove", onMove);
    scroll.addEventListener("pointerup", end);
    scroll.addEventListener("pointercancel", end);
  }

  private onClick(event: PointerEvent) {
    if (!this.byFinger || inEditor(event) || gripOf(event)) return;
    const { host, touched } = this;
    this.touched = undefined;
    if (!touched) return;
    const { spot, again, wedge } = touched;
    if (spot.row < 0 || spot.column < 0) return host.chooseBand(spot);
    host.choose(spot, false);
    if (again || wedge) host.edit();
  }
}

function key(spot: Spot): string {
  return `${spot.row} ${spot.column}`;
}

function inEditor(event: Event): boolean {
  const target = event.composedPath()[0];
  return (
    target instanceof HTMLInputElement ||
    event.composedPath().some((node) => node instanceof HTMLElement && node.localName === "choice-list")
  );
}

function gripOf(event: Event): "from" | "to" | undefined {
  const target = event.composedPath()[0];
  if (!(target instanceof HTMLElement) || !target.classList.contains("grip")) return undefined;
  return target.classList.contains("from") ? "from" : "to";
}
