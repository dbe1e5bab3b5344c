import { volumeBounds } from '../../trade/bounds';
import { rounded } from '../../trade/decimal';
import { readLevel } from '../../trade/levelReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

/** Reads levels and attenuations. */
export class LevelColumns {
  constructor(readonly table: ZoneCells) {}

  /** Reads the levels of all zones of the table. */
  read(): void {
    this.#readVolume();
    this.#readAttenuation();
  }

  #readVolume(): void {
    const column = this.table.column('volume');
    if (!column) return;
    const levels = this.#levelsIn(column, false);
    this.table.each(column, levels);
  }

  #readAttenuation(): void {
    const column = this.table.column('attenuation');
    const volume = this.table.column('volume');
    if (!column) return;
    const levels = this.#levelsIn(column, true);
    this.table.each(column, (zone, cell) => {
      if (this.table.cellOf(this.table.zones.rows[zone], volume) >= 0)
        this.table.drop(cell, column, 'stands beside a level');
      else levels(zone, cell);
    });
  }

  #levelsIn(column: ColumnReading, attenuation: boolean): (zone: number, cell: number) => void {
    const volumes = this.table.zones.column('volume');
    const inDecibels = !attenuation && (column.unit === undefined || column.unit === 'dB');
    const levels = new CellReadings(this.table.cells, (text) => readLevel(text, column.unit, attenuation));
    return (zone, cell) => {
      const number = inDecibels ? this.table.cells.number(cell) : Number.NaN;
      if (number >= volumeBounds.least && number <= volumeBounds.most) {
        if (number !== 0) volumes.set(zone, cell, rounded(number));
        return;
      }
      const level = levels.of(cell);
      if ('fault' in level) this.table.drop(cell, column, level.fault);
      else {
        if (level.how) this.table.approximate(cell, column, level.how);
        if (level.decibels !== 0) volumes.set(zone, cell, rounded(level.decibels));
      }
    };
  }
}
