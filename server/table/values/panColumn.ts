import { panBounds } from '../../trade/bounds';
import { rounded } from '../../trade/decimal';
import { scaleIn } from '../../trade/headings/statedScale';
import { hasSide, readPan } from '../../trade/readings/panReading';
import type { PanScale } from '../../trade/scales/panScale';
import { panOf, panScale, sidedPanScale } from '../../trade/scales/panScale';
import type { StatedScale } from '../../trade/statements/statedScales';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, statedReason } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const hundred: PanScale = [-100, 0, 100];

/** What is found of the scale of a column. */
interface Found {
  scale: PanScale;
  others: readonly PanScale[];
  /** Why a person has to be told; `undefined` where it is clear. */
  reason: string | undefined;
  /** Why it was taken, in a sentence. */
  because: string;
}

/** Reads pan positions, the whole column in one scale. */
export class PanColumn {
  readonly #column: ColumnReading | undefined;
  readonly #positions: CellReadings<number>;

  constructor(readonly table: ZoneCells) {
    this.#column = table.column('pan');
    this.#positions = new CellReadings(table.cells, (text) => readPan(text) ?? Number.NaN);
  }

  /** Reads the pan positions of all zones of the table. */
  read(): void {
    const column = this.#column;
    if (!column) return;
    const { scale, reason, because, others } = this.#scaleOf(column);
    const names = new Map([scale, ...others].map((one) => [nameOf(one), labelOf(one)]));
    column.scale = {
      taken: nameOf(scale),
      reason: because,
      options: Array.from(names, ([id, label]) => ({ id, label })),
    };
    if (reason)
      this.table.noteColumn(
        column,
        `In ${columnName(column)} ${reason}, so ${scale[0]} is read as left, ${scale[1]} for the centre and ${scale[2]} for right.`,
      );
    const isPlain = scale[0] === -100 && scale[1] === 0 && scale[2] === 100;
    const pans = this.table.zones.column('pan');
    this.table.each(column, (zone, cell) => {
      const position = this.#position(cell, column);
      if (!Number.isFinite(position)) {
        this.table.drop(cell, column, 'is not a pan position');
        return;
      }
      const pan = isPlain || this.#isWord(cell) ? position : panOf(position, scale);
      const written = Math.min(panBounds.most, Math.max(panBounds.least, pan));
      if (written !== pan)
        this.table.approximate(cell, column, `is beyond −100..100; it is written as ${written}`);
      if (written !== 0) pans.set(zone, cell, rounded(written));
    });
  }

  #position(cell: number, column: ColumnReading): number {
    const number = this.table.cells.number(cell);
    return Number.isNaN(number)
      ? this.table.reading(this.#positions, cell, column, (one) => !Number.isNaN(one))
      : number;
  }

  /** Whether a cell names a side and no number. */
  #isWord(cell: number): boolean {
    return Number.isNaN(this.table.cells.number(cell)) && !/\d/.test(this.table.cells.plain(cell));
  }

  #scaleOf(column: ColumnReading): Found {
    const { table } = this;
    const chosen = table.options.scales?.get(column.index)?.split(' ').map(Number);
    const stated = scaleIn(column.heading);
    const around = table.stated(column);
    let sided = false;
    let percentSided = false;
    let greatest = 0;
    const { plain, united, unit } = table.numbersIn(column, (text) => {
      const pan = readPan(text) ?? Number.NaN;
      if (Number.isNaN(pan) || !/\d/.test(text)) return Number.NaN;
      sided ||= hasSide(text);
      percentSided ||= text.includes('%');
      greatest = Math.max(greatest, Math.abs(pan));
      return pan;
    });
    const inPercent = percentSided || [column.unit, unit, around?.unit].includes('percent');
    const numbers = plain.numeric > 0 ? plain : united;
    const found = sided ? sidedScale(greatest, inPercent) : panScale(numbers, inPercent);
    const others = [found.scale, ...found.others];
    const [left, centre, right] = chosen ?? [];
    if (left !== undefined && centre !== undefined && right !== undefined)
      return { scale: [left, centre, right], others, reason: undefined, because: '' };
    const said = stated ?? knownEnds(around);
    if (said) {
      const scale = statedScale(said);
      const isPlain = scale[0] === -100 && scale[2] === 100;
      const where = stated ? 'the heading' : 'the text';
      const reason = isPlain ? undefined : `${where} gives the values ${said.low}..${said.high}`;
      return { scale, others, reason, because: statedReason };
    }
    const isCentred = numbers.numeric === 0 || (numbers.least === 0 && numbers.greatest === 0);
    if (isCentred)
      return { scale: hundred, others: [], reason: undefined, because: 'All of them stand in the middle.' };
    const reason = found.isOpen ? lowerFirst(found.reason) : undefined;
    return { scale: found.scale, others: found.others, reason, because: found.reason };
  }
}

function sidedScale(greatest: number, inPercent: boolean) {
  const { scale, others, ...rest } = sidedPanScale(greatest, inPercent);
  const both = (end: number): PanScale => [0 - end, 0, end];
  return { ...rest, scale: both(scale), others: others.map(both) };
}

/** The value in the middle is 0 where the ends lie on both sides of it, and 64 of 0..127. */
function statedScale({ low, high }: { low: number; high: number }): PanScale {
  if (low === 0 && high === 127) return [0, 64, 127];
  return [low, low < 0 && high > 0 ? 0 : (low + high) / 2, high];
}

/** The ends that the text around the table gives, where they are the usual ends of a scale. */
function knownEnds(stated: StatedScale | undefined): { low: number; high: number } | undefined {
  const { low, high } = stated ?? {};
  if (low === undefined || high === undefined) return undefined;
  const isEven = low === 0 || low === 0 - high || low === -1 - high;
  return isEven && [1, 50, 63, 64, 100, 127, 128].includes(high) ? { low, high } : undefined;
}

function nameOf(scale: PanScale): string {
  return scale.join(' ');
}

/** The numbers for left, middle and right in words for people. */
function labelOf([left, centre, right]: PanScale): string {
  return `${left} left, ${centre} middle, ${right} right`;
}

function lowerFirst(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, '');
}
