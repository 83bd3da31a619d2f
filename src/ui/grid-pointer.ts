/** Mouse, pen and finger on the grid: what they choose. A finger that moves pans the sheet and chooses nothing. */
import type { Spot } from "./grid-keys.ts";

/** Whole rows, whole columns, or neither. */
export type Band = "rows" | "columns" | undefined;

export interface PointerHost {
  /** Row and column under the point, clamped to the sheet. */
  spotAt(event: PointerEvent): Spot;
  /** The same, with -1 where the point is on the zone marks. */
  markAt(event: PointerEvent): Spot;
  active(): Spot;
  choose(spot: Spot, extend: boolean): void;
  /** @param band whole rows or columns are being drawn */
  chooseRange(from: Spot, to: Spot, band: Band): void;
  /** Takes the row or the column of a zone mark, or all that lie between it and those taken before. */
  chooseBand(spot: Spot, extend: boolean): void;
  /** Whether a cell or a zone mark lies in what is chosen. */
  holds(spot: Spot): boolean;
  /** Second tap, double click, or a touch of the wedge of a choice. */
  edit(): void;
  onWedge(event: PointerEvent, spot: Spot): boolean;
  corners(): { from: Spot; to: Spot; band: Band };
  /** A long press, in px of the window. */
  menu(at: { x: number; y: number }): void;
  /** Where the fill handle is, to show what it would fill; undefined where it is taken away. */
  fillTo(spot: Spot | undefined): void;
  /** A double press on the fill handle: down as far as the cells beside are filled. */
  fillBeside(): void;
  /** The fill handle was let go over this cell. */
  fill(spot: Spot): void;
  /** Width of a column as it shows, px. */
  widthNow(column: number): number;
  /** While its edge is dragged, px. */
  width(column: number, width: number): void;
  keepWidth(column: number, width: number): void;
  fit(column: number): void;
  /** True while a formula that is typed waits for a cell. */
  awaits(): boolean;
  /** A press while a formula is typed. @returns false where the formula does not wait for a cell */
  point(from: Spot, to: Spot): boolean;
}

/** How long a finger rests until the menu opens, ms; and how far it may tremble, px. */
const longPress = 500;
const tremble = 10;
/** How near the edge of the view a drawing pointer moves the sheet on, px; and how often, ms. */
const edge = 20;
const beyond = 30;
/** A grip stands on the corner of its range; drawn straight down it means the column that it ends, px. */
const inward = 16;
const onwardEvery = 60;
/** Two presses within this time are a double one, ms. */
const twice = 400;

export class GridPointer {
  private byFinger = false;
  /** Where the finger came down, and whether that cell was active by then. The page may move under it before it lifts. */
  private touched: { readonly spot: Spot; readonly again: boolean; readonly wedge: boolean } | undefined;
  private resting: ReturnType<typeof setTimeout> | undefined;
  private downAt = { x: 0, y: 0 };
  private onEdge = false;
  private onFill = false;
  private pressed: { readonly column: number; readonly when: number } | undefined;
  /** The pointer that draws something; any other one is the palm meanwhile. */
  private drawing: number | undefined;

  constructor(
    private readonly scroll: HTMLElement,
    private readonly host: PointerHost,
  ) {
    scroll.addEventListener("pointerdown", (event) => this.onDown(event));
    scroll.addEventListener("click", (event) => this.onClick(event as PointerEvent));
    scroll.addEventListener("dblclick", (event) => {
      if (this.byFinger || inEditor(event) || columnOf(event) !== undefined || this.onEdge) return;
      if (this.onFill) host.fillBeside();
      else host.edit();
    });
    // A tap takes the focus away just before it is a click, and with it the formula that it points for.
    scroll.addEventListener("mousedown", (event) => {
      const awaited = this.byFinger && host.awaits();
      // The press that opens the menu leaves the range as it is, and the focus of a cell would end it.
      const forMenu = event.button === 2 && host.holds(host.markAt(event as PointerEvent));
      if ((awaited || forMenu) && !inEditor(event)) event.preventDefault();
    });
    for (const kind of ["pointerup", "pointercancel"] as const)
      scroll.addEventListener(kind, () => clearTimeout(this.resting));
    scroll.addEventListener("pointermove", (event) => {
      if (Math.hypot(event.clientX - this.downAt.x, event.clientY - this.downAt.y) > tremble)
        clearTimeout(this.resting);
    });
  }

  private onDown(event: PointerEvent) {
    // A second finger, or the palm, is no hand.
    if (!event.isPrimary) clearTimeout(this.resting);
    if (inEditor(event) || !event.isPrimary || event.button !== 0 || this.drawing !== undefined) return;
    const { host } = this;
    const grip = gripOf(event);
    const column = columnOf(event);
    this.byFinger = event.pointerType === "touch";
    this.onEdge = column !== undefined;
    this.onFill = grip === "fill";
    if (column !== undefined) return this.drawWidth(event, column);
    if (this.byFinger && !grip) return this.rest(event);
    // A press on the scroll bar is beside the content.
    if (event.offsetX > this.scroll.clientWidth && event.target === this.scroll) return;
    event.preventDefault();
    const spot = host.markAt(event);
    if (grip === "fill") {
      let last: Spot | undefined;
      this.follow(
        event,
        (at) => {
          last = at;
          host.fillTo(at);
        },
        // A press alone fills nothing: it may be the first of two.
        () => last && host.fill(last),
        () => host.fillTo(undefined),
      );
    } else if (grip) {
      const { from, to, band } = host.corners();
      const fixed = grip === "from" ? to : from;
      this.follow(
        event,
        (at) => host.chooseRange(fixed, at, band),
        () => {},
        () => host.chooseRange(from, to, band),
        grip === "from" ? inward : -inward,
      );
    } else if (isBand(spot)) {
      host.chooseBand(spot, event.shiftKey);
      this.follow(event, ({ row, column }) =>
        host.chooseBand({ row: spot.row < 0 ? -1 : row, column: spot.column < 0 ? -1 : column }, true),
      );
    } else if (host.point(spot, spot)) {
      this.follow(event, (at) => host.point(spot, at));
    } else {
      host.choose(spot, event.shiftKey);
      if (host.onWedge(event, spot)) host.edit();
      else this.follow(event, (at) => host.choose(at, true));
    }
  }

  /** A finger came down: it may tap, pan, or rest until the menu opens. */
  private rest(event: PointerEvent) {
    const { host } = this;
    const spot = host.markAt(event);
    const again = key(spot) === key(host.active());
    this.touched = { spot, again, wedge: host.onWedge(event, spot) };
    const at = { x: event.clientX, y: event.clientY };
    this.downAt = at;
    clearTimeout(this.resting);
    this.resting = setTimeout(() => {
      this.touched = undefined;
      // What is chosen stays so, or no finger could give a command for several cells.
      if (!host.holds(spot)) {
        if (isBand(spot)) host.chooseBand(spot, false);
        else host.choose(spot, false);
      }
      host.menu(at);
    }, longPress);
  }

  private drawWidth(down: PointerEvent, column: number) {
    const { host, pressed } = this;
    down.preventDefault();
    this.pressed = { column, when: down.timeStamp };
    // The click that ends a drag goes to the sheet, so a second press is told by the clock.
    if (pressed?.column === column && down.timeStamp - pressed.when < twice) {
      this.pressed = undefined;
      return host.fit(column);
    }
    const before = host.widthNow(column);
    let width = before;
    this.hold(
      down,
      (event) => {
        width = Math.max(24, before + event.clientX - down.clientX);
        host.width(column, width);
      },
      () => width !== before && host.keepWidth(column, width),
      () => host.width(column, before),
    );
  }

  private follow(
    down: PointerEvent,
    move: (at: Spot) => void,
    end: () => void = () => {},
    cancel: () => void = end,
    shift = 0,
  ) {
    // The hand trembles inside a cell; only another cell is a move.
    const spotAt = (event: PointerEvent) =>
      this.host.spotAt(shift === 0 ? event : movedBy(event, shift, shift));
    let last = key(spotAt(down));
    let pointer = down;
    const go = (event: PointerEvent) => {
      const at = spotAt(event);
      if (key(at) === last) return;
      last = key(at);
      move(at);
    };
    // The sheet goes on under a pointer that rests at its edge.
    const onward = setInterval(() => {
      const next = this.beyondEdge(pointer);
      if (next) go(next);
    }, onwardEvery);
    const over = (act: () => void) => () => {
      clearInterval(onward);
      act();
    };
    this.hold(
      down,
      (event) => {
        pointer = event;
        go(event);
      },
      over(end),
      over(cancel),
    );
  }

  /** A point out of view, past the edge that the pointer is at. */
  private beyondEdge(event: PointerEvent): PointerEvent | undefined {
    const { clientX, clientY } = event;
    const { left, top } = this.scroll.getBoundingClientRect();
    const { clientWidth, clientHeight } = this.scroll;
    const past = (at: number, length: number) => (at < edge ? -beyond : at > length - edge ? beyond : 0);
    const x = past(clientX - left, clientWidth);
    const y = past(clientY - top, clientHeight);
    if (x === 0 && y === 0) return undefined;
    return movedBy(event, x, y);
  }

  /** Keeps the pointer until it is let go, or taken away. */
  private hold(
    down: PointerEvent,
    onMove: (event: PointerEvent) => void,
    onEnd: () => void,
    onCancel: () => void = () => {},
  ) {
    const { scroll } = this;
    const { pointerId } = down;
    scroll.setPointerCapture(pointerId);
    this.drawing = pointerId;
    const own = (act: (event: PointerEvent) => void) => (event: PointerEvent) => {
      if (event.pointerId === pointerId) act(event);
    };
    const move = own(onMove);
    const over = (act: () => void) =>
      own(() => {
        scroll.removeEventListener("pointermove", move);
        scroll.removeEventListener("pointerup", end);
        scroll.removeEventListener("pointercancel", cancel);
        scroll.removeEventListener("lostpointercapture", cancel);
        this.drawing = undefined;
        act();
      });
    const end = over(onEnd);
    const cancel = over(onCancel);
    scroll.addEventListener("pointermove", move);
    scroll.addEventListener("pointerup", end);
    scroll.addEventListener("pointercancel", cancel);
    // The pointer may be lost without a cancel, as when its window goes.
    scroll.addEventListener("lostpointercapture", cancel);
  }

  private onClick(event: PointerEvent) {
    if (!this.byFinger || inEditor(event) || gripOf(event)) return;
    const { host, touched } = this;
    this.touched = undefined;
    if (!touched) return;
    const { spot, again, wedge } = touched;
    if (isBand(spot)) return host.chooseBand(spot, false);
    if (host.point(spot, spot)) return;
    host.choose(spot, false);
    if (again || wedge) host.edit();
  }
}

function key(spot: Spot): string {
  return `${spot.row} ${spot.column}`;
}

function movedBy({ clientX, clientY }: PointerEvent, x: number, y: number): PointerEvent {
  return new PointerEvent("pointermove", { clientX: clientX + x, clientY: clientY + y });
}

/** On the zone marks. */
function isBand({ row, column }: Spot): boolean {
  return row < 0 || column < 0;
}

function inEditor(event: Event): boolean {
  const target = event.composedPath()[0];
  return (
    target instanceof HTMLTextAreaElement ||
    event
      .composedPath()
      .some((node) => node instanceof HTMLElement && /^(choice-list|formula-field)$/.test(node.localName))
  );
}

function gripOf(event: Event): "from" | "to" | "fill" | undefined {
  const target = event.composedPath()[0];
  if (!(target instanceof HTMLElement)) return undefined;
  if (target.classList.contains("fill")) return "fill";
  if (!target.classList.contains("grip")) return undefined;
  return target.classList.contains("from") ? "from" : "to";
}

/** The column whose edge is under the point. */
function columnOf(event: Event): number | undefined {
  const target = event.composedPath()[0];
  const column = target instanceof HTMLElement ? target.dataset.column : undefined;
  return column === undefined ? undefined : Number(column);
}
