import { audioEndingInText, isAudioFileName } from '../model/fileNames';
import { finish } from '../model/steps';
import type { ColumnMeaning } from '../trade/meaning';
import { keyMeanings } from '../trade/meaning';
import type { TableCells } from './cells/cells';
import { literalCells } from './cells/literals/literalCells';
import { isHtmlTable } from './cells/markup/htmlCells';
import { withoutLogHeads } from './cells/markup/logHeads';
import { withoutComments } from './cells/markup/plainLayout';
import { wikiCells } from './cells/markup/wikiCells';
import { xmlCells } from './cells/markup/xmlCells';
import type { TableRows } from './cells/tableRows';
import type { ColumnReading } from './columns/columnReading';
import { shortened } from './columns/columnReading';
import { lackOfKeys } from './lackOfKeys';
import { openTablesInSteps } from './openedTables';
import { pieceList } from './pieceList';
import type { Table } from './zones/zones';

/** So much of a text is looked at. */
const looked = 16_384;
/** HTML has much between its cells. */
const lookedInHtml = 131_072;
const mostNamed = 4;
/** So many rows are looked at for pieces of music. */
const mostLooks = 300;
/** Signs of code and of markup; a line between two slashes at each end, as `//Italic//`, is one of a wiki and no comment. */
const markup =
  /^[<{]|^\[\s*[[{"']|^[ \t]*(?:\/\/(?!\p{L}[^\r\n/]*[^\s/]\/\/[ \t]*$)|#(?:define|include)\b)|(?:[)}\]];|\{)[ \t]*$/mu;

/**
 * Tells quickly whether a text is a copied zone table: cells in columns, one of them names of samples and others
 * their keys, or a list of zones in JSON or a script. Where in doubt it is none, so that prose, source code, SFZ and XML are left
 * alone.
 */
export function looksLikeZoneTable(text: string): boolean {
  return lackOfZoneTable(text) === undefined;
}

/**
 * What a text lacks to be a copied zone table, as a clause about `it` that says what was seen instead: `it names samples, but no
 * keys`; `undefined` where it looks like one. As quick as {@link looksLikeZoneTable}.
 */
export function lackOfZoneTable(text: string): string | undefined {
  const html = isHtmlTable(text);
  const isTagged = html || /^\ufeff?\s*</.test(text.slice(0, 1000));
  const start = isTagged ? text.slice(0, lookedInHtml) : startOf(text);
  if (start.includes('\0')) return 'it holds bytes that are not text';
  const isKnown =
    literalCells(start) !== undefined ||
    wikiCells(start) !== undefined ||
    hasSections(start) ||
    (isTagged && xmlCells(start) !== undefined);
  const isPlain = !html && !isKnown;
  const bare = withoutLogHeads(withoutComments(start)).replace(/^\ufeff?\s*/, '');
  if (isPlain && (markup.test(bare) || isSfz(withoutComments(start))))
    return isJson(start) ? 'it is JSON, but lists no samples with keys' : 'it looks like program code';
  const opened = finish(openTablesInSteps(start));
  const found = 'problem' in opened ? opened.found : opened;
  if (!found) return 'its lines have no columns, and do not name samples with keys';
  const lacks = found.tables.map((table) => lackOf(found.cells, table, found.isOneRecording));
  return lacks.includes(undefined) ? undefined : (lacks.find((lack) => lack !== nothing) ?? nothing);
}

/** A line that names an audio file and gives it values: `bell.wav lo=48 hi=52`, `zone 3: file="a.wav"; low=40`. */
const namedEntry = new RegExp(
  String.raw`^\s*(?:\p{L}{0,12} ?#?\d{1,5}[:.)]? +|\p{L}{3,12} +)?(?:\p{L}[\p{L}\p{N}_]{0,15}=)?"?[^=<>{}()"';]{1,80}${audioEndingInText}"?[\s,;|]+\p{L}[\p{L}\p{N}_.-]*=\S`,
  'iu',
);

/** Whether lines give values to samples by other names than the opcodes of SFZ, the text of which may be without a header. */
export function namesEntries(lines: readonly string[]): boolean {
  const told = lines.filter((line) => !/^\s*(?:#|--|;)\s/.test(line));
  const entries = told.filter((line) => namedEntry.test(line));
  return !isSfz(entries.join('\n')) && entries.length > 1 && entries.length * 3 >= told.length * 2;
}

/** Whether lines begin with samples and give them keys by the opcodes of SFZ, without a header. */
function isSfz(text: string): boolean {
  return /^\s*sample=.*\s(?:(?:lo|hi)?(?:key|vel)|pitch_keycenter)=/im.test(text);
}

const nothing = 'it has no rows';

/** What a table lacks; `undefined` where it holds zones. */
function lackOf(
  cells: TableCells,
  { rows, data, columns }: Table,
  isOneRecording: boolean,
): string | undefined {
  if (data.length === 0) return nothing;
  if (isOneRecording && columns.some((one) => keyMeanings.includes(one.meaning) && isHeaded(one)))
    return undefined;
  const pieces = pieceList(cells, data.slice(0, mostLooks), columns);
  if (pieces) return pieces;
  const sample = columns.find(({ meaning }) => meaning === 'sample');
  const names = data.map((row) => cells.value(cells.cell(row, sample?.index ?? rows.width)));
  const named = names.filter((name) => name !== '').length;
  const files = names.filter(isAudioFileName);
  const keys = columns.filter(({ meaning, side }) => keyMeanings.includes(meaning) || side?.kind === 'key');
  const headed = keys.filter(isHeaded);
  const layers = columns.filter(({ meaning }) => velocityMeanings.has(meaning));
  const isSaid = headed.length > 0 || keys.some(({ unit }) => unit === 'Hz' || unit === 'kHz');
  if (named > 0 && files.length * 2 > named) {
    if (isSaid || keys.length + layers.length > (cells.bySpaces ? 1 : 0)) return undefined;
    if (keys.some((column) => column.meaning === 'key_range' || isScale(cells, rows, column)))
      return undefined;
    return `it names samples, such as "${shortened(files[0])}", but no keys`;
  }
  const lack = sample && isHeaded(sample) ? lackOfKeys(cells, rows, columns) : undefined;
  if (lack) return lack;
  const isHeadedWhole = sample !== undefined && isHeaded(sample) && headed.length > 1;
  if (named > 0 && isHeadedWhole && columns.filter(isHeaded).length > 3) return undefined;
  if (sample && isHeaded(sample) && headed.length > 0 && echoKeys(cells, rows, sample, headed))
    return undefined;
  const headings = columns.map(({ heading }) => shortened(heading)).filter((heading) => heading !== '');
  if (headings.length < 2) return 'its lines have no columns, and do not name samples with keys';
  const seen = headings.slice(0, mostNamed).join(', ') + (headings.length > mostNamed ? ', …' : '');
  const alsoNoKeys = keys.length === 0 ? ' and no keys' : '';
  return `it has columns (${seen}), but none of sample names${alsoNoKeys}`;
}

/** So many keys in a row are a list of keys (our choice). */
const leastKeys = 4;
const firstKey = 12;

/** Whether a column counts up keys, no two of them the same, from a key that instruments have: numbers of lines begin with 1, and sizes of files go up and down. */
function isScale(cells: TableCells, { data }: TableRows, { index }: ColumnReading): boolean {
  const numbers = data.map((row) => Number(cells.value(cells.cell(row, index))));
  return (
    numbers.length >= leastKeys &&
    numbers.every((number, at) => number >= (at > 0 ? numbers[at - 1] + 1 : firstKey) && number <= 127)
  );
}

const velocityMeanings: ReadonlySet<ColumnMeaning> = new Set(['lovel', 'hivel', 'velocity_range']);
/** So many rows have to name their keys in the names of their samples (our choice). */
const mostEchoes = 0.8;

/** Whether names of samples, though they have no endings, hold the keys of their rows: `bell_36` for key 36. */
function echoKeys(
  cells: TableCells,
  { data }: TableRows,
  sample: ColumnReading,
  keys: readonly ColumnReading[],
): boolean {
  const rows = data.filter((row) => !cells.isEmpty(row, sample.index)).slice(0, 200);
  const echoed = rows.filter((row) => {
    const parts = cells
      .value(cells.cell(row, sample.index))
      .toLowerCase()
      .split(/[^\p{L}\p{N}#-]+/u);
    return keys.some(({ index }) => parts.includes(cells.plain(cells.cell(row, index)).toLowerCase()));
  });
  return rows.length > 1 && echoed.length >= rows.length * mostEchoes;
}

/** Whether lines in square brackets part a text, and no header of SFZ stands in it. */
export function hasSections(text: string): boolean {
  return (text.match(/^\[{1,2}[^\]\r\n]+\]{1,2}[ \t]*$/gm)?.length ?? 0) > 1 && !/^[ \t]*<\w+>/m.test(text);
}

function isHeaded(column: ColumnReading): boolean {
  return column.meaning !== 'unknown' && column.heading !== '' && column.confidence >= 0.6;
}

function startOf(text: string): string {
  if (text.length <= looked) return text;
  const cut = Math.max(text.lastIndexOf('\n', looked), text.lastIndexOf('\r', looked));
  return text.slice(0, cut > 0 ? cut : looked);
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
