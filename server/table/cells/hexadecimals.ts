import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import type { TableCells } from './cells';
import type { TableRows } from './tableRows';

const said = /\b(?:hex(?:a(?:decimal|dezimal|d\u00e9cimal|decimale|decimaal)?)?|base[ -]?16)\b/iu;
const longest = 400;
const number = /^[$#]?(?:0x)?[\da-f]{1,2}h?$/i;
const parting = /(\s*(?:[-\u2013\u2014]|\.{2,3}|\bto\b)\s*)/;
const meanings: ReadonlySet<ColumnMeaning> = new Set<ColumnMeaning>([
  'key',
  'lokey',
  'hikey',
  'key_range',
  'pitch_keycenter',
  'lovel',
  'hivel',
  'velocity_range',
]);

/**
 * Puts decimal numbers in place of hexadecimal ones in the columns of keys and velocities of a table, where the text around says
 * that they are. Answers whether it did.
 */
export function readHexadecimals(cells: TableCells, { headings, data, others, width }: TableRows): boolean {
  const rows = [...others.map(({ row }) => row), ...data.slice(-10)];
  const around = [...cells.around, ...headings.map(({ text }) => text)];
  const texts = [...around, ...rows.map((row) => rowText(cells, row))];
  if (!texts.some((text) => said.test(text))) return false;
  let found = false;
  for (let column = 0; column < width; column++) {
    const meaning = readHeading((headings[column]?.text ?? '').replace(said, '').trim())?.meaning;
    if (!meaning || !meanings.has(meaning)) continue;
    const filled = data.map((row) => cells.cell(row, column)).filter((cell) => cells.value(cell) !== '');
    const read = filled.map((cell) => decimals(cells.value(cell)));
    if (read.length === 0 || read.filter((text) => text === undefined).length * 4 > read.length) continue;
    for (const [at, cell] of filled.entries()) {
      const text = read[at];
      if (text !== undefined) cells.rewritten.set(cell, text);
    }
    found = true;
  }
  return found;
}

function decimals(text: string): string | undefined {
  const parts = text.split(parting);
  const read = parts.map((part, at) =>
    at % 2 === 1
      ? part
      : number.test(part.trim())
        ? String(Number.parseInt(part.replace(/^[$#]?(?:0x)?/i, ''), 16))
        : undefined,
  );
  return read.includes(undefined) ? undefined : read.join('');
}

function rowText(cells: TableCells, row: number): string {
  const { start, end } = cells.rowSpan(row);
  return cells.text.slice(start, Math.min(end, start + longest));
}
