import type { Instrument } from '../../model/instrument';

/** Headers of the same kind on either side that are looked at. */
const mostNeighbours = 12;
/** Headers that are passed on the way to them. */
const mostSteps = 1000;

/**
 * The canonical names that at least half of the nearest headers of the same kind set themselves: what somebody
 * who writes one more of them is likely to set.
 */
export function namesOfNeighbours(instrument: Instrument, header: number): Set<string> {
  const counts = new Map<number, number>();
  let neighbours = 0;
  for (const step of [-1, 1]) {
    let left = mostNeighbours;
    const last = header + step * mostSteps;
    for (
      let at = header + step;
      left > 0 && at !== last && at >= 0 && at < instrument.headers.count;
      at += step
    ) {
      if (instrument.kind(at) !== instrument.kind(header)) continue;
      left--;
      neighbours++;
      const end = instrument.endParameter(at);
      const names = new Set<number>();
      for (let parameter = instrument.firstParameter(at); parameter < end; parameter++) {
        names.add(instrument.canonicalName(parameter));
      }
      for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
    }
  }
  const names = new Set<string>();
  for (const [name, count] of counts) if (count * 2 >= neighbours) names.add(instrument.names.text(name));
  return names;
}
