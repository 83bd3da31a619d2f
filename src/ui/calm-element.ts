import { LitElement } from "lit";
import { ownTask } from "./own-task.ts";

/** An element that is drawn for the first time in a task of its own, and not in that of the page around it. */
export class CalmElement extends LitElement {
  protected override scheduleUpdate(): Promise<unknown> | undefined {
    if (!this.hasUpdated) return ownTask().then(() => super.scheduleUpdate());
    super.scheduleUpdate();
    return undefined;
  }
}
