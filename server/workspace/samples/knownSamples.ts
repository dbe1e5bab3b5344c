import type { SampleLookup } from '../../model/samples';
import type { SampleStore } from './sampleStore';

/** Rounds of asking: for folders, for files. */
const mostRounds = 70;

/** Makes something of an instrument in a folder that asks what is known of its samples: again until all that it asks is known. */
export async function withKnownSamples<T>(
  store: SampleStore,
  folder: string,
  make: (samples: SampleLookup) => T,
): Promise<T> {
  const samples = store.lookup(folder);
  let made = make(samples);
  for (let round = 0; store.wants && round < mostRounds; round++) {
    await store.loadWanted();
    made = make(samples);
  }
  return made;
}
