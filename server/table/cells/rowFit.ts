import type { ColumnMeaning } from '../../trade/meaning';
import { conventions, octaveShifts } from '../../trade/middleC';
import { notesInFileName } from '../../trade/readings/keyReading';
import type { CellKind } from '../columns/cellKinds';
import { lookAt } from '../columns/cellKinds';
import type { TableCells } from './cells';

/** A row put under headings: for each column its cell, −1 where there is none. */
export type PlacedRow = readonly number[];

/** How a row fits under headings: what it contradicts, and how much speaks against it altogether. */
export interface Fitting {
  /** Whether it holds what cannot be: a low end above a high one, a root outside of its keys, a word for a number. */
  isWrong: boolean;
  /** Whether numbers contradict each other, which no reader of single cells would notice. */
  isOutOfOrder: boolean;
  /** Whether a value is missing that all full rows have, or nearly so: not words at its end. */
  lacks: boolean;
  cost: number;
}

/** What is wrong, what is unlikely and what is merely unusual (our choice). */
const [wrong, unlikely, unusual] = [3, 2, 1];
/** Numbers so far beyond those of their column are unusual (our choice). */
const reach = 12;
/** Where so large a share of the full rows keeps to a rule, others are held to it. */
const share = 0.8;
const fewest = 2;
/** Of so many rows, a distance that all have is no chance (our choice). */
const fewestApart = 3;
const noValue = /^[-\u2212\u2010-\u2015_.?]{1,4}$/;

const keyMeanings: ReadonlySet<ColumnMeaning> = new Set(['key', 'lokey', 'hikey', 'pitch_keycenter']);
/** Meanings of which the first is never above the second. */
export const orderedPairs = [
  ['lokey', 'hikey'],
  ['lokey', 'pitch_keycenter'],
  ['pitch_keycenter', 'hikey'],
  ['lovel', 'hivel'],
  ['loop_start', 'loop_end'],
] as const satisfies readonly (readonly [ColumnMeaning, ColumnMeaning])[];
const ends: ReadonlyMap<ColumnMeaning | undefined, ColumnMeaning> = new Map([
  ['hikey', 'lokey'],
  ['hivel', 'lovel'],
  ['loop_end', 'loop_start'],
]);

/** Two columns whose numbers are in order, and how far they lie apart where that is the same in all full rows. */
interface Pair {
  low: number;
  high: number;
  distance: number | undefined;
}

/** What full rows tell of one column. */
interface UsualColumn {
  kinds: ReadonlySet<CellKind>;
  isOptional: boolean;
  /** The different numbers where they come again and again, as those of layers do. */
  few: ReadonlySet<number> | undefined;
  least: number;
  greatest: number;
  /** Whether all numbers are whole and lie within 0..127. */
  isSmall: boolean;
  filled: number;
}

/** Judges rows by what the full rows of a table hold in its columns, by which ends stand in order there, and by names. */
export class RowFit {
  readonly #columns: readonly UsualColumn[];
  readonly #places = new Map<ColumnMeaning, number>();
  readonly #pairs: readonly Pair[];
  readonly #named: (name: string) => readonly number[];
  readonly #touches: boolean;
  readonly #ascends: boolean;

  /**
   * `full` are rows with a cell for each column, and `next` those that follow one another; `endsAreOpen`: many others leave their last
   * cells out.
   */
  constructor(
    readonly cells: TableCells,
    readonly meanings: readonly (ColumnMeaning | undefined)[],
    full: readonly PlacedRow[],
    next: readonly (readonly [PlacedRow, PlacedRow])[],
    readonly endsAreOpen: boolean,
  ) {
    for (const [column, meaning] of meanings.entries())
      if (meaning && !this.#places.has(meaning)) this.#places.set(meaning, column);
    this.#columns = meanings.map((_, column) => this.#usual(full.map((row) => row[column] ?? -1)));
    const isOrdered = ({ low, high }: Pair) =>
      mostly(full, (row) => order(this.#number(row, low), this.#number(row, high)));
    this.#pairs = orderedPairs
      .map(([low, high]) => this.#pair(full, this.#places.get(low) ?? -1, this.#places.get(high) ?? -1))
      .filter((pair) => pair.low >= 0 && pair.high >= 0 && isOrdered(pair));
    this.#named = this.#namedBy(full);
    this.#touches = mostly(next, ([before, row]) =>
      equal(this.#of(before, 'hikey') + 1, this.#of(row, 'lokey')),
    );
    this.#ascends = mostly(next, ([before, row]) => order(this.#lowest(before), this.#lowest(row)));
  }

  /** Judges a row between two others, which may be missing. */
  of(row: PlacedRow, before: PlacedRow | undefined, after: PlacedRow | undefined): Fitting {
    const kinds = row.reduce((sum, cell, column) => sum + this.#kindCost(cell, column), 0);
    let [disorder, cost] = [0, kinds];
    for (const { low, high, distance } of this.#pairs) {
      const [from, to] = [this.#number(row, low), this.#number(row, high)];
      if (order(from, to) === false) disorder += wrong;
      else if (distance !== undefined && equal(from + distance, to) === false) cost += unusual;
    }
    for (const column of row.keys()) {
      const { filled, isSmall, least, ...others } = this.#columns[column] as UsualColumn;
      const number = this.#number(row, column);
      if (Number.isNaN(number) || filled < fewest) continue;
      if (isSmall && !(number >= 0 && number <= 127 && Number.isInteger(number)) && least >= 0)
        disorder += keyMeanings.has(this.meanings[column] as ColumnMeaning) ? wrong : 0;
      if (!keyMeanings.has(this.meanings[column] as ColumnMeaning) && !isUsual(number, { least, ...others }))
        cost += unusual;
    }
    const gaps = this.#gaps(row);
    cost += disorder + gaps + this.#nameCost(row) + this.#besideCost(row, before, after);
    return { isWrong: disorder > 0 || kinds >= wrong, isOutOfOrder: disorder > 0, lacks: gaps > 0, cost };
  }

  /** Missing cells: nothing where others leave them empty too, nor words at the end of a row, or what many rows leave out there. */
  #gaps(row: PlacedRow): number {
    let last = row.length - 1;
    while (last >= 0 && this.#kind(row[last] ?? -1) === 'empty') last--;
    return row.reduce((sum, cell, column) => {
      if (this.#kind(cell) !== 'empty' || this.#columns[column]?.isOptional) return sum;
      const start = ends.get(this.meanings[column]);
      const isHalf = start !== undefined && !Number.isNaN(this.#of(row, start));
      const isSpare = this.endsAreOpen || !this.#columns[column]?.kinds.has('number');
      return sum + (column < last || isHalf || !isSpare ? unusual : 0);
    }, 0);
  }

  #kindCost(cell: number, column: number): number {
    const kind = this.#kind(cell);
    const { kinds, filled } = this.#columns[column] as UsualColumn;
    if (kind === 'empty' || filled === 0 || kinds.has(kind)) return 0;
    const meaning = this.meanings[column];
    const isKey = meaning !== undefined && keyMeanings.has(meaning);
    if (isKey && isKeyLike(kind) && (kinds.has('note') || kinds.has('number'))) return 0;
    // Numbers may stand among words, but not among names of samples.
    const isAmongWords = kinds.has('text') || kinds.has('switch') || kinds.has('pan');
    return isAmongWords && kind !== 'file' && meaning !== 'sample' ? unlikely : wrong;
  }

  /** A root that the name contradicts, or its number at another end of the keys. */
  #nameCost(row: PlacedRow): number {
    const named = this.#named(this.#name(row));
    if (named.length === 0) return 0;
    const root = this.#of(row, 'pitch_keycenter');
    if (!Number.isNaN(root)) return named.includes(root) ? 0 : unlikely;
    return named.includes(this.#of(row, 'lokey')) || named.includes(this.#of(row, 'hikey')) ? unusual : 0;
  }

  /** Keys that leave a gap to the rows around where others do not, or stand in another order. */
  #besideCost(row: PlacedRow, before: PlacedRow | undefined, after: PlacedRow | undefined): number {
    const isOff = (one: PlacedRow | undefined, other: PlacedRow | undefined) => {
      if (!one || !other) return false;
      if (this.#touches) return equal(this.#of(one, 'hikey') + 1, this.#of(other, 'lokey')) === false;
      return this.#ascends && order(this.#lowest(one), this.#lowest(other)) === false;
    };
    return (isOff(before, row) ? unusual : 0) + (isOff(row, after) ? unusual : 0);
  }

  #pair(full: readonly PlacedRow[], low: number, high: number): Pair {
    const apart = full
      .map((row) => this.#number(row, high) - this.#number(row, low))
      .filter((distance) => !Number.isNaN(distance));
    const isSame = apart.length >= fewestApart && apart.every((distance) => distance === apart[0]);
    return { low, high, distance: isSame ? apart[0] : undefined };
  }

  #lowest(row: PlacedRow): number {
    const low = this.#of(row, 'lokey');
    return Number.isNaN(low) ? this.#of(row, 'key') : low;
  }

  /** The keys that a name tells as roots do in all full rows: as notes, or as numbers; none where names do not. */
  #namedBy(full: readonly PlacedRow[]): (name: string) => readonly number[] {
    const ways = [
      ...conventions.map(
        (one) => (name: string) => notesInFileName(name).map((note) => note + octaveShifts[one]),
      ),
      numbersIn,
    ];
    const rooted = full.filter((row) => !Number.isNaN(this.#of(row, 'pitch_keycenter')));
    const tells = ways.find(
      (way) =>
        rooted.length >= fewest &&
        rooted.every((row) => way(this.#name(row)).includes(this.#of(row, 'pitch_keycenter'))),
    );
    return tells ?? (() => []);
  }

  #name(row: PlacedRow): string {
    return this.cells.value(row[this.#places.get('sample') ?? -1] ?? -1).slice(0, 200);
  }

  #usual(column: readonly number[]): UsualColumn {
    const filled = column.filter((cell) => this.#kind(cell) !== 'empty');
    const numbers = filled.map((cell) => lookAt(this.cells.plain(cell)).value).filter(Number.isFinite);
    return {
      kinds: new Set(filled.map((cell) => this.#kind(cell))),
      isOptional: filled.length < column.length,
      few: new Set(numbers).size * 2 <= numbers.length ? new Set(numbers) : undefined,
      least: Math.min(...numbers),
      greatest: Math.max(...numbers),
      isSmall: numbers.every((number) => number >= 0 && number <= 127 && Number.isInteger(number)),
      filled: filled.length,
    };
  }

  #of(row: PlacedRow, meaning: ColumnMeaning): number {
    return this.#number(row, this.#places.get(meaning) ?? -1);
  }

  #number(row: PlacedRow, column: number): number {
    const cell = row[column] ?? -1;
    return cell < 0 ? Number.NaN : lookAt(this.cells.plain(cell)).value;
  }

  #kind(cell: number): CellKind {
    if (cell < 0 || this.cells.starts[cell] === this.cells.ends[cell]) return 'empty';
    const text = this.cells.plain(cell);
    return noValue.test(text) ? 'empty' : lookAt(text).kind;
  }
}

function isKeyLike(kind: CellKind): boolean {
  return kind === 'note' || kind === 'number';
}

/** Whether two numbers are in order; `undefined` where one is not there. */
function order(low: number, high: number): boolean | undefined {
  return Number.isNaN(low) || Number.isNaN(high) ? undefined : low <= high;
}

function equal(one: number, other: number): boolean | undefined {
  return Number.isNaN(one) || Number.isNaN(other) ? undefined : one === other;
}

/** Whether most of some say yes, of those that say anything. */
function mostly<One>(all: readonly One[], says: (one: One) => boolean | undefined): boolean {
  const answers = all.map(says).filter((one) => one !== undefined);
  return answers.length >= fewest && answers.filter(Boolean).length >= answers.length * share;
}

/** Whether a number is near those of its column, or one of them where there are but few. */
function isUsual(
  number: number,
  { least, greatest, few }: Pick<UsualColumn, 'least' | 'greatest' | 'few'>,
): boolean {
  if (few) return few.has(number);
  const away = Math.max(reach, greatest - least);
  const low = least > 0 ? Math.max(least - away, least / 20) : least - away;
  return number >= low && number <= greatest + away;
}

function numbersIn(name: string): number[] {
  return Array.from(name.matchAll(/\d{1,6}/g), ([digits]) => Number(digits));
}
