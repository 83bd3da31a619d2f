/** What lies over what, is cut off or cannot be reached on the page as it stands: measured, for every view alike. */
import type { Page } from "playwright-core";

/** Faults in words; px that letters may touch: 2. */
export function layoutFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const all: Element[] = [];
    const walk = (root: Element | ShadowRoot) => {
      for (const element of root.querySelectorAll("*")) {
        all.push(element);
        if (element.shadowRoot) walk(element.shadowRoot);
      }
    };
    walk(document.documentElement);
    const parentOf = (node: Node): Element | undefined => {
      const slot = node instanceof Element ? node.assignedSlot : null;
      const up = slot ?? node.parentNode;
      return up instanceof ShadowRoot ? up.host : up instanceof Element ? up : undefined;
    };
    const above = (node: Node): Element[] => {
      const list: Element[] = [];
      for (let at = parentOf(node); at; at = parentOf(at)) list.push(at);
      return list;
    };
    // What is on top: an open menu, else the last dialog, else the page.
    const menu = all.findLast((one) => one.matches(":popover-open"));
    const dialog = all.findLast((one) => one instanceof HTMLDialogElement && one.open);
    const over = menu ?? dialog;
    const shown = (element: Element) =>
      element.checkVisibility({
        opacityProperty: true,
        visibilityProperty: true,
        contentVisibilityAuto: true,
      });
    const clips = new Map<Element, CSSStyleDeclaration>();
    const styleOf = (element: Element) => {
      const known = clips.get(element) ?? getComputedStyle(element);
      clips.set(element, known);
      return known;
    };
    interface Piece {
      readonly element: Element;
      readonly name: string;
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    }
    const nameOf = (element: Element, text: string) => {
      const host = above(element).find((one) => one.localName.includes("-"));
      return `${host?.localName ?? ""} ${element.localName} "${text.trim().replace(/\s+/g, " ").slice(0, 40)}"`;
    };
    /** The part of a box that its scrolling ancestors let through. */
    const cut = (element: Element, box: DOMRect) => {
      let { left, top, right, bottom } = box;
      for (const one of [element, ...above(element)]) {
        const { overflowX, overflowY, clipPath, display } = styleOf(one);
        if (clipPath !== "none" && /inset/.test(clipPath)) return undefined;
        if (display === "contents") continue;
        const edge = one.getBoundingClientRect();
        if (overflowX !== "visible") {
          left = Math.max(left, edge.left);
          right = Math.min(right, edge.right);
        }
        if (overflowY !== "visible") {
          top = Math.max(top, edge.top);
          bottom = Math.min(bottom, edge.bottom);
        }
        if (one === over || one.matches(":popover-open, dialog")) break;
      }
      return right - left > 2 && bottom - top > 2 ? { left, top, right, bottom } : undefined;
    };
    const deepAt = (x: number, y: number) => {
      let at = document.elementFromPoint(x, y);
      for (let inside = at?.shadowRoot?.elementFromPoint(x, y); inside && inside !== at; ) {
        at = inside;
        inside = at.shadowRoot?.elementFromPoint(x, y);
      }
      return at;
    };
    const seen = (element: Element, x: number, y: number) => {
      const at = deepAt(x, y);
      return at !== null && (at === element || above(at).includes(element) || above(element).includes(at));
    };
    /** What is meant to lie over the sheet and what stands under it: panels, lists, heads, the cell that is written. */
    const overlays =
      "why-drawer, find-bar, cell-menu, choice-list, [popover], .cm-tooltip, .heads, .rh, .frozen, .edit, .fz, .drop";
    const isCovered = (one: Element, other: Element, x: number, y: number) => {
      const at = deepAt(x, y);
      const layer = at ? [at, ...above(at)].find((each) => each.matches(overlays)) : undefined;
      const inside = (element: Element) => element === layer || above(element).includes(layer!);
      return layer !== undefined && !(inside(one) && inside(other));
    };
    const inTop = (element: Element) => !over || element === over || above(element).includes(over);
    const scrolls = (element: Element) =>
      [element, ...above(element)].some((one) => /auto|scroll/.test(styleOf(one).overflowX));
    const pieces: Piece[] = [];
    for (const element of all) {
      if (!inTop(element) || element.closest("svg, .skip") || !shown(element)) continue;
      const isControl = element.matches("button, input, select, textarea, a[href], [tabindex]");
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) continue;
      if (isControl && !element.matches("[role=gridcell]")) {
        if ((box.left < -1 || box.right > innerWidth + 1) && !scrolls(element))
          found.push(`${nameOf(element, element.textContent ?? "")} sticks out to the side`);
        const held = [element, ...above(element)].some((one) => /auto|scroll/.test(styleOf(one).overflowY));
        if ((box.top < -1 || box.bottom > innerHeight + 1) && !held)
          found.push(`${nameOf(element, element.textContent ?? "")} sticks out above or below`);
      }
      const { overflowX, textOverflow, whiteSpace } = styleOf(element);
      const own = [...element.childNodes].filter(
        (node): node is Text => node instanceof Text && node.data.trim() !== "",
      );
      const words = own.map((node) => node.data).join(" ");
      if (
        own.length > 0 &&
        /hidden|clip/.test(overflowX) &&
        textOverflow !== "ellipsis" &&
        whiteSpace !== "pre" &&
        element.scrollWidth > element.clientWidth + 1 &&
        cut(element, box) &&
        !element.closest("[role=gridcell]")
      )
        found.push(`${nameOf(element, words)} is cut off without a sign`);
      for (const node of own) {
        const range = document.createRange();
        range.selectNodeContents(node);
        for (const line of range.getClientRects()) {
          const piece = cut(element, line);
          if (!piece) continue;
          const x = (piece.left + piece.right) / 2;
          const y = (piece.top + piece.bottom) / 2;
          const name = nameOf(element, node.data);
          if (seen(element, x, y)) pieces.push({ element, name, ...piece });
          else if (
            deepAt(x, y) &&
            styleOf(element).pointerEvents !== "none" &&
            !element.closest("[role=gridcell]") &&
            !isCovered(element, element, x, y)
          )
            found.push(`${name} is hidden under ${deepAt(x, y)!.localName}`);
        }
      }
    }
    pieces.forEach((one, index) => {
      if (one.left < -1 || one.right > innerWidth + 1) found.push(`${one.name} sticks out to the side`);
      for (const other of pieces.slice(index + 1)) {
        const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
        const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
        // Lines of a paragraph have the height of the type and stand closer than that.
        if (wide <= 2 || high <= 5) continue;
        if (one.element === other.element) continue;
        const x = (Math.max(one.left, other.left) + Math.min(one.right, other.right)) / 2;
        const y = (Math.max(one.top, other.top) + Math.min(one.bottom, other.bottom)) / 2;
        if (isCovered(one.element, other.element, x, y)) continue;
        found.push(
          `${one.name} and ${other.name} lie over each other by ${Math.round(wide)} by ${Math.round(high)}`,
        );
      }
    });
    if (over) {
      const box = over.getBoundingClientRect();
      if (box.left < -1 || box.top < -1 || box.right > innerWidth + 1 || box.bottom > innerHeight + 1)
        found.push(`the panel is larger than the window: ${JSON.stringify(box)}`);
    }
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) found.push(`the page is ${scrollWidth} wide in ${clientWidth}`);
    return [...new Set(found)];
  });
}
