import type { Steps } from '../../../model/steps';
import { piecesInStep } from '../../../model/steps';
import { spokenCorrection } from '../../../trade/correctingWords';
import { bracketsCountIn } from '../../../trade/statements/bracketsCount';
import type { TableCells } from '../../cells/cells';
import { namesAudioFile } from '../../cells/namesAudioFile';
import type { TableRows } from '../../cells/tableRows';
import type { CellKind } from '../cellKinds';
import { lookAt } from '../cellKinds';
import { shortened } from '../columnReading';

const arrow = /\s*(?:[\u2192\u2794\u279c\u27f6\u21d2\u00bb]|[-=]+>)\s*/u;
/** A word of two letters or more behind a number. */
const mayBeSpoken = /\d[^\p{L}\d]{0,3}\p{L}{2}/u;
const mayHold = /[\u2192\u2794\u279c\u27f6\u21d2\u00bb>([]/u;
const bracketed = /^(\S.{0,40}?)\s*[([]\s*(\S.{0,40}?)\s*[)\]]$/u;
/** The signs of {@link mayHold} in ASCII, and the first letter. */
const [greater, bracket, squareBracket, capitalA] = [62, 40, 91, 65];
const dot = 46;
const lastAscii = 126;
const longest = 200;
const mostColumns = 100;
/** So many rows of a column are compared with its corrections. */
const mostRows = 2000;
const values: ReadonlySet<CellKind> = new Set(['number', 'note', 'file']);

/** A cell with an old and a new value. */
interface Corrected {
  cell: number;
  kind: CellKind;
  value: string;
  how: 'arrow' | 'bracket' | 'word';
}

/**
 * Puts the new value in the place of an old one and a new one: behind an arrow, as `57 → 58` in a column of single values, or behind a word, as `57 no, 58`, and in brackets
 * where a text says that those count. Each is told in the cells' assumptions.
 */
export function* takeCorrections(
  cells: TableCells,
  tables: readonly TableRows[],
  texts: readonly string[],
): Steps<void> {
  const said = bracketsCountIn(texts);
  const told: { text: string; start: number; end: number }[] = [];
  for (const { data, width } of tables) {
    for (let column = 0; column < Math.min(width, mostColumns); column++) {
      const found = yield* correctionsIn(cells, data, column, said !== undefined);
      for (const { cell, value, how } of found) {
        const why =
          how === 'arrow'
            ? 'the value behind the arrow is taken for the new one'
            : how === 'word'
              ? 'the value behind the word is taken for the right one'
              : `"${shortened(said ?? '')}" says that the value in brackets counts`;
        told.push({
          text: `"${shortened(cells.value(cell))}" is read as ${shortened(value)}: ${why}.`,
          start: cells.starts[cell],
          end: cells.ends[cell],
        });
        cells.rewritten.set(cell, value);
      }
    }
  }
  if (told.length > 0) cells.assumptions = [...cells.assumptions, ...told];
}

/** The cells of a column that hold two values, where most others hold one of the same kind. */
function* correctionsIn(
  cells: TableCells,
  data: readonly number[],
  column: number,
  bracketsCount: boolean,
): Steps<Corrected[]> {
  const found: Corrected[] = [];
  for (const [at, row] of data.entries()) {
    if (at > 0 && at % piecesInStep === 0) yield at / data.length;
    const cell = cells.cell(row, column);
    const length = cell < 0 ? 0 : cells.ends[cell] - cells.starts[cell];
    if (length < 3 || length > longest || cells.filled(row) < 2) continue;
    if (!mayHoldTwo(cells, cell) || isOneFile(cells, cell)) continue;
    const text = cells.plain(cell);
    const one = mayHold.test(text) || mayBeSpoken.test(text) ? correctionIn(text, bracketsCount) : undefined;
    if (one) found.push({ cell, ...one });
  }
  if (found.length === 0) return found;
  const corrected = new Set(found.map(({ cell }) => cell));
  const kinds = data.slice(0, mostRows).flatMap((row) => {
    const cell = cells.cell(row, column);
    const isEmpty = cell < 0 || cells.starts[cell] === cells.ends[cell];
    return isEmpty || corrected.has(cell) ? [] : [lookAt(cells.plain(cell)).kind];
  });
  const single = (kind: CellKind) => kinds.filter((one) => one === kind).length;
  return found.filter(({ kind }) => single(kind) > found.length && single(kind) * 2 > kinds.length);
}

/** Whether a cell could hold two values by its characters: a sign between them, or a letter behind a digit. */
function mayHoldTwo(cells: TableCells, cell: number): boolean {
  if (cells.isRewritten(cell)) return true;
  const { codes, starts, ends } = cells;
  const end = ends[cell];
  let isBehindDigit = false;
  for (let at = starts[cell]; at < end; at++) {
    const code = codes[at];
    if (code >= 48 && code <= 57) isBehindDigit = true;
    else if (code > lastAscii || code === greater || code === bracket || code === squareBracket) return true;
    else if (isBehindDigit && code >= capitalA) return true;
  }
  return false;
}

/** Whether a cell in ASCII ends as the name of an audio file and has no other ending, so that no other name stands before it. */
function isOneFile(cells: TableCells, cell: number): boolean {
  if (cells.isRewritten(cell) || !namesAudioFile(cells, cell)) return false;
  const { codes, starts, ends } = cells;
  let dots = 0;
  for (let at = starts[cell]; at < ends[cell]; at++) {
    if (codes[at] > lastAscii) return false;
    if (codes[at] === dot) dots++;
  }
  return dots === 1;
}

function correctionIn(text: string, bracketsCount: boolean): Omit<Corrected, 'cell'> | undefined {
  const [, before, within] = bracketsCount ? (bracketed.exec(text) ?? []) : [];
  if (before !== undefined && within !== undefined) return newOf([before, within], 'bracket');
  for (const [parting, how] of [
    [arrow, 'arrow'],
    [spokenCorrection, 'word'],
  ] as const) {
    const parts = text.split(parting);
    if (parts.length > 1 && !parts.includes('')) return newOf(parts, how);
  }
  return undefined;
}

/** The last of some values of one kind. */
function newOf(parts: readonly string[], how: Corrected['how']): Omit<Corrected, 'cell'> | undefined {
  const [first, ...others] = parts.map((part) => lookAt(part.trim()).kind);
  const value = parts.at(-1)?.trim();
  if (value === undefined || first === undefined || !values.has(first)) return undefined;
  return others.every((kind) => kind === first) ? { kind: first, value, how } : undefined;
}
