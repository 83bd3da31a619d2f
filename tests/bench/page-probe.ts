/** Runs inside the page that is measured: looks at what is painted, and touches nothing but what a person could. */

export interface Probe {
  /** Times between frames, ms. */
  frames(count: number): Promise<number[]>;
  /** From the next key until a frame with the wanted cell was painted: "row,column" active, or "row,column=text". */
  keyToPaint(wanted: string): Promise<number>;
  armed(): Promise<void>;
  /** Takes a part of a job file. */
  give(text: string): void;
  /** Opens the file of the parts that were given. @returns ms until its cells were painted */
  open(name: string): Promise<number>;
  /** ms until nothing is reckoned any more. */
  reckoned(): Promise<number>;
  /** The longest task since it was asked last, ms; 0 when none was over 50 ms. */
  longest(): Promise<number>;
  stand(): void;
  /** Pastes text at the active cell. */
  paste(text: string): void;
  /** Building a bare table of the cells in view, until it was painted. */
  table(count: number): Promise<number[]>;
  /** Marking another cell of that table. */
  tableArrows(count: number): Promise<number[]>;
  /** Writing other words into a row of that table. */
  tableEdits(count: number): Promise<number[]>;
  /** Writing other words into all of that table. */
  tableFills(count: number): Promise<number[]>;
  scroll(frames: number): Promise<{ frames: number; rows: number; missing: number; times: number[] }>;
}

interface Shell extends HTMLElement {
  readonly page: { takeFile(name: string, file: Promise<Blob>): Promise<void> };
  readonly desk: { readonly job: { readonly reckoning: unknown; readonly document: { title: string } } };
}

/** To be run in the page. Everything that it needs stands inside, since it is sent there as text. */
export function installProbe(): void {
  const shell = document.querySelector("half-angle") as Shell;
  const grid = () => shell.shadowRoot!.querySelector("sheet-grid")!;
  const scroller = () => grid().shadowRoot!.querySelector<HTMLElement>(".scroll")!;
  const cell = (row: number, column: number) =>
    scroller().querySelector<HTMLElement>(
      `[role=gridcell][aria-rowindex="${row + 1}"][aria-colindex="${column + 1}"]`,
    );
  const frame = () => new Promise<number>((done) => requestAnimationFrame(done));
  /** After the frame that is drawn next has been given away to be shown. */
  const painted = () =>
    new Promise<number>((done) => {
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => done(performance.now());
        port2.postMessage(0);
      });
    });
  const given: Blob[] = [];
  let longest = 0;
  const observer = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
  });
  observer.observe({ type: "longtask" });
  let listening: (() => void) | undefined;
  let isArmed = false;

  const holds = (wanted: string): boolean => {
    const [place, text] = wanted.split("=") as [string, string | undefined];
    const [row, column] = place.split(",").map(Number) as [number, number];
    const found = cell(row, column);
    if (!found) return false;
    return text === undefined ? found.classList.contains("active") : found.textContent!.trim() === text;
  };
  /** As many cells as the grid shows, with the same words. */
  const bareTable = (): HTMLTableElement => {
    const table = document.createElement("table");
    for (const row of scroller().querySelectorAll("[role=row]")) {
      const line = table.insertRow();
      for (const one of row.querySelectorAll("[role=gridcell]"))
        line.insertCell().textContent = one.textContent;
    }
    table.className = "bare";
    return table;
  };
  const beside = () => {
    const place = document.createElement("div");
    place.style.cssText = "position:fixed;inset:100px 0 0 0;z-index:9;overflow:hidden;background:white";
    document.body.append(place);
    return place;
  };
  const once = async (work: () => void): Promise<number> => {
    await frame();
    // Keys come at any moment between two frames: here always soon after one.
    await new Promise((done) => setTimeout(done));
    const start = performance.now();
    work();
    return (await painted()) - start;
  };

  window.probe = {
    async frames(count) {
      const times: number[] = [];
      let before = await frame();
      for (let i = 0; i < count; i++) {
        const now = await frame();
        times.push(now - before);
        before = now;
      }
      return times;
    },
    keyToPaint(wanted) {
      return new Promise((done) => {
        const heard = async (event: KeyboardEvent) => {
          removeEventListener("keydown", heard, true);
          for (;;) {
            const now = await painted();
            if (holds(wanted)) return done(now - event.timeStamp);
          }
        };
        addEventListener("keydown", heard, true);
        isArmed = true;
        listening?.();
      });
    },
    async armed() {
      if (!isArmed) await new Promise<void>((done) => (listening = done));
      isArmed = false;
    },
    give(text) {
      given.push(new Blob([text]));
    },
    async open(name) {
      const file = new Blob(given.splice(0));
      await frame();
      const start = performance.now();
      void shell.page.takeFile(`${name}.json`, Promise.resolve(file));
      for (;;) {
        const now = await painted();
        if (shell.desk.job.document.title === name && cell(1, 1)?.textContent?.trim() === "try")
          return now - start;
      }
    },
    async reckoned() {
      const start = performance.now();
      while (shell.desk.job.reckoning) await frame();
      return performance.now() - start;
    },
    async longest() {
      // Entries come in a task of their own.
      await new Promise((done) => setTimeout(done, 200));
      for (const { duration } of observer.takeRecords()) longest = Math.max(longest, duration);
      const found = longest;
      longest = 0;
      return found;
    },
    stand() {
      (grid() as HTMLElement).focus();
    },
    paste(text) {
      const held = new DataTransfer();
      held.setData("text/plain", text);
      const event = new ClipboardEvent("paste", { clipboardData: held, bubbles: true, cancelable: true });
      // In a task of its own: the one under way is the bench's.
      setTimeout(() => scroller().dispatchEvent(event));
    },
    async table(count) {
      const times: number[] = [];
      for (let i = 0; i < count; i++) {
        const place = beside();
        times.push(await once(() => place.append(bareTable())));
        place.remove();
      }
      return times;
    },
    async tableArrows(count) {
      const place = beside();
      place.append(bareTable());
      const cells = place.querySelectorAll("td");
      const times: number[] = [];
      for (let i = 0; i < count; i++)
        times.push(
          await once(() => {
            cells[i % 2]!.style.outline = "3px solid";
            cells[(i + 1) % 2]!.style.outline = "";
          }),
        );
      place.remove();
      return times;
    },
    async tableEdits(count) {
      const place = beside();
      place.append(bareTable());
      const cells = [...place.querySelectorAll("td")].slice(0, 30);
      const times: number[] = [];
      for (let i = 0; i < count; i++)
        times.push(
          await once(() => {
            for (const [n, one] of cells.entries()) one.textContent = String(n * i);
          }),
        );
      place.remove();
      return times;
    },
    async tableFills(count) {
      const place = beside();
      place.append(bareTable());
      const cells = [...place.querySelectorAll("td")];
      const times: number[] = [];
      for (let i = 0; i < count; i++)
        times.push(
          await once(() => {
            for (const [n, one] of cells.entries()) one.textContent = String(n * i);
          }),
        );
      place.remove();
      return times;
    },
    async scroll(frames) {
      const view = scroller();
      const high = cell(1, 1)!.offsetHeight;
      const head = view.querySelector<HTMLElement>(".heads")!.offsetHeight;
      const most = view.scrollHeight - view.clientHeight;
      // A third of the sheet, but no more than 30 rows a frame: a fast pull of the wheel.
      const step = Math.min(most / 3 / frames, 30 * high);
      let missing = 0;
      let rows = 0;
      const times: number[] = [];
      view.scrollTop = 0;
      await painted();
      for (let i = 0; i < frames; i++) {
        const start = performance.now();
        view.scrollTop += step;
        await painted();
        times.push(performance.now() - start);
        const top = Math.ceil(view.scrollTop / high);
        const bottom = Math.floor((view.scrollTop + view.clientHeight - head) / high);
        const there = new Set(
          [...view.querySelectorAll<HTMLElement>(".row")].map(
            (row) => Number(row.getAttribute("aria-rowindex")) - 2,
          ),
        );
        for (let row = top; row < bottom; row++) {
          rows += 1;
          if (!there.has(row)) missing += 1;
        }
      }
      view.scrollTop = 0;
      await painted();
      return { frames, rows, missing, times };
    },
  };
}
