/** Ranges of values that regions ask for, in flat buffers: those of region r are at `start[r]`..`start[r + 1] − 1`. */
export interface GateTable {
  start: Int32Array;
  /** The number of a controller, or one of {@link GateSubject}. */
  subject: Int32Array;
  low: Float64Array;
  /** Belongs to the range, that of the tempo aside. */
  high: Float64Array;
}

/** What is looked at besides controllers, whose numbers are lower. */
export const GateSubject = {
  channel: 1000,
  program: 1001,
  tempo: 1002,
  timer: 1003,
  bend: 1004,
  channelPressure: 1005,
  polyPressure: 1006,
} as const;
