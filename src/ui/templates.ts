/** The template jobs that ship with the page. Each is its own file of the build, read when it is asked for. */
import { readJob } from "../job/file.ts";

const files = import.meta.glob<string>("../../sheets/*.json", { query: "?raw", import: "default" });

interface Template {
  /** File name without its ending. */
  readonly name: string;
  /** The job file. */
  readonly read: () => Promise<string>;
}

/** A template as its card on the rack shows it. */
export interface TemplateCard extends Template {
  readonly title: string;
  readonly purpose: string;
}

/** The one that opens by itself on the first visit comes first. */
const first = "full-thread-job";

export const templates: readonly Template[] = Object.entries(files)
  .map(([path, read]) => ({ name: path.replace(/^.*\/|\.json$/g, ""), read }))
  // Plain letters: the browser's own order of a language takes long to come the first time.
  .sort((a, b) => Number(b.name === first) - Number(a.name === first) || (a.name < b.name ? -1 : 1));

/** All of them, read for what their cards say. */
export function templateCards(): Promise<TemplateCard[]> {
  const cards = templates.map(async (template) => {
    const { title, purpose } = readJob(await template.read());
    return { ...template, title, purpose };
  });
  return Promise.all(cards);
}
