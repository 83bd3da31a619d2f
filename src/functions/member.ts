import type { Param } from "./declare.ts";

/** Screw or nut; what that means to a function is in its own words. */
export const member = {
  name: "member",
  type: "text",
  options: ["external", "internal"],
  fallback: "external",
  doc: "Screw or nut.",
} as const satisfies Param;
