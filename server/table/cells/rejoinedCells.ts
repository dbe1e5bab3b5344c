import { counted } from '../../model/wording/counted';
import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import { keyMeanings } from '../../trade/meaning';
import { lookAt } from '../columns/cellKinds';
import { findHeading } from '../headings/headingRows';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import { columnsOf, commonWays } from './commonWays';
import { namesAudioFile } from './namesAudioFile';
import { isRuling } from './split/delimiter';

/** Rows that are looked at for headings, the widest table, and how many cells a row may have too many. */
const looked = 60;
const mostColumns = 40;
const mostSurplus = 3;
const mostNoted = 10;
const longest = 80;
/** So many ways to put the cells of a row together are compared with those of other rows. */
const mostWays = 24;
const how = 'is read as one cell: the row has more cells than there are headings, and fits them only so.';
const howAlike =
  'is read as one cell: the row has more cells than there are headings, and fits so as the other rows do.';
const unclear =
  'This row has more cells than there are headings, and it is not clear which belong together. Numbers that may be parts of others are left out. Put text and numbers with commas in quotation marks.';
/** What a cell holds by the heading above it. */
type Expected = 'file' | 'key' | 'number' | 'text';

const whole: ReadonlySet<ColumnMeaning> = new Set([
  ...keyMeanings,
  'lovel',
  'hivel',
  'velocity_range',
  'seq_position',
  'seq_length',
  'row_number',
  'mute_group',
]);
const fractions: ReadonlySet<ColumnMeaning> = new Set([
  'tune',
  'transpose',
  'volume',
  'attenuation',
  'pan',
  'deviation',
  'delay_time',
  'attack_time',
  'hold_time',
  'decay_time',
  'sustain_level',
  'release_time',
  'loop_start',
  'loop_end',
  'loop_length',
  'offset',
  'end',
]);

/**
 * Puts cells together that a comma or a semicolon inside of them parted, as in `Bass, muted.wav,28` and `a.wav,28,-2,5`: in rows with more
 * cells than there are headings, where one way alone lets each cell agree with the heading above it, or where one way alone does so in
 * all rows. Each is told, and so are rows that fit in several ways. `undefined` where no row is too wide.
 */
export function rejoinedCells(cells: TableCells): TableCells | undefined {
  if (cells.bySpaces) return undefined;
  const first: number[] = [];
  for (let row = 0; row < cells.rowCount && first.length < looked; row++)
    if (cells.filled(row) > 0 && !isRuling(cells, row)) first.push(row);
  const heading = findHeading(cells, first);
  const width = heading < 0 ? 0 : cells.width(heading);
  if (width < 3 || width > mostColumns) return undefined;
  const expected = Array.from({ length: width }, (_, column) =>
    // What stands in front of all headings counts the rows.
    column === 0 && cells.isEmpty(heading, 0)
      ? 'key'
      : expectedUnder(cells.value(cells.cell(heading, column))),
  );
  if (!expected.includes('file')) return undefined;
  const joined = new Map<number, number[]>();
  const open = new Map<number, number[][]>();
  for (let row = heading + 1; row < cells.rowCount; row++) {
    const surplus = cells.width(row) - width;
    if (surplus <= 0 || surplus > mostSurplus) continue;
    const ways = new Row(cells, row, expected).ways();
    const [groups = []] = ways;
    if (ways.length > 1) open.set(row, ways);
    if (ways.length > 0) joined.set(row, ways.length > 1 ? [] : groups);
  }
  if (joined.size === 0) return undefined;
  const alike = commonWays(cells, heading, { clear: joined, open });
  for (const [row, groups] of alike) joined.set(row, groups);
  const shifted = new Map<number, readonly number[]>();
  for (const [row, ways] of open)
    if (!alike.has(row)) shifted.set(row, shiftedNumbers(cells, row, ways, expected));
  return withJoined(cells, joined, alike, shifted);
}

/** The cells of numbers that stand under other headings in some ways than in others, or as they are. */
function shiftedNumbers(
  cells: TableCells,
  row: number,
  ways: readonly number[][],
  expected: readonly Expected[],
): number[] {
  const first = Math.min(...ways.flatMap((way) => columnsOf(cells, row, way)));
  return expected.flatMap((kind, column) =>
    kind === 'number' && column >= first ? [cells.cell(row, column)] : [],
  );
}

function expectedUnder(heading: string): Expected {
  const meaning = readHeading(heading)?.meaning;
  if (meaning === 'sample') return 'file';
  if (meaning === undefined) return 'text';
  return whole.has(meaning) ? 'key' : fractions.has(meaning) ? 'number' : 'text';
}

/** The cells with some rows made of groups of their cells; each group is known by the number of its first cell. */
function withJoined(
  cells: TableCells,
  joined: ReadonlyMap<number, readonly number[]>,
  alike: ReadonlyMap<number, unknown>,
  shifted: ReadonlyMap<number, readonly number[]>,
): TableCells {
  const told: { text: string; start: number; end: number }[] = [];
  const rows: number[][] = [];
  for (let row = 0; row < cells.rowCount; row++) {
    const firsts = joined.get(row);
    const end = cells.rowFirst[row + 1];
    if (!firsts || firsts.length === 0) {
      if (firsts && told.length < mostNoted) told.push({ text: unclear, ...cells.rowSpan(row) });
      const left = shifted.get(row) ?? [];
      const own = Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
      rows.push(own.map((cell) => (left.includes(cell) ? -1 : cell)));
      continue;
    }
    for (const [at, cell] of firsts.entries()) {
      const last = (firsts[at + 1] ?? end) - 1;
      if (last === cell) continue;
      cells.ends[cell] = cells.ends[last];
      const text = cells.value(cell).slice(0, longest);
      if (told.length < mostNoted)
        told.push({
          text: `"${text}" ${alike.has(row) ? howAlike : how}`,
          start: cells.starts[cell],
          end: cells.ends[cell],
        });
    }
    rows.push([...firsts]);
  }
  const more = joined.size - told.length;
  const note = told.at(-1);
  if (more > 0 && note) note.text += ` The same holds for ${counted(more, 'more row')}.`;
  const arranged = arrangedCells(cells, rows);
  arranged.assumptions = [...cells.assumptions, ...told];
  return arranged;
}

/** A row with too many cells, and the ways to put some of them together. */
class Row {
  readonly #first: number;
  readonly #count: number;
  /** The best score of the first cells under the first headings, and how many cells the last heading then may have. */
  readonly #best: { score: number; sizes: number[] }[][] = [];

  constructor(
    readonly cells: TableCells,
    row: number,
    readonly expected: readonly Expected[],
  ) {
    this.#first = cells.rowFirst[row];
    this.#count = cells.width(row);
  }

  /** The ways that fit best, each as the first cells of its groups; none where the row fits best as it is. */
  ways(): number[][] {
    const { cells, expected } = this;
    const width = expected.length;
    const surplus = this.#count - width;
    // Empty cells at the end are no surplus.
    let open = 0;
    for (let cell = this.#first + width; cell < this.#first + this.#count; cell++)
      if (cells.starts[cell] !== cells.ends[cell]) open++;
    for (let column = 0; column <= width; column++) this.#best.push(this.#row(column, surplus));
    const { score } = this.#best[width]?.[surplus] ?? { score: Number.NaN };
    const asItIs = expected.reduce((sum, _, column) => sum + this.#fit(column, column, 1), 0) - open;
    return score > asItIs ? this.#waysTo(width, surplus) : [];
  }

  /** The best groups of the first columns, which take some cells more than they are; not all where there are many. */
  #waysTo(column: number, used: number): number[][] {
    if (column === 0) return [[]];
    const ways: number[][] = [];
    for (const size of this.#best[column]?.[used]?.sizes ?? []) {
      const first = this.#first + column - 1 + used - size + 1;
      for (const before of this.#waysTo(column - 1, used - size + 1))
        if (ways.length < mostWays) ways.push([...before, first]);
    }
    return ways;
  }

  /** For a number of headings, the best by how many cells more than these are used. */
  #row(column: number, surplus: number): { score: number; sizes: number[] }[] {
    return Array.from({ length: surplus + 1 }, (_, used) => {
      if (column === 0) return { score: used === 0 ? 0 : Number.NEGATIVE_INFINITY, sizes: [] };
      let best: { score: number; sizes: number[] } = { score: Number.NEGATIVE_INFINITY, sizes: [] };
      for (let size = 1; size <= used + 1; size++) {
        const before = this.#best[column - 1]?.[used - size + 1];
        const fit = this.#fit(column - 1, column - 1 + used - size + 1, size);
        const score = (before?.score ?? Number.NEGATIVE_INFINITY) + fit;
        if (score === Number.NEGATIVE_INFINITY) continue;
        if (score > best.score) best = { score, sizes: [size] };
        else if (score === best.score) best.sizes.push(size);
      }
      return best;
    });
  }

  /** How well some cells put together agree with a heading. */
  #fit(column: number, from: number, size: number): number {
    const { cells, expected } = this;
    const first = this.#first + from;
    const last = first + size - 1;
    const kind = expected[column];
    const isEmpty = cells.starts[first] === cells.ends[first];
    if (size === 1) {
      if (isEmpty) return kind === 'file' ? -3 : 1;
      const isFile = namesAudioFile(cells, first);
      if (kind === 'file' || isFile) return kind === 'file' && isFile ? 3 : -3;
      const look = lookAt(cells.plain(first)).kind;
      if (kind === 'text') return look === 'number' ? 0 : 1;
      return look === 'text' || look === 'switch' ? -3 : 2;
    }
    const blanks = this.#blanksIn(first, last);
    if (blanks === undefined || kind === 'key') return Number.NEGATIVE_INFINITY;
    if (kind === 'number') return size === 2 && this.#isDecimal(first) ? 2 : Number.NEGATIVE_INFINITY;
    for (let cell = first; cell < last; cell++)
      if (namesAudioFile(cells, cell)) return Number.NEGATIVE_INFINITY;
    const isFile = namesAudioFile(cells, last);
    if (isFile !== (kind === 'file')) return Number.NEGATIVE_INFINITY;
    // A comma among words has a blank behind it, one between cells of such a line has none.
    return (isFile ? 3 : 1) - (blanks ? 0 : 1);
  }

  /** Whether blanks stand behind all signs between some cells; `undefined` where more than such a sign parts two of them. */
  #blanksIn(first: number, last: number): boolean | undefined {
    const { cells } = this;
    let blanks = true;
    for (let cell = first; cell < last; cell++) {
      const between = cells.text.slice(cells.ends[cell], cells.starts[cell + 1]);
      if (!/^ ?[,;] ?$/.test(between) || cells.isRewritten(cell) || cells.isRewritten(cell + 1))
        return undefined;
      blanks &&= between.endsWith(' ');
    }
    return blanks;
  }

  /** Whether a cell and the next one are the two sides of a decimal comma. */
  #isDecimal(cell: number): boolean {
    const { cells } = this;
    const text = cells.text.slice(cells.starts[cell], cells.ends[cell + 1]);
    return /^[-+\u2212]?\d{1,4},\d{1,3}(?: ?\p{L}{1,10}| ?%)?$/u.test(text);
  }
}
