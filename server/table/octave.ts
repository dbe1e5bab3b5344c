import type { TableCells } from './cells';
import { spread } from './columnContents';
import type { KeyReading } from './keyValues';
import { notesInFileName, readKeyRange } from './keyValues';
import type { ColumnMeaning, ColumnReading } from './meaning';

/** The note name of MIDI key 60. */
export type MiddleC = 'C3' | 'C4' | 'C5';

/** Keys to add to a note name that was read with middle C = C4, by the convention it was written in. */
export const octaveShifts: Readonly<Record<MiddleC, number>> = { C3: 12, C4: 0, C5: -12 };

const conventions = Object.keys(octaveShifts) as MiddleC[];
const mostRows = 500;

/** The convention that the note names of a table follow, and why it was taken. */
export interface OctaveReading {
  middleC: MiddleC;
  /** A clause that goes on from "because". */
  reason: string;
}

interface KeyPlaces {
  root: number;
  low: number;
  high: number;
}

type RowKeys = { root?: KeyReading; low?: KeyReading; high?: KeyReading };
type Votes = Map<MiddleC, number>;

/**
 * Decides by evidence which octave numbers the note names of a table use, best evidence first: root keys in the
 * sample files, names beside numbers, names outside 0..127, note names in file names beside numbers. Without
 * evidence it is C4 = 60, as in the open SFZ format. `undefined` where the table has no note names.
 */
export function decideOctave(
  cells: TableCells,
  data: readonly number[],
  columns: readonly ColumnReading[],
  rootKeyOf: ((sample: string) => number | undefined) | undefined,
): OctaveReading | undefined {
  const find = (...meanings: ColumnMeaning[]) =>
    columns.find(({ meaning }) => meanings.includes(meaning))?.index ?? -1;
  const places: KeyPlaces = {
    root: find('pitch_keycenter', 'key'),
    low: find('lokey', 'key_range'),
    high: find('hikey', 'key_range'),
  };
  const extremes = namedExtremes(cells, data, places);
  if (!extremes) return undefined;
  const sample = find('sample');
  const rows = spread(data, mostRows);
  const inFiles: Votes = new Map();
  const beside: Votes = new Map();
  const inRange: Votes = new Map();
  const inNames: Votes = new Map();
  const repeats = columns.filter(({ repeats: of }) => of !== undefined && Object.values(places).includes(of));
  for (const row of rows) {
    const keys = rowKeys(cells, row, places);
    const name = sample < 0 ? '' : cells.value(cells.cell(row, sample));
    const fileRoot = name === '' ? undefined : rootKeyOf?.(name);
    if (fileRoot !== undefined) voteFor(inFiles, { ...keys, root: withNumber(keys.root, fileRoot) });
    for (const key of [keys.root, keys.low, keys.high]) voteByPair(beside, key?.number, key?.named);
    for (const column of repeats) {
      const other = readKeyRange(cells.value(cells.cell(row, column.index)))?.low;
      const one = readKeyRange(cells.value(cells.cell(row, column.repeats as number)))?.low;
      voteByPair(beside, one?.number ?? other?.number, one?.named ?? other?.named);
    }
    voteFor(inRange, keys);
    const number =
      keys.root?.number ?? (keys.low?.number === keys.high?.number ? keys.low?.number : undefined);
    if (number !== undefined) {
      for (const named of notesInFileName(name)) if (voteByPair(inNames, number, named)) break;
    }
  }
  return (
    winner(inFiles, (count) => `the root keys in ${count} sample files agree with that`) ??
    winner(beside, (count) => `the key numbers beside the note names agree with that on ${count} rows`) ??
    winner(inRange, (count) => `only then do root keys lie within their key ranges on ${count} rows`) ??
    byExtremes(extremes) ??
    winner(inNames, (count) => `the note names in ${count} file names agree with that`) ?? {
      middleC: 'C4',
      reason: 'nothing in the table tells otherwise and SFZ names keys so',
    }
  );
}

function withNumber(key: KeyReading | undefined, number: number): KeyReading {
  return { number, named: key?.number === undefined ? key?.named : undefined };
}

function rowKeys(cells: TableCells, row: number, places: KeyPlaces): RowKeys {
  const read = (column: number) =>
    column < 0 ? undefined : readKeyRange(cells.value(cells.cell(row, column)));
  const root = read(places.root)?.low;
  const low = read(places.low)?.low;
  const high = read(places.high)?.high;
  return { ...(root && { root }), ...(low && { low }), ...(high && { high }) };
}

function voteByPair(votes: Votes, number: number | undefined, named: number | undefined): boolean {
  if (number === undefined || named === undefined) return false;
  const middleC = conventions.find((one) => named + octaveShifts[one] === number);
  if (middleC) votes.set(middleC, (votes.get(middleC) ?? 0) + 1);
  return middleC !== undefined;
}

/** Votes by a root key given as a number and by name, or by the only convention that puts it inside its key range. */
function voteFor(votes: Votes, { root, low, high }: RowKeys): void {
  if (voteByPair(votes, root?.number, root?.named)) return;
  if (!root || !low || !high) return;
  const mixed = (root.number === undefined) !== (low.number === undefined);
  if (!mixed || (low.number === undefined) !== (high.number === undefined)) return;
  const fitting = conventions.filter((one) => {
    const at = (key: KeyReading) => key.number ?? (key.named as number) + octaveShifts[one];
    return at(low) <= at(root) && at(root) <= at(high);
  });
  if (fitting.length === 1) votes.set(fitting[0] as MiddleC, (votes.get(fitting[0] as MiddleC) ?? 0) + 1);
}

function winner(votes: Votes, reason: (count: string) => string): OctaveReading | undefined {
  let total = 0;
  let best: MiddleC | undefined;
  for (const [middleC, count] of votes) {
    total += count;
    if (best === undefined || count > (votes.get(best) ?? 0)) best = middleC;
  }
  const count = best === undefined ? 0 : (votes.get(best) ?? 0);
  if (best === undefined || count * 3 < total * 2) return undefined;
  return { middleC: best, reason: reason(`${count} of ${total}`) };
}

/** Lowest and highest note name of the key columns, as keys with middle C = C4. */
function namedExtremes(
  cells: TableCells,
  data: readonly number[],
  places: KeyPlaces,
): { least: number; greatest: number } | undefined {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  const seen = new Set<string>();
  for (const column of new Set(Object.values(places))) {
    if (column < 0) continue;
    for (const row of data) {
      const text = cells.value(cells.cell(row, column));
      if (text.length > 40 || seen.has(text)) continue;
      if (seen.size < 5000) seen.add(text);
      const range = readKeyRange(text);
      for (const key of range ? [range.low, range.high] : []) {
        if (key.named === undefined || key.number !== undefined) continue;
        least = Math.min(least, key.named);
        greatest = Math.max(greatest, key.named);
      }
    }
  }
  return least === Number.POSITIVE_INFINITY ? undefined : { least, greatest };
}

function byExtremes({ least, greatest }: { least: number; greatest: number }): OctaveReading | undefined {
  const fits = (one: MiddleC) => least + octaveShifts[one] >= 0 && greatest + octaveShifts[one] <= 127;
  if (fits('C4')) return undefined;
  const middleC = conventions.find(fits);
  return middleC && { middleC, reason: 'otherwise some note names would lie outside the keys 0..127' };
}
