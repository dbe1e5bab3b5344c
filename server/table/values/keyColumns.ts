import { keyOfFrequency } from '../../model/keys';
import type { Steps } from '../../model/steps';
import { keyBounds } from '../../trade/bounds';
import { octaveShifts } from '../../trade/middleC';
import { keyFrequencies, readFrequency } from '../../trade/readings/frequencyReading';
import type { KeyReading } from '../../trade/readings/keyReading';
import { keysInList, readKeyRange } from '../../trade/readings/keyReading';
import { meansAll, meansOpenEnd } from '../../trade/readings/limits';
import { readNumber } from '../../trade/readings/numberReading';
import type { KeyCount } from '../../trade/statements/keys/keyCount';
import { lastPianoKey, pianoKeyShift } from '../../trade/statements/keys/pianoKeys';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { ValueName } from '../zones/zoneList';
import type { MergedRows } from './mergedRows';

/** The number of middle C (MIDI 1.0). */
const middleC = 60;
/** A root so many keys away from those of its zone is a slip (our choice). */
const farthest = 24;
const outside = 'lies outside the keys 0..127';

type KeyMeaning = 'key' | 'lokey' | 'hikey' | 'pitch_keycenter' | 'key_range';

/** How roots are given: as keys, as keys with a fraction, or as the frequency that a sample sounds at. */
type RootKind = 'key' | 'fraction' | 'hertz';

/** Reads the keys and roots of zones. */
export class KeyColumns {
  readonly #ranges: CellReadings<ReturnType<typeof readKeyRange>>;

  #shift = 0;

  /** What roots that lie between keys leave over, in cents by zone; `undefined` where none does. */
  rootCents: Float64Array | undefined;

  constructor(
    readonly table: ZoneCells,
    readonly merged: MergedRows,
  ) {
    const { naming } = table.options;
    this.#ranges = new CellReadings(table.cells, (text) => readKeyRange(text, naming));
  }

  /** What is added to numbers of keys: those of a piano count from 1, as the text or the whole range of them says. */
  #findShift(): number {
    const { table } = this;
    const columns = (['lokey', 'hikey', 'key', 'key_range', 'pitch_keycenter'] as const).flatMap(
      (meaning) => table.column(meaning) ?? [],
    );
    let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const column of columns) {
      if (column.unit !== undefined) return 0;
      for (const row of table.data) {
        const cell = table.cellOf(row, column);
        if (cell < 0) continue;
        const number = table.cells.digits(cell, 3);
        const range = number >= 0 ? undefined : this.#ranges.of(cell);
        const low = number >= 0 ? number : range?.low.number;
        const high = number >= 0 ? number : range?.high.number;
        least = Math.min(least, low ?? least, high ?? least);
        greatest = Math.max(greatest, low ?? greatest, high ?? greatest);
      }
    }
    const said = table.options.statements.pianoKeys;
    const middle = table.options.statements.middleKey;
    const count = table.options.statements.keyCount;
    if (count && columns[0]) return this.#shiftByCount(count, columns[0], least, greatest);
    const isOfPiano = said !== undefined && middle?.is === middleC - pianoKeyShift;
    if (middle && columns[0] && !isOfPiano) return this.#shiftByMiddleC(middle, columns[0], least, greatest);
    const isWhole = least === 1 && greatest === lastPianoKey;
    if (!(least >= 1 && greatest <= lastPianoKey) || (said === undefined && !isWhole) || !columns[0])
      return 0;
    const because = said === undefined ? 'they run from 1 to 88' : `"${shortened(said)}" says so`;
    table.noteColumn(
      columns[0],
      `The keys are taken to count as those of a piano, 1 being MIDI key 21, as ${because}.`,
    );
    return pianoKeyShift;
  }

  /** What is added where the text says which number middle C has. */
  #shiftByMiddleC(
    { is, text }: { is: number; text: string },
    column: ColumnReading,
    least: number,
    greatest: number,
  ): number {
    const said = `middle C has the number ${is}, as "${shortened(text)}" says`;
    return this.#statedShift(middleC - is, said, column, least, greatest);
  }

  /** What is added where the text gives a number its key. */
  #shiftByCount({ shift, text }: KeyCount, column: ColumnReading, least: number, greatest: number): number {
    return this.#statedShift(shift, `they count as "${shortened(text)}" says`, column, least, greatest);
  }

  /** What is added as the text says; nothing where the roots in the sample files contradict it. */
  #statedShift(shift: number, said: string, column: ColumnReading, least: number, greatest: number): number {
    if (least > greatest) return 0;
    const isPossible = least + shift >= keyBounds.least && greatest + shift <= keyBounds.most;
    const why = !isPossible
      ? 'keys would lie outside 0..127'
      : this.#areRootsOfFiles()
        ? 'the root keys in the sample files are the numbers as they stand'
        : undefined;
    this.table.noteColumn(
      column,
      why === undefined
        ? `The keys are read so that ${said}: ${Math.abs(shift)} is ${shift < 0 ? 'taken off' : 'added to'} each number.`
        : `The keys are not read so that ${said}, because ${why}. Check the keys.`,
    );
    return why === undefined ? shift : 0;
  }

  /** Whether most sample files that have a root key have that of their row, as its number stands. */
  #areRootsOfFiles(): boolean {
    const { table } = this;
    const column = table.column('pitch_keycenter') ?? table.column('key');
    if (!column) return false;
    let [same, known] = [0, 0];
    for (let zone = table.first; zone < table.end; zone++) {
      const number = table.cells.digits(table.cellOf(table.zones.rows[zone], column), 3);
      const root = number < 0 ? undefined : table.options.rootKeyOf?.(table.zones.sample(zone));
      if (root === undefined) continue;
      known++;
      if (root === number) same++;
    }
    return known > 0 && same * 2 > known;
  }

  /** Reads the keys of all zones of the table; the steps tell the share of all values. */
  *read(): Steps<void> {
    this.#shift = this.#findShift();
    yield 0.15;
    for (const meaning of ['lokey', 'hikey', 'key', 'key_range', 'pitch_keycenter'] as const) {
      const column = this.table.column(meaning);
      if (!column) continue;
      const kind = meaning === 'pitch_keycenter' ? this.#rootKind(column) : 'key';
      if (kind === 'key') this.#readKeys(meaning, column);
      else this.#readRoots(column, kind);
      yield 0.2;
    }
    this.#readCounts();
    swapInverted(this.table, 'lokey', 'hikey');
  }

  #readKeys(meaning: KeyMeaning, column: ColumnReading): void {
    const { zones, cells } = this.table;
    const { merged } = this;
    const low = zones.column(meaning === 'key_range' ? 'lokey' : meaning);
    const high = meaning === 'key_range' ? zones.column('hikey') : low;
    let isWider = false;
    const read = (zone: number, cell: number) => {
      const number = cells.digits(cell, 3);
      if (number >= 0 && number + this.#shift <= keyBounds.most) {
        low.set(zone, cell, number + this.#shift);
        high.set(zone, cell, number + this.#shift);
        return;
      }
      const range = this.#keysIn(cell, column);
      if (!range) return;
      if (meaning === 'pitch_keycenter' && this.#isFarOff(zone, cell, range.low)) {
        const why = 'lies far outside the keys of its row, however octaves are counted';
        this.table.drop(cell, column, why);
        return;
      }
      if (high === low) {
        low.set(zone, cell, meaning === 'hikey' ? range.high : range.low);
        if (meaning === 'lokey' || meaning === 'hikey') this.#giveOtherEnd(zone, cell, meaning, range);
      } else {
        const given = { low: ownEnd(low, zone, range), high: ownEnd(high, zone, range) };
        if (range.open !== 'low' && given.low === undefined) low.set(zone, cell, range.low);
        if (range.open !== 'high' && given.high === undefined) high.set(zone, cell, range.high);
        if ((given.low ?? range.low) > range.low || (given.high ?? range.high) < range.high) isWider = true;
      }
    };
    this.table.each(column, read, meaning === 'pitch_keycenter' ? merged.rootRows : merged.keyRows);
    if (isWider)
      this.table.noteColumn(
        column,
        `The ranges in ${columnName(column)} are wider than the low and high keys that zones give themselves; the keys of the zones count.`,
      );
  }

  /** Whether a root that is a note name lies far from the keys of its zone, which are numbers, by each way to count octaves. */
  #isFarOff(zone: number, cell: number, root: number): boolean {
    const { zones, cells, options } = this.table;
    const [low, high] = [zones.column('lokey'), zones.column('hikey')];
    const isNumber = ({ cells: own }: typeof low) => own[zone] >= 0 && cells.digits(own[zone], 3) >= 0;
    if (!isNumber(low) || !isNumber(high) || /^\W*\d/.test(cells.plain(cell))) return false;
    return Object.values(octaveShifts).every((shift) => {
      const key = root - options.keyShift + shift;
      return key < low.numbers[zone] - farthest || key > high.numbers[zone] + farthest;
    });
  }

  /** The other end of a range in the column of one end, as in a merged cell, where that end has no cell of its own. */
  #giveOtherEnd(
    zone: number,
    cell: number,
    meaning: 'lokey' | 'hikey',
    { low, high, open }: { low: number; high: number; open: 'low' | 'high' | undefined },
  ): void {
    if (low === high || open !== undefined) return;
    const other = this.table.zones.column(meaning === 'lokey' ? 'hikey' : 'lokey');
    if (other.cells[zone] < 0) other.set(zone, cell, meaning === 'lokey' ? high : low);
  }

  /** How many keys a zone takes from its lowest on. */
  #readCounts(): void {
    const { table } = this;
    const { zones, cells } = table;
    const column = table.column('key_count');
    if (!column || table.column('hikey') || table.column('key_range')) return;
    const [keys, lows, highs] = [zones.column('key'), zones.column('lokey'), zones.column('hikey')];
    table.each(column, (zone, cell) => {
      const own = lows.cells[zone] >= 0 ? lows : keys;
      const count = readNumber(cells.plain(cell))?.number ?? Number.NaN;
      const high = own.numbers[zone] + count - 1;
      if (own.cells[zone] < 0 || !(count >= 1) || !Number.isInteger(count) || high > keyBounds.most) {
        table.drop(cell, column, 'is not a number of keys, counted from the lowest one');
        return;
      }
      if (own === keys && count > 1) {
        lows.set(zone, keys.cells[zone], keys.numbers[zone]);
        if (table.column('pitch_keycenter')) keys.cells[zone] = -1;
      }
      if (own === lows || count > 1) highs.set(zone, cell, high);
    });
  }

  /** The keys in a cell; anything else is noted and answered as `undefined`. */
  #keysIn(
    cell: number,
    column: ColumnReading,
  ): { low: number; high: number; open: 'low' | 'high' | undefined } | undefined {
    const { meaning } = column;
    const wantsOne = meaning === 'pitch_keycenter' || meaning === 'key';
    const range = this.table.reading(this.#ranges, cell, column);
    if (!range || (!range.single && wantsOne)) {
      const text = this.table.cells.plain(cell);
      const isEnd = meaning === 'lokey' || meaning === 'hikey';
      if ((meaning === 'key_range' && meansAll(text)) || (isEnd && meansOpenEnd(text))) return undefined;
      this.table.drop(
        cell,
        column,
        range
          ? 'is a range where one key is expected'
          : keysInList(text).length > 1
            ? 'lists keys that do not follow one another, which a region cannot; give each of them a row'
            : /^[-\u2212]\d+$/.test(text)
              ? outside
              : 'is neither a key number nor a note name',
      );
      return undefined;
    }
    const low = this.#key(range.low);
    const high = this.#key(range.high);
    if (low >= keyBounds.least && high >= keyBounds.least && low <= keyBounds.most && high <= keyBounds.most)
      return { low, high, open: range.open };
    this.table.drop(cell, column, outside);
    return undefined;
  }

  #key(key: KeyReading): number {
    if (key.number !== undefined) return key.number + this.#shift;
    return (key.named ?? Number.NaN) + this.table.options.keyShift;
  }

  #rootKind(column: ColumnReading): RootKind {
    if (column.unit === 'Hz' || column.unit === 'kHz') return 'hertz';
    const { plain, unit } = this.table.numbersIn(column);
    if (unit === 'Hz') return 'hertz';
    const isOdd = plain.whole < plain.numeric || plain.greatest > keyBounds.most;
    if (!isOdd || plain.numeric === 0 || plain.least < 0) return 'key';
    if (plain.whole === plain.numeric && this.#lieInRanges(column, true)) return 'key';
    if (plain.whole < plain.numeric && plain.greatest <= keyBounds.most && this.#lieInRanges(column))
      return 'fraction';
    return plain.least >= keyFrequencies.least && plain.greatest <= keyFrequencies.most ? 'hertz' : 'key';
  }

  /** Whether most numbers of a column lie within the key ranges of their rows, half a key beyond them at most; `areMany`: two at least. */
  #lieInRanges(column: ColumnReading, areMany = false): boolean {
    const { zones, cells } = this.table;

    const [key, low, high] = [zones.values('key'), zones.values('lokey'), zones.values('hikey')];
    let inside = 0;
    let outside = 0;
    this.table.each(
      column,
      (zone, cell) => {
        const number = readNumber(cells.plain(cell))?.number ?? Number.NaN;
        const least = (low ?? key)?.oneMore(zone) ?? 0;
        const most = (high ?? key)?.oneMore(zone) ?? 0;
        if (Number.isNaN(number) || (least === 0 && most === 0)) return;
        if (number >= least - 1.5 && number <= most - 0.5) inside++;
        else outside++;
      },
      this.merged.rootRows,
    );
    return areMany ? inside > 1 && inside > outside : inside >= outside;
  }

  /** Roots that lie between keys: the nearest key, and what is left over as tuning. */
  #readRoots(column: ColumnReading, kind: 'fraction' | 'hertz'): void {
    const { table } = this;
    const { cells, zones } = table;
    const roots = zones.column('pitch_keycenter');
    const numbers = new CellReadings(cells, (text) =>
      kind === 'hertz' ? readFrequency(text, column.unit) : plainNumber(text),
    );
    let isOff = false;
    const read = (zone: number, cell: number) => {
      const number = table.reading(numbers, cell, column);
      // A note name among frequencies is what it says.
      const key = number === undefined ? this.#ranges.of(cell)?.low.named : undefined;
      const pitch =
        key === undefined
          ? kind === 'hertz' && number !== undefined
            ? keyOfFrequency(number)
            : number
          : key + table.options.keyShift;
      const root = Math.round(pitch ?? Number.NaN);
      if (pitch === undefined || !(root >= keyBounds.least && root <= keyBounds.most)) {
        table.drop(cell, column, kind === 'hertz' ? 'is not the frequency of a key' : 'is no key');
        return;
      }
      roots.set(zone, cell, root);
      const cents = Math.round((root - pitch) * 100);
      if (cents === 0) return;
      isOff = true;
      this.rootCents ??= new Float64Array(zones.most);
      this.rootCents[zone] = cents;
    };
    table.each(column, read, this.merged.rootRows);
    const what = kind === 'hertz' ? 'frequencies' : 'root keys with fractions';
    const rest = isOff ? ', and the rest as tuning in cents, so that it sounds in tune' : '';
    table.noteColumn(
      column,
      `${columnName(column)} gives ${what}: each is written as the nearest root key${rest}.`,
      'approximated',
    );
  }
}

function plainNumber(text: string): number | undefined {
  const reading = readNumber(text);
  return reading?.unit === undefined ? reading?.number : undefined;
}

/** Puts the ends of ranges in order whose low one lies above the high one, and notes it. */
export function swapInverted(
  { zones, first, end, notes, cells }: ZoneCells,
  low: ValueName,
  high: ValueName,
): void {
  const lows = zones.values(low);
  const highs = zones.values(high);
  if (!lows || !highs) return;
  const what = low === 'lokey' ? 'key' : 'velocity';
  for (let zone = first; zone < end; zone++) {
    if (lows.cells[zone] < 0 || highs.cells[zone] < 0) continue;
    const [from, to] = [lows.numbers[zone], highs.numbers[zone]];
    if (from <= to) continue;
    lows.numbers[zone] = to;
    highs.numbers[zone] = from;
    const span = { start: cells.starts[lows.cells[zone]], end: cells.ends[lows.cells[zone]] };
    notes.row = zones.rows[zone];
    notes.add(
      'assumed',
      span,
      `${notes.place(span.start)}: the low ${what} ${from} is above the high ${what} ${to}; the two are swapped.`,
      `inverted ${what}`,
    );
  }
}

/** An end of its keys that a zone has already, where it lies within a range. */
function ownEnd(
  { cells, numbers }: { cells: ArrayLike<number>; numbers: ArrayLike<number> },
  zone: number,
  range: { low: number; high: number },
): number | undefined {
  const own = numbers[zone] ?? Number.NaN;
  return (cells[zone] ?? -1) >= 0 && own >= range.low && own <= range.high ? own : undefined;
}
