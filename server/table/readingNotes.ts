import type { MiddleC } from '../model/keys';
import { listText } from '../model/wording/listText';
import { keyMeanings, meaningNames } from '../trade/meaning';
import type { NoteNaming } from '../trade/readings/keyReading';
import type { Statements } from '../trade/statements/statements';
import type { TableCells } from './cells/cells';
import type { TableRows } from './cells/tableRows';
import type { ColumnReading } from './columns/columnReading';
import { columnName, shortened } from './columns/columnReading';
import type { KeyTable } from './columns/octaves/octave';
import { decideOctave } from './columns/octaves/octave';
import type { SampleEvidence } from './sampleEvidence';
import type { TableNotes } from './tableNotes';

/** From this confidence on a column needs no note. */
const sure = 0.85;
/** So much of a column that is not used is shown, from so many rows. */
const mostExamples = 3;
const mostLooked = 200;

/** Settles the octave convention and notes it where it was not given; `undefined` where the tables have no note names. */
export function noteOctave(
  cells: TableCells,
  tables: readonly KeyTable[],
  options: SampleEvidence & {
    middleC?: MiddleC | 'auto' | undefined;
    naming: NoteNaming;
    statements: Statements;
  },
  notes: TableNotes,
): MiddleC | undefined {
  const { middleC, naming, statements } = options;
  const found = decideOctave(cells, tables, options, naming, statements.middleC);
  const { otherOctaves: other } = statements;
  const isLined = other?.isLined === true && naming.endsWith('lines');
  if (!found && !isLined) return undefined;
  if (middleC !== undefined && middleC !== 'auto') return middleC;
  const keyed = tables.find(({ columns }) => columns.some(isKeyColumn)) ?? tables[0];
  const span = columnSpan(cells, keyed?.data ?? [], keyed?.columns.find(isKeyColumn));
  if (other || !found) {
    const name = other?.isLined ? 'c1' : `C${4 - (other?.shift ?? 0) / 12}`;
    notes.add(
      'assumed',
      span,
      `Key 60 is read as ${name}, because the text says "${shortened((other?.text ?? '').replace(/[\s,;:]+$/, ''))}".`,
    );
    return undefined;
  }
  const others = (['C3', 'C4', 'C5'] as const).filter((one) => one !== found.middleC).join(' or ');
  notes.add(
    'assumed',
    span,
    `Key 60 is read as ${found.middleC}, because ${found.reason}. If it is ${others}, choose that in the settings, in the preview of the table or with --middle-c.`,
  );
  return found.middleC;
}

/** As {@link noteOctave}, of note names that stand in headings of columns of samples. */
export function noteHeadingOctave(
  tables: readonly KeyTable[],
  { middleC, statements }: { middleC?: MiddleC | 'auto' | undefined; statements: Statements },
  notes: TableNotes,
): MiddleC | undefined {
  const sides = tables.flatMap(({ columns }) => columns);
  const named = sides.find(({ side }) => side?.kind === 'key' && side.low.number === undefined);
  if (!named) return undefined;
  if (middleC !== undefined && middleC !== 'auto') return middleC;
  const taken = statements.middleC?.is ?? 'C4';
  const because = statements.middleC
    ? `"${shortened(statements.middleC.text)}" says so`
    : 'nothing says otherwise and the open SFZ format does';
  notes.add(
    'assumed',
    named.headingSpan ?? { start: 0, end: 0 },
    `Key 60 is read as ${taken}, because ${because}. If it is another, choose that in the settings, in the preview of the table or with --middle-c.`,
  );
  return taken;
}

function isKeyColumn({ meaning }: ColumnReading): boolean {
  return keyMeanings.includes(meaning);
}

/** Some of what stands in a column, in brackets, as far as it is words. */
function examples(cells: TableCells, { data, width }: TableRows, { index }: ColumnReading): string {
  const texts = new Set<string>();
  for (const row of data.slice(0, mostLooked)) {
    // A line of text is nothing of a column.
    if (width > 2 && cells.filled(row) === 1) continue;
    const text = shortened(cells.value(cells.cell(row, index)));
    if (/\p{L}{2}/u.test(text)) texts.add(`"${text}"`);
    if (texts.size > mostExamples) break;
  }
  const shown = [...texts].slice(0, mostExamples);
  const more = texts.size > mostExamples ? ', ...' : '';
  return shown.length === 0 ? '' : ` (${shown.join(', ')}${more})`;
}

/** Notes what was assumed of columns, and which ones are not used. */
export function noteColumns(
  cells: TableCells,
  rows: TableRows,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  noteSides(cells, rows, columns, notes);
  noteUses(cells, rows, columns, notes);
  if (rows.cut)
    notes.add('ignored', { start: 0, end: 0 }, `Columns after the first ${rows.width} are not looked at.`);
  const keyed = columns.some(
    ({ meaning, side }) => side?.kind === 'key' || ['lokey', 'hikey', 'key', 'key_range'].includes(meaning),
  );
  // What roots alone are given for is told when they have shared the keys out.
  if (!keyed && !columns.some(({ meaning }) => meaning === 'pitch_keycenter')) {
    const heading = rows.headings.find(({ cell }) => cell >= 0)?.cell ?? -1;
    const span =
      heading < 0 ? cells.rowSpan(rows.data[0]) : { start: cells.starts[heading], end: cells.ends[heading] };
    const message = 'The table gives no low and high keys, so every region plays on the whole keyboard.';
    notes.add('assumed', span, message);
  }
}

/** What several samples in one row are, by what tells their columns apart. */
const sideWords: Readonly<Partial<Record<NonNullable<ColumnReading['side']>['kind'], string>>> = {
  pan: ' Those of the left and the right are panned to their sides.',
  round_robin: ' They take turns.',
  velocity: ' Their headings give the velocities.',
  key: ' Their headings give the keys.',
  group: ' They sound together.',
};

/** Notes that rows are several zones each. */
function noteSides(
  cells: TableCells,
  rows: TableRows,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  const sides = columns.filter(({ side }) => side !== undefined);
  if (sides.length === 0) return;
  const kind = sides[0].side?.kind;
  const how = (kind && sideWords[kind]) ?? '';
  const message = `Each row is read as one zone for each sample that it names, in ${listText(sides.map(columnName), 'and')}.${how}`;
  notes.add('assumed', columnSpan(cells, rows.data, sides[0]), message);
}

/** Notes columns that are not used, and those whose meaning is not sure, these together where one thing tells of them. */
function noteUses(
  cells: TableCells,
  rows: TableRows,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  const assumed = new Map<string, ColumnReading[]>();
  for (const column of columns) {
    const { meaning, confidence } = column;
    const used = rows.data.find((row) => !cells.isEmpty(row, column.index));
    if (used === undefined || meaning === 'row_number' || column.isUsed || column.isAim) continue;
    const span = columnSpan(cells, [used], column);
    const name = columnName(column);
    const evidence = column.evidence.join(' ');
    if (meaning === 'comment')
      notes.add(
        'ignored',
        span,
        `The comments in ${name} are not carried over${examples(cells, rows, column)}.`,
      );
    else if (meaning === 'unknown')
      notes.add(
        'ignored',
        span,
        `What stands in ${name} is not used${examples(cells, rows, column)}. ${evidence}`,
      );
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
      `${evidence.startsWith('Its heading') ? 'Taken by its heading' : 'Found from the cells'}: ${listText(taken, 'and')}. ${evidence}`,
    );
  }
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
