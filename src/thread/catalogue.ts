/** Every series that a designation may name. A new one is added here and nowhere else. */
import { ba } from "./ba.ts";
import { bsb, modelEngineer } from "./brass.ts";
import { custom } from "./custom.ts";
import { bsc } from "./cycle.ts";
import { metric, metricMJ } from "./metric.ts";
import type { Series } from "./series.ts";
import { unified, unifiedJ, unifiedRounded } from "./unified.ts";
import { bsf, bsw, whitSpecial } from "./whitworth.ts";

export const catalogue: readonly Series[] = [
  metric,
  metricMJ,
  ...unified,
  ...unifiedRounded,
  ...unifiedJ,
  bsw,
  bsf,
  whitSpecial,
  bsb,
  modelEngineer,
  bsc,
  ba,
  custom,
];
