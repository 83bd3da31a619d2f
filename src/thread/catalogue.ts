/** Every series that a designation may name. A new one is added here and nowhere else. */
import { ba } from "./ba.ts";
import { custom } from "./custom.ts";
import { metric } from "./metric.ts";
import type { Series } from "./series.ts";
import { unified, unifiedRounded } from "./unified.ts";
import { bsf, bsw, whitSpecial } from "./whitworth.ts";

export const catalogue: readonly Series[] = [
  metric,
  ...unified,
  ...unifiedRounded,
  bsw,
  bsf,
  whitSpecial,
  ba,
  custom,
];
