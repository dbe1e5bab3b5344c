import type { Instrument } from '../model/instrument';
import { InstrumentBuilder } from '../model/instrumentBuilder';
import type { MiddleC } from '../model/keys';
import type { ConversionNote } from '../model/notes';
import type { Steps } from '../model/steps';
import { finish, inPart } from '../model/steps';
import { Source } from '../model/text/source';
import type { ColumnMeaning } from '../trade/meaning';
import { legendOf } from '../trade/statements/nameMarks';
import { statementsOfEach } from '../trade/statements/ownStatements';
import type { Statements } from '../trade/statements/statements';
import { statementsIn } from '../trade/statements/statements';
import type { TableCells } from './cells/cells';
import { isHtmlTable } from './cells/markup/htmlCells';
import type { ColumnReading } from './columns/columnReading';
import { middleInRemarks } from './columns/octaves/middleInRemarks';
import { namingIn } from './columns/octaves/noteNaming';
import { statedOver } from './columns/said/partedTables';
import { textsAround } from './columns/said/textsAround';
import type { OpenedTables } from './openedTables';
import { hasSamples, openTablesInSteps } from './openedTables';
import { noteHeadingOctave, noteOctave } from './readingNotes';
import type { SampleEvidence } from './sampleEvidence';
import { TableNotes } from './tableNotes';
import { noteBlanks, noteDifferences, noteTable, noteText } from './textNotes';
import type { GroupedZones } from './zones/groups/sharedValues';
import { groupZones } from './zones/groups/sharedValues';
import type { Suggestion } from './zones/groups/suggestions';
import { suggestGroups } from './zones/groups/suggestions';
import { instrumentOfZones } from './zones/instrumentOfZones';
import { completeRoundRobins } from './zones/layers/roundRobin';
import { giveToSome } from './zones/said/forSomeZones';
import { takesInCell } from './zones/takesInCell';
import { ZoneList } from './zones/zoneList';
import type { Table } from './zones/zones';
import { addSampleNames, readTableZones } from './zones/zones';

export interface TableOptions extends SampleEvidence {
  /** The path by which the table is known; `table` where nothing is given. */
  path?: string;
  /** The note name that the table gives to key 60; found by evidence where nothing or `auto` is given. */
  middleC?: MiddleC | 'auto';
  /** The path to write for a sample, by the name in the table; the name itself where `undefined` comes back. */
  resolveSample?: (sample: string) => string | undefined;
  /** Meanings that a person has set for columns, by position from 0. */
  columns?: ReadonlyMap<number, ColumnMeaning>;
  /** What is said of the table elsewhere than in the text. */
  said?: readonly string[];
  /** Scales that a person has set for columns, by position from 0; see `ColumnScale`. */
  scales?: ReadonlyMap<number, string>;
}

/** What was found in a zone table. */
export interface ZoneReading {
  /** The text, which the spans of notes are in. */
  source: Source;
  /** The zones, in groups where a column names groups; `undefined` where the text gives none. */
  grouped: GroupedZones | undefined;
  /** What each column was taken for; of several tables in the text, the columns of the first that gives zones. */
  columns: ColumnReading[];
  /** Groups, layers and articulations that sample names or blank lines tell of; nothing of them is written. */
  suggestions: Suggestion[];
  /** The convention by which note names were read; `undefined` where the table has none. */
  middleC: MiddleC | undefined;
  notes: ConversionNote[];
  /** Why the text gives no region at all, in one sentence for people; `undefined` where it does. */
  problem: string | undefined;
}

/** What was found in a zone table, and its zones as regions; each value's span is the cell it comes from. */
export interface TableReading extends ZoneReading {
  instrument: Instrument;
}

/** So much of the work of reading is done when the zones are known. */
const zonesShare = 0.8;

/** What is known of a text when it is opened as a table. */
export type OpenOptions = Pick<TableOptions, 'path' | 'columns' | 'said'>;

/** A zone table whose cells and columns are known, so that what it names can be looked up before its zones are read. */
export interface ZoneTable {
  /** The different sample names of the table, in the order of the text; none where it gives no zones. */
  sampleNames(): Set<string>;
  /** As {@link sampleNames}, in steps. */
  sampleNamesInSteps(): Steps<Set<string>>;
  /** The zones, for who arranges them before they become regions; may be asked for again with other options. */
  zonesInSteps(options?: ReadingOptions): Steps<ZoneReading>;
  /** The zones as regions. */
  read(options?: ReadingOptions): TableReading;
  /** As {@link read}, in steps. */
  readInSteps(options?: ReadingOptions): Steps<TableReading>;
}

/** What can be said of a table once its cells and columns are known. */
export type ReadingOptions = Omit<TableOptions, keyof OpenOptions>;

/**
 * Reads a copied zone table into an instrument of the open SFZ format's parameters. Takes any text and never throws:
 * what is no table gives no regions and a `problem`.
 */
export function readZoneTable(text: string, options: TableOptions = {}): TableReading {
  return openZoneTable(text, options).read(options);
}

/**
 * Finds the cells of a copied zone table and what its columns mean, as {@link readZoneTable} does. For a caller that
 * looks at the sample files first: it asks for their names, then for the zones, and the text is taken apart once.
 */
export function openZoneTable(text: string, options: OpenOptions = {}): ZoneTable {
  return finish(openZoneTableInSteps(text, options));
}

/** As {@link openZoneTable}, in steps; of 100,000 rows the longest takes a few dozen milliseconds. */
export function* openZoneTableInSteps(
  text: string,
  { path = 'table', columns: chosen, said = [] }: OpenOptions = {},
): Steps<ZoneTable> {
  const opened = yield* openTablesInSteps(text, chosen);
  if ('problem' in opened) return withoutZones(text, path, opened.problem, opened.columns);
  const known = { ...opened, text, path, said };
  return {
    sampleNames: () => finish(namesIn(known)),
    sampleNamesInSteps: () => namesIn(known),
    zonesInSteps: (options = {}) => zonesOf(known, options),
    read: (options = {}) => finish(readInSteps(zonesOf(known, options))),
    readInSteps: (options = {}) => readInSteps(zonesOf(known, options)),
  };
}

function* namesIn({ cells, tables }: Opened): Steps<Set<string>> {
  const names = new Set<string>();
  for (const table of tables.filter(hasSamples)) yield* addSampleNames(cells, table, names);
  return names;
}

/** A text whose tables are known, and what is said of them elsewhere. */
interface Opened extends OpenedTables {
  text: string;
  path: string;
  /** As in {@link TableOptions.said}. */
  said: readonly string[];
}

/** The zones that steps find, as regions. */
function* readInSteps(finding: Steps<ZoneReading>): Steps<TableReading> {
  const found = yield* inPart(finding, 0, zonesShare);
  const instrument = yield* inPart(regionsOf(found), zonesShare, 1);
  return { ...found, instrument };
}

/** The zones of a table as regions; none where it has no zones. */
export function* regionsOf({ source, grouped }: ZoneReading): Steps<Instrument> {
  if (grouped) return yield* instrumentOfZones(source, grouped);
  const builder = new InstrumentBuilder('table', 0);
  builder.enterSource(source.path, source.text);
  return builder.finish();
}

function* zonesOf(opened: Opened, options: TableOptions): Steps<ZoneReading> {
  const { text, path, cells, tables, columns } = opened;
  const source = new Source(path, text);
  const notes = new TableNotes(source, isHtmlTable(text) ? cells.rowSpans : undefined);
  const said = statementsIn([...textsAround(cells, tables), ...opened.said]);
  const isCounted = said.middleC !== undefined || said.otherOctaves !== undefined;
  const statements = isCounted ? said : { ...said, middleC: middleInRemarks(cells, tables) };
  const otherOctaves = (options.middleC ?? 'auto') === 'auto' ? statements.otherOctaves : undefined;
  const naming = namingIn(cells, tables, notes, otherOctaves?.isLined);
  const octaveOf = (some: readonly Table[], said: Statements) =>
    noteOctave(cells, some, { ...options, naming, statements: said }, notes) ??
    noteHeadingOctave(some, { ...options, statements: said }, notes);
  const { each, differ } =
    tables.length > 1 && !cells.areRecords
      ? statementsOfEach(statedOver(cells, tables), statements)
      : { each: [statements], differ: [] };
  const ownOf = (at: number) => each[at] ?? statements;
  const areOctavesOwn = each.some((own) => own.middleC !== statements.middleC);
  const middles = areOctavesOwn ? tables.map((table, at) => octaveOf([table], ownOf(at))) : [];
  const middleC = areOctavesOwn ? middles.find((one) => one !== undefined) : octaveOf(tables, statements);
  noteDifferences(cells, tables, differ, notes);
  yield 0.05;
  noteText(opened, notes);
  if (statements.blankIsAbove !== undefined) noteBlanks(opened, statements.blankIsAbove, notes);
  if (statements.turns) for (const table of tables) giveTurns(table);
  const withSamples = tables.filter(hasSamples);
  const most = withSamples.reduce(
    (sum, table) => sum + table.data.length * samplesInRow(table) + takesOf(cells, table),
    0,
  );
  const zones = new ZoneList(cells, most);
  yield 0.1;
  for (const [at, table] of tables.entries()) {
    noteTable(cells, table, notes);
    if (!hasSamples(table)) continue;
    // A step for each kind of value, with as many rows as the table has.
    const own = {
      ...options,
      middleC: areOctavesOwn ? middles[at] : middleC,
      naming,
      statements: ownOf(at),
      tables,
    };
    const reading = readTableZones(zones, table, own, notes);
    const done = (count: number) => 0.1 + (0.75 * count) / tables.length;
    yield* inPart(reading, done(at), done(at + 1));
  }
  if (zones.count === 0) {
    return {
      ...nothing(source, 'No row of the table names a sample, so there is nothing to convert.'),
      columns,
    };
  }
  const headings = tables.flatMap(({ columns: all }) => all.map(({ heading }) => heading));
  // What marks behind names mean is done already.
  const ofMarks = [...new Set(cells.nameRemarks.values())].map(
    (one) => legendOf(one, statements.nameMarks)?.text,
  );
  const forSome = statements.forSome.filter(
    ({ text: said }) => !ofMarks.some((legend) => legend?.includes(said.trim())),
  );
  giveToSome(zones, forSome, headings, notes);
  completeRoundRobins(zones);
  yield 0.9;
  const grouped = { zones, groups: groupZones(zones) };
  yield 0.94;
  const afterBlank = new Set(tables.flatMap(({ rows }) => rows.afterBlank));
  const suggestions = suggestGroups(grouped, columns, afterBlank);
  yield 1;
  return {
    source,
    grouped,
    columns,
    suggestions,
    middleC,
    notes: notes.finish(),
    problem: undefined,
  };
}

/** Columns of samples side by side play in turn, where the text says so and their headings leave it open. */
function giveTurns({ columns }: Table): void {
  const open = columns.filter(({ side }) => side?.kind === 'group' && !side.isKnown);
  for (const [at, column] of open.entries()) column.side = { kind: 'round_robin', position: at + 1 };
}

/** How many zones a row of a table can be. */
function samplesInRow({ columns }: Table): number {
  return Math.max(1, columns.filter(({ side }) => side !== undefined).length);
}

/** How many zones more the takes in cells of a table are. */
function takesOf(cells: TableCells, { columns, data }: Table): number {
  const samples = columns.filter(({ meaning }) => meaning === 'sample');
  const count = (row: number) =>
    samples.reduce((sum, { index }) => sum + takesInCell(cells, cells.cell(row, index)).length, 0);
  return data.reduce((sum, row) => sum + count(row), 0);
}

function withoutZones(text: string, path: string, problem: string, columns: ColumnReading[] = []): ZoneTable {
  function* zonesInSteps(): Steps<ZoneReading> {
    yield 1;
    return { ...nothing(new Source(path, text), problem), columns };
  }
  return {
    sampleNames: () => new Set(),
    *sampleNamesInSteps() {
      yield 1;
      return new Set();
    },
    zonesInSteps,
    read: () => finish(readInSteps(zonesInSteps())),
    readInSteps: () => readInSteps(zonesInSteps()),
  };
}

function nothing(source: Source, problem: string): ZoneReading {
  return {
    source,
    grouped: undefined,
    columns: [],
    suggestions: [],
    middleC: undefined,
    notes: [],
    problem,
  };
}
