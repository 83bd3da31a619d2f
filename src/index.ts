/**
 * The functions for a sheet of your own: a plugin for your copy of HyperFormula, and the computations without any sheet.
 *
 *     import * as hyperformula from "hyperformula";
 *     import { makePlugin, sheetFunctions } from "halfangle";
 *
 *     const { plugin, translations } = makePlugin(hyperformula, sheetFunctions);
 *     hyperformula.HyperFormula.registerFunctionPlugin(plugin, { enGB: translations });
 *
 * Every exported computation takes plain numbers and throws RangeErrors whose messages name the argument.
 */
export { type EngineClasses, type Listener, type MadePlugin, makePlugin } from "./engine/plugin.ts";
export {
  declare,
  isRequired,
  type Noted,
  type Param,
  type SheetFunction,
  signature,
} from "./functions/declare.ts";
export { sheetFunctions } from "./functions/index.ts";
export { type Groove, grooveArea, grooveOf } from "./lathe/chip-area.ts";
export { areaForForce, coefficientsOf, cuttingForce } from "./lathe/cutting-force.ts";
export { dialDivisions, dialReading, roundToDial } from "./lathe/dial.ts";
export {
  alongSetover,
  cutGroove,
  type Deviation,
  deviationFrom,
  type Layer,
  layerLoops,
  overcutAt,
} from "./lathe/groove.ts";
export { axialTool, type GroundTool } from "./lathe/groove-tool.ts";
export { depthForInfeed, flankChip, infeedForDepth } from "./lathe/infeed.ts";
export { depthAfter, passArea, passCount } from "./lathe/passes.ts";
export { type Plan, type PlanRequest, planPasses } from "./lathe/plan.ts";
export {
  foundSetover,
  miscut,
  rescueDepth,
  scaleReading,
  setoverAngle,
  setoverFromScale,
} from "./lathe/setover.ts";
export { type Schedule, type ScheduleRequest, schedule } from "./lathe/strategies.ts";
export { threadTime } from "./lathe/thread-time.ts";
export { cutDepth } from "./thread/cutdepth.ts";
export { NothingFound, Unreadable } from "./thread/failures.ts";
export { limit, target } from "./thread/limits.ts";
export { type Candidate, candidates, type Measured, matchThread } from "./thread/match.ts";
export { readThread } from "./thread/read.ts";
export { tellApart } from "./thread/tellapart.ts";
export { convertLength, type LengthUnit, type Thread } from "./thread/thread.ts";
