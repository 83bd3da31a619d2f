import type { ReactiveControllerHost } from "lit";
import type { Place } from "../engine/values.ts";
import type { Job } from "../job/job.ts";
import { inputsOf } from "../job/whatif-places.ts";
import { pause } from "./later.ts";

/** Cells offered: the likely ones come first. */
const most = 60;

/** The cells that a result depends on, to be offered in a field as soon as they are known. */
export class InputOffers {
  private of = "";
  private document: unknown;
  private list: readonly Place[] = [];

  constructor(private readonly host: ReactiveControllerHost) {}

  for(job: Job, result: Place): readonly Place[] {
    const of = JSON.stringify(result);
    if (this.of === of && this.document === job.document) return this.list;
    const { document } = job;
    this.of = of;
    this.document = document;
    this.list = [];
    const take = (found: readonly Place[]) => {
      if (this.of !== of || this.document !== document) return;
      this.list = found.slice(0, most);
      this.host.requestUpdate();
    };
    // Where nothing comes of it, nothing is offered.
    void inputsOf(job, result, pause).then(take, () => undefined);
    return this.list;
  }
}
