import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { conditionsOf } from '../../model/overlaps/conditions';
import { mainSpan } from '../../model/text/span';

/**
 * A note on regions of a text in names that nobody explained which the same notes start: whether they are meant to sound together, to
 * take turns, or are there twice, the text does not say. Nothing where turns, switches or triggers keep them apart.
 */
export function stackedRegions(instrument: Instrument): ConversionNote[] {
  const { ofHeader } = conditionsOf(instrument);
  const seen = new Map<string, number>();
  const stacked: number[] = [];
  for (const region of instrument.regions) {
    const id = [
      instrument.lowKey[region],
      instrument.highKey[region],
      instrument.lowVelocity[region],
      instrument.highVelocity[region],
      ofHeader[region],
    ].join(' ');
    const first = seen.get(id);
    if (first === undefined) seen.set(id, region);
    else if (instrument.samplePath(first) !== instrument.samplePath(region)) stacked.push(region);
  }
  const [example] = stacked;
  if (example === undefined) return [];
  const count = stacked.length;
  const { start, end } = instrument.headerSpan(example);
  const message =
    count === 1
      ? 'This region has the same keys and velocities as one before it, so both sound together. Nothing says whether they are layers, take turns or are there twice.'
      : `${count} regions have the same keys and velocities as one before them, so they sound together. Here is the first. Nothing says whether they are layers, take turns or are there twice.`;
  return [{ kind: 'assumed', ...mainSpan(start, end), message }];
}
