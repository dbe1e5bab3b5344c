import { isAudioFileName } from '../../../model/fileNames';
import { isHeadedAsCorrection, saysCorrect } from '../../../trade/correctingWords';
import { saidMeanings } from '../../../trade/headings/saidMeanings';
import { bareWord, wordsOf } from '../../../trade/languages/spelling';
import { isUnspaced, unspacedLetter } from '../../../trade/languages/wordPattern';
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
/** Between a word of a script without blanks and one of another. */
const besideUnspaced = new RegExp(
  String.raw`(?<=${unspacedLetter})(?=[\p{Script=Latin}\d+\u2212-])|(?<=[\p{Script=Latin}\d])(?=${unspacedLetter})`,
  'gu',
);
const others: ReadonlySet<ColumnMeaning> = new Set(['sample', 'group', 'comment', 'row_number', 'unknown']);

const isOfWords = new RegExp(String.raw`\p{L}+\s\P{L}*\p{L}+\s|${unspacedLetter}{2}`, 'u');

interface Rows {
  rows: TableRows;
  columns: readonly ColumnReading[];
}

/** A line of text around a table, with the number of the table. */
interface Line {
  text: string;
  span: { start: number; end: number };
  table: number;
}

/** A table with the rows of each of its samples. */
interface Named extends Rows {
  sample: ColumnReading;
  rowsOf: ReadonlyMap<string, number[]>;
}

/**
 * Lets a sentence around tables overrule a value in them: one that names a sample, a column, the value that the table has and another, as
 * `b_2.wav: the root is 62, not 60`. Where it does not say that its value is the right one, the table counts; what is headed as a
 * correction and stays open is not done. Each is told in the cells' assumptions.
 */
export function overruleValues(cells: TableCells, tables: readonly Rows[]): void {
  const withSamples = tables.flatMap((table) => {
    const sample = table.columns.find(({ meaning }) => meaning === 'sample');
    return sample ? [{ ...table, sample }] : [];
  });
  const lines = withSamples.flatMap((table, at) =>
    linesIn(cells, table.rows, table.sample).map((line): Line => ({ ...line, table: at })),
  );
  if (lines.length === 0) return;
  const read = new Set<number>();
  const named = withSamples.map(
    (table): Named => ({
      ...table,
      rowsOf: rowsByName(cells, table.rows, table.sample),
    }),
  );
  const told: { text: string; start: number; end: number }[] = [];
  for (const { text, span, table } of lines) {
    if (read.has(span.start)) continue;
    read.add(span.start);
    const isHeaded = isHeadedAsCorrection(text);
    for (const sentence of text.split(sentences)) {
      const message = messageOf(cells, named, table, sentence, isHeaded);
      if (message) told.push({ text: message, ...span });
    }
  }
  if (told.length > 0) cells.assumptions = [...cells.assumptions, ...told];
}

/** What a sentence does to a value of the table that it stands beside, or of the one other that has the sample; `undefined` for nothing. */
function messageOf(
  cells: TableCells,
  tables: readonly Named[],
  beside: number,
  sentence: string,
  isHeaded: boolean,
): string | undefined {
  const own = tables.slice(beside, beside + 1);
  const written = [sentence, spacedOut(sentence)].find((one) => namesIn(one, tables).size > 0);
  if (written === undefined) return undefined;
  const names = namesIn(written, namesIn(written, own).size > 0 ? own : tables);
  const [name = ''] = names;
  const meant = [own, tables]
    .map((some) => some.filter(({ rowsOf }) => rowsOf.has(name)))
    .find((some) => some.length > 0);
  const [table] = meant ?? [];
  const rest = written.replace(token, (word) => (nameOf(word) === name ? ' ' : word));
  const column = names.size === 1 && meant?.length === 1 ? table && columnIn(rest, table.columns) : undefined;
  const message =
    table && column && overruled(cells, table.rowsOf.get(name) ?? [], column, rest, table.sample, isHeaded);
  if (message !== undefined || !isHeaded || rest.search(value) < 0) return message;
  return `"${shortened(sentence.trim())}" is not done, as it does not tell for certain which value is corrected. Change it by hand.`;
}

/** The names of samples of some tables that a sentence holds. */
function namesIn(sentence: string, tables: readonly Named[]): Set<string> {
  return new Set(
    Array.from(sentence.matchAll(token), ([name]) => name)
      .filter((name) => mayBeName.test(name))
      .map(nameOf)
      .filter((name) => tables.some(({ rowsOf }) => rowsOf.has(name))),
  );
}

/** A sentence with blanks where words of a script without them stand beside others. */
function spacedOut(sentence: string): string {
  return sentence.replace(besideUnspaced, ' ');
}

/** Puts the value of a sentence into the cells of a column; what is to be told of it. */
function overruled(
  cells: TableCells,
  rows: readonly number[],
  column: ColumnReading,
  sentence: string,
  sample: ColumnReading,
  isHeaded: boolean,
): string | undefined {
  const all = new Map(Array.from(sentence.matchAll(value), ([text]) => [keyOf(text), text]));
  const keyAt = (cell: number) => keyOf(cells.plain(cell));
  const every = rows.map((row) => cells.cell(row, column.index)).filter((cell) => cell >= 0);
  // Of several rows of a sample, the one with the value that is said to be wrong is meant.
  const some = new Set(every.map(keyAt)).size > 1 ? every.filter((cell) => all.has(keyAt(cell))) : every;
  const places = some.length === every.length || some.length === 1 ? some : [];
  const [old] = places.map(keyAt);
  if (old === undefined) return undefined;
  const isNamed = all.delete(old);
  const [text] = all.values();
  if (text === undefined || all.size > 1) return undefined;
  const name = shortened(cells.value(cells.cell(rows[0] ?? 0, sample.index)));
  const before = shortened(cells.value(places[0] ?? -1));
  const where = `For "${name}", the text gives ${text} where ${columnName(column)} has "${before}"`;
  if (!isNamed && !isHeaded && !saysCorrect(sentence))
    return `${where}; the table counts. Check which is right.`;
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
    return isUnspaced(own)
      ? own.length > 1 && bare.includes(own)
      : own.length > 2 && bare.includes(` ${own}`);
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
    (isOfWords.test(rowText(cells, row)) || isHeadedAsCorrection(rowText(cells, row)));
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
