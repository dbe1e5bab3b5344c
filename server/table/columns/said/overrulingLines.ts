import { isHeadedAsCorrection, saysCorrect } from '../../../trade/correctingWords';
import { saidMeanings } from '../../../trade/headings/saidMeanings';
import { wordsOf } from '../../../trade/languages/spelling';
import { isUnspaced } from '../../../trade/languages/wordPattern';
import type { ColumnMeaning } from '../../../trade/meaning';
import { noteName } from '../../../trade/readings/notePatterns';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import { lookAt } from '../cellKinds';
import type { ColumnReading } from '../columnReading';
import { columnName, shortened } from '../columnReading';
import { linesAround } from './linesAround';
import type { NamedRows } from './namedRows';
import { namesIn, rowsByName, spacedOut, withoutNames } from './namedRows';

const sentences = /[.!?;](?=\s|$)/u;
/** A number, or a note with its octave, in a sentence. */
export const saidValue = new RegExp(
  String.raw`(?<![\p{L}\p{N}_.])(?:${noteName}-?\d{1,2}|[-+\u2212]?\d+(?:[.,]\d+)?)(?![\p{L}\p{N}_]|[.,]\d)`,
  'giu',
);
const others: ReadonlySet<ColumnMeaning> = new Set(['sample', 'group', 'comment', 'row_number', 'unknown']);

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
interface Named extends Rows, NamedRows {
  sample: ColumnReading;
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
    linesAround(cells, table.rows, table.sample).map((line): Line => ({ ...line, table: at })),
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
  const rest = withoutNames(written, (one) => one === name);
  const column =
    names.size === 1 && meant?.length === 1 ? table && saidColumn(rest, table.columns) : undefined;
  const message =
    table && column && overruled(cells, table.rowsOf.get(name) ?? [], column, rest, table.sample, isHeaded);
  if (message !== undefined || !isHeaded || rest.search(saidValue) < 0) return message;
  return `"${shortened(sentence.trim())}" is not done, as it does not tell for certain which value is corrected. Change it by hand.`;
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
  const all = new Map(Array.from(sentence.matchAll(saidValue), ([text]) => [keyOf(text), text]));
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
export function saidColumn(sentence: string, columns: readonly ColumnReading[]): ColumnReading | undefined {
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
