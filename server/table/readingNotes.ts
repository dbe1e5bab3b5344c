import type { TableCells } from './cells';
import type { ColumnReading } from './meaning';
import { columnName, meaningNames } from './meaning';
import type { MiddleC } from './octave';
import { decideOctave } from './octave';
import type { TableNotes } from './tableNotes';
import type { TableRows } from './tableRows';

interface OctaveOptions {
  middleC?: MiddleC | 'auto';
  rootKeyOf?: (sample: string) => number | undefined;
}

/** From this confidence on a column needs no note. */
const sure = 0.85;

/** Settles the octave convention and notes it where it was not given; `undefined` where the table has no note names. */
export function noteOctave(
  cells: TableCells,
  data: readonly number[],
  columns: readonly ColumnReading[],
  { middleC, rootKeyOf }: OctaveOptions,
  notes: TableNotes,
): MiddleC | undefined {
  const found = decideOctave(cells, data, columns, rootKeyOf);
  if (!found) return undefined;
  if (middleC !== undefined && middleC !== 'auto') return middleC;
  const column = columns.find(({ meaning }) =>
    ['pitch_keycenter', 'key', 'lokey', 'key_range'].includes(meaning),
  );
  const others = (['C3', 'C4', 'C5'] as const).filter((one) => one !== found.middleC).join(' or ');
  notes.add(
    'assumed',
    columnSpan(cells, data, column),
    `Key 60 was taken to be called ${found.middleC}, because ${found.reason}. If it is ${others}, say so with --middle-c or in the settings.`,
  );
  return found.middleC;
}

/** Notes what was assumed of columns, and which ones are not used. */
export function noteColumns(
  cells: TableCells,
  rows: TableRows,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  const assumed = new Map<string, ColumnReading[]>();
  for (const column of columns) {
    const { meaning, confidence } = column;
    const used = rows.data.find((row) => !cells.isEmpty(row, column.index));
    if (used === undefined || meaning === 'row_number') continue;
    const span = columnSpan(cells, [used], column);
    const name = columnName(column);
    const evidence = column.evidence.join(' ');
    if (meaning === 'comment') notes.add('ignored', span, `The comments in ${name} are not carried over.`);
    else if (meaning === 'unknown')
      notes.add('ignored', span, `What stands in ${name} is not used. ${evidence}`);
    else if (confidence < sure) {
      const alike = assumed.get(evidence);
      if (alike) alike.push(column);
      else assumed.set(evidence, [column]);
    }
  }
  for (const [evidence, alike] of assumed) {
    const taken = alike.map((column) => `${columnName(column)} is the ${meaningNames[column.meaning]}`);
    notes.add(
      'assumed',
      columnSpan(cells, rows.data, alike[0]),
      `Found from the cells: ${listed(taken)}. ${evidence}`,
    );
  }
  if (rows.cut)
    notes.add('ignored', { start: 0, end: 0 }, `Columns behind the first ${rows.width} are not looked at.`);
  const keyed = columns.some(({ meaning }) => ['lokey', 'hikey', 'key', 'key_range'].includes(meaning));
  if (!keyed) {
    const first = rows.heading >= 0 ? rows.heading : (rows.data[0] as number);
    const message = 'The table gives no low and high keys, so every region answers to the whole keyboard.';
    notes.add('assumed', cells.rowSpan(first), message);
  }
}

function listed(parts: readonly string[]): string {
  const last = parts.at(-1) as string;
  return parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

/** The heading of a column, or its first cell that holds something. */
function columnSpan(
  cells: TableCells,
  data: readonly number[],
  column: ColumnReading | undefined,
): { start: number; end: number } {
  if (!column) return { start: 0, end: 0 };
  if (column.headingSpan) return column.headingSpan;
  const row = data.find((one) => !cells.isEmpty(one, column.index));
  const cell = row === undefined ? -1 : cells.cell(row, column.index);
  return { start: cells.starts[cell] ?? 0, end: cells.ends[cell] ?? 0 };
}
