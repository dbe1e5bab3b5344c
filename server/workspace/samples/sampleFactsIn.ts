import type { SampleFactsLookup } from '../../model/notation';
import type { SampleStore } from './sampleStore';

/** What the headers of samples say, by paths relative to a folder; what is not known yet is asked of the store. */
export function sampleFactsIn(samples: SampleStore, folder: string): SampleFactsLookup {
  const lookup = samples.lookup(folder);
  return (path) => {
    const state = lookup.state(path);
    if (state.kind !== 'file' && state.kind !== 'otherCase') return undefined;
    return state.reading?.kind === 'facts' ? state.reading.facts : undefined;
  };
}
