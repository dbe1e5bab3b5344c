/** Documented full ranges of what gates look at (public documentation of the open SFZ format). */
const fullRanges: Readonly<Record<string, readonly [low: number, high: number]>> = {
  chan: [1, 16],
  prog: [0, 127],
  bend: [-8192, 8192],
  bpm: [0, 500],
  chanaft: [0, 127],
  polyaft: [0, 127],
  cc: [0, 127],
  hdcc: [0, 1],
  rand: [0, 1],
};

/**
 * The full range of what a gate looks at, by what stands behind `lo` and `hi` in the opcode, with or without the number of a
 * controller: `cc64`, `chan`, `bend`. That of the timer has no end.
 */
export function fullGateRange(subject: string): readonly [low: number, high: number] {
  return fullRanges[subject.replace(/\d+$/, '')] ?? [0, Number.POSITIVE_INFINITY];
}
