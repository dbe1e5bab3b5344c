import { namesAudioFileIn } from '../../model/fileNames';
import { tellsOfFile } from '../../trade/headings/fileHeadings';
import { unitInHeading } from '../../trade/headings/headings';
import { givesMeasuredUnit, namesMeasure, withoutReference } from '../../trade/languages/measuredWords';
import type { ColumnMeaning } from '../../trade/meaning';
import { meaningNames } from '../../trade/meaning';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';
import type { ColumnContents } from './columnContents';
import { columnContents, evenlySpread, shareOf } from './columnContents';
import type { ColumnReading } from './columnReading';

const mostRows = 400;
const mostLooks = 100_000;
/** Lines of words have a few commas, and so many characters of them are looked at. */
const mostInWords = 3;
const longestLine = 300;
/** So many rows at the start and the end may be remarks. */
const mostAtEnds = 3;

/** The columns of a table while it is found out what they hold. */
export class ColumnState {
  readonly columns: ColumnReading[] = [];
  readonly contents: ColumnContents[] = [];
  /** The column of each meaning. */
  readonly taken = new Map<ColumnMeaning, number>();
  /** Whether any heading is known; then cells alone decide only where they leave no doubt. */
  headingsKnown = false;
  /** Columns whose heading stands in each of their cells. */
  readonly labelled: ReadonlySet<number>;
  readonly holdsFiles: readonly boolean[];
  /** Columns of what files are as files, such as their sizes. */
  readonly #ofFiles = new Set<number>();
  /** The rows that are looked at. */
  readonly looked: readonly number[];

  constructor(
    readonly cells: TableCells,
    rows: TableRows,
    readonly chosen: ReadonlyMap<number, ColumnMeaning>,
  ) {
    // Title lines and totals say nothing of the columns.
    const wide = rows.data.filter((row) => cells.filled(row) > 1);
    const most = Math.max(20, Math.min(mostRows, Math.floor(mostLooks / Math.max(1, rows.width))));
    const spread = evenlySpread(wide.length > 0 ? wide : rows.data, most);
    const zones = withoutWords(cells, spread);
    const looked = zones.length > 0 ? zones : spread;
    this.looked = looked;
    this.labelled = new Set(rows.headings.flatMap(({ isInCells }, index) => (isInCells ? [index] : [])));
    for (let index = 0; index < rows.width; index++) {
      const { text: heading, cell } = rows.headings[index];
      this.columns.push({
        index,
        heading,
        headingSpan: cell < 0 ? undefined : { start: cells.starts[cell], end: cells.ends[cell] },
        meaning: 'unknown',
        unit: undefined,
        confidence: 0,
        evidence: [],
        repeats: undefined,
      });
      this.contents.push(columnContents(cells, looked, index));
    }
    // Letters alone name keys only where others say their octaves by marks.
    if (this.contents.every(({ marked }) => marked === 0)) for (const one of this.contents) one.unmarked = 0;
    this.holdsFiles = this.contents.map((contents) => shareOf(contents, 'file') >= 0.5);
    for (const { index, heading, evidence } of this.columns) {
      if (this.isMeasured(index)) this.leaveMeasured(index, 'Its heading');
      else if (tellsOfFile(heading)) {
        this.#ofFiles.add(index);
        evidence.push('Its heading tells of the files, and not of zones.');
      }
    }
    for (const [index, meaning] of chosen) {
      if (this.columns[index]) this.claim(index, meaning, 1, 'Set by hand.');
    }
  }

  /** Whether a column other than this one names audio files. */
  othersHoldFiles(index: number): boolean {
    return this.holdsFiles.some((holds, other) => holds && other !== index);
  }

  /** Whether the heading of a column of numbers says that they were measured in the samples. */
  isMeasured(index: number): boolean {
    const heading = withoutReference(this.columns[index].heading);
    const contents = this.contents[index];
    if (shareOf(contents, 'number') < 0.5) return false;
    const isOfLevels =
      unitInHeading(heading) === 'dB' || (contents.units.get('dB') ?? 0) * 2 > contents.filled;
    return givesMeasuredUnit(heading) || (isOfLevels && namesMeasure(heading));
  }

  /** Leaves a column out, as `who` says that it holds how loud the samples are. */
  leaveMeasured(index: number, who: string): void {
    this.#ofFiles.add(index);
    this.columns[index].evidence.push(
      `${who} tells how loud the samples are, and sets no level. If they are levels to set, call the column "Level (dB)".`,
    );
  }

  /** What stands in the column of a meaning. */
  contentsOf(meaning: ColumnMeaning): ColumnContents | undefined {
    const index = this.taken.get(meaning);
    return index === undefined ? undefined : this.contents[index];
  }

  /** Gives a column a meaning; where another one has it already, the column repeats that one. */
  claim(index: number, meaning: ColumnMeaning, confidence: number, evidence: string): void {
    const column = this.columns[index];
    const holder = this.taken.get(meaning);
    const single = meaning !== 'comment' && meaning !== 'row_number' && meaning !== 'unknown';
    if (single && holder !== undefined && holder !== index) {
      column.evidence.push(
        `${evidence} But column ${holder + 1} gives the ${meaningNames[meaning]} already.`,
      );
      column.repeats = holder;
      return;
    }
    if (this.taken.get(column.meaning) === index) this.taken.delete(column.meaning);
    column.meaning = meaning;
    column.confidence = confidence;
    column.evidence.push(evidence);
    if (single) this.taken.set(meaning, index);
  }

  /** Columns that no heading explains, with something in them; not those of what files are as files. */
  rest(): number[] {
    return this.columns
      .filter(
        ({ index, meaning, repeats, isAim, unit }) =>
          meaning === 'unknown' &&
          repeats === undefined &&
          !(isAim && unit === 'cents') &&
          !this.chosen.has(index) &&
          !this.#ofFiles.has(index) &&
          this.contents[index].filled > 0,
      )
      .map(({ index }) => index);
  }
}

/**
 * The rows without lines of words, as a greeting with a comma inside is one, and a remark above or below all others: they name no file, as
 * most do, and have no digit, or fewer cells than any row of a file.
 */
function withoutWords(cells: TableCells, rows: readonly number[]): readonly number[] {
  const texts = new Map(
    rows.map((row) => {
      const { start, end } = cells.rowSpan(row);
      return [row, cells.text.slice(start, Math.min(end, start + longestLine))] as const;
    }),
  );
  const files = rows.filter((row) => namesAudioFileIn(texts.get(row) ?? ''));
  if (files.length * 2 <= rows.length) return rows;
  const named = new Set(files);
  const least = Math.min(...files.map((row) => cells.filled(row)));
  const isAtEnd = (at: number) => at < mostAtEnds || at >= rows.length - mostAtEnds;
  return rows.filter((row, at) => {
    const text = texts.get(row) ?? '';
    if (named.has(row)) return true;
    const isWords = cells.filled(row) <= mostInWords && !/\d/.test(text) && /\p{L}{3}.*\p{L}{3}/u.test(text);
    return !isWords && !(isAtEnd(at) && cells.filled(row) < least && /\p{L}{3}/u.test(text));
  });
}

/** Whether nearly all cells of a column are keys. */
export function isKeys(contents: ColumnContents): boolean {
  const { filled, keys, unmarked } = contents;
  return filled > 0 && keys > 0 && (keys + unmarked) / filled >= 0.95;
}
