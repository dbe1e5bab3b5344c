import type { Instrument } from '../model/instrument';
import type { ConversionNote } from '../model/notes';
import type { NoteDifference } from './compareInstruments';

/** Tells whether a note about the region of the source, or about a header that it inherits from, owns up to a difference. */
export function explainedBy(
  instrument: Instrument,
  notes: readonly ConversionNote[],
): (difference: NoteDifference) => boolean {
  const lossy = notes.filter(({ kind }) => kind === 'approximated' || kind === 'dropped');
  const isNoted = (header: number): boolean => {
    const body = instrument.bodySpan(header);
    return lossy.some(
      ({ source, start, end }) => source === body.source && start >= body.start && end <= body.end,
    );
  };
  return ({ a }) => {
    for (let at = a === undefined ? -1 : instrument.regions[a]; at >= 0; at = instrument.parent(at)) {
      if (isNoted(at)) return true;
    }
    return false;
  };
}
