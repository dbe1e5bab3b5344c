import { panBounds, transposeBounds, tuneBounds } from '../../../trade/bounds';
import { rounded } from '../../../trade/decimal';
import { levelScaleOf, readLevel } from '../../../trade/readings/levelReading';
import { readNumber } from '../../../trade/readings/numberReading';
import { readPan } from '../../../trade/readings/panReading';
import type { BracketValues } from '../../../trade/statements/amounts/bracketValues';
import type { MarkLegend } from '../../../trade/statements/nameMarks';
import { legendOf, settingsIn } from '../../../trade/statements/nameMarks';
import type { StatedSettings } from '../../../trade/statements/settings';
import type { Statements } from '../../../trade/statements/statements';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { giveBeside } from './sectionSettings';

/** A value to write. */
interface Value {
  name: 'volume' | 'tune' | 'transpose' | 'pan';
  number: number;
}

const bounds = { tune: tuneBounds, transpose: transposeBounds, pan: panBounds } as const;

/**
 * Gives zones the values that stand in brackets behind the names of their files, by their units or by what the text says that they are or a mark there means;
 * a level or a tuning is added to that of the row. What stays open is noted. The zones of the table are those from number `first` on.
 */
export function giveBracketValues(
  zones: ZoneList,
  first: number,
  { bracketValues: said, nameMarks }: Pick<Statements, 'bracketValues' | 'nameMarks'>,
  notes: TableNotes,
): void {
  const { cells } = zones;
  if (cells.nameRemarks.size === 0) return;
  const samples = zones.column('sample').cells;
  for (let zone = first; zone < zones.count; zone++) {
    const cell = samples[zone];
    const remark = cells.nameRemarks.get(cell);
    if (remark === undefined) continue;
    const span = { start: cells.starts[cell], end: cells.ends[cell] };
    const place = notes.place(span.start);
    const value = valueIn(remark, said);
    notes.row = zones.rows[zone];
    if (!value) {
      const legend = legendOf(remark, nameMarks);
      const settings = settingsIn(legend?.says ?? remark);
      if (settings) giveBeside(zones, zone, cell, settings);
      const kind = settings ? 'assumed' : 'ignored';
      notes.add(kind, span, `${place}: ${remarkNote(remark, legend, settings)}`, `name remark ${kind}`);
      continue;
    }
    const column = zones.column(value.name);
    const isSum = value.name !== 'pan' && column.cells[zone] >= 0;
    const number = rounded(value.number + (isSum ? column.numbers[zone] : 0));
    if (number !== 0 || isSum) {
      column.set(zone, Math.max(cell, column.cells[zone]), number);
    }
    const why = readNumber(remark)?.unit === undefined && said ? `, as "${shortened(said.text)}" says` : '';
    const sum = isSum ? `, with what its row gives ${value.name}=${number}` : '';
    const message = `${place}: "${shortened(remark)}" beside the name of the sample is read as ${value.name}=${rounded(value.number)}${sum}${why}.`;
    notes.add('assumed', span, message, 'name value');
  }
}

/** What was made of a remark or a mark behind a name. */
function remarkNote(
  remark: string,
  legend: MarkLegend | undefined,
  settings: StatedSettings | undefined,
): string {
  const what = `"${shortened(remark)}" beside the name of the sample`;
  const why = legend ? `, as "${shortened(legend.text)}" says` : '';
  if (!settings)
    return legend
      ? `${what} is explained by "${shortened(legend.text)}", which gives no value that is known; it is not used.`
      : `${what} is not used.`;
  const list = Array.from(settings.values, ([name, value]) => `${name}=${value}`).join(', ');
  const more = settings.hasMore ? ' What else it says is not used.' : '';
  return `${what} is read as ${list}${why}.${more}`;
}

function valueIn(remark: string, said: BracketValues | undefined): Value | undefined {
  const reading = readNumber(remark);
  const unit = reading?.unit;
  const meaning =
    unit === undefined || unit === said?.unit
      ? said?.meaning
      : unit === 'dB'
        ? 'volume'
        : unit === 'cents'
          ? 'tune'
          : unit === 'semitones'
            ? 'transpose'
            : undefined;
  if (meaning === undefined) return undefined;
  if (meaning === 'pan') return within('pan', readPan(remark));
  if (!reading) return undefined;
  if (meaning === 'volume' || meaning === 'attenuation') {
    const scale = levelScaleOf(unit ?? said?.unit ?? 'dB');
    const level = scale && readLevel(remark, scale, meaning === 'attenuation' && reading.number > 0);
    return level && 'decibels' in level ? { name: 'volume', number: level.decibels } : undefined;
  }
  const isSemitones = meaning === 'transpose' || (unit ?? said?.unit) === 'semitones';
  if (!isSemitones) return within('tune', reading.number);
  return Number.isInteger(reading.number)
    ? within('transpose', reading.number)
    : within('tune', rounded(reading.number * 100));
}

function within(name: keyof typeof bounds, number: number | undefined): Value | undefined {
  const { least, most } = bounds[name];
  return number !== undefined && number >= least && number <= most ? { name, number } : undefined;
}
