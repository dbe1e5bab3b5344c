import type { ComparedInstrument } from '../../comparison/compareInstruments';
import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import { playableInstrument } from '../../playing/playable/makePlayable';
import { soundOf } from '../../sound/program/soundOf';
import { SampleSource } from '../../sound/samples/sampleSource';
import { foundSample } from '../samples/foundSample';
import { withKnownSamples } from '../samples/knownSamples';
import type { SampleStore } from '../samples/sampleStore';

/** Makes of an instrument in a folder what is rendered or compared; the caller closes its samples. */
export async function renderSource(
  files: Files,
  store: SampleStore,
  folder: string,
  instrument: Instrument,
): Promise<ComparedInstrument> {
  const made = await withKnownSamples(store, folder, (samples) => {
    const program = soundOf(instrument, { samples });
    const paths = program.samples.map((path) => foundSample(samples, folder, path));
    return { program, paths, playable: playableInstrument(instrument, { samples }) };
  });
  return { instrument, ...made, samples: new SampleSource(files) };
}
