import { tellsOfFile } from '../trade/headings/fileHeadings';
import { readHeading } from '../trade/headings/headings';
import { isNameAlone } from '../trade/headings/nameAlone';
import type { ColumnMeaning } from '../trade/meaning';
import { keyMeanings } from '../trade/meaning';
import { keyNumbersInFileName, notesInFileName, readKeyRange } from '../trade/readings/keyReading';
import { musicalKeyIn } from '../trade/readings/musicalKey';
import type { TableCells } from './cells/cells';
import { namesAudioFile } from './cells/namesAudioFile';
import type { TableRows } from './cells/tableRows';
import type { ColumnReading } from './columns/columnReading';
import { columnName, shortened } from './columns/columnReading';
import { haveCommonKey, pieceList } from './pieceList';

/** So many rows are looked at. */
const mostLooks = 300;
/** From so many rows on that all give the same keys, they give none. */
const fewestRows = 3;
/** So many columns are named. */
const mostSeen = 4;

/**
 * Why a table holds no zones, as a clause about `it`: {@link musicalKeys}, {@link pieceList}, {@link fileList}, or
 * {@link lackBesideNames}.
 */
export function lackOfKeys(
  cells: TableCells,
  { data }: TableRows,
  columns: readonly ColumnReading[],
): string | undefined {
  const rows = data.slice(0, mostLooks);
  return (
    musicalKeys(cells, rows, columns) ??
    pieceList(cells, rows, columns) ??
    fileList(cells, rows, columns) ??
    lackBesideNames(cells, rows, columns)
  );
}

/** So many cells of a column have to name keys of pieces of music (our choice). */
const mostMusical = 0.9;
const playing: ReadonlySet<ColumnMeaning> = new Set([...keyMeanings, 'lovel', 'hivel', 'velocity_range']);

/**
 * A list of pieces gives the keys that they are in, such as `Em`, and none of a keyboard; its names of files give no notes either.
 */
function musicalKeys(
  cells: TableCells,
  rows: readonly number[],
  columns: readonly ColumnReading[],
): string | undefined {
  if (columns.some(({ meaning, side }) => playing.has(meaning) || side?.kind === 'key')) return undefined;
  const sample = columns.find(({ meaning }) => meaning === 'sample');
  const names = rows.map((row) => cells.value(cells.cell(row, sample?.index ?? -1)));
  if (names.filter((name) => notesInFileName(name).length > 0).length * 2 > rows.length) return undefined;
  for (const column of columns) {
    if (column === sample) continue;
    const texts = rows.map((row) => cells.value(cells.cell(row, column.index))).filter((text) => text !== '');
    const said = texts.map(musicalKeyIn);
    // `G` and `D` alone may be sides, groups or notes, unless the heading speaks of keys.
    const isHeaded = keyMeanings.includes(readHeading(column.heading)?.meaning ?? 'unknown');
    const some = texts[isHeaded ? 0 : said.indexOf('mode')];
    if (some === undefined || said.filter((one) => one !== undefined).length < texts.length * mostMusical)
      continue;
    return `${columnName(column)} gives the keys that pieces of music are in, such as "${shortened(some)}", and nothing gives keys of a keyboard`;
  }
  return undefined;
}

/** What a list of files tells as well as a table of zones. */
const ofFiles: ReadonlySet<ColumnMeaning> = new Set([
  'sample',
  'unknown',
  'comment',
  'row_number',
  'sample_rate',
]);
/** What may be told of recordings besides, where sizes, lengths or dates stand beside it. */
const ofRecordings: ReadonlySet<ColumnMeaning> = new Set(['group', 'seq_position']);

/** A list of files with their sizes, dates and the like, which gives nothing that zones have; its names give no keys either. */
function fileList(
  cells: TableCells,
  rows: readonly number[],
  columns: readonly ColumnReading[],
): string | undefined {
  const sample = columns.find(({ meaning }) => meaning === 'sample');
  const others = columns.filter(({ index }) => index !== sample?.index);
  if (!sample || others.length === 0) return undefined;
  const isListed = others.some(
    ({ heading, index }) => tellsOfFile(heading) || areTimesOfDay(cells, rows, index),
  );
  const isOfFiles = ({ meaning, heading, side, repeats }: ColumnReading) =>
    side === undefined &&
    repeats === undefined &&
    // Without a heading, names that recur may be anything.
    (ofFiles.has(meaning) ||
      (isListed && ofRecordings.has(meaning)) ||
      (meaning === 'group' && heading === ''));
  if (!columns.every(isOfFiles)) return undefined;
  const names = rows.map((row) => cells.value(cells.cell(row, sample.index))).filter((name) => name !== '');
  // Takes and files are numbered too.
  const keyed = names.filter(
    (name) => notesInFileName(name).length > 0 || (!isListed && keyNumbersInFileName(name).length > 0),
  );
  if (keyed.length * 2 > names.length) return undefined;
  const seen = others.slice(0, mostSeen).map(columnName).join(', ');
  return `it lists files (${seen}), and gives no keys, velocities or other values of zones`;
}

/** A time of the day, as a log of recordings has them: `10:02`, `9:15:30`, `14h05`, `10:02 am`. */
const timeOfDay =
  /^(?:[01]?\d|2[0-3])(?::[0-5]\d(?::[0-5]\d)?|\s?[hu.]\s?[0-5]\d)\s?(?:[ap]\.?m\.?|uhr|h)?$/iu;
/** So many hours lie between zero and a time at least: a lower one may be minutes of a recording. */
const earliest = 5;

/** Whether all cells of a column are times of the day, and rows go on in time. */
function areTimesOfDay(cells: TableCells, rows: readonly number[], index: number): boolean {
  const texts = rows.map((row) => cells.value(cells.cell(row, index)).trim()).filter((text) => text !== '');
  if (texts.length < 2 || !texts.every((text) => timeOfDay.test(text))) return false;
  // A number with two decimals is no time.
  if (texts.every((text) => /^\d+\.\d+$/.test(text))) return false;
  return new Set(texts).size > 1 && texts.some((text) => Number.parseInt(text, 10) >= earliest);
}

/**
 * Why a table whose names are none of audio files holds no zones, as a clause about `it`: no column gives keys, or the one that could
 * says the same in all rows, as the ends of controllers do. `undefined` where it may hold zones.
 */
function lackBesideNames(
  cells: TableCells,
  rows: readonly number[],
  columns: readonly ColumnReading[],
): string | undefined {
  const samples = columns.filter(({ meaning }) => meaning === 'sample');
  const [sample] = samples;
  if (
    !sample ||
    rows.some((row) => samples.some(({ index }) => namesAudioFile(cells, cells.cell(row, index))))
  )
    return undefined;
  const first = rows.find((row) => !cells.isEmpty(row, sample.index)) ?? rows[0] ?? 0;
  const name = shortened(cells.value(cells.cell(first, sample.index)));
  const names = `the names in ${columnName(sample)}, such as "${name}", are not names of audio files`;
  const keys = columns.filter(
    (column) => keyMeanings.includes(column.meaning) || column.side?.kind === 'key',
  );
  // Shelves, seats and the squares of a chessboard look like names of notes: only beside samples do these tell of keys.
  const isOfSamples = isSaid(sample) && (!isNameAlone(sample.heading) || areInOrder(cells, rows, keys));
  const telling = keys.filter((column) => isSaid(column) || (isOfSamples && areNotes(cells, rows, column)));
  // Without headings, values in the order of keys tell as much.
  const isBare =
    columns.every(({ heading }) => heading === '') && (keys.length > 2 || areInOrder(cells, rows, keys));
  const isGiven =
    isBare ||
    telling.length === keys.length ||
    telling.some(({ meaning }) => meaning !== 'lokey' && meaning !== 'hikey');
  if (!isGiven || keys.length === 0) {
    const [guessed] = keys;
    const seen = guessed ? `: nothing says that ${columnName(guessed)} does` : '';
    return `it gives no keys${seen}, and ${names}`;
  }
  const isRange = telling.every(({ meaning }) => meaning === 'lokey' || meaning === 'hikey');
  if (!isRange || rows.length < fewestRows) return undefined;
  if (!isSaid(sample) && haveCommonKey(cells, rows, columns))
    return `it gives no keys: ${keys.map(columnName).join(' and ')} overlap on nearly all rows, and ${names}`;
  const whole = rows.filter((row) => isWhole(keys.map(({ index }) => cells.value(cells.cell(row, index)))));
  if (whole.length * 2 < rows.length) return undefined;
  const seen = keys.map(columnName).join(' and ');
  return `it gives no keys: ${seen} say 0 to 127 in most rows, and ${names}`;
}

/** Whether the heading of a column says by itself that it gives keys. */
function isSaid({ heading, meaning, confidence }: ColumnReading): boolean {
  if (confidence === 1) return true;
  const said = readHeading(heading);
  return (
    said !== undefined &&
    said.likeness === undefined &&
    (said.meaning === meaning || keyMeanings.includes(said.meaning))
  );
}

/** Whether at least half of the cells of a column name notes with their octaves. */
function areNotes(cells: TableCells, rows: readonly number[], { index }: ColumnReading): boolean {
  const named = rows.filter((row) => /\p{L}.*\d/u.test(cells.value(cells.cell(row, index))));
  return named.length * 2 >= rows.length;
}

/** Whether the notes or numbers in columns of keys go up or down from row to row, as those of an instrument mostly do and shelves do not. */
function areInOrder(cells: TableCells, rows: readonly number[], columns: readonly ColumnReading[]): boolean {
  return columns.every(({ index }) => {
    const keys = rows.map((row) => readKeyRange(cells.plain(cells.cell(row, index)))?.low);
    const values = keys
      .map((low) => low?.number ?? low?.named ?? Number.NaN)
      .filter((key) => !Number.isNaN(key));
    const steps = values.slice(1).map((key, at) => key - values[at]);
    return values.length > 1 && (steps.every((step) => step > 0) || steps.every((step) => step < 0));
  });
}

function isWhole(ends: readonly string[]): boolean {
  return ends.includes('0') && ends.includes('127');
}
