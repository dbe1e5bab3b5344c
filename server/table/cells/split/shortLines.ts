import { namesAudioFileIn } from '../../../model/fileNames';
import { readHeading } from '../../../trade/headings/headings';
import { lookAt } from '../../columns/cellKinds';
import { TableCells } from '../cells';
import { knownHeadings } from './headingLine';
import type { Word } from './lineWords';
import { isBlankLine, longestLine } from './lineWords';
import type { NameAndValues } from './namedLines';
import { namedLines } from './namedLines';
import { linesOf } from './splitWords';
import { columnsOfValues, placesInRows } from './valuePlaces';

const mostLines = 5000;
const mostBefore = 25;
/** So many of the lines below headings have to be rows. */
const mostOthers = 1 / 3;

/**
 * Splits a text whose headings are parted by single blanks and stand over no columns, where some rows have fewer values than there are
 * headings: the values go where they stand below those of full rows, else where they fit, with a note. `undefined` where no row is short.
 */
export function splitShortLines(text: string): TableCells | undefined {
  for (const [at, line] of linesOf(text, mostBefore).entries()) {
    const written = text.slice(line.start, Math.min(line.end, line.start + longestLine)).trim();
    const headings = /[ \u00a0]{2}|\t/.test(written) ? undefined : knownHeadings(text, line);
    if (headings && nameIsFirst(text, headings)) {
      const lines = linesOf(text, mostLines + 1);
      return lines.length > mostLines ? undefined : under(text, lines, at, headings);
    }
  }
  return undefined;
}

/** Whether the first heading, and no other, may be that of the samples. */
function nameIsFirst(text: string, [first, ...others]: readonly Word[]): boolean {
  const meaningOf = ({ start, end }: Word) => readHeading(text.slice(start, end))?.meaning ?? 'sample';
  return meaningOf(first) === 'sample' && others.every((one) => meaningOf(one) !== 'sample');
}

function under(
  text: string,
  lines: readonly Word[],
  at: number,
  headings: readonly Word[],
): TableCells | undefined {
  const count = headings.length - 1;
  const meanings = headings.slice(1).map(({ start, end }) => readHeading(text.slice(start, end))?.meaning);
  const numberAt = (one: Word | undefined) =>
    one ? lookAt(text.slice(one.start, one.end)).value : Number.NaN;
  const inOrder = (values: readonly Word[]) => {
    const [low, high, root] = (['lokey', 'hikey', 'pitch_keycenter'] as const).map((meaning) =>
      numberAt(values[meanings.indexOf(meaning)]),
    );
    return !(low > high) && !(root < low) && !(root > high);
  };
  const below = lines.slice(at + 1);
  const named = namedLines(text, below, count, inOrder);
  const rows = named.filter((one) => one !== undefined);
  const full = rows.filter(({ values }) => values.length === count);
  const filled = below.filter((line) => !isBlankLine(text, line)).length;
  if (rows.length < 2 || full.length === rows.length || filled - rows.length > filled * mostOthers)
    return undefined;
  const namesFile = ({ start, end }: Word) =>
    namesAudioFileIn(text.slice(start, Math.min(end, start + longestLine)));
  if (below.some((line, index) => named[index] === undefined && namesFile(line))) return undefined;
  // Files that single blanks part from their values are told from them without the headings.
  const isWide = rows.some(({ name, values }) =>
    values.some(({ start }, index) => start - (values[index - 1] ?? name).end > 1),
  );
  if (!isWide && rows.every(({ name }) => namesFile(name))) return undefined;
  // Without a full row, lines of one length leave the last columns empty.
  const widest = Math.max(...rows.map(({ values }) => values.length));
  const telling = full.length > 0 ? full : rows;
  if (full.length === 0 && (rows.some(({ values }) => values.length !== widest) || widest < 2))
    return undefined;
  const places = placesInRows(text, telling);
  const cells = new TableCells(text);
  cells.bySpaces = true;
  const told: TableCells['assumptions'][number][] = [];
  for (const [index, line] of lines.entries()) {
    const row = index > at ? named[index - at - 1] : undefined;
    if (index === at) for (const { start, end } of headings) cells.add(start, end);
    else if (row) {
      const columns =
        row.values.length === places.length ? undefined : columnsOfValues(text, row, places, inOrder);
      addRow(cells, row, columns?.columns, count);
      if (columns) told.push({ text: tell(text, row, columns), start: line.start, end: line.end });
    } else if (line.end > line.start) cells.add(line.start, line.end);
    cells.endRow();
  }
  if (full.length === 0)
    told.push({
      text: 'All rows have fewer values than there are headings: they are read under the first headings, and nothing under the last.',
      start: lines[at].start,
      end: lines[at].end,
    });
  cells.assumptions = told;
  return cells;
}

/** Adds a row with its values in their columns; in the order of the text where no columns are given. */
function addRow(
  cells: TableCells,
  { name, values }: NameAndValues,
  columns: readonly number[] | undefined,
  count: number,
): void {
  cells.add(name.start, name.end);
  let place = name.end;
  for (let column = 0; column < count; column++) {
    const value = values[columns ? columns.indexOf(column) : column] as Word | undefined;
    if (value) {
      cells.add(value.start, value.end);
      place = value.end;
    } else cells.put(place, place);
  }
}

function tell(
  text: string,
  { name, values }: NameAndValues,
  { columns, isPlaced }: { columns: readonly number[]; isPlaced: boolean },
): string {
  const start = `The row of "${text.slice(name.start, name.end).slice(0, 60)}" has fewer values than there are headings.`;
  const left = values.filter((_, at) => columns[at] < 0).map((one) => `"${text.slice(one.start, one.end)}"`);
  if (left.length > 0)
    return `${start} It is not clear which are missing, so ${left.join(' and ')} ${left.length === 1 ? 'is' : 'are'} left out.`;
  return `${start} They are read under the headings ${isPlaced ? 'whose values they stand below' : 'that fit'}.`;
}
