import { transposeBounds, tuneBounds } from '../../trade/bounds';
import { rounded } from '../../trade/decimal';
import type { Unit } from '../../trade/meaning';
import { readNumber } from '../../trade/numberReading';
import type { ColumnReading } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

interface Amount {
  cell: number;
  column: ColumnReading;
  cents: number;
}

/** Reads fine and coarse tuning; what one parameter cannot hold is shared between `transpose` and `tune`. */
export class TuningColumns {
  readonly #fine: ColumnReading | undefined;
  readonly #coarse: ColumnReading | undefined;

  constructor(readonly table: ZoneCells) {
    this.#fine = table.column('tune');
    this.#coarse = table.column('transpose');
  }

  /** Reads the tuning of all zones of the table. */
  read(): void {
    if (!this.#fine && !this.#coarse) return;
    const { table } = this;
    const { zones, cells, notes } = table;
    const tunes = zones.column('tune');
    const inCents = this.#fine?.unit === undefined || this.#fine.unit === 'cents';
    for (let zone = table.first; zone < table.end; zone++) {
      const row = zones.rows[zone];
      notes.row = row;
      const fine = table.cellOf(row, this.#fine);
      const coarse = table.cellOf(row, this.#coarse);
      const cents = coarse < 0 && inCents ? cells.number(fine) : Number.NaN;
      if (cents >= tuneBounds.least && cents <= tuneBounds.most) {
        if (rounded(cents) !== 0) tunes.set(zone, fine, rounded(cents));
      } else
        this.#share(
          zone,
          this.#amount(fine, this.#fine, 'cents'),
          this.#amount(coarse, this.#coarse, 'semitones'),
        );
    }
  }

  #share(zone: number, fine: Amount | undefined, coarse: Amount | undefined): void {
    const { zones } = this.table;
    const carrier = fine ?? coarse;
    if (!carrier) return;
    let semitones = (coarse?.cents ?? 0) / 100;
    let cents = fine?.cents ?? 0;
    if (!Number.isInteger(semitones) || cents < tuneBounds.least || cents > tuneBounds.most) {
      const total = Math.round((semitones * 100 + cents) * 1e6) / 1e6;
      semitones = Math.trunc(total / 100);
      cents = total - semitones * 100;
    }
    const written = Math.min(transposeBounds.most, Math.max(transposeBounds.least, semitones));
    if (written !== semitones) {
      const { cell, column } = coarse ?? carrier;
      this.table.approximate(
        cell,
        column,
        `is more than ${transposeBounds.most} semitones, the most that can be written`,
      );
    }
    if (written !== 0) zones.column('transpose').set(zone, (coarse ?? carrier).cell, rounded(written));
    if (rounded(cents) !== 0) zones.column('tune').set(zone, (fine ?? carrier).cell, rounded(cents));
  }

  #amount(cell: number, column: ColumnReading | undefined, usual: Unit): Amount | undefined {
    if (!column || cell < 0) return undefined;
    const reading = readNumber(this.table.cells.plain(cell));
    const unit = reading?.unit ?? column.unit ?? usual;
    if (!reading || !Number.isFinite(reading.number) || (unit !== 'cents' && unit !== 'semitones')) {
      this.table.drop(cell, column, `is no number of ${usual}`);
      return undefined;
    }
    return {
      cell,
      column,
      cents: unit === 'cents' ? reading.number : Math.round(reading.number * 1e8) / 1e6,
    };
  }
}
