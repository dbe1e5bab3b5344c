import type { LoopReading } from './loopReading';
import { readLoop } from './loopReading';
import type { ColumnReading } from './meaning';
import type { NumberReading } from './numberValues';
import { remembered } from './remembered';
import type { ZoneValue } from './zone';
import type { ZoneReader } from './zoneReader';

/** Reads loops: start and end, or start and length, and a column that switches them or names their mode. */
export class LoopValues {
  readonly #switch: ColumnReading | undefined;
  readonly #start: ColumnReading | undefined;
  readonly #end: ColumnReading | undefined;
  readonly #length: ColumnReading | undefined;
  readonly #reading = remembered((text) => readLoop(text) ?? null);

  constructor(readonly reader: ZoneReader) {
    this.#switch = reader.column('loop');
    this.#start = reader.column('loop_start');
    this.#end = reader.column('loop_end');
    this.#length = reader.column('loop_length');
  }

  read(row: number, values: ZoneValue[]): void {
    const switchCell = this.reader.cellOf(row, this.#switch);
    const said = switchCell < 0 ? undefined : this.#said(switchCell, this.#switch as ColumnReading);
    const startCell = this.reader.cellOf(row, this.#start);
    const endCell = this.reader.cellOf(row, this.#end);
    if (said?.mode === 'no_loop' || said?.mode === 'one_shot') {
      values.push({ name: 'loop_mode', cell: switchCell, text: said.mode });
      return;
    }
    const start = this.#point(said?.start, switchCell) ?? this.#frame(startCell, this.#start);
    // A point that cannot be counted in frames has its note; the other one is then of no use.
    const unknown = said?.start !== undefined && start === undefined;
    const end = unknown
      ? undefined
      : (this.#point(said?.end, switchCell) ??
        endOf(start, this.#point(said?.length, switchCell)) ??
        this.#frame(endCell, this.#end) ??
        endOf(start, this.#frame(this.reader.cellOf(row, this.#length), this.#length)));
    const mode = said?.mode ?? 'loop_continuous';
    const endPlace = endCell >= 0 ? endCell : this.reader.cellOf(row, this.#length);
    const startPlace = startCell >= 0 ? startCell : switchCell;
    if (start !== undefined && end !== undefined && end > start) {
      const modeCell = switchCell >= 0 ? switchCell : startPlace;
      values.push({ name: 'loop_mode', cell: modeCell, text: mode });
      values.push({ name: 'loop_start', cell: startPlace, text: String(start) });
      values.push({ name: 'loop_end', cell: endPlace >= 0 ? endPlace : switchCell, text: String(end) });
    } else {
      if (said?.mode) values.push({ name: 'loop_mode', cell: switchCell, text: mode });
      if ((start ?? 0) > 0 || (end ?? 0) > 0) this.#dropPoints(start, end, startPlace, endPlace);
    }
    if (said?.type) values.push({ name: 'loop_type', cell: switchCell, text: said.type });
  }

  #said(cell: number, column: ColumnReading): LoopReading | undefined {
    const reading = this.#reading(this.reader.cells.plain(cell));
    if (!reading) this.reader.drop(cell, column, 'is no loop mode');
    return reading ?? undefined;
  }

  #frame(cell: number, column: ColumnReading | undefined): number | undefined {
    return cell < 0 || !column ? undefined : this.reader.frameIn(cell, column);
  }

  #point(reading: NumberReading | undefined, cell: number): number | undefined {
    return reading && this.reader.framesOf(reading, cell, this.#switch as ColumnReading);
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
    if (cell >= 0 && column) this.reader.drop(cell, column, why);
  }
}

/** Frames count from 0 and the last one belongs to the loop. */
function endOf(start: number | undefined, length: number | undefined): number | undefined {
  return start === undefined || length === undefined || length === 0 ? undefined : start + length - 1;
}
