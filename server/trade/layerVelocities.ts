/** All velocities of a note that is struck (MIDI 1.0). */
const allVelocities = { low: 1, high: 127 };

/** The velocities of the one layer of a number of them: equal parts of all, or of those from `low` to `high`, the softest lowest. */
export function velocitiesOfLayer(
  at: number,
  count: number,
  { low, high } = allVelocities,
): { low: number; high: number } {
  const start = (one: number) => low + Math.floor((one * (high - low + 1)) / count);
  return { low: start(at), high: start(at + 1) - 1 };
}

/** The velocities of each of some layers, the softest of which comes first: equal parts of all. */
export function velocitiesOfLayers<Layer>(
  layers: readonly Layer[],
): Map<Layer, { low: number; high: number }> {
  return new Map(layers.map((layer, at) => [layer, velocitiesOfLayer(at, layers.length)]));
}
