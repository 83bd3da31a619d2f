import type { Source } from "../job/read-far.ts";
import { readSource } from "./files.ts";

export interface Intake {
  /** A file was chosen or dropped: its text, or what stood in the way of reading it. */
  readonly take: (name: string, source: Promise<Source>) => void;
  /** A file is held over the window, or no longer. */
  readonly hover: (over: boolean) => void;
}

/** Takes job files from the person: by the browser's own chooser, or dropped anywhere on the page. */
export class FileIntake {
  private readonly chooser = document.createElement("input");

  constructor(private readonly intake: Intake) {
    this.chooser.type = "file";
    this.chooser.accept = ".json,application/json";
    this.chooser.addEventListener("change", () => {
      this.read(this.chooser.files?.[0]);
      // Choosing the same file again must be a change too.
      this.chooser.value = "";
    });
    for (const kind of ["dragenter", "dragover", "dragleave", "drop"] as const) {
      addEventListener(kind, (event) => this.onDrag(event));
    }
  }

  choose(): void {
    this.chooser.click();
  }

  private read(file: File | undefined) {
    if (file) this.intake.take(file.name, readSource(file));
  }

  private onDrag(event: DragEvent) {
    if (!event.dataTransfer?.types.includes("Files")) return;
    event.preventDefault();
    // Leaving one element for another inside the window is no leaving.
    const gone = event.type === "drop" || (event.type === "dragleave" && event.relatedTarget === null);
    this.intake.hover(!gone);
    if (event.type === "drop") this.read(event.dataTransfer.files[0]);
  }
}
