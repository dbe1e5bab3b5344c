import type { SampleLookup } from '../../model/samples';
import { SampleStore } from '../../workspace/samples/sampleStore';
import type { Terminal } from '../terminal';
import type { Input } from './input';
import { folderOfInput } from './input';

/** Rounds of asking: for folders, for files. */
const mostRounds = 70;

/** Makes something of an instrument that asks what is known of its samples: again until all that it asks is known. */
export async function withKnownSamples<T>(
  terminal: Terminal,
  input: Input,
  make: (samples: SampleLookup) => T,
): Promise<T> {
  const store = new SampleStore(terminal.files);
  const samples = store.lookup(folderOfInput(input));
  let made = make(samples);
  for (let round = 0; store.wants && round < mostRounds; round++) {
    await store.loadWanted();
    made = make(samples);
  }
  return made;
}
