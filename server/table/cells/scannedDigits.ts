import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import type { CellKind } from '../columns/cellKinds';
import { lookAt } from '../columns/cellKinds';
import type { TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';
import { scannedNames } from './scannedNames';
import type { TableRows } from './tableRows';

const mostColumns = 100;
const mostRows = 2000;
const longest = 40;
/** Two notes with a sign between them have so many characters. */
const longestNotes = 9;
const mostNoted = 24;
/** So many cells of a column have to be free of letters in place of digits (our choice). */
const fewestClean = 2;
/** Letters that a scan gives for digits: the usual ones, and those that count only beside them. */
const digits: Readonly<Record<string, string>> = { l: '1', I: '1', O: '0', o: '0', S: '5', Z: '2', B: '8' };
const alike: ReadonlySet<number> = new Set(Array.from('lIOoSZB', (letter) => letter.charCodeAt(0)));
/** A word of digits and letters like them; one of letters alone has one. */
const word = /(?<![\p{L}\d])(?:[\dlIOoSZB]*\d[\dlIOoSZB]*|[lIO])(?![\p{L}\d])/gu;
/** The same behind the letter of a note, for its octave. */
const octave = /(?<!\p{L})([A-Ha-h][#b\u266f\u266d]?-?)([lIO])(?![\p{L}\d])/gu;
/** A usual letter among digits, or behind the name of a note. */
const among = /\d[lIOo]|[lIOo]\d|(?<!\p{L})[A-H][#b\u266f\u266d]?-?[lIO]/u;
const kinds: ReadonlySet<CellKind> = new Set(['number', 'number-range', 'note', 'note-range']);
/** What a letter before or behind a number is no side in. */
const sideless: ReadonlySet<ColumnMeaning> = new Set([
  'key',
  'lokey',
  'hikey',
  'key_range',
  'pitch_keycenter',
  'lovel',
  'hivel',
  'velocity_range',
  'row_number',
]);

/** A cell with letters in place of digits. */
interface Scanned {
  cell: number;
  text: string;
  kind: CellKind;
  /** Whether a usual letter stands among digits. */
  isMixed: boolean;
}

/**
 * Puts digits in place of letters that a scan of a page gives for them, as `5O` for 50 and `l27` for 127, where most other cells of the
 * column are numbers or notes and so is the cell then; in names of samples where those beside it are counted so. Each is told in the
 * cells' assumptions.
 */
export function readScannedDigits(cells: TableCells, { data, width, headings }: TableRows): void {
  const columns = Array.from({ length: Math.min(width, mostColumns) }, (_, column) => column);
  const found = columns.flatMap((column) => scannedIn(cells, data, column, headings[column]?.text ?? ''));
  // Letters alone are digits for sure only in a text that has them among digits.
  if (!found.some(({ isMixed }) => isMixed)) return;
  const told = found.map(({ cell, text }) => {
    const note = `"${cells.value(cell)}" is read as ${text}, like the other cells of its column: a scan gives letters for digits. Check it.`;
    cells.rewritten.set(cell, text);
    return { text: note, start: cells.starts[cell], end: cells.ends[cell] };
  });
  for (const column of columns) {
    const named = data
      .map((row) => cells.cell(row, column))
      .filter((cell) => cell >= 0 && namesAudioFile(cells, cell));
    for (const { at, name } of scannedNames(named.map((cell) => cells.value(cell)))) {
      const cell = named[at];
      told.push({
        text: `"${cells.value(cell)}" is read as "${name}", as the names beside it are counted: a scan gives letters for digits. Check it.`,
        start: cells.starts[cell],
        end: cells.ends[cell],
      });
      cells.rewritten.set(cell, name);
    }
  }
  if (told.length > 0) cells.assumptions = [...cells.assumptions, ...told.slice(0, mostNoted)];
}

/** The cells of a column that letters in place of digits keep from being what most others are. */
function scannedIn(cells: TableCells, rows: readonly number[], column: number, heading: string): Scanned[] {
  const found: Scanned[] = [];
  for (const row of rows) {
    const cell = cells.cell(row, column);
    if (cell < 0 || !mayBeScanned(cells, cell) || cells.filled(row) < 2) continue;
    const text = cells.plain(cell);
    const { kind } = lookAt(text);
    if (kind !== 'text' && kind !== 'pan') continue;
    if (kind === 'pan' && !sideless.has(readHeading(heading)?.meaning ?? 'unknown')) continue;
    const read = withDigits(text);
    const as = read === text ? 'text' : lookAt(read).kind;
    if (kinds.has(as)) found.push({ cell, text: read, kind: as, isMixed: among.test(text) });
  }
  if (found.length === 0) return found;
  const clean = new Map<string, number>();
  let filled = 0;
  for (const row of rows.slice(0, mostRows)) {
    const cell = cells.cell(row, column);
    if (cell < 0 || cells.starts[cell] === cells.ends[cell] || cells.filled(row) < 2) continue;
    filled++;
    const { kind } = lookAt(cells.plain(cell));
    clean.set(family(kind), (clean.get(family(kind)) ?? 0) + 1);
  }
  const others = Math.min(found.length, filled);
  const isSure = ({ kind }: Scanned) => {
    const same = clean.get(family(kind)) ?? 0;
    return same >= fewestClean && same >= others && (same + others) * 2 > filled;
  };
  return found.filter(isSure);
}

/** Whether a cell is short and has a letter like a digit beside one, or behind the name of a note, or nothing else. */
function mayBeScanned(cells: TableCells, cell: number): boolean {
  const { codes, starts, ends } = cells;
  const [start, end] = [starts[cell], ends[cell]];
  if (start === end || end - start > longest) return false;
  let isDigit = false;
  let hasOther = false;
  for (let at = start; at < end; at++) {
    if (codes[at] >= 48 && codes[at] <= 57) isDigit = true;
    else if (alike.has(codes[at])) hasOther = true;
  }
  return hasOther && (isDigit || end - start <= longestNotes);
}

function family(kind: CellKind): string {
  return kind.replace('-range', '');
}

function withDigits(text: string): string {
  return text
    .replace(octave, (_, note: string, letter: string) => note + (digits[letter] ?? letter))
    .replace(word, (some) => Array.from(some, (sign) => digits[sign] ?? sign).join(''));
}
