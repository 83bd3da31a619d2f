/** Every function that a sheet may call besides the engine's own. */

import type { SheetFunction } from "./declare.ts";
import { dialFunctions } from "./dial.ts";
import { drawFunctions } from "./draw.ts";
import { drillFunctions } from "./drill.ts";
import { engageFunctions } from "./engage.ts";
import { forceFunctions } from "./force.ts";
import { formFunctions } from "./form.ts";
import { gearFunctions } from "./gears.ts";
import { grooveFunctions } from "./groove.ts";
import { holeFunctions } from "./hole.ts";
import { infeedFunctions } from "./infeed.ts";
import { latheFunctions } from "./lathe.ts";
import { measureFunctions } from "./measure.ts";
import { passFunctions } from "./passes.ts";
import { setoverFunctions } from "./setover.ts";
import { speedFunctions } from "./speed.ts";
import { startFunctions } from "./starts.ts";
import { strategyFunctions } from "./strategies.ts";
import { taperFunctions } from "./taper.ts";
import { threadFunctions } from "./thread.ts";
import { toolFunctions } from "./tool.ts";
import { uncertaintyFunctions } from "./uncertainty.ts";
import { unitFunctions } from "./units.ts";
import { whatIfFunctions } from "./whatif.ts";
import { wireMethodFunctions } from "./wiremethods.ts";

export const sheetFunctions: readonly SheetFunction[] = [
  ...threadFunctions,
  ...holeFunctions,
  ...formFunctions,
  ...setoverFunctions,
  ...infeedFunctions,
  ...passFunctions,
  ...dialFunctions,
  ...measureFunctions,
  ...gearFunctions,
  ...engageFunctions,
  ...startFunctions,
  ...speedFunctions,
  ...drillFunctions,
  ...toolFunctions,
  ...taperFunctions,
  ...drawFunctions,
  ...forceFunctions,
  ...uncertaintyFunctions,
  ...strategyFunctions,
  ...grooveFunctions,
  ...wireMethodFunctions,
  ...latheFunctions,
  ...whatIfFunctions,
  ...unitFunctions,
];
