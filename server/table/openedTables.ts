import type { Steps } from '../model/steps';
import { inPart } from '../model/steps';
import type { ColumnMeaning } from '../trade/meaning';
import type { TableCells } from './cells/cells';
import { mendCommaEndings } from './cells/commaEndings';
import { readDatedRanges } from './cells/datedRanges';
import { fillDittoMarks } from './cells/dittoMarks';
import { useGeneratorUnits } from './cells/generatorUnits';
import { readHexadecimals } from './cells/hexadecimals';
import { joinTables } from './cells/joinedTables';
import { withRecording } from './cells/oneRecording';
import type { NumberedSamples } from './cells/sampleList';
import { useSampleList } from './cells/sampleList';
import { readScannedDigits } from './cells/scannedDigits';
import { tableCellsInSteps } from './cells/tableCells';
import { findTables } from './cells/tableRows';
import { passTotals } from './cells/totalRows';
import { readColumns } from './columns/columnMeaning';
import type { ColumnReading } from './columns/columnReading';
import { columnName } from './columns/columnReading';
import { useNameOctaves } from './columns/octaves/octavesOfNames';
import { takeAnswers } from './columns/said/answeredRows';
import { takeCorrections } from './columns/said/correctedCells';
import { useFolders } from './columns/said/folders';
import { overruleValues } from './columns/said/overrulingLines';
import { usePanLetters } from './columns/said/panLetters';
import { partTablesBySaid } from './columns/said/partedTables';
import { usePlaysOut } from './columns/said/playsOutColumn';
import { useRecordedKeys } from './columns/said/recordedKeys';
import { useStatedEnding } from './columns/said/statedEndings';
import { passOverUnused } from './columns/said/unusedRows';
import { useCellLabels } from './headings/cellLabels';
import { useEndHeadings } from './headings/endHeadings';
import { Glossary } from './headings/glossary';
import type { ExplainedWord } from './headings/legendWords';
import { useLegend } from './headings/legendWords';
import { useStatedHeadings } from './headings/statedHeadings';
import { usePieces } from './headings/usePieces';
import { lackOfKeys } from './lackOfKeys';
import { lackOfSamples } from './samplesToCome';
import { textFault } from './textFault';
import type { Table } from './zones/zones';

/** The tables of a text, with what their columns hold. */
export interface OpenedTables {
  cells: TableCells;
  tables: readonly Table[];
  /** The columns of the first table that has samples. */
  columns: ColumnReading[];
  /** Whether keys or velocities are in hexadecimal, as the text says. */
  hexadecimal: boolean;
  /** A list of samples that zones refer to. */
  list: NumberedSamples | undefined;
  /** Words of columns that the text explains. */
  explained: readonly ExplainedWord[];
  /** Whether the text names one recording whose pieces the rows are. */
  isOneRecording: boolean;
}

/** Why a text gives no zones, and the tables and columns that it has all the same. */
export interface NoTables {
  problem: string;
  columns: ColumnReading[];
  /** Its tables; `undefined` where nothing parts it into cells. */
  found?: Pick<OpenedTables, 'cells' | 'tables' | 'isOneRecording'>;
}

/** So many columns are named where none has samples. */
const mostNamed = 6;

/** Finds the cells of a text and what the columns of its tables hold, in steps; `chosen` has meanings that a person has set, by column. */
export function* openTablesInSteps(
  text: string,
  chosen?: ReadonlyMap<number, ColumnMeaning>,
): Steps<OpenedTables | NoTables> {
  const fault = textFault(text);
  if (fault) return { problem: fault, columns: [] };
  const single = yield* inPart(tableCellsInSteps(text), 0, 0.5);
  if (!single) {
    const problem =
      'This is no zone table: its lines do not give keys to samples, and have no columns with tabs, semicolons, bars, commas or spaces between them.';
    return { problem, columns: [] };
  }
  yield 0.5;
  mendCommaEndings(single);
  const parts = findTables(single);
  const joined = chosen ? undefined : joinTables(single, parts);
  const whole = joined ?? single;
  const split = joined ? findTables(joined) : parts;
  const recorded = withRecording(whole, split, new Glossary(whole, split).texts);
  const cells = recorded ?? whole;
  const found = partTablesBySaid(cells, recorded ? findTables(recorded) : split);
  passTotals(cells, found);
  yield 0.8;
  const list = useSampleList(cells, found);
  let hexadecimal = false;
  const tables: Table[] = [];
  const glossary = new Glossary(cells, found);
  useStatedHeadings(cells, found, glossary.texts);
  useCellLabels(cells, found);
  yield 0.8;
  for (const _ of takeCorrections(cells, found, glossary.texts)) yield 0.8;
  yield 0.8;
  usePanLetters(cells, found, glossary.texts);
  usePlaysOut(cells, found, glossary);
  yield 0.8;
  useNameOctaves(cells, found);
  useEndHeadings(found, glossary);
  usePieces(cells, found, recorded !== undefined, glossary);
  const explained = useLegend(cells, found, glossary);
  for (const rows of found) {
    const done = () => 0.8 + (0.2 * tables.length) / found.length;
    yield done();
    fillDittoMarks(cells, rows.data);
    yield done();
    readScannedDigits(cells, rows);
    readDatedRanges(cells, rows);
    yield done();
    hexadecimal ||= readHexadecimals(cells, rows);
    useGeneratorUnits(cells, rows);
    const columns = readColumns(cells, rows, chosen, glossary);
    yield done();
    tables.push({ rows, data: rows.data, columns });
    yield done();
  }
  if (!chosen) useRecordedKeys(cells, tables, glossary.texts);
  overruleValues(cells, tables);
  takeAnswers(cells, tables);
  for (const table of tables) {
    passOverUnused(cells, table);
    useFolders(cells, table);
  }
  useStatedEnding(cells, tables, glossary.texts);
  const columns = (tables.find(hasSamples) ?? tables[0])?.columns ?? [];
  const problem = problemOf(cells, tables, columns, chosen !== undefined);
  const isOneRecording = recorded !== undefined;
  if (problem !== undefined) return { problem, columns, found: { cells, tables, isOneRecording } };
  return { cells, tables, columns, list, explained, hexadecimal, isOneRecording };
}

/** Whether a table has rows, and a column of samples. */
export function hasSamples({ columns, data }: Table): boolean {
  return data.length > 0 && columns.some(({ meaning }) => meaning === 'sample');
}

/** Why tables give no zones; `undefined` where they do. Where a person has set what columns hold, keys may be missing. */
function problemOf(
  cells: TableCells,
  tables: readonly Table[],
  columns: readonly ColumnReading[],
  isChosen: boolean,
): string | undefined {
  if (tables.every(({ data }) => data.length === 0)) return 'The table has headings only; copy its rows too.';
  const withSamples = tables.filter(hasSamples);
  if (withSamples.length === 0) {
    const seen = columns.map(columnName).slice(0, mostNamed).join(', ');
    return `No sample names were found: the columns are ${seen}. A column with a heading such as Sample or File is needed.`;
  }
  const toCome = lackOfSamples(cells, withSamples);
  if (toCome !== undefined) return toCome;
  const lacks = isChosen ? [] : withSamples.map((table) => lackOfKeys(cells, table.rows, table.columns));
  const [lack] = lacks;
  return lack === undefined || lacks.includes(undefined)
    ? undefined
    : `This is no zone table: ${lack}. Add a column of keys, with a heading such as Root or Keys.`;
}
