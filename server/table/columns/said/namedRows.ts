import { isAudioFileName } from '../../../model/fileNames';
import { bareWord } from '../../../trade/languages/spelling';
import { unspacedLetter } from '../../../trade/languages/wordPattern';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import type { ColumnReading } from '../columnReading';

const mostRows = 5000;
const token = /[\p{L}\p{N}_#.-]{3,}/gu;
/** A word of a sentence is the name of a file with its ending, or with signs that words do not have. */
const mayBeName = /[\p{N}_]|\.\p{L}{3,4}\b/u;
/** Between a word of a script without blanks and one of another. */
const besideUnspaced = new RegExp(
  String.raw`(?<=${unspacedLetter})(?=[\p{Script=Latin}\d+\u2212-])|(?<=[\p{Script=Latin}\d])(?=${unspacedLetter})`,
  'gu',
);

/** The rows of each sample of a table, by its name without folder and ending. */
export interface NamedRows {
  rowsOf: ReadonlyMap<string, number[]>;
}

/** The names of samples of some tables that a sentence holds. */
export function namesIn(sentence: string, tables: readonly NamedRows[]): Set<string> {
  return new Set(
    Array.from(sentence.matchAll(token), ([name]) => name)
      .filter((name) => mayBeName.test(name))
      .map(nameOf)
      .filter((name) => tables.some(({ rowsOf }) => rowsOf.has(name))),
  );
}

/** A sentence with blanks where words of a script without them stand beside others. */
export function spacedOut(sentence: string): string {
  return sentence.replace(besideUnspaced, ' ');
}

/** A sentence without the names that some test picks. */
export function withoutNames(sentence: string, isPicked: (name: string) => boolean): string {
  return sentence.replace(token, (word) => (isPicked(nameOf(word)) ? ' ' : word));
}

/** The rows of a table by the names of their samples. */
export function rowsByName(
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
