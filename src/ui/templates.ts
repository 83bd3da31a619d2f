/** The template jobs that ship with the page. Each is its own file of the build, read when it is asked for. */
const files = import.meta.glob<string>("../../sheets/*.json", { query: "?raw", import: "default" });

export interface Template {
  /** File name without its ending. */
  readonly name: string;
  /** The job file. */
  readonly read: () => Promise<string>;
}

/** The one that opens by itself on the first visit comes first. */
const first = "full-thread-job";

export const templates: readonly Template[] = Object.entries(files)
  .map(([path, read]) => ({ name: path.replace(/^.*\/|\.json$/g, ""), read }))
  .sort((a, b) => Number(b.name === first) - Number(a.name === first) || a.name.localeCompare(b.name, "en"));
