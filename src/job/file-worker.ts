/** Reads a job file in a thread of its own. */
import { type FilePart, readForPage, type Source } from "./read-far.ts";

/** As much of a worker's own scope as is used. */
interface Scope {
  postMessage(part: FilePart): void;
  addEventListener(type: "message", heard: (event: { readonly data: Source }) => void): void;
}

const scope = globalThis as unknown as Scope;
scope.addEventListener("message", ({ data }) => void readForPage(data, (part) => scope.postMessage(part)));
