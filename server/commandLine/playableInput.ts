import type { Instrument } from '../model/instrument';
import { playableInstrument } from '../playing/makePlayable';
import type { PlayableInstrument } from '../playing/playableInstrument';
import { SampleStore } from '../workspace/samples/sampleStore';
import type { Input } from './input';
import { folderOfInput } from './input';
import type { Terminal } from './terminal';

/** Rounds of asking: for folders, for files. */
const mostRounds = 70;

/** Makes an instrument playable, with what is known of its samples: which are missing or cannot be read. */
export async function playableInput(
  terminal: Terminal,
  input: Input,
  instrument: Instrument,
): Promise<PlayableInstrument> {
  const store = new SampleStore(terminal.files);
  const samples = store.lookup(folderOfInput(input));
  let playable = playableInstrument(instrument, { samples });
  for (let round = 0; store.wants && round < mostRounds; round++) {
    await store.loadWanted();
    playable = playableInstrument(instrument, { samples });
  }
  return playable;
}
