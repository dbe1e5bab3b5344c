import type { ComparedInstrument } from '../../comparison/compareInstruments';
import type { Instrument } from '../../model/instrument';
import { renderSource } from '../../workspace/comparing/renderSource';
import { SampleStore } from '../../workspace/samples/sampleStore';
import type { Terminal } from '../terminal';
import type { Input } from './input';
import { folderOfInput } from './input';

/** Makes of an instrument what a render or a comparison takes; the caller closes its samples. */
export function soundInput(
  { files }: Terminal,
  input: Input,
  instrument: Instrument,
): Promise<ComparedInstrument> {
  return renderSource(files, new SampleStore(files), folderOfInput(input), instrument);
}
