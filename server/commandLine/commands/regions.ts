import { effectiveValues } from '../../model/effectiveValues';
import type { Instrument } from '../../model/instrument';
import { noteNameOf } from '../../model/keys';
import type { ConversionNote } from '../../model/notes';
import { mainSpan } from '../../model/text/span';
import { jsonText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import { importantFirst, lineNotes } from '../../model/writing/lineNotes';
import { assumedOnReading, lostOnReading } from '../../model/writing/readingNotes';
import { unreadValues } from '../../vocabulary/read/unreadValues';
import { unknownNames } from '../../workspace/notations/unknownNames';
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
    fromTable,
    vocabulary,
  } = await readAny(terminal, input, options, folderOfInput(input));
  const notes = [
    ...told,
    ...[...assumedOnReading(instrument).values()].flat(),
    ...lostOnReading(instrument),
    ...(vocabulary ? unreadValues(instrument, vocabulary) : []),
    ...(vocabulary || fromTable ? [] : unknownNames(instrument)),
  ];
  if (options.format === 'json') {
    let summed = 0;
    const listed = [...instrument.regions].map((region) => {
      const label = instrument.groupLabel(region);
      const values = effectiveValues(instrument, region);
      const sums = vocabulary ? withSums(values) : values;
      if (sums.volume !== values.volume || sums.tune !== values.tune) summed++;
      return {
        ...sums,
        ...(label !== undefined && { label }),
      };
    });
    const told = summed > 0 ? [...notes, sumsNote(summed)] : notes;
    const output = {
      format: instrument.format,
      regions: listed,
      notes: importantFirst(lineNotes(instrument, told)),
    };
    await terminal.out(jsonText(output));
    return 0;
  }
  await terminal.out(regionTable(instrument));
  tellNotes(terminal, input.name, importantFirst(lineNotes(instrument, notes)));
  return 0;
}

/** That what is listed of some regions is not what stands at them alone. */
function sumsNote(count: number): ConversionNote {
  const regions = counted(count, 'region has', 'regions have');
  const message = `${regions} a level or tuning of elements around as well as their own. The sum is listed.`;
  return { kind: 'assumed', ...mainSpan(0, 0), message };
}

/** Levels and tunings of elements around added to those of the region, as they sound. */
function withSums(values: Record<string, number | string>): Record<string, number | string> {
  const sums = { ...values };
  for (const name of ['volume', 'tune']) {
    for (const header of ['global', 'master', 'group']) {
      const outer = sums[`${header}_${name}`];
      const own = sums[name] ?? 0;
      if (typeof outer !== 'number' || typeof own !== 'number') continue;
      sums[name] = Math.round((own + outer) * 1e6) / 1e6;
      delete sums[`${header}_${name}`];
    }
  }
  return sums;
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
