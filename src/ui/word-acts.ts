/** What each word of the rail does, and what each key does that belongs to the whole page. New ones go into these tables. */
import type { BenchActs } from "./bench-acts.ts";
import type { HelpActs } from "./help-acts.ts";
import type { LatheActs } from "./lathe-acts.ts";
import type { PageActs } from "./page-acts.ts";
import type { PaperActs } from "./paper-acts.ts";
import type { Word } from "./rail-words.ts";
import type { SheetActs } from "./sheet-acts.ts";
import type { ShelfActs } from "./shelf-acts.ts";
import type { WhatIfActs } from "./whatif-acts.ts";

/** What acts are there to be called. */
export interface Acts {
  readonly page: PageActs;
  readonly shelf: ShelfActs;
  readonly paper: PaperActs;
  readonly bench: BenchActs;
  readonly whatIf: WhatIfActs;
  readonly lathe: LatheActs;
  readonly cells: SheetActs;
  readonly help: HelpActs;
}

type Act = (acts: Acts) => unknown;

const hand =
  (hand: "desk" | "touch" | "gloves"): Act =>
  ({ page }) =>
    page.parts.settings.choose({ hand });

export const wordActs: Readonly<Record<Word, Act>> = {
  shelf: ({ shelf }) => shelf.show(),
  undo: ({ page }) => page.step("undo"),
  redo: ({ page }) => page.step("redo"),
  trial: ({ whatIf }) => whatIf.showTrial(),
  seek: ({ whatIf }) => whatIf.showSeek(),
  open: ({ page }) => page.parts.intake.choose(),
  save: ({ page }) => page.saveFile(),
  card: ({ paper }) => paper.showCard(),
  bench: ({ bench }) => bench.show(),
  why: ({ help }) => help.turnWhy(),
  guide: ({ help }) => help.showGuide(),
  lathe: ({ lathe }) => lathe.show(),
  print: ({ paper }) => paper.showPrint(),
  find: ({ cells }) => cells.find(),
  cells: ({ cells }) => cells.cells(),
  names: ({ cells }) => cells.names(),
  history: ({ cells }) => cells.history(),
  title: ({ cells }) => cells.title(),
  duplicate: ({ cells }) => cells.duplicate(),
  sign: ({ page }) => page.sign(),
  rename: ({ page }) => page.parts.element("route-card")?.rename(),
  up: ({ page }) => page.move(page.sheet, -1),
  down: ({ page }) => page.move(page.sheet, 1),
  add: ({ page }) => page.route({ act: "add" }),
  remove: ({ page }) => page.drop(page.sheet),
  large: ({ page: { parts } }) => parts.settings.choose({ large: !parts.settings.large }),
  ground: ({ page: { parts } }) =>
    parts.settings.choose({ ground: parts.settings.ground === "slate" ? "paper" : "slate" }),
  tab: ({ page: { parts } }) => parts.settings.choose({ tab: !parts.settings.tab }),
  "hand auto": ({ page }) => page.parts.settings.forgetHand(),
  "hand desk": hand("desk"),
  "hand touch": hand("touch"),
  "hand gloves": hand("gloves"),
};

interface PageKey {
  /** As the event names it, small letters; with Ctrl or Cmd before it where that is held down. */
  readonly key: string;
  readonly shift: boolean;
  /** True where a text field needs the key itself. */
  readonly notInText?: boolean;
  /** What answers false has let the key pass. */
  readonly act: Act;
}

const pageKeys: readonly PageKey[] = [
  { key: "f6", shift: false, act: ({ page }) => turn(page, 1) },
  { key: "f6", shift: true, act: ({ page }) => turn(page, -1) },
  { key: "escape", shift: false, act: ({ help, page }) => page.parts.said.dismiss() || help.leaveWhy() },
  { key: "ctrl f", shift: false, act: wordActs.find },
  { key: "ctrl s", shift: false, act: wordActs.save },
  { key: "ctrl z", shift: false, notInText: true, act: wordActs.undo },
  { key: "ctrl z", shift: true, notInText: true, act: wordActs.redo },
  { key: "ctrl y", shift: false, notInText: true, act: wordActs.redo },
];

/** Does what the key means to the page as a whole. @returns false when it means nothing */
export function onPageKey(event: KeyboardEvent, acts: Acts): boolean {
  if (event.altKey) return false;
  const key = `${event.ctrlKey || event.metaKey ? "ctrl " : ""}${event.key.toLowerCase()}`;
  const found = pageKeys.find((one) => one.key === key && one.shift === event.shiftKey);
  if (!found || (found.notInText && isText(event.composedPath()[0]))) return false;
  return found.act(acts) !== false;
}

function isText(target: EventTarget | undefined): boolean {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
}

/** Order of the F6 ring. */
const regions = ["route-card", "rail-words", "entry-line", "sheet-grid", "title-block"] as const;

/** Moves the focus to the next part of the page. */
function turn({ parts }: PageActs, by: 1 | -1): void {
  const now = regions.findIndex((name) => parts.element(name)?.matches(":focus-within"));
  parts.element(regions[(now + by + regions.length) % regions.length]!)?.focus();
}
