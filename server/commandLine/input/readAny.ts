import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { folderOf } from '../../model/paths';
import { finish } from '../../model/steps';
import { mainSpan } from '../../model/text/span';
import type { Vocabulary } from '../../vocabulary/vocabulary';
import { assumedInVocabulary } from '../../workspace/notations/assumedInVocabulary';
import { doubtsOfXml } from '../../workspace/notations/doubtsOfReading';
import { readRecordingsFolder } from '../../workspace/readRecordingsFolder';
import { readTableWithSamples } from '../../workspace/readTableWithSamples';
import type { CutElement } from '../../xml/cutElement';
import { cutElement } from '../../xml/cutElement';
import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import type { Input } from './input';
import { loadInstrument } from './input';

/** Milliseconds between two lines that say how far the work is. */
const progressEvery = 5000;

/** The options of every command that reads zone tables. */
export const tableOptions = { 'middle-c': ['C3', 'C4', 'C5'], samples: 'text' } as const;

/** An instrument from any kind of input, with the notes of a table's reading. */
export interface AnyInstrument {
  instrument: Instrument;
  notes: ConversionNote[];
  fromTable: boolean;
  /** The vocabulary that it was read by, where it was. */
  vocabulary?: Vocabulary | undefined;
}

/** Reads SFZ, instrument XML, a zone table or a folder of recordings. A table's samples are written as paths from `outputFolder`. */
export async function readAny(
  terminal: Terminal,
  input: Input,
  options: Readonly<Record<string, string | undefined>>,
  outputFolder: string,
): Promise<AnyInstrument> {
  if (input.isFolder) return readFolder(terminal, input, outputFolder);
  const cut = input.notation || !input.text.trimStart().startsWith('<') ? undefined : cutElement(input.text);
  const begun = cut && (await loadInstrument(terminal, { ...input, text: input.text.slice(0, cut.start) }));
  const loaded = begun ?? (await loadInstrument(terminal, input));
  if (loaded) {
    for (const name of Object.keys(tableOptions)) {
      if (options[name] !== undefined)
        terminal.error(
          `zonewright: --${name} is for zone tables; ${input.name} is none, so it has no effect\n`,
        );
    }
    return {
      instrument: loaded.instrument,
      notes: [
        ...(input.notes ?? []),
        ...(begun && cut ? [cutNote(cut)] : []),
        ...(loaded.vocabulary ? assumedInVocabulary(loaded.vocabulary) : []),
        ...(loaded.vocabulary?.inferred ? finish(doubtsOfXml(loaded.instrument)) : []),
      ],
      fromTable: false,
      vocabulary: loaded.vocabulary?.vocabulary,
    };
  }
  const samplesFolder = options.samples === undefined ? undefined : absolutePath(terminal, options.samples);
  if (samplesFolder !== undefined && (await terminal.files.stat(samplesFolder))?.kind !== 'folder') {
    throw new CommandError(`--samples: ${options.samples} is no folder`);
  }
  const reading = await readTableWithSamples(terminal.files, input.text, {
    path: input.path,
    middleC: options['middle-c'] as 'C3' | 'C4' | 'C5' | undefined,
    samplesFolder: samplesFolder ?? folderOf(input.path),
    outputFolder,
  });
  if (reading.problem !== undefined) throw new CommandError(`${input.name}: ${reading.problem}`);
  return { instrument: reading.instrument, notes: reading.notes, fromTable: true };
}

/** That a text of XML ends in the middle of an element. */
function cutNote({ name, start }: CutElement): ConversionNote {
  const message = `The text ends in the middle of this <${name}>; it is left out. Copy the text again to its end.`;
  return { kind: 'dropped', ...mainSpan(start, start), message };
}

async function readFolder(
  terminal: Terminal,
  { name, path }: Input,
  outputFolder: string,
): Promise<AnyInstrument> {
  let told = Date.now();
  const reading = await readRecordingsFolder(terminal.files, path, outputFolder, (share) => {
    if (Date.now() - told < progressEvery) return;
    told = Date.now();
    terminal.error(`zonewright: ${Math.floor(share * 100)} % of the recordings heard\n`);
  });
  if (!reading) throw new CommandError(`${name}: there is no audio file in this folder that can be read`);
  for (const one of reading.unreadable)
    terminal.error(`zonewright: ${name}/${one} cannot be read; it is left out\n`);
  if (reading.instrument.regions.length === 0)
    throw new CommandError(`${name}: neither the names nor the sound of its files say which notes they are`);
  return { instrument: reading.instrument, notes: reading.notes, fromTable: true };
}
