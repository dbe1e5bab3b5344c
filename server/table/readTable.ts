import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { InstrumentBuilder, plainNumber } from '../model/instrumentBuilder';
import type { ConversionNote } from '../model/notes';
import { Source } from '../model/source';
import type { TableCells } from './cells';
import { readColumns } from './columnMeaning';
import { findDelimiter, split } from './delimiter';
import type { ColumnMeaning, ColumnReading } from './meaning';
import type { MiddleC } from './octave';
import { noteColumns, noteOctave } from './readingNotes';
import { completeRoundRobins } from './roundRobin';
import { TableNotes } from './tableNotes';
import { findRows } from './tableRows';
import { completeLayers } from './velocityLayers';
import type { Zone } from './zone';
import { readZones } from './zones';

export interface TableOptions {
  /** The path by which the table is known; `table` where nothing is given. */
  path?: string;
  /** The note name that the table gives to key 60; found by evidence where nothing or `auto` is given. */
  middleC?: MiddleC | 'auto';
  /** The root key that a sample file itself carries, by the name in the table. */
  rootKeyOf?: (sample: string) => number | undefined;
  /** The path to write for a sample, by the name in the table; the name itself where `undefined` comes back. */
  resolveSample?: (sample: string) => string | undefined;
  /** Meanings that a person has set for columns, by position from 0. */
  columns?: ReadonlyMap<number, ColumnMeaning>;
}

/** What was found in a zone table. */
export interface TableReading {
  /** The zones as regions, in groups where a column names groups; each value's span is the cell it comes from. */
  instrument: Instrument;
  /** What each column was taken for. */
  columns: ColumnReading[];
  /** The convention by which note names were read; `undefined` where the table has none. */
  middleC: MiddleC | undefined;
  notes: ConversionNote[];
  /** Why the text gives no region at all, in one sentence for people; `undefined` where it does. */
  problem: string | undefined;
}

/**
 * Reads a copied zone table into an instrument of the open SFZ format's parameters. Takes any text and never throws:
 * what is no table gives no regions and a `problem`.
 */
export function readZoneTable(text: string, options: TableOptions = {}): TableReading {
  const path = options.path ?? 'table';
  const fault = textFault(text);
  if (fault) return nothing(text, path, fault);
  const delimiter = findDelimiter(text);
  if (!delimiter) {
    return nothing(
      text,
      path,
      'This is no zone table: no tabs, semicolons, bars, commas or aligned columns part its lines into cells.',
    );
  }
  const cells = split(text, delimiter);
  const rows = findRows(cells);
  const columns = readColumns(cells, rows, options.columns);
  if (rows.data.length === 0) {
    return { ...nothing(text, path, 'The table has headings only; copy its rows too.'), columns };
  }
  const sample = columns.find(({ meaning }) => meaning === 'sample');
  if (!sample) {
    const problem =
      'No column of sample names was found in the table; one with a heading such as Sample or File is needed.';
    return { ...nothing(text, path, problem), columns };
  }
  const notes = new TableNotes(new Source(path, text));
  const octave = noteOctave(cells, rows.data, columns, options, notes);
  noteColumns(cells, rows, columns, notes);
  const zones = readZones(cells, rows, columns, octave, options.resolveSample, notes);
  if (zones.length === 0) {
    return {
      ...nothing(text, path, 'No row of the table names a sample, so there is nothing to convert.'),
      columns,
    };
  }
  completeLayers(zones, columns, cells, notes);
  completeRoundRobins(zones);
  return {
    instrument: build(text, path, cells, zones),
    columns,
    middleC: octave,
    notes: notes.finish(),
    problem: undefined,
  };
}

function nothing(text: string, path: string, problem: string): TableReading {
  const builder = new InstrumentBuilder('table', 0);
  builder.enterSource(path, text);
  return { instrument: builder.finish(), columns: [], middleC: undefined, notes: [], problem };
}

/** Says why a text cannot be a table at all: it is empty, or bytes of something else. */
function textFault(text: string): string | undefined {
  const start = text.slice(0, 1 << 16);
  if (start.trim() === '') return 'There is no text to read.';
  let odd = 0;
  for (let at = 0; at < start.length; at++) {
    const code = start.charCodeAt(at);
    if (code === 0) return 'This is not text but binary data.';
    if (code === 0xfffd || (code < 32 && code !== 9 && code !== 10 && code !== 13)) odd++;
  }
  return odd * 10 > start.length ? 'This is not text but binary data.' : undefined;
}

/** Zones without a group come first, then the groups in order of first appearance. */
function build(text: string, path: string, cells: TableCells, zones: readonly Zone[]): Instrument {
  const groups = new Map<string, Zone[]>([['', []]]);
  for (const zone of zones) {
    const group = groups.get(zone.group);
    if (group) group.push(zone);
    else groups.set(zone.group, [zone]);
  }
  const builder = new InstrumentBuilder('table', text.length);
  builder.enterSource(path, text);
  const add = (name: string, cell: number, value: string) => {
    const start = cells.starts[cell] as number;
    const end = cells.ends[cell] as number;
    const written = text.slice(start, end);
    const parameter = builder.addParameter(builder.names.idOf(name), start, start, end, plainNumber(written));
    builder.setNameEnd(parameter, end);
    if (written !== value) builder.setValue(parameter, value);
  };
  for (const [group, members] of groups) {
    const first = members[0];
    if (group !== '' && first) {
      const start = cells.starts[first.groupCell] as number;
      const end = cells.ends[first.groupCell] as number;
      builder.openHeader(HeaderKind.group, start, end);
      add('group_label', first.groupCell, group);
    }
    for (const { row, values } of members) {
      const { start, end } = cells.rowSpan(row);
      builder.openHeader(HeaderKind.region, start, end);
      for (const { name, cell, text: value } of values) add(name, cell, value);
    }
  }
  return builder.finish();
}
