import { isAudioFileName } from '../../model/fileNames';
import { nameWithoutEnding } from '../../model/paths';
import type { ColumnMeaning } from '../../trade/meaning';
import { keyMeanings } from '../../trade/meaning';
import type { ColumnReading } from '../columns/columnReading';
import type { TableCells } from './cells';
import type { TableRows } from './tableRows';

/** So many layers or ways of playing are listed at most (our choice). */
const mostLayers = 64;
/** Values that a list of layers or ways of playing is made for. */
const telling: ReadonlySet<ColumnMeaning> = new Set(['lovel', 'hivel', 'velocity_range', 'keyswitch']);
/** Columns that may name the layer of a row. */
const naming: ReadonlySet<ColumnMeaning> = new Set([
  'group',
  'unknown',
  'comment',
  'dynamics',
  'sample',
  'row_number',
]);

/** A table whose rows give values to all zones of a layer. */
export interface LayerTable {
  rows: TableRows;
  /** The column of the names of layers. */
  column: number;
  byName: ReadonlyMap<string, number>;
  /** The name of the layer of a row of zones. */
  nameOf: (row: number) => string;
}

/** A table and what its columns were taken for. */
export interface ReadRows {
  rows: TableRows;
  columns: readonly ColumnReading[];
}

/**
 * Whether a table lists the velocities or key switches of layers, each by a name that a column of the zones gives, or one word in the
 * name of each file: `A | 1 | 40` above rows such as `harp_48_A.wav | A`. `undefined` where it does not.
 */
export function layerTable(
  cells: TableCells,
  { rows, columns }: ReadRows,
  zones: ReadRows,
): LayerTable | undefined {
  const { data } = rows;
  if (data.length < 2 || data.length > mostLayers) return undefined;
  const meanings = columns.map(({ meaning }) => meaning);
  const given = meanings.filter((meaning) => !naming.has(meaning));
  if (!given.some((meaning) => telling.has(meaning))) return undefined;
  if (given.some((meaning) => keyMeanings.includes(meaning))) return undefined;
  // What the zones give by themselves is left as it is.
  if (given.some((meaning) => zones.columns.some((column) => column.meaning === meaning))) return undefined;
  const textOf = (row: number, column: number) => cells.value(cells.cell(row, column)).trim().toLowerCase();
  const files = zones.columns.find(({ meaning }) => meaning === 'sample')?.index ?? -1;
  const zoneRows = zones.rows.data.filter((row) => isAudioFileName(textOf(row, files)));
  for (const { meaning, index } of columns) {
    if (!naming.has(meaning)) continue;
    const byName = new Map(data.map((row) => [textOf(row, index), row]));
    if (byName.size < data.length || byName.has('') || [...byName.keys()].some(isAudioFileName)) continue;
    const nameOf = namesIn(zoneRows, zones.columns, files, textOf, byName);
    if (nameOf) return { rows, column: index, byName, nameOf };
  }
  return undefined;
}

/** How the rows of zones name their layers: in a column of their own, or as one word in the names of their files. */
function namesIn(
  zoneRows: readonly number[],
  columns: readonly ColumnReading[],
  files: number,
  textOf: (row: number, column: number) => string,
  byName: ReadonlyMap<string, number>,
): ((row: number) => string) | undefined {
  const areNamed = (nameOf: (row: number) => string) =>
    zoneRows.length > 0 &&
    zoneRows.every((row) => byName.has(nameOf(row))) &&
    new Set(zoneRows.map(nameOf)).size > 1;
  for (const { meaning, index } of columns) {
    const nameOf = (row: number) => textOf(row, index);
    if (naming.has(meaning) && index !== files && areNamed(nameOf)) return nameOf;
  }
  const inFile = (row: number) => {
    const words = nameWithoutEnding(textOf(row, files)).split(/[^\p{L}\p{N}]+/u);
    const [name = '', ...others] = words.filter((word) => /\p{L}/u.test(word) && byName.has(word));
    return others.length > 0 ? '' : name;
  };
  return areNamed(inFile) ? inFile : undefined;
}
