import type { Steps } from '../../model/steps';
import { rounded } from '../../trade/decimal';
import { isLengthWord } from '../../trade/headings/headingStems';
import { wordsOf } from '../../trade/languages/spelling';
import { meansFileEnd } from '../../trade/readings/fileEnds';
import type { LoopReading, SecondPoint } from '../../trade/readings/loopReading';
import { readLoop } from '../../trade/readings/loopReading';
import type { NumberReading } from '../../trade/readings/numberReading';
import { readNumber } from '../../trade/readings/numberReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { ValueName, ValueWord } from '../zones/zoneList';
import { valueWords } from '../zones/zoneList';
import { LoopJudge } from './loopJudge';
import type { Positions } from './positions';

/** Zones after which a step ends: the points of loops take longer than other values. */
const zonesInStep = 30_000;

const openDot = '○';
const filledDots: ReadonlySet<string> = new Set(['●', '◉', '⬤']);

/** Reads loops: start and end, or start and length, and a column that switches them or names their mode. */
export class LoopColumns {
  readonly #switch: ColumnReading | undefined;
  readonly #start: ColumnReading | undefined;
  readonly #end: ColumnReading | undefined;
  readonly #length: ColumnReading | undefined;
  readonly #readings: CellReadings<LoopReading | undefined>;
  readonly #judge: LoopJudge;
  #isEndTold = false;

  constructor(
    readonly table: ZoneCells,
    readonly positions: Positions,
  ) {
    this.#switch = table.column('loop');
    this.#start = table.column('loop_start');
    this.#end = table.column('loop_end');
    this.#length = table.column('loop_length');
    this.#judge = new LoopJudge(table, positions);
    const dotted = this.#hasFilledDots();
    this.#readings = new CellReadings(table.cells, (text) =>
      readLoop(dotted && text === openDot ? 'off' : text, (number) => this.#pointIn(number)),
    );
  }

  /** A number of a cell with two, as its column writes them. */
  #pointIn(text: string): NumberReading | undefined {
    const column = this.#switch;
    const reading = readNumber(text, 'frames');
    return reading && column ? this.positions.numberIn(text, column) : reading;
  }

  /** Beside filled dots an open one says no; where all dots are open, it says yes. */
  #hasFilledDots(): boolean {
    const { cells, data } = this.table;
    return data.some((row) => {
      const cell = this.#switch ? cells.cell(row, this.#switch.index) : -1;
      return cell >= 0 && cells.codes[cells.starts[cell]] > 127 && filledDots.has(cells.value(cell));
    });
  }

  /** Reads the loops of all zones of the table; the steps tell the share of all values. */
  *read(): Steps<void> {
    if (!this.#switch && !this.#start && !this.#end && !this.#length) return;
    const { table } = this;
    const { zones, notes } = table;
    for (let zone = table.first; zone < table.end; zone++) {
      if (zone % zonesInStep === 0) yield 0.7;
      notes.row = zones.rows[zone];
      this.#readZone(zone, zones.rows[zone]);
    }
    yield 0.75;
    this.#judge.settle(this.#end ?? this.#switch ?? this.#start);
    yield 0.8;
    for (let zone = table.first; zone < table.end; zone++) {
      notes.row = zones.rows[zone];
      this.#writePoints(zone, zones.rows[zone]);
    }
  }

  /** Reads what a zone says of its loop; its points are kept until all are known. */
  #readZone(zone: number, row: number): void {
    const { table } = this;
    const switchCell = table.cellOf(row, this.#switch);
    const said = switchCell < 0 ? undefined : this.#said(switchCell, this.#switch as ColumnReading);
    if (said?.mode === 'no_loop' || said?.mode === 'one_shot') {
      this.#setWord('loop_mode', zone, switchCell, said.mode);
      return;
    }
    if (said?.mode) this.#setWord('loop_mode', zone, switchCell, said.mode);
    if (said?.type) this.#setWord('loop_type', zone, switchCell, said.type);
    if (said?.start) this.#keepPair(zone, switchCell, said);
    else this.#keepColumns(zone, row);
  }

  /** Keeps the points that stand in one cell. */
  #keepPair(zone: number, cell: number, { start, second, secondIs }: LoopReading): void {
    const column = this.#switch as ColumnReading;
    const at = (reading: NumberReading | undefined) =>
      reading && this.positions.framesOf(reading, { zone, cell, column, isEnd: false });
    const from = at(start);
    // A point that cannot be counted in frames has its note; the other one is then of no use.
    if (from === undefined) return;
    if (!second) {
      this.#keepToEnd(zone, from, cell);
      return;
    }
    const kind: SecondPoint = secondIs === 'open' && speaksOfLength(column) ? 'length' : secondIs;
    const to = at(second);
    const unit = second?.unit ?? this.positions.styleOf(column).unit;
    if (to !== undefined) this.#judge.keep(zone, from, to, kind, unit !== undefined && unit !== 'frames');
  }

  /** Keeps the points that stand in columns of their own. */
  #keepColumns(zone: number, row: number): void {
    const { table } = this;
    const startCell = table.cellOf(row, this.#start);
    const endCell = table.cellOf(row, this.#end);
    const lengthCell = table.cellOf(row, this.#length);
    const frame = (cell: number, column: ColumnReading | undefined) =>
      cell < 0 || !column ? undefined : this.positions.frameIn({ zone, cell, column, isEnd: false });
    const start = frame(startCell, this.#start);
    if (start !== undefined && endCell >= 0 && this.#isFileEnd(endCell, start)) {
      this.#keepToEnd(zone, start, startCell);
      return;
    }
    const end = frame(endCell, this.#end);
    const length = end === undefined ? frame(lengthCell, this.#length) : undefined;
    const second = end ?? length;
    const column = end === undefined ? this.#length : this.#end;
    const unit = column && this.positions.styleOf(column).unit;
    if (start !== undefined && second !== undefined)
      this.#judge.keep(zone, start, second, this.#secondIn(column), unit !== 'frames');
    else if (start !== undefined && endCell < 0 && lengthCell < 0 && this.#goesToEnd)
      this.#keepToEnd(zone, start, startCell);
    else if ((start ?? 0) > 0 || (second ?? 0) > 0) this.#dropPoints(zone, start, second);
  }

  /** Whether the text says that loops end with their files; noted once. */
  get #goesToEnd(): boolean {
    const said = this.table.options.statements.loopsToEnd;
    if (said === undefined) return false;
    if (!this.#isEndTold && this.#start) {
      const message = `Loops of ${columnName(this.#start)} end with the last frames of their files, as "${shortened(said)}" says.`;
      this.table.noteColumn(this.#start, message);
    }
    this.#isEndTold = true;
    return true;
  }

  /** Keeps a loop up to the last frame of the file; its start alone where it is not known how long the file is. */
  #keepToEnd(zone: number, start: number, cell: number): void {
    const frames = this.positions.framesIn(zone);
    if (frames !== undefined) {
      this.#judge.keep(zone, start, frames - start, 'length', false);
      return;
    }
    this.#setWord('loop_mode', zone, cell, 'loop_continuous');
    this.#set('loop_start', zone, cell, rounded(start));
    const { notes, cells } = this.table;
    const span = { start: cells.starts[cell], end: cells.ends[cell] };
    const message =
      'The file is not there to tell where its last frame is, so no loop end is written: a player ends the loop with the sample.';
    notes.add('assumed', span, message, 'loops to end');
  }

  /** Scripts write -1 for the last frame; beside a start at 0 it may say that there is no loop. */
  #isFileEnd(cell: number, start: number): boolean {
    const { cells } = this.table;
    if (cells.digits(cell, 15) >= 0) return false;
    const text = cells.plain(cell);
    return meansFileEnd(text) || (start > 0 && text.trim() === '-1');
  }

  #secondIn(column: ColumnReading | undefined): SecondPoint {
    if (column === this.#length) return 'length';
    return column?.isEndOrLength ? 'open' : 'end';
  }

  #writePoints(zone: number, row: number): void {
    const points = this.#judge.pointsOf(zone);
    if (!points) return;
    const { start, end } = points;
    const startPlace = this.#placeIn(row, [this.#start, this.#switch]);
    const endPlace = this.#placeIn(row, [this.#end, this.#length, this.#switch]) ?? startPlace;
    if (!startPlace || !endPlace) return;
    if (end <= start) {
      if (start > 0) this.#dropPoints(zone, start, end);
      return;
    }
    const modes = this.table.zones.column('loop_mode');
    if (modes.cells[zone] < 0) this.#setWord('loop_mode', zone, startPlace.cell, 'loop_continuous');
    this.#set('loop_start', zone, startPlace.cell, rounded(start));
    this.#set('loop_end', zone, endPlace.cell, rounded(end));
    this.positions.noteBeyond(zone, endPlace.cell, endPlace.column, end);
  }

  /** The cell of the first of some columns that says something in a row. */
  #placeIn(
    row: number,
    columns: readonly (ColumnReading | undefined)[],
  ): { cell: number; column: ColumnReading } | undefined {
    for (const column of columns) {
      const cell = this.table.cellOf(row, column);
      if (column && cell >= 0) return { cell, column };
    }
    return undefined;
  }

  #setWord(name: ValueName, zone: number, cell: number, word: ValueWord): void {
    this.#set(name, zone, cell, valueWords.indexOf(word));
  }

  #set(name: ValueName, zone: number, cell: number, number: number): void {
    this.table.zones.column(name).set(zone, cell, number);
  }

  #said(cell: number, column: ColumnReading): LoopReading | undefined {
    const reading = this.table.reading(this.#readings, cell, column);
    if (!reading) this.table.drop(cell, column, 'is not a loop mode');
    return reading;
  }

  /** Leaves out points that make no loop, and the mode that needs them: a player would loop the whole file. */
  #dropPoints(zone: number, start: number | undefined, end: number | undefined): void {
    const why =
      end === undefined
        ? 'is a loop start without a loop end'
        : start === undefined
          ? 'is a loop end without a loop start'
          : 'makes no loop: its start does not lie before its end';
    const row = this.table.zones.rows[zone];
    const startPlace = this.#placeIn(row, [this.#start, this.#switch]);
    const endPlace = this.#placeIn(row, [this.#end, this.#length, this.#switch]);
    const place = end === undefined ? startPlace : endPlace;
    const mode = this.table.zones.values('loop_mode');
    const hadMode = (mode?.cells[zone] ?? -1) >= 0;
    if (mode) mode.cells[zone] = -1;
    const type = this.table.zones.values('loop_type');
    if (type) type.cells[zone] = -1;
    const left = hadMode ? 'it and the loop mode of its row are' : 'it is';
    if (place) this.table.drop(place.cell, place.column, why, left);
  }
}

/** Whether the heading of a column of two numbers says that one of them is a length. */
function speaksOfLength({ heading }: ColumnReading): boolean {
  return wordsOf(heading).some((word) => isLengthWord(word));
}
