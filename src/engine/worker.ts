/** The engine in a thread of its own. It starts empty and does what the page orders. */
import { sheetFunctions } from "../functions/index.ts";
import { FarSide } from "./far-side.ts";
import { buffersOf, type Order, type Reply, type Report } from "./packets.ts";

/** As much of a worker's own scope as is used. */
interface Scope {
  postMessage(message: Report | Reply, transfer: readonly ArrayBufferLike[]): void;
  addEventListener(type: "message", heard: (event: { readonly data: Order }) => void): void;
}

const scope = globalThis as unknown as Scope;
const side = new FarSide(
  (message) => scope.postMessage(message, buffersOf(message)),
  sheetFunctions,
  undefined,
  undefined,
  (work) => setTimeout(work),
);
scope.addEventListener("message", ({ data }) => side.take(data));
