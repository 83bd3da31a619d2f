/** Tools and passes for the properties of the groove. */
import fc from "fast-check";
import { type Groove, grooveOf } from "../../src/lathe/chip-area.ts";
import type { Place } from "../../src/lathe/groove-outline.ts";
import { between } from "./close.ts";

/** Tools of every kind: sharp, flat, round, unequal flanks, square on one side. */
export const tools: fc.Arbitrary<Groove> = fc
  .record({
    leading: fc.oneof(between(1, 45), fc.constant(0)),
    trailing: between(1, 45),
    nose: fc.oneof(between(0.01, 0.5), fc.constant(0)),
    shape: fc.constantFrom<"flat" | "radius">("flat", "radius"),
  })
  .map(({ leading, trailing, nose, shape }) => grooveOf(leading + trailing, nose, trailing, shape));

/** Passes that wander: every one somewhere else, some of them shallower than the one before. */
export const wandering: fc.Arbitrary<readonly Place[]> = fc.array(
  fc.record({ axial: between(-0.4, 0.4), radial: between(0.01, 1.5) }),
  { minLength: 1, maxLength: 8 },
);
