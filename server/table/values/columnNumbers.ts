import { wordsOf } from '../../trade/languages/spelling';
import type { Unit } from '../../trade/meaning';
import { readNumber } from '../../trade/readings/numberReading';
import type { Numbers } from '../../trade/scales/numbers';
import { numbersOf, withoutOutlier } from '../../trade/scales/numbers';
import type { TableCells } from '../cells/cells';
import { DistinctTexts } from '../cells/distinctTexts';
import type { ColumnReading } from '../columns/columnReading';

/** A table as far as its columns of values go. */
export interface ValueTable {
  data: readonly number[];
  columns: readonly ColumnReading[];
}

/** All numbers of a column, so that it is judged as a whole. */
export interface ColumnNumbers {
  /** Numbers without a unit, and without one that is far off. Of alike ones two are taken. */
  plain: Numbers;
  /** Numbers with a unit. */
  united: Numbers;
  /** The one unit behind at least half of the numbers, of kHz Hz; `undefined` where fewer have one, or they differ. */
  unit: Unit | undefined;
  /** The one unit behind any of the numbers. */
  anyUnit: Unit | undefined;
  /** Whether a plain number has a `+` before it: then they are differences. */
  isSigned: boolean;
}

/** `read` gives the number of a text that is none in the usual form, NaN where there is none. */
type ReadOther = (text: string) => number;

/**
 * The numbers of a column in its own table and of the columns of the same heading and meaning in the other tables of the
 * text: they were written by one hand.
 */
export function columnNumbers(
  cells: TableCells,
  tables: readonly ValueTable[],
  column: ColumnReading,
  read: ReadOther = () => Number.NaN,
): ColumnNumbers {
  const numbers: number[] = [];
  const united: number[] = [];
  const units = new Set<Unit>();
  let isSigned = false;
  const texts = new DistinctTexts(cells);
  const seen: number[] = [];
  for (const { data, columns } of tables) {
    const alike = columns.find((one) => isAlike(one, column));
    if (!alike) continue;
    for (const row of data) {
      const cell = cells.cell(row, alike.index);
      if (cell < 0 || cells.starts[cell] === cells.ends[cell]) continue;
      // Once and twice is all that has to be told apart.
      const text = texts.numberOf(cell);
      const times = (seen[text] ?? 0) + 1;
      if (times > 2) continue;
      seen[text] = times;
      const number = cells.number(cell);
      if (!Number.isNaN(number)) {
        numbers.push(number);
        continue;
      }
      const written = cells.plain(cell);
      const reading = readNumber(written);
      if (!reading) numbers.push(read(written));
      else if (reading.unit !== undefined) {
        const isKilo = reading.unit === 'kHz';
        united.push(isKilo ? reading.number * 1000 : reading.number);
        units.add(isKilo ? 'Hz' : reading.unit);
      } else {
        numbers.push(reading.number);
        isSigned ||= written.trimStart().startsWith('+');
      }
    }
  }
  const [unit] = units;
  const anyUnit = units.size === 1 ? unit : undefined;
  return {
    plain: withoutOutlier(numbersOf(numbers)),
    united: numbersOf(united),
    unit: united.length >= numbers.length ? anyUnit : undefined,
    anyUnit,
    isSigned,
  };
}

function isAlike(one: ColumnReading, column: ColumnReading): boolean {
  if (one === column) return true;
  return one.meaning === column.meaning && wordsOf(one.heading).join() === wordsOf(column.heading).join();
}
