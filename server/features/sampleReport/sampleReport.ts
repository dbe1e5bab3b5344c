import { pitchClaimsOf } from '../../checks/facts/samples/pitchClaims';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { SampleLookup } from '../../model/samples';
import type { SampleRow } from './reportRows';
import { reportRows } from './reportRows';
import type { TuningRow } from './tuningRows';
import { tuningRows } from './tuningRows';

/** What is known of the samples of an instrument, and its tuning over the keys. */
export interface SampleReport {
  samples: SampleRow[];
  tuning: TuningRow[];
}

/** A report of what a lookup knows by now; what it does not know is asked for in passing. */
export function sampleReport(
  instrument: Instrument,
  notation: Notation,
  samples: SampleLookup,
): SampleReport {
  const context = { instrument, notation, samples };
  const claims = pitchClaimsOf(context)?.all() ?? [];
  return { samples: reportRows(context, claims), tuning: tuningRows(claims) };
}
