/** The velocities of a layer, both ends played. */
export interface LayerEnds {
  low: number;
  high: number;
}

/** The loudest velocity (MIDI 1.0). */
const loudest = 127;
/** Numbers up to this one could be turns or layers counted from 1 (our choice). */
const mostCounted = 16;

/**
 * Which ends of velocity layers some numbers are that stand alone, by sets of those on the same keys: upper ends, where the greatest of
 * every set is 127, or lower ends, where the least of every set is 0 or 1. `undefined` where they are neither or could be both.
 */
export function limitsOfLayers(sets: readonly (readonly number[])[]): 'upper' | 'lower' | undefined {
  const several = sets.filter((set) => set.length > 1);
  if (several.length === 0 || several.some((set) => new Set(set).size < set.length)) return undefined;
  const greatest = Math.max(...several.flat());
  if (greatest <= mostCounted || greatest > loudest) return undefined;
  const areUpper = sets.every((set) => Math.max(...set) === loudest);
  const areLower = sets.every((set) => Math.min(...set) <= 1);
  if (areUpper === areLower) return undefined;
  return areUpper ? 'upper' : 'lower';
}

/** The velocities of layers whose upper or lower ends are given, in the order of those; NaN has none. */
export function endsFromLimits(
  numbers: readonly number[],
  are: 'upper' | 'lower',
): (LayerEnds | undefined)[] {
  const sorted = numbers.filter((number) => !Number.isNaN(number)).sort((one, other) => one - other);
  return numbers.map((number) => {
    if (Number.isNaN(number)) return undefined;
    const at = sorted.indexOf(number);
    return are === 'upper'
      ? { low: at === 0 ? 1 : sorted[at - 1] + 1, high: number }
      : { low: Math.max(1, number), high: at === sorted.length - 1 ? loudest : sorted[at + 1] - 1 };
  });
}
