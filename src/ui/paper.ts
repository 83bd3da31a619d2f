/** What goes to the printer: the page rule, and the part of the document that stands on paper instead of the app. */
import { html, LitElement, nothing, type TemplateResult } from "lit";
import { customElement, property } from "lit/decorators.js";
import { drawingStyle } from "../drawing/style.ts";
import { paperStyle } from "./paper-style.ts";
import { cardStyle } from "./shop-card-style.ts";

export const papers = {
  A4: { width: 210, height: 297 },
  A5: { width: 148, height: 210 },
  Letter: { width: 215.9, height: 279.4 },
} as const;
export type PaperName = keyof typeof papers;

export interface Page {
  readonly paper: PaperName;
  readonly landscape: boolean;
  /** White edge all round, mm. */
  readonly margin: number;
}

/** CSS px in a millimetre: 96 to the inch, which is 127/5 mm. */
const perMm = 480 / 127;

/** Room for what is printed, CSS px. */
export function roomOn({ paper, landscape, margin }: Page): { width: number; height: number } {
  const { width, height } = papers[paper];
  const [across, along] = landscape ? [height, width] : [width, height];
  return { width: (across - 2 * margin) * perMm, height: (along - 2 * margin) * perMm };
}

/** Stands beside the app in the document. Empty, it lets the browser print the page as it is. */
@customElement("print-area")
export class PrintArea extends LitElement {
  static override styles = [drawingStyle, paperStyle, cardStyle];

  @property({ attribute: false }) content: TemplateResult | undefined;

  // The policy allows no style text in the document, but style sheets made by script; only those of the document itself
  // may say how large the page is.
  private static readonly pageRule = new CSSStyleSheet();
  private readonly scaleRule = new CSSStyleSheet();

  override connectedCallback(): void {
    super.connectedCallback();
    this.shadowRoot!.adoptedStyleSheets = [...this.shadowRoot!.adoptedStyleSheets, this.scaleRule];
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, PrintArea.pageRule];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== PrintArea.pageRule);
  }

  override render() {
    return this.content ?? nothing;
  }

  /**
   * Puts something on paper, at once, since the browser does not wait before it prints.
   *
   * @param scale what the type is multiplied by
   */
  put(content: TemplateResult, { paper, landscape, margin }: Page, scale: number): void {
    const { width, height } = papers[paper];
    const size = landscape ? `${height}mm ${width}mm` : `${width}mm ${height}mm`;
    PrintArea.pageRule.replaceSync(
      `@page { size: ${size}; margin: ${margin}mm; } @media print { half-angle { display: none; } body { background: none; height: auto; } }`,
    );
    this.scaleRule.replaceSync(`.sheet { zoom: ${scale}; }`);
    this.content = html`<div class="sheet">${content}</div>`;
    this.performUpdate();
  }
}
/** The one of the document; made when it is first needed. */
export function printArea(): PrintArea {
  const there = document.querySelector("print-area");
  if (there) return there;
  const made = document.createElement("print-area");
  document.body.append(made);
  return made;
}

declare global {
  interface HTMLElementTagNameMap {
    "print-area": PrintArea;
  }
}
