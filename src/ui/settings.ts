/**
 * How this person likes to see the page: ground, size of type, hand. Kept in localStorage, because it must be there
 * before the first paint; where that is refused the page works with what it can tell from the screen.
 */
export type Ground = "paper" | "slate";
export type Hand = "desk" | "touch" | "gloves";

export interface Chosen {
  readonly ground?: Ground;
  readonly hand?: Hand;
  readonly large?: boolean;
  /** Tab goes to the next cell. */
  readonly tab?: boolean;
}

const place = "halfangle.settings";

export class Settings {
  private chosen: Chosen = read();
  private readonly listeners = new Set<() => void>();
  private readonly coarse = matchMedia("(pointer: coarse)");
  private readonly dark = matchMedia("(prefers-color-scheme: dark)");
  private readonly roomy = matchMedia("(min-width: 900px)");

  constructor(private readonly root: HTMLElement = document.documentElement) {
    for (const query of [this.coarse, this.dark, this.roomy])
      query.addEventListener("change", () => this.apply());
    this.apply();
  }

  get ground(): Ground {
    return this.chosen.ground ?? (this.dark.matches ? "slate" : "paper");
  }

  /** The hand in use: the chosen one, else by the pointer. */
  get hand(): Hand {
    return this.chosen.hand ?? (this.coarse.matches ? "touch" : "desk");
  }

  /** The chosen hand; undefined while the page goes by the pointer. */
  get chosenHand(): Hand | undefined {
    return this.chosen.hand;
  }

  /** A tablet stands further off than a desk screen, so there large type is where it starts. */
  get large(): boolean {
    return this.chosen.large ?? (this.coarse.matches && this.roomy.matches);
  }

  /** Else Tab leaves the grid, as it leaves any other control. */
  get tab(): boolean {
    return this.chosen.tab ?? false;
  }

  choose(what: Chosen): void {
    this.chosen = { ...this.chosen, ...what };
    this.write();
  }

  /** Back to going by the pointer. */
  forgetHand(): void {
    const { hand: _, ...rest } = this.chosen;
    this.chosen = rest;
    this.write();
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private write(): void {
    try {
      localStorage.setItem(place, JSON.stringify(this.chosen));
    } catch {
      // Refused or full: the choice then lasts as long as the page.
    }
    this.apply();
  }

  private apply(): void {
    this.root.dataset.theme = this.ground;
    this.root.dataset.hand = this.hand;
    this.root.dataset.type = this.large ? "large" : "normal";
    for (const listener of this.listeners) listener();
  }
}

function read(): Chosen {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(place) ?? "{}");
    if (typeof kept !== "object" || kept === null) return {};
    const { ground, hand, large, tab } = kept as Record<string, unknown>;
    return {
      ...(ground === "paper" || ground === "slate" ? { ground } : {}),
      ...(hand === "desk" || hand === "touch" || hand === "gloves" ? { hand } : {}),
      ...(typeof large === "boolean" ? { large } : {}),
      ...(typeof tab === "boolean" ? { tab } : {}),
    };
  } catch {
    return {};
  }
}
