/** The greatest velocity of a note (MIDI 1.0). */
const greatestVelocity = 127;

/** The velocities of the one layer of a number of them: equal parts of 1..127, the softest lowest. */
export function velocitiesOfLayer(at: number, count: number): { low: number; high: number } {
  const bound = (one: number) => Math.floor((one * greatestVelocity) / count);
  return { low: bound(at) + 1, high: bound(at + 1) };
}
