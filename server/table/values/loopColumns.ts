import { rounded } from '../../trade/decimal';
import type { LoopReading } from '../../trade/loopReading';
import { readLoop } from '../../trade/loopReading';
import type { NumberReading } from '../../trade/numberReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { ValueName, ValueWord } from '../zones/zoneList';
import { valueWords } from '../zones/zoneList';

const openDot = '○';
const filledDots: ReadonlySet<string> = new Set(['●', '◉', '⬤']);

/** Reads loops: start and end, or start and length, and a column that switches them or names their mode. */
export class LoopColumns {
  readonly #switch: ColumnReading | undefined;
  readonly #start: ColumnReading | undefined;
  readonly #end: ColumnReading | undefined;
  readonly #length: ColumnReading | undefined;
  readonly #readings: CellReadings<LoopReading | undefined>;

  constructor(readonly table: ZoneCells) {
    this.#switch = table.column('loop');
    this.#start = table.column('loop_start');
    this.#end = table.column('loop_end');
    this.#length = table.column('loop_length');
    const dotted = this.#hasFilledDots();
    this.#readings = new CellReadings(table.cells, (text) =>
      readLoop(dotted && text === openDot ? 'off' : text),
    );
  }

  /** Beside filled dots an open one says no; where all dots are open, it says yes. */
  #hasFilledDots(): boolean {
    const { cells, data } = this.table;
    return data.some((row) => {
      const cell = this.#switch ? cells.cell(row, this.#switch.index) : -1;
      return cell >= 0 && cells.codes[cells.starts[cell]] > 127 && filledDots.has(cells.value(cell));
    });
  }

  /** Reads the loops of all zones of the table. */
  read(): void {
    if (!this.#switch && !this.#start && !this.#end && !this.#length) return;
    const { table } = this;
    const { zones, notes } = table;
    for (let zone = table.first; zone < table.end; zone++) {
      const row = zones.rows[zone];
      notes.row = row;
      this.#readZone(zone, row);
    }
  }

  #readZone(zone: number, row: number): void {
    const { table } = this;
    const switchCell = table.cellOf(row, this.#switch);
    const said = switchCell < 0 ? undefined : this.#said(switchCell, this.#switch as ColumnReading);
    const startCell = table.cellOf(row, this.#start);
    const endCell = table.cellOf(row, this.#end);
    if (said?.mode === 'no_loop' || said?.mode === 'one_shot') {
      this.#setWord('loop_mode', zone, switchCell, said.mode);
      return;
    }
    const start = this.#point(said?.start, zone, switchCell) ?? this.#frame(zone, startCell, this.#start);
    // A point that cannot be counted in frames has its note; the other one is then of no use.
    const unknown = said?.start !== undefined && start === undefined;
    const lengthCell = table.cellOf(row, this.#length);
    const end = unknown
      ? undefined
      : (this.#point(said?.end, zone, switchCell) ??
        endOf(start, this.#point(said?.length, zone, switchCell)) ??
        this.#frame(zone, endCell, this.#end) ??
        endOf(start, this.#frame(zone, lengthCell, this.#length)));
    const mode = said?.mode ?? 'loop_continuous';
    const endPlace = endCell >= 0 ? endCell : lengthCell;
    const startPlace = startCell >= 0 ? startCell : switchCell;
    if (start !== undefined && end !== undefined && end > start) {
      this.#setWord('loop_mode', zone, switchCell >= 0 ? switchCell : startPlace, mode);
      this.#set('loop_start', zone, startPlace, rounded(start));
      this.#set('loop_end', zone, endPlace >= 0 ? endPlace : switchCell, rounded(end));
    } else {
      if (said?.mode) this.#setWord('loop_mode', zone, switchCell, mode);
      if ((start ?? 0) > 0 || (end ?? 0) > 0) this.#dropPoints(start, end, startPlace, endPlace);
    }
    if (said?.type) this.#setWord('loop_type', zone, switchCell, said.type);
  }

  #setWord(name: ValueName, zone: number, cell: number, word: ValueWord): void {
    this.#set(name, zone, cell, valueWords.indexOf(word));
  }

  #set(name: ValueName, zone: number, cell: number, number: number): void {
    this.table.zones.column(name).set(zone, cell, number);
  }

  #said(cell: number, column: ColumnReading): LoopReading | undefined {
    const reading = this.#readings.of(cell);
    if (!reading) this.table.drop(cell, column, 'is no loop mode');
    return reading;
  }

  #frame(zone: number, cell: number, column: ColumnReading | undefined): number | undefined {
    return cell < 0 || !column ? undefined : this.table.frameIn(zone, cell, column);
  }

  #point(reading: NumberReading | undefined, zone: number, cell: number): number | undefined {
    return reading && this.table.framesOf(reading, zone, cell, this.#switch as ColumnReading);
  }

  #dropPoints(start: number | undefined, end: number | undefined, startCell: number, endCell: number): void {
    const why =
      end === undefined
        ? 'is a loop start without a loop end'
        : start === undefined
          ? 'is a loop end without a loop start'
          : 'makes no loop: its start does not lie before its end';
    const atEnd = startCell < 0 || (end !== undefined && endCell >= 0);
    const cell = atEnd ? endCell : startCell;
    const column = (atEnd ? (this.#end ?? this.#length) : (this.#start ?? this.#switch)) ?? this.#switch;
    if (cell >= 0 && column) this.table.drop(cell, column, why);
  }
}

/** Frames count from 0 and the last one belongs to the loop. */
function endOf(start: number | undefined, length: number | undefined): number | undefined {
  return start === undefined || length === undefined || length === 0 ? undefined : start + length - 1;
}
