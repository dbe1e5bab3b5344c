import { isAudioFileName } from '../../../model/fileNames';
import { saysCorrect } from '../../../trade/correctingWords';
import { saidMeanings } from '../../../trade/headings/saidMeanings';
import { bareWord, wordsOf } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { noteName } from '../../../trade/readings/notePatterns';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import { lookAt } from '../cellKinds';
import type { ColumnReading } from '../columnReading';
import { columnName, shortened } from '../columnReading';

const mostLines = 100;
const mostRows = 5000;
const longest = 600;
/** A sentence goes over so many lines at most. */
const mostWrapped = 3;
const sentences = /[.!?;](?=\s|$)/u;
const token = /[\p{L}\p{N}_#.-]{3,}/gu;
/** A word of a sentence is the name of a file with its ending, or with signs that words do not have. */
const mayBeName = /[\p{N}_]|\.\p{L}{3,4}\b/u;
const value = new RegExp(
  String.raw`(?<![\p{L}\p{N}_.])(?:${noteName}-?\d{1,2}|[-+\u2212]?\d+(?:[.,]\d+)?)(?![\p{L}\p{N}_]|[.,]\d)`,
  'giu',
);
const others: ReadonlySet<ColumnMeaning> = new Set(['sample', 'group', 'comment', 'row_number', 'unknown']);

interface Rows {
  rows: TableRows;
  columns: readonly ColumnReading[];
}

/**
 * Lets a sentence around a table overrule a value in it: one that names a sample of the table, a column, the value that the table has and
 * another, as `b_2.wav: the root is 62, not 60`. Where it does not say that its value is the right one, the table counts. Each is told in
 * the cells' assumptions.
 */
export function overruleValues(cells: TableCells, { rows, columns }: Rows): void {
  const sample = columns.find(({ meaning }) => meaning === 'sample');
  if (!sample) return;
  const lines = linesIn(cells, rows, sample);
  if (lines.length === 0) return;
  const rowsOf = rowsByName(cells, rows, sample);
  const told: { text: string; start: number; end: number }[] = [];
  for (const { text, span } of lines) {
    for (const sentence of text.split(sentences)) {
      const names = new Set(
        Array.from(sentence.matchAll(token), ([name]) => name)
          .filter((name) => mayBeName.test(name))
          .map(nameOf)
          .filter((name) => rowsOf.has(name)),
      );
      const [name] = names;
      if (name === undefined || names.size > 1) continue;
      const rest = sentence.replace(token, (word) => (nameOf(word) === name ? ' ' : word));
      const column = columnIn(rest, columns);
      const message = column && overruled(cells, rowsOf.get(name) ?? [], column, rest, sample);
      if (message) told.push({ text: message, ...span });
    }
  }
  if (told.length > 0) cells.assumptions = [...cells.assumptions, ...told];
}

/** Puts the value of a sentence into the cells of a column; what is to be told of it. */
function overruled(
  cells: TableCells,
  rows: readonly number[],
  column: ColumnReading,
  sentence: string,
  sample: ColumnReading,
): string | undefined {
  const all = new Map(Array.from(sentence.matchAll(value), ([text]) => [keyOf(text), text]));
  const places = rows.map((row) => cells.cell(row, column.index)).filter((cell) => cell >= 0);
  const now = new Set(places.map((cell) => keyOf(cells.plain(cell))));
  const [old] = now;
  if (old === undefined || now.size > 1) return undefined;
  const isNamed = all.delete(old);
  const [text] = all.values();
  if (text === undefined || all.size > 1) return undefined;
  const name = shortened(cells.value(cells.cell(rows[0] ?? 0, sample.index)));
  const before = shortened(cells.value(places[0] ?? -1));
  const where = `For "${name}", the text gives ${text} where ${columnName(column)} has "${before}"`;
  if (!isNamed && !saysCorrect(sentence)) return `${where}; the table counts. Check which is right.`;
  for (const cell of places) cells.rewritten.set(cell, text);
  return `${where}; the text counts, as it corrects the table.`;
}

/** Values that are written differently and are the same have the same key. */
function keyOf(text: string): string {
  const look = lookAt(text.trim());
  return Number.isNaN(look.value) ? text.trim() : `${look.kind} ${look.value}`;
}

/** The one column of values that a sentence names by its heading, or by a word for what it holds. */
function columnIn(sentence: string, columns: readonly ColumnReading[]): ColumnReading | undefined {
  const words = wordsOf(sentence);
  const bare = ` ${words.join(' ')} `;
  const some = columns.filter(({ meaning }) => !others.has(meaning));
  const named = some.filter(({ heading }) => {
    const own = wordsOf(heading.replace(/[([].*$/u, '')).join(' ');
    return own.length > 2 && bare.includes(` ${own}`);
  });
  if (named.length > 0) return named.length === 1 ? named[0] : undefined;
  const meanings = new Set(saidMeanings(words));
  const meant = some.filter(({ meaning }) => meanings.has(meaning));
  return meant.length === 1 ? meant[0] : undefined;
}

/** Lines of words around the zones of a table; those that go on in the next line are put together. */
function linesIn(
  cells: TableCells,
  { others: passed, data }: TableRows,
  sample: ColumnReading,
): { text: string; span: { start: number; end: number } }[] {
  const isLine = (row: number) =>
    cells.filled(row) < 3 &&
    !cells.struckRows.has(row) &&
    /\p{L}+\s\P{L}*\p{L}+\s/u.test(rowText(cells, row));
  const near = [...data.slice(0, 40), ...data.slice(-40)].filter(
    (row) => isLine(row) && (cells.filled(row) === 1 || cells.isEmpty(row, sample.index)),
  );
  const rows = [...new Set([...passed.map(({ row }) => row).filter(isLine), ...near])].sort((a, b) => a - b);
  const lines: { text: string; span: { start: number; end: number } }[] = [];
  for (let at = 0; at < Math.min(rows.length, mostLines); ) {
    const span = { ...cells.rowSpan(rows[at]) };
    const texts = [rowText(cells, rows[at])];
    let next = at + 1;
    while (rows[next] === rows[at] + texts.length && texts.length < mostWrapped) {
      texts.push(rowText(cells, rows[next]));
      span.end = cells.rowSpan(rows[next]).end;
      next++;
    }
    lines.push({ text: texts.join(' '), span });
    at = next;
  }
  return lines;
}

function rowsByName(
  cells: TableCells,
  { data }: TableRows,
  { index }: ColumnReading,
): ReadonlyMap<string, number[]> {
  const found = new Map<string, number[]>();
  for (const row of data.slice(0, mostRows)) {
    if (cells.filled(row) < 2) continue;
    const name = nameOf(cells.value(cells.cell(row, index)));
    if (name.length < 3) continue;
    const list = found.get(name);
    if (list) list.push(row);
    else found.set(name, [row]);
  }
  return found;
}

/** The name of a file without its folder and its ending. */
function nameOf(path: string): string {
  const name = bareWord(path).split(/[\\/]/).at(-1) ?? '';
  const bare = name.replace(/[.:,]+$/, '');
  return isAudioFileName(bare) ? bare.slice(0, bare.lastIndexOf('.')) : bare;
}

function rowText(cells: TableCells, row: number): string {
  const { start, end } = cells.rowSpan(row);
  if (cells.rowSpans === undefined) return cells.text.slice(start, Math.min(end, start + longest));
  const width = Math.min(cells.width(row), 10);
  return Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column))).join(' ');
}
