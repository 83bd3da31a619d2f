/** Every series that a designation may name. A new one is added here and nowhere else. */
import { acme, stubAcme } from "./acme.ts";
import { npsl, npsm } from "./americanjoint.ts";
import { americanNational, sharpV } from "./americannational.ts";
import { npsc, npt } from "./americanpipe.ts";
import { ba } from "./ba.ts";
import { bsb, modelEngineer } from "./brass.ts";
import { buttress, pushButtress } from "./buttress.ts";
import { bsCon, pg } from "./conduit.ts";
import { custom } from "./custom.ts";
import { bsc } from "./cycle.ts";
import { hose, npsh } from "./hose.ts";
import { lowenherz, thury } from "./instrument.ts";
import { round405 } from "./knuckle.ts";
import { lamp } from "./lamp.ts";
import { metric, metricMJ } from "./metric.ts";
import { objective } from "./microscope.ts";
import { frenchMetric, internationalMetric } from "./oldmetric.ts";
import { pipeG } from "./pipe.ts";
import { pipeR, pipeRc, pipeRp } from "./pipejoint.ts";
import type { Series } from "./series.ts";
import { square } from "./square.ts";
import { sawTooth, trapezoidal } from "./trapezoidal.ts";
import { unified, unifiedJ, unifiedRounded } from "./unified.ts";
import { valve } from "./valve.ts";
import { bsf, bsw, whitSpecial } from "./whitworth.ts";

export const catalogue: readonly Series[] = [
  metric,
  metricMJ,
  ...unified,
  ...unifiedRounded,
  ...unifiedJ,
  ...americanNational,
  sharpV,
  bsw,
  bsf,
  whitSpecial,
  bsb,
  modelEngineer,
  bsc,
  ba,
  pipeG,
  pipeRp,
  pipeR,
  pipeRc,
  npt,
  npsc,
  npsm,
  npsl,
  hose,
  npsh,
  acme,
  stubAcme,
  trapezoidal,
  sawTooth,
  buttress,
  pushButtress,
  round405,
  square,
  bsCon,
  pg,
  objective,
  lowenherz,
  thury,
  frenchMetric,
  internationalMetric,
  lamp,
  valve,
  custom,
];
