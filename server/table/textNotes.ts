import { listText } from '../model/wording/listText';
import type { TableCells } from './cells/cells';
import type { CutEnd } from './cells/cutPlace';
import { columnName, shortened } from './columns/columnReading';
import type { OpenedTables } from './openedTables';
import { hasSamples } from './openedTables';
import { noteColumns } from './readingNotes';
import type { TableNotes } from './tableNotes';
import type { Table } from './zones/zones';

/** Notes what holds for the whole text: rows that are hidden, remarks, how its numbers are written, a list of samples. */
export function noteText(
  { cells, tables, list, explained, hexadecimal }: OpenedTables,
  notes: TableNotes,
): void {
  for (const { start, end } of cells.hiddenRows) {
    const message = 'A row that is hidden on the page is left out. If it is a zone, show it before copying.';
    notes.add('ignored', { start, end }, message, 'hidden');
  }
  if (hexadecimal) {
    const span = cells.rowSpan(tables[0]?.data[0] ?? 0);
    notes.add('assumed', span, 'Keys and velocities are read as hexadecimal numbers, as the text says.');
  }
  if (list) {
    const message = `The samples in ${columnName({ heading: list.heading, index: 0 })} are those of a list in the text: ${shortened(list.number)} is "${shortened(list.name)}".`;
    notes.add('assumed', list.span, message);
  }
  for (const { word, taken, text: said, span } of explained) {
    const message = `"${shortened(word)}" is read as ${taken}, as "${shortened(said)}" explains.`;
    notes.add('assumed', span, message);
  }
  if (cells.cutEnd) noteCutEnd(cells.cutEnd, notes);
  for (const { text: said, start, end, kind } of cells.assumptions)
    notes.add(kind ?? 'assumed', { start, end }, said);
  for (const { text: remark, start, end } of cells.remarks) {
    const message = `A comment names a sample ("${shortened(remark)}"); it is no zone.`;
    notes.add('ignored', { start, end }, message, 'remark');
  }
}

/** Notes that the text ends before what it began is complete. */
function noteCutEnd({ start, end, isZone }: CutEnd, notes: TableNotes): void {
  const place = notes.place(start);
  const message = isZone
    ? `The text ends in the middle of the zone at ${place}; it is left out. Copy the text again to its end.`
    : `The text ends before what opens at ${place} is closed, so zones may be missing. Copy the text again to its end.`;
  notes.add(isZone ? 'dropped' : 'assumed', { start, end }, message);
}

/** Notes that empty cells have the value above them, and what says so. */
export function noteBlanks({ cells, tables }: OpenedTables, said: string, notes: TableNotes): void {
  const span = cells.rowSpan(tables[0]?.data[0] ?? 0);
  notes.add('assumed', span, `Empty cells have the value above them, as "${shortened(said)}" says.`);
}

/** Notes that the lines over tables state different things, each of which is taken for its own table. */
export function noteDifferences(
  cells: TableCells,
  tables: readonly Table[],
  names: readonly string[],
  notes: TableNotes,
): void {
  const [first, second] = tables;
  if (names.length === 0 || !first || !second) return;
  const span = cells.rowSpan(second.data[0] ?? 0);
  const message = `The lines over the tables differ in ${listText(names, 'and')}. Each table is read as the line over it says.`;
  notes.add('assumed', span, message);
}

/** Notes on a table as a whole, before its zones are read. */
export function noteTable(cells: TableCells, table: Table, notes: TableNotes): void {
  const { rows, columns } = table;
  if (hasSamples(table)) noteColumns(cells, rows, columns, notes);
  else {
    const span = cells.rowSpan(rows.data[0] ?? rows.others[0]?.row ?? 0);
    const place = notes.place(span.start);
    notes.add('ignored', span, `The table at ${place} has no column of sample names; it is not used.`);
  }
}
