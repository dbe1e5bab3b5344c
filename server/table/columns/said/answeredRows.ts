import { everyWords } from '../../../trade/everyWords';
import type { ColumnMeaning } from '../../../trade/meaning';
import { saysOf } from '../../../trade/phrases/toldWords';
import { rangeEndWords } from '../../../trade/rangeWords';
import { readKey, readKeyRange } from '../../../trade/readings/keyReading';
import { turningWords } from '../../../trade/turningWords';
import type { TableCells } from '../../cells/cells';
import type { Answer } from '../../cells/markup/answers';
import type { TableRows } from '../../cells/tableRows';
import type { ColumnReading } from '../columnReading';
import { columnName, shortened } from '../columnReading';
import { namesIn, rowsByName } from './namedRows';
import { saidColumn, saidValue } from './overrulingLines';

interface Rows {
  rows: TableRows;
  columns: readonly ColumnReading[];
}

/** The row that an answer stands below, and its table. */
interface Quoted extends Rows {
  row: number;
  sample: ColumnReading;
}

const sentences = /(?<=[.!?])(?=\s)/u;
const unsure = new RegExp(
  String.raw`\?|${everyWords}|${turningWords('not', 'none', 'except')}|(?<!\p{L})(?:maybe|perhaps|might|could|if|both|vielleicht|falls|wenn|beide|peut-\u00eatre|si|quiz\u00e1s?|forse|se|talvez|misschien|als)(?!\p{L})`,
  'iu',
);
const upper = new RegExp(String.raw`(?<!\p{L})(${rangeEndWords('upTo')})\s+(?:\p{L}{1,8}\s)?(?=\S*\d)`, 'iu');
const lower = new RegExp(String.raw`(?<!\p{L})${rangeEndWords('from')}\s+(?=\S*\d)`, 'iu');
const keyEnds: ReadonlySet<ColumnMeaning> = new Set(['lokey', 'hikey', 'key_range', 'pitch_keycenter']);

/**
 * Does what an answer between the quoted lines of a mail says of the zone quoted right above it: `That one must be root 61`, `let it go
 * up to 79`. One value for one column, which leaves the keys in order, is put in; what is not certain is told. Each is told in the
 * cells' assumptions.
 */
export function takeAnswers(cells: TableCells, tables: readonly Rows[]): void {
  if (cells.answers.length === 0) return;
  const told: { text: string; start: number; end: number }[] = [];
  const named = tables.flatMap(({ rows, columns }) => {
    const sample = columns.find(({ meaning }) => meaning === 'sample');
    return sample ? [{ rows, columns, sample, rowsOf: rowsByName(cells, rows, sample) }] : [];
  });
  for (const answer of cells.answers) {
    const above = rowAbove(cells, named, answer);
    const { start, end } = answer;
    for (const sentence of cells.text.slice(start, end).replace(/\s+/g, ' ').split(sentences)) {
      // What names a file is done elsewhere.
      if (sentence.search(saidValue) < 0 || namesIn(sentence, named).size > 0) continue;
      const done = above && !unsure.test(sentence) ? answered(cells, above, sentence) : undefined;
      if (done === 'same') continue;
      const text =
        done ??
        `The answer "${shortened(sentence.trim())}" is not done, as it does not tell for certain which value of which zone it is about. See whether the zones above it are right.`;
      if (above || saysOf(sentence, 'keys') || saysOf(sentence, 'root')) told.push({ text, start, end });
    }
  }
  if (told.length > 0) cells.assumptions = [...cells.assumptions, ...told];
}

/** The zone of the last quoted line above an answer; `undefined` where that holds none. */
function rowAbove(
  cells: TableCells,
  tables: readonly (Rows & { sample: ColumnReading })[],
  { quoted }: Answer,
): Quoted | undefined {
  for (const { rows, columns, sample } of tables) {
    const row = rows.data.findLast(
      (one) =>
        cells.rowStart(one) >= quoted.start && cells.rowEnd(one) <= quoted.end && cells.filled(one) > 1,
    );
    if (row !== undefined) return { row, rows, columns, sample };
  }
  return undefined;
}

/** Puts the one value of a sentence into the row; what is to be told of it, `same` where the row has it. */
function answered(cells: TableCells, quoted: Quoted, sentence: string): string | undefined {
  const { row, columns, sample } = quoted;
  const values = Array.from(sentence.matchAll(saidValue), ([text]) => text);
  const [value] = values;
  if (value === undefined || values.length > 1) return undefined;
  const end = endIn(sentence);
  const spoken = saidColumn(sentence, columns);
  const isNamed = spoken !== undefined && spoken.meaning !== 'key_range';
  const column = isNamed || !end ? spoken : columnOfEnd(columns, end);
  if (!column || (column.meaning === 'key_range' && !end)) return undefined;
  const cell = cells.cell(row, column.index);
  if (cell < 0) return undefined;
  const before = cells.value(cell);
  const after = column.meaning === 'key_range' ? withEnd(before, end, value) : value;
  if (after === undefined) return undefined;
  if (after === before) return 'same';
  if (keyEnds.has(column.meaning) && !isInOrder(cells, quoted, column, after)) return undefined;
  cells.rewritten.set(cell, after);
  const name = shortened(cells.value(cells.cell(row, sample.index)));
  return `"${shortened(sentence.trim())}" is taken for an answer on "${name}", which is quoted right above it: ${columnName(column)} is ${after} instead of "${shortened(before)}". Check it.`;
}

/** The end of the keys that a sentence moves. */
function endIn(sentence: string): 'lokey' | 'hikey' | undefined {
  const [, word] = upper.exec(sentence) ?? [];
  // `set it to 61` may be of any value.
  const isUp = word !== undefined && (word.length > 2 || saysOf(sentence, 'keys'));
  if (isUp && saysOf(sentence, 'down')) return 'lokey';
  if (isUp) return 'hikey';
  return lower.test(sentence) ? 'lokey' : undefined;
}

function columnOfEnd(columns: readonly ColumnReading[], end: 'lokey' | 'hikey'): ColumnReading | undefined {
  return (
    columns.find(({ meaning }) => meaning === end) ?? columns.find(({ meaning }) => meaning === 'key_range')
  );
}

function withEnd(range: string, end: 'lokey' | 'hikey' | undefined, value: string): string | undefined {
  const ends = Array.from(range.matchAll(saidValue));
  const moved = ends[end === 'lokey' ? 0 : 1];
  if (ends.length !== 2 || !moved) return undefined;
  return range.slice(0, moved.index) + value + range.slice(moved.index + moved[0].length);
}

/** Whether the keys of a row still lie in order with another value in a column. */
function isInOrder(
  cells: TableCells,
  { row, columns }: Quoted,
  changed: ColumnReading,
  text: string,
): boolean {
  const keys = (meaning: ColumnMeaning) => {
    const column = columns.find((one) => one.meaning === meaning);
    if (!column) return undefined;
    return column === changed ? text : cells.plain(cells.cell(row, column.index));
  };
  const range = readKeyRange(keys('key_range') ?? '');
  const low = readKey(keys('lokey') ?? '') ?? range?.low;
  const high = readKey(keys('hikey') ?? '') ?? range?.high;
  const order = [low, readKey(keys('pitch_keycenter') ?? ''), high]
    .map((key) => key?.number ?? key?.named)
    .filter((key) => key !== undefined);
  return (
    readKeyRange(text) !== undefined &&
    order.every((key, at) => key <= 127 && (at === 0 || key >= order[at - 1]))
  );
}
