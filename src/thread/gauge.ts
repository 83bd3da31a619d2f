/** Lengths along the axis by which a taper pipe thread is gauged, in the unit of the thread. */
export interface Gauge {
  /** From the small end of the screw to the gauge (hand-tight) plane. */
  readonly length: number;
  /** By how much that length may differ either way. */
  readonly lengthTolerance: number;
  /** By how much the gauge plane of the nut may lie off its face, either way; absent where the standard gauges it otherwise. */
  readonly planeTolerance?: number;
  /** Least length of full thread on the screw. */
  readonly useful: number;
  /** Imperfect threads that the throat of the die leaves behind it. */
  readonly vanish?: number;
  /** Pitch diameter at the small end of the screw. */
  readonly smallEnd: number;
  /** Outside diameter of the pipe. */
  readonly outside?: number;
}

/** Taper on diameter per length of the pipe threads. */
export const pipeTaper = 1 / 16;
