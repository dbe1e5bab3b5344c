import type { Severity } from '../../model/finding';
import type { InstrumentRecord } from './instrumentRecord';

/** What became of one instrument, as `library build --format json` tells it. Paths are from the folder of the library. */
export interface BuildOutcome {
  name: string;
  source: string;
  state: 'built' | 'unchanged' | 'failed';
  message: string | null;
  outputs: string[];
  totals: Record<Severity, number>;
  notes: { assumed: number; approximated: number; dropped: number };
  /** Samples that stay as they are in its pack although FLAC was asked for, where there are any. */
  notFlac?: number;
}

/** The outcome that a record tells; `output` is the path of the output folder from that of the library. */
export function outcomeOf(record: InstrumentRecord, output: string): BuildOutcome {
  const { name, source, state, message, outputs, totals, noteCounts } = record;
  const { assumed, approximated, dropped } = noteCounts;
  return {
    name,
    source,
    state,
    message,
    outputs: outputs.map(({ path }) => (output === '' ? path : `${output}/${path}`)),
    totals,
    notes: { assumed, approximated, dropped },
  };
}
