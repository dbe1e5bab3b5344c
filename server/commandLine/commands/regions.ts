import { effectiveValues } from '../../model/effectiveValues';
import type { Instrument } from '../../model/instrument';
import { noteNameOf } from '../../model/keys';
import { jsonText } from '../../model/text/visibleText';
import { lineNotes } from '../../model/writing/lineNotes';
import { assumedOnReading } from '../../model/writing/readingNotes';
import { unreadValues } from '../../vocabulary/read/unreadValues';
import { CommandError } from '../commandError';
import { fontOptions } from '../input/fontInput';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { readAny, tableOptions } from '../input/readAny';
import { tellNotes } from '../output/notes';
import { textTable } from '../output/textTable';
import type { Terminal } from '../terminal';
import { readWords } from '../words';

/** `zonewright regions`: every region with the values in force. */
export async function regions(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options } = readWords(args, { format: ['text', 'json'], ...tableOptions, ...fontOptions });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('regions takes one file');
  const input = await readInputOrFolder(terminal, name, options);
  const {
    instrument,
    notes: told,
    vocabulary,
  } = await readAny(terminal, input, options, folderOfInput(input));
  const notes = [
    ...told,
    ...[...assumedOnReading(instrument).values()].flat(),
    ...(vocabulary ? unreadValues(instrument, vocabulary) : []),
  ].sort((one, other) => one.source - other.source || one.start - other.start);
  if (options.format === 'json') {
    const listed = [...instrument.regions].map((region) => {
      const label = instrument.groupLabel(region);
      return { ...effectiveValues(instrument, region), ...(label !== undefined && { label }) };
    });
    const output = { format: instrument.format, regions: listed, notes: lineNotes(instrument, notes) };
    await terminal.out(jsonText(output));
    return 0;
  }
  await terminal.out(regionTable(instrument));
  tellNotes(terminal, input.name, lineNotes(instrument, notes));
  return 0;
}

function regionTable(instrument: Instrument): string {
  const rows = [...instrument.regions].map((region) => [
    range(instrument.lowKey[region], instrument.highKey[region], (key) =>
      key < 0 ? 'off' : noteNameOf(key),
    ),
    range(instrument.lowVelocity[region], instrument.highVelocity[region], String),
    noteNameOf(instrument.rootKey(region)),
    instrument.groupLabel(region) ?? '',
    instrument.samplePath(region) ?? '',
  ]);
  return textTable(['keys', 'velocities', 'root', 'label', 'sample'], rows);
}

function range(low: number, high: number, show: (value: number) => string): string {
  return low === high ? show(low) : `${show(low)}–${show(high)}`;
}
