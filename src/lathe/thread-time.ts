/**
 * Time for a thread: cutting, coming back, and setting the next pass. Lengths in any one unit. Source: geometry; what a
 * hand needs is for the person to say.
 */
import { finite, requireAbove, requireWhole, requireWithin } from "./bounds.ts";

export interface ThreadRun {
  /** Passes that run along the work, springs and the scratch pass among them. */
  readonly passes: number;
  /** Travel of the carriage in a pass: run-in, thread and run-out. */
  readonly travel: number;
  readonly lead: number;
  readonly rpm: number;
  /** Seconds to wind back, set the dial and take the next mark, for each pass. */
  readonly setting: number;
  /** Seconds to bring the carriage back by hand; with `returnRpm` the spindle brings it back instead. */
  readonly back: number;
  /** Speed of the spindle in reverse, nuts kept closed. */
  readonly returnRpm?: number | undefined;
}

/** Seconds that all passes spend on each. After the last pass nothing is brought back or set. */
export interface ThreadTime {
  readonly cutting: number;
  readonly back: number;
  readonly setting: number;
  readonly all: number;
}

/** @throws RangeError if passes is not a whole number of 1 or more, a length or speed not above 0, or a time negative */
export function threadTime({ passes, travel, lead, rpm, setting, back, returnRpm }: ThreadRun): ThreadTime {
  const count = requireWhole("passes", passes, 1);
  requireAbove("travel", travel);
  requireAbove("lead", lead);
  requireAbove("rpm", rpm);
  requireWithin("setting_seconds", setting, 0);
  requireWithin("return_seconds", back, 0);
  if (returnRpm !== undefined) requireAbove("return_rpm", returnRpm);
  const turns = travel / lead;
  const cutting = (count * turns * 60) / rpm;
  const returns = (count - 1) * (returnRpm === undefined ? back : (turns * 60) / returnRpm);
  const settings = (count - 1) * setting;
  const all = finite("time", cutting + returns + settings);
  return { cutting, back: returns, setting: settings, all };
}
