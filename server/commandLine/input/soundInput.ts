import type { Instrument } from '../../model/instrument';
import { playableInstrument } from '../../playing/playable/makePlayable';
import { soundOf } from '../../sound/program/soundOf';
import type { RenderSource } from '../../sound/render/renderParts';
import { SampleSource } from '../../sound/samples/sampleSource';
import { foundSample } from '../../workspace/samples/foundSample';
import type { Terminal } from '../terminal';
import type { Input } from './input';
import { folderOfInput } from './input';
import { withKnownSamples } from './knownSamples';

/** Makes of an instrument what a render takes; the caller closes its samples. */
export async function soundInput(
  terminal: Terminal,
  input: Input,
  instrument: Instrument,
): Promise<RenderSource> {
  const folder = folderOfInput(input);
  const made = await withKnownSamples(terminal, input, (samples) => {
    const program = soundOf(instrument, { samples });
    const paths = program.samples.map((path) => foundSample(samples, folder, path));
    return { program, paths, playable: playableInstrument(instrument, { samples }) };
  });
  return { ...made, samples: new SampleSource(terminal.files) };
}
