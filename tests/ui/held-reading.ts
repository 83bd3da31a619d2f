/** The worker that reads a long file is told of it when the test says so, or never. */
import type { BrowserContext, Page } from "playwright-core";

/** @returns lets go the last one of those that are held in a page */
export async function holdReading(context: BrowserContext): Promise<(page: Page) => Promise<void>> {
  await context.addInitScript(() => {
    const held: (() => void)[] = [];
    Object.assign(window, { letGo: () => held.pop()?.() });
    window.Worker = class extends Worker {
      readonly #reads: boolean;
      constructor(script: string | URL, options?: WorkerOptions) {
        super(script, options);
        this.#reads = /file-worker-/.test(String(script));
      }
      override postMessage(message: unknown) {
        if (this.#reads) held.push(() => super.postMessage(message));
        else super.postMessage(message);
      }
    };
  });
  return (page) => page.evaluate(() => (window as unknown as { letGo: () => void }).letGo());
}
