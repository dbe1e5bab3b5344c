import type { Instrument } from '../../model/instrument';
import { noteNameOf } from '../../model/keys';
import type { ConversionNote } from '../../model/notes';
import { mainSpan } from '../../model/text/span';
import type { Facts } from './markings';

/** What an instrument itself tells: its keys as numbers and as names, and how many regions it has. */
export function instrumentFacts(instrument: Instrument): Facts {
  let low = 128;
  let high = -1;
  for (const region of instrument.regions) {
    if (instrument.lowKey[region] < 0 || instrument.highKey[region] > 127) continue;
    low = Math.min(low, instrument.lowKey[region]);
    high = Math.max(high, instrument.highKey[region]);
  }
  const facts = new Map([['regions', String(instrument.regions.length)]]);
  if (high < low) return facts;
  facts.set('lowest key', String(low)).set('highest key', String(high));
  return facts.set('key range', `${noteNameOf(low)} to ${noteNameOf(high)}`);
}

/** Notes on places that a template marks for facts which are not known. */
export function factNotes(missing: readonly string[]): ConversionNote[] {
  return missing.map((name) => ({
    kind: 'ignored',
    ...mainSpan(0, 0),
    message: `The template has a place for "${name}", which is not given or does not fit there; it stays marked.`,
  }));
}
