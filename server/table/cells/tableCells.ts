import { namesAudioFileIn } from '../../model/fileNames';
import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import type { TableCells } from './cells';
import { leaveOutCutRow } from './cutEnd';
import { literalCells } from './literals/literalCells';
import { answersIn } from './markup/answers';
import { leaveOutCutHtml } from './markup/cutHtml';
import { htmlCells, isHtmlTable } from './markup/htmlCells';
import { withoutLogHeads } from './markup/logHeads';
import { readBold, readMarkdown } from './markup/markdownCells';
import { commentsWithFiles, plainLayout } from './markup/plainLayout';
import { passOverStruck } from './markup/struckOut';
import { wikiCells } from './markup/wikiCells';
import { xmlCells } from './markup/xmlCells';
import { partNames } from './nameRemarks';
import { realignedRows } from './realignedRows';
import { bareListCells } from './records/bareList';
import { recordCells } from './records/recordCells';
import { titledCells } from './records/titledList';
import { toldCells } from './records/toldLines';
import { rejoinedCells } from './rejoinedCells';
import { readRoughKeys } from './roughKeys';
import { withoutSheetLetters } from './sheetLetters';
import { filledShortRows } from './shortRows';
import { partTables } from './sideBySide';
import { withAlignedRanges } from './split/alignedRanges';
import { findDelimiter, isRuling, splitAtDelimiter } from './split/delimiter';
import { partsTitles } from './split/drawnTitles';
import { splitMixed } from './split/mixedBlanks';
import { joinRuledRows } from './split/ruledRows';
import { splitShortLines } from './split/shortLines';
import { withSlashesAsTabs } from './split/slashedLines';
import { splitByHeadings } from './split/splitByHeadings';
import { joinSplitRows } from './split/splitRows';
import { splitWords, usualWidth } from './split/splitWords';
import { turnedTable } from './turnedTable';
import { mendedUnevenRows } from './unevenRows';
import { unheadedNumbers } from './unheadedNumbers';

/**
 * The cells of a text, a row for each zone: of JSON or a script, of an HTML or Markdown table, of records, or of lines parted by a character
 * or into columns. `undefined` where nothing parts the lines into cells.
 */
export function tableCells(text: string): TableCells | undefined {
  return finish(tableCellsInSteps(text));
}

/** As {@link tableCells}, in steps of a pass or two over the text. */
export function* tableCellsInSteps(text: string): Steps<TableCells | undefined> {
  const cells = yield* cellsInSteps(text);
  if (cells) cells.answers = answersIn(text);
  return cells;
}

function* cellsInSteps(text: string): Steps<TableCells | undefined> {
  const wiki = wikiCells(text);
  if (wiki) {
    partNames(wiki);
    return wiki;
  }
  const literal = literalCells(withoutLogHeads(text));
  if (literal) return literal;
  yield 0.1;
  const board = boardAsHtml(text);
  const tagged = board ?? text;
  const html = board !== undefined || isHtmlTable(text);
  const grid = html ? undefined : xmlCells(text);
  if (grid) {
    partNames(grid);
    return grid;
  }
  const plain = html ? tagged : plainLayout(text);
  const written = html ? plain : (withAlignedRanges(plain) ?? plain);
  const titled = html ? undefined : titledCells(written);
  if (titled) return titled;
  const list = html ? undefined : bareListCells(written);
  if (list) return toldCells(written) ?? list;
  const records = html ? undefined : recordCells(written);
  if (records) return records;
  const told = html ? undefined : toldCells(written);
  if (told) return told;
  yield 0.3;
  const slashed = html ? undefined : withSlashesAsTabs(written);
  const cells = html ? htmlCells(tagged) : yield* writtenCells(slashed ?? written, slashed === undefined);
  if (!cells) return undefined;
  const cutEnd = html ? leaveOutCutHtml(cells) : leaveOutCutRow(cells);
  if (!html) passOverStruck(cells);
  yield 0.7;
  const arranged = yield* arrangedTable(cells, html, written);
  arranged.cutEnd = cutEnd;
  if (!html) arranged.remarks = [...arranged.remarks, ...commentsWithFiles(text)];
  partNames(arranged);
  readRoughKeys(arranged);
  return arranged;
}

/** The cells with a row for each zone, where they stand in any other order. */
function* arrangedTable(given: TableCells, html: boolean, written: string): Steps<TableCells> {
  const framed = withoutSheetLetters(given) ?? given;
  const headed = unheadedNumbers(framed) ?? framed;
  const cells = (html ? undefined : rejoinedCells(headed)) ?? headed;
  const arranged = (html ? undefined : partTables(cells)) ?? turnedTable(cells);
  if (arranged) return arranged;
  yield 0.8;
  const joined =
    (drawn.test(written.slice(0, looked)) ? joinRuledRows(cells) : undefined) ?? joinSplitRows(cells);
  if (joined) return joined;
  yield 0.9;
  if (html) return cells;
  if (cells.bySpaces) return filledShortRows(cells) ?? cells;
  const aligned = realignedRows(cells) ?? cells;
  return mendedUnevenRows(aligned) ?? aligned;
}

/** So much of a text is looked at for marks. */
const looked = 4096;
const mostRows = 200;
/** A cell whose whole text stands in marks of emphasis. */
const markedCell =
  /\\[_#&%]|\[\[|<(?:code|tt|br)\b|\{\{|\|\s*(?:'{2,5}|\*{1,2}|_{1,2}|~~)\S[^|\r\n]*?(?:'{2,5}|\*{1,2}|_{1,2}|~~)\s*\|/;
/** Lines drawn between rows. */
const drawn = /\+[-=]{3}/;
const boardTag = /\[(\/?(?:table|tr|td|th|b|i|u))(?:=[^\]\r\n]{0,40})?\]/gi;

/** A table of a message board, whose tags stand in square brackets, with tags as HTML has them, at the same offsets; `undefined` for others. */
function boardAsHtml(text: string): string | undefined {
  if (!/\[table[\]=]/i.test(text) || !/\[t[dh]\]/i.test(text)) return undefined;
  return text.replace(
    boardTag,
    (tag) => `<${tag.slice(1, -1).replace(/=.*/, (rest) => ' '.repeat(rest.length))}>`,
  );
}

function* writtenCells(text: string, mayBeSlashed: boolean): Steps<TableCells | undefined> {
  const delimiter = findDelimiter(text);
  yield 0.5;
  if (!delimiter || delimiter === 'columns' || delimiter === 'space') {
    const short = splitShortLines(text);
    if (short) return short;
  }
  const isSpaced = !delimiter || delimiter === 'columns' || delimiter === 'space';
  // Tabs part names from values too, and stand in no line of text.
  const byNames = delimiter === 'tab' ? undefined : splitWords(text);
  const words = byNames ?? (isSpaced ? splitByHeadings(text) : undefined);
  if (!delimiter && !words && mayBeSlashed) {
    const slashed = withSlashesAsTabs(text, true);
    return slashed === undefined ? undefined : splitAtDelimiter(slashed, 'tab');
  }
  if (!delimiter) return words;
  const cells = splitAtDelimiter(text, delimiter);
  const mixed = delimiter === 'tab' ? splitMixed(text, cells) : undefined;
  if (mixed) return mixed;
  // What parts a line of text alone parts no table.
  if (words && !isSpaced) return partsFiles(cells) ? cells : words;
  // Columns that are not kept take words for a cell, or a cell for several.
  if (
    words &&
    ((delimiter === 'space' && byNames !== undefined) ||
      usualWidth(words) !== usualWidth(cells) ||
      standsBesideHeadings(cells) ||
      (byNames !== undefined && partsTitles(cells)) ||
      words.cellCount > cells.cellCount)
  )
    return words;
  if (delimiter === 'space') cells.bySpaces = true;
  if (delimiter === 'bar' && (hasRuling(cells) || markedCell.test(text.slice(0, looked))))
    readMarkdown(cells);
  else if (text.includes('**')) readBold(cells);
  return cells;
}

/**
 * Whether the line above the first file has as many headings as the rows have values, and one of them stands above no value at all: then
 * headings and values were not put below one another.
 */
function standsBesideHeadings(cells: TableCells): boolean {
  const rows = Array.from({ length: Math.min(cells.rowCount, mostRows) }, (_, row) => row);
  const isFile = (row: number) => {
    const { start, end } = cells.rowSpan(row);
    return namesAudioFileIn(cells.text.slice(start, Math.min(end, start + looked)));
  };
  const files = rows.filter(isFile);
  const above = rows.slice(0, files[0] ?? 0).findLast((row) => cells.filled(row) > 0);
  if (above === undefined || cells.filled(above) !== usualWidth(cells)) return false;
  const columns = Array.from({ length: Math.min(cells.width(above), mostRows) }, (_, column) => column);
  return columns.some(
    (column) => !cells.isEmpty(above, column) && files.every((row) => cells.isEmpty(row, column)),
  );
}

/** Whether most of the first rows that name a file have a cell more. */
function partsFiles(cells: TableCells): boolean {
  let [parted, whole] = [0, 0];
  for (let row = 0; row < Math.min(cells.rowCount, mostRows); row++) {
    const { start, end } = cells.rowSpan(row);
    if (!namesAudioFileIn(cells.text.slice(start, Math.min(end, start + looked)))) continue;
    if (cells.width(row) > 1) parted++;
    else whole++;
  }
  return parted > whole;
}

/** Whether a drawn line stands under the first lines, as under the headings of a Markdown table. */
function hasRuling(cells: TableCells): boolean {
  for (let row = 1; row < Math.min(cells.rowCount, 12); row++) if (isRuling(cells, row)) return true;
  return false;
}
