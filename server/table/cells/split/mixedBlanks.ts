import { isAudioFileName } from '../../../model/fileNames';
import { textStart } from '../../../model/text/textLayout';
import { readHeading } from '../../../trade/headings/headings';
import { lookAt } from '../../columns/cellKinds';
import { TableCells } from '../cells';
import type { Word } from './lineWords';

/** Whatever parts values. */
const values = /[^\s\u00a0\u2000-\u200a\u202f\u3000]+/gu;
/** Headings may hold blanks; tabs and more than one blank part them. */
const titles = /[^\s\u00a0]+(?:[ \u00a0][^\s\u00a0]+)*/gu;
const unseenOnly = /^[\u200b-\u200f\u2060\ufeff]+$/u;
const mostColumns = 40;
const longestLine = 2000;

/**
 * Splits a text at all white space where tabs, blanks and signs that show nothing are mixed between values: `cells` that tabs part lack some, and
 * so parted all rows have exactly as many values as there are headings, one of them a file below its heading. `undefined` for others.
 */
export function splitMixed(text: string, cells: TableCells): TableCells | undefined {
  const rows = Array.from({ length: cells.rowCount }, (_, row) => row).filter((row) => cells.filled(row) > 0);
  const lacking = rows.slice(1).some((row) => cells.width(row) < cells.width(rows[0] ?? 0));
  if (!lacking) return undefined;
  const lines = linesOf(text);
  const filled = lines.filter((line) => wordsIn(text, line, values).length > 0);
  const [first, ...rest] = filled;
  if (!first || rest.length < 2) return undefined;
  const headings = wordsIn(text, first, titles);
  const at = headings.findIndex((word) => readHeading(textOf(text, word))?.meaning === 'sample');
  if (at < 0 || headings.length < 2 || headings.length > mostColumns) return undefined;
  const parted = new TableCells(text);
  for (const line of lines) {
    const words = line === first ? headings : wordsIn(text, line, values);
    if (line !== first && words.length > 0 && !isRow(text, words, headings.length, at)) return undefined;
    for (const { start, end } of words) parted.add(start, end);
    parted.endRow();
  }
  return parted;
}

/** Whether words are the values of a row: as many as there are headings, a file, and values beside it. */
function isRow(text: string, words: readonly Word[], count: number, file: number): boolean {
  return (
    words.length === count &&
    words.every((word, at) => {
      const value = textOf(text, word);
      return at === file ? isAudioFileName(value) : lookAt(value).kind !== 'text' && !isAudioFileName(value);
    })
  );
}

function textOf(text: string, { start, end }: Word): string {
  return text.slice(start, end).replace(/[\u200b-\u200f\u2060\ufeff]/gu, '');
}

function wordsIn(text: string, { start, end }: Word, pattern: RegExp): Word[] {
  return Array.from(text.slice(start, Math.min(end, start + longestLine)).matchAll(pattern))
    .filter(([word]) => !unseenOnly.test(word))
    .map((match) => ({ start: start + match.index, end: start + match.index + match[0].length }));
}

function linesOf(text: string): Word[] {
  const from = textStart(text);
  return Array.from(text.slice(from).matchAll(/[^\r\n]*(?:\r\n?|\n|$)/g))
    .filter(([line]) => line !== '')
    .map((match) => {
      const start = from + match.index;
      return { start, end: start + match[0].replace(/[\r\n]+$/, '').length };
    });
}
