import { pieceHeading } from '../trade/headings/pieceHeadings';
import type { ColumnMeaning } from '../trade/meaning';
import { readKeyRange } from '../trade/readings/keyReading';
import { musicalKeyIn } from '../trade/readings/musicalKey';
import type { TableCells } from './cells/cells';
import type { ColumnReading } from './columns/columnReading';
import { columnName } from './columns/columnReading';

/** Shares of cells that name keys of pieces, and of rows whose ranges have a key in common (our choice). */
const mostMusical = 0.9;
const mostCommon = 0.9;
const fewestRows = 4;
/** Signs of a list of pieces that have to come together (our choice). */
const fewestSigns = 2;
/** What only zones have. */
const ofZones: ReadonlySet<ColumnMeaning> = new Set([
  'pitch_keycenter',
  'lovel',
  'hivel',
  'velocity_range',
  'dynamics',
  'tune',
  'transpose',
  'volume',
  'attenuation',
  'pan',
  'loop',
  'loop_start',
  'loop_end',
  'seq_position',
  'trigger',
]);

/**
 * Why a table of files with lowest and highest notes is a list of pieces to be sung or played, as a clause about `it`: it tells their keys,
 * their pace or their titles, nothing that only zones have, and its ranges lie over one another as those of voices do.
 */
export function pieceList(
  cells: TableCells,
  rows: readonly number[],
  columns: readonly ColumnReading[],
): string | undefined {
  if (columns.some(({ meaning, side }) => ofZones.has(meaning) || side !== undefined)) return undefined;
  const other = columns.filter(
    ({ meaning }) => meaning === 'unknown' || meaning === 'comment' || meaning === 'group',
  );
  const pace = other.find(({ heading }) => pieceHeading(heading) === 'pace');
  const title = other.find(({ heading }) => pieceHeading(heading) === 'title');
  const key = other.find(({ index }) => areMusicalKeys(cells, rows, index));
  const signs = [title, key, pace].filter((one) => one !== undefined);
  if (signs.length < fewestSigns || !haveCommonKey(cells, rows, columns)) return undefined;
  const seen = signs.map(columnName).join(' and ');
  return `it lists pieces of music (${seen}), and its ranges of notes overlap on nearly all rows, as those of voices do`;
}

function areMusicalKeys(cells: TableCells, rows: readonly number[], index: number): boolean {
  const texts = rows.map((row) => cells.plain(cells.cell(row, index))).filter((text) => text !== '');
  const said = texts.map(musicalKeyIn);
  return (
    said.includes('mode') && said.filter((one) => one !== undefined).length >= texts.length * mostMusical
  );
}

/** Whether one key lies within nearly all ranges, which differ. */
export function haveCommonKey(
  cells: TableCells,
  rows: readonly number[],
  columns: readonly ColumnReading[],
): boolean {
  const at = (...meanings: ColumnMeaning[]) =>
    columns.find(({ meaning }) => meanings.includes(meaning))?.index ?? -1;
  const [low, high] = [at('lokey', 'key_range'), at('hikey', 'key_range')];
  if (low < 0 || high < 0) return false;
  const counts = new Map<number, number>();
  const ranges = new Set<string>();
  let known = 0;
  for (const row of rows) {
    const from = readKeyRange(cells.plain(cells.cell(row, low)))?.low;
    const to = readKeyRange(cells.plain(cells.cell(row, high)))?.high;
    const [first, last] = [from?.named ?? from?.number, to?.named ?? to?.number];
    if (first === undefined || last === undefined || last - first > 127) continue;
    known++;
    ranges.add(`${first} ${last}`);
    for (let key = first; key <= last; key++) counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const most = Math.max(0, ...counts.values());
  return known >= fewestRows && ranges.size > 2 && most >= known * mostCommon;
}
