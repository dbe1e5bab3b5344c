import type { Instrument } from '../../model/instrument';
import { playableInstrument } from '../../playing/playable/makePlayable';
import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import { withKnownSamples } from '../../workspace/samples/knownSamples';
import { SampleStore } from '../../workspace/samples/sampleStore';
import type { Terminal } from '../terminal';
import type { Input } from './input';
import { folderOfInput } from './input';

/** Makes an instrument playable, with what is known of its samples: which are missing or cannot be read. */
export function playableInput(
  terminal: Terminal,
  input: Input,
  instrument: Instrument,
): Promise<PlayableInstrument> {
  return withKnownSamples(new SampleStore(terminal.files), folderOfInput(input), (samples) =>
    playableInstrument(instrument, { samples }),
  );
}
