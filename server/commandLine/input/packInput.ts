import type { PackText } from '../../library/pack/packSource';
import { OutputError } from '../../model/output';
import { notationOfFile } from '../../workspace/notations/detectedNotation';
import type { Terminal } from '../terminal';
import { loadInstrument, readInput } from './input';

/** An instrument's text to be packed, with the vocabulary file that it is read by, where there is one. */
export async function packTextOf(
  terminal: Terminal,
  name: string,
): Promise<{ text: PackText; files: string[] }> {
  const input = await readInput(terminal, name);
  const loaded = await loadInstrument(terminal, input);
  if (!loaded) throw new OutputError(`${name}: this is a zone table; convert it first, then pack the result`);
  const { notation, instrument, vocabulary } = loaded;
  const savedIn = vocabulary?.savedIn;
  return {
    text: {
      notation,
      instrument,
      notationOf: (source) =>
        source === instrument.sources[0] ? notation : (notationOfFile(source.path, source.text) ?? notation),
    },
    files: savedIn === undefined ? [] : [savedIn],
  };
}
