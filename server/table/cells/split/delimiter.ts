import type { CellKind } from '../../columns/cellKinds';
import { lookAt } from '../../columns/cellKinds';
import type { TableCells } from '../cells';
import { DistinctTexts } from '../distinctTexts';
import { splitColumns } from './fixedColumns';
import type { Delimiter } from './splitAt';
import { delimiterCodes, splitAt } from './splitAt';

/** So much of a text is looked at to find its delimiter. */
const looked = 1 << 16;
const mostLines = 300;
const mostRows = 150;
const mostCells = 40;

/** Single spaces stand in prose too; with this score nearly all words are values and all lines have as many. */
const surely = 1;

const candidates: readonly Delimiter[] = ['tab', 'semicolon', 'bar', 'comma', 'columns'];

/** Splits a text at a delimiter or by columns. */
export function splitAtDelimiter(text: string, delimiter: Delimiter): TableCells {
  return delimiter === 'columns' ? splitColumns(text) : splitAt(text, delimiter);
}

/**
 * Finds what parts the cells of a text: the candidate with which most rows have the same number of cells and most
 * cells are whole values. A comma inside decimal numbers therefore does not count as a delimiter. `undefined` where
 * no candidate gives two columns. Single spaces count only where nothing else does.
 */
export function findDelimiter(text: string): Delimiter | undefined {
  const start = startOf(text);
  let best: Delimiter | undefined;
  let bestScore = 0;
  for (const delimiter of candidates) {
    if (delimiter !== 'columns' && !start.includes(String.fromCharCode(delimiterCodes[delimiter]))) continue;
    const score = scoreOf(splitAtDelimiter(start, delimiter));
    if (score > bestScore) {
      best = delimiter;
      bestScore = score;
    }
  }
  return best ?? (scoreOf(splitAtDelimiter(start, 'space')) > surely ? 'space' : undefined);
}

/** The first lines of a text, up to the last one that is whole. */
function startOf(text: string): string {
  let end = 0;
  let start = 0;
  for (let lines = 0; lines < mostLines; lines++) {
    const next = nextLine(text, start);
    if (next < 0 && text.length <= looked) return text;
    if (next < 0 || next > looked) break;
    end = next - 1;
    start = next;
  }
  return text.slice(0, end > 0 ? end : looked);
}

/** Where the line after the one at `start` begins; −1 for the last. */
function nextLine(text: string, start: number): number {
  const limit = Math.min(text.length, looked + 1);
  for (let at = start; at < limit; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) return at + 1;
  }
  return -1;
}

function scoreOf(cells: TableCells): number {
  const widths = new Map<number, number>();
  const rows: number[] = [];
  for (let row = 0; row < cells.rowCount && rows.length < mostRows; row++) {
    const width = cells.width(row);
    if (width === 0 || isRuling(cells, row)) continue;
    rows.push(row);
    if (width > 1) widths.set(width, (widths.get(width) ?? 0) + 1);
  }
  let usual = 0;
  let times = 0;
  for (const [width, count] of widths) {
    if (count > times || (count === times && width > usual)) {
      usual = width;
      times = count;
    }
  }
  if (usual < 2) return 0;
  const texts = new DistinctTexts(cells);
  const kinds: CellKind[] = [];
  let whole = 0;
  let filled = 0;
  let fitting = 0;
  for (const row of rows) {
    const width = cells.width(row);
    // Rows may leave out empty cells at their end.
    fitting += width === usual ? 1 : width > 1 && width < usual ? 0.4 : 0;
    for (let column = 0; column < Math.min(width, mostCells); column++) {
      const cell = cells.cell(row, column);
      if (cells.starts[cell] === cells.ends[cell]) continue;
      filled++;
      if (!Number.isNaN(cells.number(cell))) {
        whole++;
        continue;
      }
      const text = texts.numberOf(cell);
      if (text === kinds.length) kinds.push(lookAt(cells.value(cell)).kind);
      const kind = kinds[text];
      whole += kind === 'text' || kind === 'formula' ? 0.25 : 1;
    }
  }
  if (filled === 0) return 0;
  return (fitting / rows.length) * (whole / filled) ** 2 * Math.log2(1 + Math.min(usual, 16));
}

const lineSigns = signsOf('-=─━═_');
const crossingSigns = signsOf(':+| ┼│╪╬├┤');

function signsOf(signs: string): ReadonlySet<number> {
  return new Set(Array.from(signs, (sign) => sign.charCodeAt(0)));
}

/** Whether a row is a drawn line, as under the headings of a Markdown table. */
export function isRuling(cells: TableCells, row: number): boolean {
  const end = cells.rowFirst[row + 1];
  let dashes = 0;
  for (let cell = cells.rowFirst[row]; cell < end; cell++) {
    const from = cells.starts[cell];
    const to = cells.ends[cell];
    if (to - from > 400) return false;
    for (let at = from; at < to; at++) {
      const code = cells.codes[at];
      // Most rows start with a letter or digit.
      if (code >= 48 && code < 128 && code !== 58 && code !== 61 && code !== 95 && code !== 124) return false;
      const sign = cells.text.charCodeAt(at);
      if (lineSigns.has(sign)) dashes++;
      else if (!crossingSigns.has(sign)) return false;
    }
  }
  return dashes >= 3 && dashes >= end - cells.rowFirst[row];
}
