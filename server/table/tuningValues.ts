import { transposeBounds, tuneBounds } from './bounds';
import type { ColumnReading, Unit } from './meaning';
import { readNumber } from './numberValues';
import type { ZoneValue } from './zone';
import { decimal } from './zone';
import type { ZoneReader } from './zoneReader';

interface Amount {
  cell: number;
  column: ColumnReading;
  cents: number;
}

/** Reads fine and coarse tuning; what one parameter cannot hold is shared between `transpose` and `tune`. */
export class TuningValues {
  readonly #fine: ColumnReading | undefined;
  readonly #coarse: ColumnReading | undefined;

  constructor(readonly reader: ZoneReader) {
    this.#fine = reader.column('tune');
    this.#coarse = reader.column('transpose');
  }

  read(row: number, values: ZoneValue[]): void {
    const fine = this.#amount(row, this.#fine, 'cents');
    const coarse = this.#amount(row, this.#coarse, 'semitones');
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
      this.reader.approximate(
        cell,
        column,
        `is more than ${transposeBounds.most} semitones, the most that can be written`,
      );
    }
    if (written !== 0)
      values.push({ name: 'transpose', cell: (coarse ?? carrier).cell, text: decimal(written) });
    if (decimal(cents) !== '0')
      values.push({ name: 'tune', cell: (fine ?? carrier).cell, text: decimal(cents) });
  }

  #amount(row: number, column: ColumnReading | undefined, usual: Unit): Amount | undefined {
    const cell = this.reader.cellOf(row, column);
    if (!column || cell < 0) return undefined;
    const reading = readNumber(this.reader.cells.plain(cell));
    const unit = reading?.unit ?? column.unit ?? usual;
    if (!reading || !Number.isFinite(reading.number) || (unit !== 'cents' && unit !== 'semitones')) {
      this.reader.drop(cell, column, `is no number of ${usual}`);
      return undefined;
    }
    return {
      cell,
      column,
      cents: unit === 'cents' ? reading.number : Math.round(reading.number * 1e8) / 1e6,
    };
  }
}
