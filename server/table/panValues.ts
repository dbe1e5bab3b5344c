import { panBounds } from './bounds';
import type { ColumnReading } from './meaning';
import { columnName } from './meaning';
import { readPan } from './panReading';
import { remembered } from './remembered';
import type { ZoneValue } from './zone';
import { decimal } from './zone';
import type { ZoneReader } from './zoneReader';

/** How a column counts pan: −100..100, −1..1, or 0..127 with 64 in the middle as in MIDI controller 10. */
type Scale = 'hundred' | 'one' | 'midi';

/** Reads pan positions, the whole column in one scale. */
export class PanValues {
  readonly #column: ColumnReading | undefined;
  readonly #scale: Scale = 'hundred';
  readonly #pan = remembered((text) => readPan(text) ?? Number.NaN);

  constructor(
    readonly reader: ZoneReader,
    data: readonly number[],
  ) {
    this.#column = reader.column('pan');
    if (!this.#column) return;
    this.#scale = scaleOf(reader, this.#column, data, this.#pan);
    if (this.#scale === 'hundred') return;
    const cell = this.#firstCell(data);
    const said =
      this.#scale === 'one'
        ? 'all its values lie within −1..1, which is taken for left to right'
        : 'its values reach beyond 100 and none is negative, so 0..127 with 64 in the middle is taken for left to right';
    const span = { start: reader.cells.starts[cell] ?? 0, end: reader.cells.ends[cell] ?? 0 };
    reader.notes.add('assumed', span, `In ${columnName(this.#column)} ${said}.`);
  }

  read(row: number, values: ZoneValue[]): void {
    const column = this.#column;
    const cell = this.reader.cellOf(row, column);
    if (!column || cell < 0) return;
    const text = this.reader.cells.plain(cell);
    let pan = this.#pan(text);
    if (!Number.isFinite(pan)) {
      this.reader.drop(cell, column, 'is no pan position');
      return;
    }
    if (this.#scale === 'one') pan = Math.round(pan * 1e6) / 1e4;
    else if (this.#scale === 'midi') pan = Math.round(((pan - 64) / (pan < 64 ? 64 : 63)) * 10_000) / 100;
    const written = Math.min(panBounds.most, Math.max(panBounds.least, pan));
    if (written !== pan)
      this.reader.approximate(cell, column, `is beyond −100..100; it is written as ${written}`);
    if (written !== 0) values.push({ name: 'pan', cell, text: decimal(written) });
  }

  #firstCell(data: readonly number[]): number {
    for (const row of data) {
      const cell = this.reader.cellOf(row, this.#column);
      if (cell >= 0) return cell;
    }
    return -1;
  }
}

function scaleOf(
  reader: ZoneReader,
  column: ColumnReading,
  data: readonly number[],
  panOf: (text: string) => number,
): Scale {
  let fraction = false;
  let least = 0;
  let greatest = 0;
  for (const row of data) {
    const cell = reader.cellOf(row, column);
    if (cell < 0) continue;
    const text = reader.cells.plain(cell);
    const number = panOf(text);
    if (Number.isNaN(number)) continue;
    if (!Number.isInteger(number)) fraction = true;
    least = Math.min(least, number);
    greatest = Math.max(greatest, number);
  }
  if (fraction && least >= -1 && greatest <= 1) return 'one';
  return least >= 0 && greatest > 100 && greatest <= 127 ? 'midi' : 'hundred';
}
