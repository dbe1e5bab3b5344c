import type { MiddleC } from '../../model/keys';
import type { Steps } from '../../model/steps';
import { piecesInStep } from '../../model/steps';
import { Source } from '../../model/text/source';
import { loopWord } from '../../trade/languages/cellWords';
import { octaveShifts } from '../../trade/middleC';
import type { NoteNaming } from '../../trade/readings/keyReading';
import { saysNotUsed } from '../../trade/statements/notUsed';
import type { Statements } from '../../trade/statements/statements';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';
import type { ColumnReading } from '../columns/columnReading';
import { completeKeys } from '../keys/completeKeys';
import { completeRoots } from '../keys/completeRoots';
import { noteHoles } from '../keys/holes';
import { KeylessRows } from '../keys/keylessRows';
import { fillRoots } from '../keys/missingRoots';
import { noteOddRoots } from '../keys/oddRoots';
import { closeOpenEnds } from '../keys/openEnds';
import { settleRootOctaves } from '../keys/rootOctaves';
import { spreadRoots } from '../keys/spreadRoots';
import type { SampleEvidence } from '../sampleEvidence';
import { TableNotes } from '../tableNotes';
import { noteContraryUnits } from '../values/contraryUnits';
import { noteMixedMarks } from '../values/mixedMarks';
import { readGroupNames } from './groups/groupNames';
import { velocitiesFromDynamics } from './layers/dynamicLayers';
import { readNamedDynamics } from './layers/namedDynamics';
import { noteSharedVelocities } from './layers/sharedVelocities';
import { SideZones } from './layers/sideZones';
import { noteSameConditions } from './layers/soundTogether';
import { completeLayers } from './layers/velocityLayers';
import { placeSamples } from './placeSamples';
import { leaveOutRepeated } from './repeatedZones';
import { giveBracketValues } from './said/bracketValues';
import { giveToAll } from './said/forAllZones';
import { giveNamedReleases } from './said/namedReleases';
import { giveToRows } from './said/ofRows';
import { giveColumnSettings, giveSectionSettings } from './said/sectionSettings';
import { shiftKeys } from './said/shiftedKeys';
import { giveStatedSwitches } from './said/statedSwitches';
import { takesInCell } from './takesInCell';
import { ZoneCells } from './zoneCells';
import type { ZoneList } from './zoneList';
import { NameReader } from './zoneNames';
import { leaveOutOffKeyboard } from './zonesOffKeyboard';
import { readZoneValues } from './zoneValues';

/** How the zones of a text are read. */
export interface ZoneOptions extends SampleEvidence {
  middleC: MiddleC | undefined;
  naming: NoteNaming;
  /** All tables of the text. */
  tables: readonly Table[];
  /** What the text around the tables says. */
  statements: Statements;
  /** Scales that a person has set for columns, by position from 0. */
  scales?: ReadonlyMap<number, string> | undefined;
  /** The path to write for a sample, by the name in the table. */
  resolveSample?: ((sample: string) => string | undefined) | undefined;
}

/** One table of a text. */
export interface Table {
  rows: TableRows;
  /** The rows that may be zones. */
  data: number[];
  columns: ColumnReading[];
}

/** Reads the rows of a table that are zones into a list, in steps, and notes those that are not. */
export function* readTableZones(
  zones: ZoneList,
  { rows, columns }: Table,
  { middleC, resolveSample, ...rest }: ZoneOptions,
  notes: TableNotes,
): Steps<void> {
  const first = zones.count;
  const firstNote = notes.count;
  const names = new NameReader(zones.cells, rows, columns, notes);
  const keyShift = middleC ? octaveShifts[middleC] : (rest.statements.otherOctaves?.shift ?? 0);
  for (const { row, why } of rows.others) names.pass(row, why);
  const options = { ...rest, keyShift };
  const parts = partsBySide(columns);
  for (const [at, part] of parts.entries()) {
    const start = zones.count;
    const sides = new SideZones(zones.cells, rows, part, notes, keyShift);
    // Rows that are passed over are noted once.
    const reader = at === 0 ? names : new NameReader(zones.cells, rows, part, silentNotes(zones.cells));
    for (const share of addRows(zones, { rows, columns: part }, reader, sides, notes))
      yield ((at + share * 0.2) * 0.9) / parts.length;
    for (const share of readZoneValues(new ZoneCells(zones, start, part, rows.data, notes, options)))
      yield ((at + 0.2 + share * 0.8) * 0.9) / parts.length;
  }
  leaveOutOffKeyboard(zones, first, columns, notes);
  giveSectionSettings(zones, first, rows.sections, notes);
  giveColumnSettings(zones, first, columns, notes);
  giveBracketValues(zones, first, rest.statements, notes);
  const table = new ZoneCells(zones, first, columns, rows.data, notes, options);
  noteContraryUnits(table);
  noteMixedMarks(table);
  giveToAll(table);
  for (const share of placeSamples(zones, first, resolveSample, names, rest.statements.folder, notes))
    yield 0.9 + share * 0.05;
  notes.sortByRow(firstNote);
  completeLayers(zones, first, columns, notes);
  const fromNames =
    readGroupNames(zones, first, columns, notes, options) ||
    readNamedDynamics(zones, first, columns, rest.statements.dynamics, notes);
  giveStatedSwitches(zones, first, columns, options, notes);
  giveNamedReleases(zones, first, columns, rest.statements.namedReleases, notes);
  // Of several tables it stays open whose rows are meant.
  if (rest.tables.length === 1) giveToRows(zones, first, columns, rest.statements, notes);
  shiftKeys(zones, first, columns, rest.statements.keyShift, middleC !== undefined, notes);
  yield 0.96;
  completeKeys(zones, first, columns, notes, options);
  closeOpenEnds(new ZoneCells(zones, first, columns, rows.data, notes, options));
  spreadRoots(zones, first, columns, notes, options);
  completeRoots(zones, first, columns, notes, options);
  fillRoots(zones, first, columns, notes, options);
  settleRootOctaves(zones, first, notes);
  noteOddRoots(zones, first, notes);
  noteHoles(zones, first, columns, rows, notes);
  yield 0.98;
  shareByDynamics(zones, first, columns, fromNames, rest.statements, notes);
  yield 0.99;
  const takeTurns = rest.statements.turns !== undefined;
  for (const share of leaveOutRepeated(zones, first, rows, columns, takeTurns, notes))
    yield 0.99 + share * 0.01;
  noteSharedVelocities(zones, first, notes);
  noteSameConditions(zones, first, columns, notes);
  yield 1;
}

/** The columns that are read together: all of them, or those of each column of samples that has some of its own. */
function partsBySide(columns: readonly ColumnReading[]): (readonly ColumnReading[])[] {
  if (columns.every(({ owner }) => owner === undefined)) return [columns];
  const sides = columns.filter(({ side }) => side !== undefined);
  return sides.map((one) =>
    columns.filter(({ side, owner, index }) =>
      side ? index === one.index : (owner ?? one.index) === one.index,
    ),
  );
}

/** Notes that nobody reads. */
function silentNotes(cells: TableCells): TableNotes {
  return new TableNotes(new Source('', cells.text));
}

/** Tells rows that are no zones though they may name a sample; to be asked of all rows in their order. */
class PassedRows {
  readonly #keyless: KeylessRows;
  readonly #switches: readonly Switch[];
  readonly #unused: ReadonlySet<number>;

  constructor(
    readonly cells: TableCells,
    rows: TableRows,
    columns: readonly ColumnReading[],
    readonly names: NameReader,
  ) {
    this.#keyless = new KeylessRows(cells, rows, columns);
    this.#unused = unusedRows(cells, rows.data, columns);
    this.#switches = columns
      .filter(({ meaning }) => meaning === 'enabled' || meaning === 'disabled')
      .map((column) => ({ column, isMarked: isMarked(cells, rows.data, column, names) }));
  }

  /** Why a row is passed over, to go on after `it`; `undefined` for one that may be a zone. */
  why(row: number): string | undefined {
    const { cells, names } = this;
    const isSwitchedOff = this.#switches.some((one) => isOff(cells, row, one));
    if (isSwitchedOff && names.sampleCell(row) >= 0) return 'is switched off in the table';
    if (cells.struckRows.has(row)) return 'is struck out';
    if (cells.unusedRows.has(row)) return 'is not used, as the text says';
    if (this.#unused.has(row) && names.sampleCell(row) >= 0) return 'is not used, as its remark says';
    if (this.#keyless.isText(row)) return 'names no audio file and gives no keys, unlike all others';
    const isLeftOut = this.#keyless.isLeftOut(row) && names.sampleCell(row) >= 0;
    return isLeftOut ? 'names a sample, but no keys, and is left out' : undefined;
  }
}

/** Adds the zones of all rows, and passes over those that are switched off or struck out. */
function* addRows(
  zones: ZoneList,
  { rows, columns }: Pick<Table, 'rows'> & { columns: readonly ColumnReading[] },
  names: NameReader,
  sides: SideZones,
  notes: TableNotes,
): Steps<void> {
  const passed = new PassedRows(zones.cells, rows, columns, names);
  let withTakes: number | undefined;
  for (const [at, row] of rows.data.entries()) {
    if (at % piecesInStep === 0) yield at / rows.data.length;
    notes.row = row;
    const why = passed.why(row);
    if (why !== undefined) {
      names.ignore(row, why);
      continue;
    }
    if (sides.areGiven && sides.addZones(zones, row, names)) continue;
    const cell = names.sampleCell(row);
    const takes = takesInCell(zones.cells, cell);
    if (takes.length > 1) addTakes(zones, row, cell, takes, names);
    else if (cell >= 0) names.addZone(zones, row, cell);
    if (takes.length > 1) withTakes ??= cell;
  }
  if (withTakes !== undefined) {
    const span = { start: zones.cells.starts[withTakes], end: zones.cells.ends[withTakes] };
    notes.row = -2;
    notes.add('assumed', span, 'Cells that name several files are read as takes that play in turn.');
  }
}

/** Shares velocities out by dynamics, which a column or the names of samples give. */
function shareByDynamics(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  fromNames: boolean,
  stated: Statements,
  notes: TableNotes,
): void {
  const telling = columns.find(({ meaning, side }) => meaning === 'dynamics' || side?.kind === 'dynamics');
  if (!telling && !fromNames) return;
  const cell = zones.dynamics?.cells.find((one) => one >= 0) ?? -1;
  const span = telling?.headingSpan ?? {
    start: zones.cells.starts[cell] ?? 0,
    end: zones.cells.ends[cell] ?? 0,
  };
  velocitiesFromDynamics(zones, first, span, notes, stated);
}

/** Adds a zone for each of the takes in a cell, which play in turn. */
function addTakes(
  zones: ZoneList,
  row: number,
  cell: number,
  takes: readonly string[],
  names: NameReader,
): void {
  for (const [at, take] of takes.entries()) {
    const zone = names.addZone(zones, row, cell);
    zones.setSample(zone, take);
    zones.column('seq_position').set(zone, cell, at + 1);
  }
}

/** A column that says which rows are used or not, and whether those that are not used are left empty in it. */
interface Switch {
  column: ColumnReading;
  isMarked: boolean;
}

/** Whether a column marks the rows that are used and leaves the others empty. */
function isMarked(
  cells: TableCells,
  data: readonly number[],
  { index, meaning }: ColumnReading,
  names: NameReader,
): boolean {
  if (meaning !== 'enabled') return false;
  let [marked, empty] = [0, 0];
  for (const row of data) {
    const text = cells.value(cells.cell(row, index));
    if (text === '') empty += names.hasSample(row) ? 1 : 0;
    else if (loopWord(text) === 'no_loop') return false;
    else marked++;
  }
  return marked > 0 && empty > 0;
}

/** The rows that a remark calls not used; none where it does so of all rows. */
function unusedRows(
  cells: TableCells,
  data: readonly number[],
  columns: readonly ColumnReading[],
): ReadonlySet<number> {
  const comments = columns.filter(({ meaning }) => meaning === 'comment');
  if (comments.length === 0) return new Set();
  const found = data.filter((row) =>
    comments.some(({ index }) => {
      const text = cells.value(cells.cell(row, index));
      return text !== '' && saysNotUsed(text);
    }),
  );
  return new Set(found.length < data.length ? found : []);
}

/** Whether a row is switched off by a column that says which are used, or which are not. */
function isOff(cells: TableCells, row: number, { column: { index, meaning }, isMarked }: Switch): boolean {
  const text = cells.value(cells.cell(row, index));
  if (text === '') return isMarked;
  const word = loopWord(text);
  if (word === undefined) return false;
  return (word === 'no_loop') === (meaning === 'enabled');
}

/** Adds the sample names of the zones of a table to a set, as {@link ZoneOptions.resolveSample} is given them. */
export function* addSampleNames(
  cells: TableCells,
  { rows, columns }: Table,
  found: Set<string>,
): Steps<void> {
  const notes = silentNotes(cells);
  const names = new NameReader(cells, rows, columns, notes);
  const sides = new SideZones(cells, rows, columns, notes);
  const passed = new PassedRows(cells, rows, columns, names);
  for (const [at, row] of rows.data.entries()) {
    if (at % piecesInStep === 0) yield at / rows.data.length;
    if (passed.why(row) !== undefined) continue;
    const beside = sides.areGiven ? sides.sampleCells(row) : [];
    for (const cell of beside.length > 0 ? beside : [names.sampleCell(row)]) {
      if (cell < 0) continue;
      const takes = takesInCell(cells, cell);
      if (takes.length > 1) for (const take of takes) found.add(take);
      else found.add(names.otherName(cell) ?? cells.value(cell));
    }
  }
}
