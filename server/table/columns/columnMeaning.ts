import { wordsOf } from '../../trade/languages/spelling';
import type { ColumnMeaning } from '../../trade/meaning';
import { keyMeanings, meaningNames } from '../../trade/meaning';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';
import type { ColumnContents } from './columnContents';
import { columnContents, shareOf, spread } from './columnContents';
import type { ColumnReading } from './columnReading';
import { columnName } from './columnReading';
import { fitOf } from './headingFit';
import { languageOf, readHeading } from './headings';
import { findKeyOrder, orderShare } from './keyOrder';
import { labelsSideBySide } from './labelsSideBySide';

const mostRows = 400;
const mostLooks = 100_000;
const mostKeyColumns = 8;

/**
 * Finds what each column of a table holds: from its heading, unless the cells below contradict it, else from the
 * cells alone. `chosen` gives meanings that a person has set, by column.
 */
export function readColumns(
  cells: TableCells,
  rows: TableRows,
  chosen: ReadonlyMap<number, ColumnMeaning> = new Map(),
): ColumnReading[] {
  return new ColumnReader(cells, rows, chosen).read();
}

class ColumnReader {
  readonly #columns: ColumnReading[] = [];
  readonly #contents: ColumnContents[] = [];
  readonly #taken = new Map<ColumnMeaning, number>();
  readonly #chosen: ReadonlyMap<number, ColumnMeaning>;
  /** Whether any heading is known; then cells alone decide only where they leave no doubt. */
  #headingsKnown = false;
  #holdsFiles: boolean[] = [];
  /** Whether the headings were found one column to the left of what they are for. */
  #isShifted = false;

  constructor(cells: TableCells, rows: TableRows, chosen: ReadonlyMap<number, ColumnMeaning>) {
    this.#chosen = chosen;
    // Title lines and totals say nothing of the columns.
    const wide = rows.data.filter((row) => cells.filled(row) > 1);
    const most = Math.max(20, Math.min(mostRows, Math.floor(mostLooks / Math.max(1, rows.width))));
    const looked = spread(wide.length > 0 ? wide : rows.data, most);
    for (let index = 0; index < rows.width; index++) {
      const { text: heading, cell } = rows.headings[index];
      this.#columns.push({
        index,
        heading,
        headingSpan: cell < 0 ? undefined : { start: cells.starts[cell], end: cells.ends[cell] },
        meaning: 'unknown',
        unit: undefined,
        confidence: 0,
        evidence: [],
        repeats: undefined,
      });
      this.#contents.push(columnContents(cells, looked, index));
    }
  }

  read(): ColumnReading[] {
    this.#holdsFiles = this.#contents.map((contents) => shareOf(contents, 'file') >= 0.5);
    for (const [index, meaning] of this.#chosen) {
      if (this.#columns[index]) this.#claim(index, meaning, 1, 'Set by hand.');
    }
    this.#shiftHeadings();
    this.#fromHeadings();
    this.#settleSecondRange();
    this.#settleKeyAndVelocity();
    this.#settleLoopPoints();
    this.#settleFromTo();
    this.#swapInverted('lokey', 'hikey');
    this.#swapInverted('lovel', 'hivel');
    this.#fromContents();
    return this.#columns;
  }

  #claim(index: number, meaning: ColumnMeaning, confidence: number, evidence: string): void {
    const column = this.#columns[index];
    const holder = this.#taken.get(meaning);
    const single = meaning !== 'comment' && meaning !== 'row_number' && meaning !== 'unknown';
    if (single && holder !== undefined && holder !== index) {
      column.evidence.push(
        `${evidence} But column ${holder + 1} gives the ${meaningNames[meaning]} already.`,
      );
      column.repeats = holder;
      return;
    }
    if (this.#taken.get(column.meaning) === index) this.#taken.delete(column.meaning);
    column.meaning = meaning;
    column.confidence = confidence;
    column.evidence.push(evidence);
    if (single) this.#taken.set(meaning, index);
  }

  /** Above a column without a heading of its own, as that of the row numbers, headings may stand one column too far left. */
  #shiftHeadings(): void {
    const last = this.#columns.length - 1;
    if (last < 2 || this.#chosen.size > 0 || this.#columns[last]?.heading !== '') return;
    if (this.#contents[last]?.filled === 0 || this.#columns[0]?.heading === '') return;
    if (this.#agreement(1) < this.#agreement(0) + 2) return;
    for (let index = last; index >= 0; index--) {
      const column = this.#columns[index];
      column.heading = this.#columns[index - 1]?.heading ?? '';
      column.headingSpan = this.#columns[index - 1]?.headingSpan;
    }
    this.#isShifted = true;
  }

  /** How many more headings agree with the cells than contradict them, if they stood so many columns to the right. */
  #agreement(shift: number): number {
    const files = this.#holdsFiles.filter(Boolean).length;
    let sum = 0;
    for (const { index, heading } of this.#columns) {
      const contents = this.#contents[index + shift];
      const meaning = heading === '' ? undefined : readHeading(heading)?.meaning;
      if (!contents || !meaning) continue;
      const fit = fitOf(meaning, contents, files > (this.#holdsFiles[index + shift] ? 1 : 0));
      sum += fit === 'yes' ? 1 : fit === 'no' ? -1 : 0;
    }
    return sum;
  }

  #fromHeadings(): void {
    const fileColumns = this.#holdsFiles.filter(Boolean).length;
    const language = languageOf(this.#columns.map(({ heading }) => heading));
    const unsure: { index: number; meaning: ColumnMeaning }[] = [];
    for (const column of this.#columns) {
      const heading = readHeading(column.heading, language);
      if (!heading) continue;
      this.#headingsKnown = true;
      column.unit = heading.unit;
      if (this.#chosen.has(column.index)) continue;
      const contents = this.#contents[column.index];
      const otherFiles = fileColumns > (this.#holdsFiles[column.index] ? 1 : 0);
      const fit = fitOf(heading.meaning, contents, otherFiles);
      if (fit === 'yes') {
        this.#claim(
          column.index,
          heading.meaning,
          this.#isShifted ? 0.8 : 0.95,
          this.#isShifted
            ? 'The headings are taken to stand one column to the left of what they are for; so they agree with the cells.'
            : `Its heading says ${meaningNames[heading.meaning]}.`,
        );
      } else if (fit === 'unsure') unsure.push({ index: column.index, meaning: heading.meaning });
      else {
        column.evidence.push(
          `Its heading says ${meaningNames[heading.meaning]}, but the cells below it do not: they count for more.`,
        );
      }
    }
    // A column that holds what its heading says comes before an empty one of the same heading.
    for (const { index, meaning } of unsure) {
      const empty = this.#contents[index]?.filled === 0;
      const doubt = empty ? 'its cells are empty' : 'only some of its cells agree';
      this.#claim(index, meaning, empty ? 0.7 : 0.6, `Its heading says ${meaningNames[meaning]}; ${doubt}.`);
    }
  }

  /** `Low` and `High` twice, under a line of wider headings: the second pair is that of the velocities. */
  #settleSecondRange(): void {
    const again = (meaning: ColumnMeaning) =>
      this.#columns.find(({ index, repeats }) => {
        const contents = this.#contents[index];
        return (
          repeats !== undefined && repeats === this.#taken.get(meaning) && isKeys(contents) && !contents.named
        );
      });
    const low = again('lokey');
    const high = again('hikey');
    if (!low || !high || this.#taken.has('lovel') || this.#taken.has('hivel')) return;
    const order = orderShare(this.#contents[low.index], this.#contents[high.index]);
    if (order < 0.95) return;
    for (const [column, meaning] of [
      [low, 'lovel'],
      [high, 'hivel'],
    ] as const) {
      column.repeats = undefined;
      column.evidence.length = 0;
      const evidence = 'Low and high stand twice; the second pair holds numbers as velocities are.';
      this.#claim(column.index, meaning, 0.7, evidence);
    }
  }

  /** `Key` alone, or a range in one cell, means something else beside low and high columns. */
  #settleKeyAndVelocity(): void {
    const ranged = (index: number) => shareOf(this.#contents[index], 'note-range', 'number-range') >= 0.5;
    const pairs = [
      { low: 'lokey', high: 'hikey', range: 'key_range' },
      { low: 'lovel', high: 'hivel', range: 'velocity_range' },
    ] as const;
    for (const { low, high, range } of pairs) {
      for (const meaning of [
        low,
        high,
        ...(range === 'key_range' ? (['key', 'pitch_keycenter'] as const) : []),
      ]) {
        const index = this.#taken.get(meaning);
        if (index === undefined || this.#taken.has(range) || !ranged(index)) continue;
        if (this.#chosen.has(index)) continue;
        this.#claim(index, range, 0.9, 'Its cells hold ranges.');
      }
      const index = this.#taken.get(range);
      if (index === undefined || ranged(index) || this.#chosen.has(index)) continue;
      const missing = !this.#taken.has(low) ? low : !this.#taken.has(high) ? high : undefined;
      if (missing && (this.#taken.has(low) || this.#taken.has(high))) {
        this.#claim(index, missing, 0.7, 'The other end of the range stands in a column of its own.');
      } else if (missing && range === 'velocity_range' && this.#contents[index].filled > 0) {
        this.#claim(
          index,
          high,
          0.6,
          'Its cells are single velocities, taken for the highest of each layer.',
        );
      }
    }
    const key = this.#taken.get('key');
    if (key === undefined || this.#chosen.has(key)) return;
    if (this.#taken.has('lokey') || this.#taken.has('hikey') || this.#taken.has('key_range')) {
      this.#claim(
        key,
        'pitch_keycenter',
        0.85,
        'The keys it sounds on stand in other columns: this is the root key.',
      );
    } else if (this.#taken.has('pitch_keycenter')) {
      this.#claim(
        key,
        'key_range',
        0.8,
        'The root key stands in another column: this is the key it sounds on.',
      );
    }
  }

  /** `Start` and `End` right behind a loop switch are those of the loop. */
  #settleLoopPoints(): void {
    const loop = this.#taken.get('loop');
    const [start, end] = [this.#taken.get('offset'), this.#taken.get('end')];
    if (loop === undefined || start !== loop + 1 || end !== loop + 2) return;
    if (this.#taken.has('loop_start') || this.#taken.has('loop_end')) return;
    if (this.#chosen.has(start) || this.#chosen.has(end)) return;
    const words = [start, end].map((index) => wordsOf(this.#columns[index]?.heading ?? '').length);
    if (words.some((count) => count !== 1)) return;
    const evidence =
      'They stand right behind the loop, so they are taken for its points, not those of the sample.';
    this.#claim(start, 'loop_start', 0.7, evidence);
    this.#claim(end, 'loop_end', 0.7, evidence);
  }

  /** `From` and `To` that hold keys are the ends of the key range: no sample ends within its first 128 frames. */
  #settleFromTo(): void {
    const [start, end] = [this.#taken.get('offset'), this.#taken.get('end')];
    if (start === undefined || end === undefined || this.#chosen.has(start) || this.#chosen.has(end)) return;
    if ((['lokey', 'hikey', 'key_range', 'key'] as const).some((meaning) => this.#taken.has(meaning))) return;
    const [low, high] = [start, end].map((index) => this.#contents[index]);
    if (!low || !high || !isKeys(low) || !isKeys(high) || high.greatest <= 0 || orderShare(low, high) < 0.95)
      return;
    const words = [start, end].map((index) => wordsOf(this.#columns[index]?.heading ?? '').length);
    if (words.some((count) => count !== 1)) return;
    const evidence = 'Its numbers are keys; no sample ends within its first 128 frames.';
    this.#claim(start, 'lokey', 0.8, evidence);
    this.#claim(end, 'hikey', 0.8, evidence);
  }

  #swapInverted(low: ColumnMeaning, high: ColumnMeaning): void {
    const lower = this.#taken.get(low);
    const upper = this.#taken.get(high);
    if (lower === undefined || upper === undefined || this.#chosen.has(lower) || this.#chosen.has(upper))
      return;
    const a = this.#contents[lower];
    const b = this.#contents[upper];
    if (orderShare(a, b) > 0.2 || orderShare(b, a) < 0.8) return;
    const because = `The values under "${meaningNames[low]}" lie above those under "${meaningNames[high]}", so the two headings are taken the other way round.`;
    this.#taken.delete(low);
    this.#taken.delete(high);
    this.#claim(lower, high, 0.7, because);
    this.#claim(upper, low, 0.7, because);
  }

  /** Columns that no heading explains, with something in them. */
  #rest(): number[] {
    return this.#columns
      .filter(
        ({ index, meaning, repeats }) =>
          meaning === 'unknown' &&
          repeats === undefined &&
          !this.#chosen.has(index) &&
          this.#contents[index].filled > 0,
      )
      .map(({ index }) => index);
  }

  #fromContents(): void {
    const rest = this.#rest();
    this.#findSample(rest);
    this.#findSideSamples();
    this.#findDynamics();
    this.#findPlain();
    this.#findKeys();
    if (!this.#headingsKnown) this.#findFrames();
    for (const index of this.#rest()) {
      const column = this.#columns[index];
      if (column.evidence.length === 0)
        column.evidence.push(
          column.heading === ''
            ? 'It has no heading, and its cells leave open what they are.'
            : 'Its heading is not known, and its cells leave open what they are.',
        );
    }
  }

  #findSample(rest: readonly number[]): void {
    if (this.#taken.has('sample')) return;
    let best = -1;
    for (const index of rest) {
      if (!this.#holdsFiles[index]) continue;
      const share = shareOf(this.#contents[index], 'file');
      if (best < 0 || share > shareOf(this.#contents[best], 'file')) best = index;
    }
    if (best >= 0) {
      this.#claim(best, 'sample', 0.9, 'Its cells are names of audio files.');
      return;
    }
    const keys =
      keyMeanings.some((meaning) => this.#taken.has(meaning)) ||
      rest.some((index) => isKeys(this.#contents[index]));
    const named = rest.find((index) => {
      const contents = this.#contents[index];
      return shareOf(contents, 'text') >= 0.8 && contents.distinct * 2 > Math.min(contents.filled, 256);
    });
    if (keys && named !== undefined)
      this.#claim(named, 'sample', 0.5, 'Its cells are names that differ row by row.');
  }

  /** Several columns of samples are a zone each where their headings say how they belong together. */
  #findSideSamples(): void {
    const sample = this.#columns[this.#taken.get('sample') ?? -1];
    if (!sample || this.#chosen.has(sample.index)) return;
    const others = this.#rest().filter((index) => this.#holdsFiles[index]);
    if (others.length === 0) return;
    const columns = this.#columns.filter((column) => column === sample || others.includes(column.index));
    const labels = labelsSideBySide(columns);
    const [label] = labels ?? [];
    const stated = {
      dynamics: ['lovel', 'hivel', 'velocity_range', 'dynamics'],
      round_robin: ['seq_position'],
      group: ['group'],
    } as const;
    if (!labels || !label || stated[label.kind].some((meaning) => this.#taken.has(meaning))) {
      const because = `Its cells are names of audio files too, but each row is taken for one zone, with the sample in ${columnName(sample)}. If they are zones of their own, give each a row.`;
      for (const index of others) this.#columns[index]?.evidence.splice(0, Number.POSITIVE_INFINITY, because);
      return;
    }
    for (const [at, column] of columns.entries()) {
      column.meaning = 'sample';
      column.confidence = 0.9;
      column.side = labels[at];
      column.evidence = ['Its cells are names of audio files; each column of them makes a zone of each row.'];
    }
  }

  /** Letters such as `mf`, or words such as `soft` under a heading of velocities, where no velocities are given. */
  #findDynamics(): void {
    if (['lovel', 'hivel', 'velocity_range'].some((meaning) => this.#taken.has(meaning as ColumnMeaning)))
      return;
    for (const index of this.#rest()) {
      const column = this.#columns[index];
      const { filled, distinct, dynamicLetters, dynamicWords } = this.#contents[index];
      const meaning = readHeading(column.heading)?.meaning;
      const headed = meaning === 'velocity_range' || meaning === 'lovel' || meaning === 'hivel';
      const telling = dynamicLetters + (headed ? dynamicWords : 0);
      if (distinct < 2 || telling < filled * 0.9) continue;
      column.evidence.length = 0;
      this.#claim(index, 'dynamics', 0.9, 'Its cells are dynamics.');
      return;
    }
  }

  /** What cells show by their form: units, ranges, pan positions, counting, names that recur. */
  #findPlain(): void {
    for (const index of this.#rest()) {
      const contents = this.#contents[index];
      const half = contents.filled / 2;
      const claimFree = (meaning: ColumnMeaning, confidence: number, evidence: string) => {
        if (!this.#taken.has(meaning)) this.#claim(index, meaning, confidence, evidence);
      };
      if (index === 0 && contents.counting) claimFree('row_number', 0.8, 'Its numbers count the rows.');
      else if (shareOf(contents, 'note-range') >= 0.5) {
        if (!this.#taken.has('lokey')) claimFree('key_range', 0.85, 'Its cells are ranges of notes.');
      } else if (shareOf(contents, 'number-range') >= 0.5 && !this.#headingsKnown) {
        const keysKnown =
          contents.portions >= half || this.#taken.has('key_range') || this.#noteRangesAhead(index);
        claimFree(keysKnown ? 'velocity_range' : 'key_range', 0.6, 'Its cells are ranges of numbers.');
      } else if ((contents.units.get('dB') ?? 0) >= half) claimFree('volume', 0.85, 'Its cells are in dB.');
      else if ((contents.units.get('cents') ?? 0) >= half) claimFree('tune', 0.85, 'Its cells are in cents.');
      else if ((contents.units.get('semitones') ?? 0) >= half)
        claimFree('transpose', 0.85, 'Its cells are in semitones.');
      else if (contents.counts.pan > 0 && shareOf(contents, 'pan', 'number') >= 0.9)
        claimFree('pan', 0.85, 'Its cells are pan positions.');
      else if (
        !this.#headingsKnown &&
        shareOf(contents, 'text') >= 0.8 &&
        contents.distinct * 2 <= contents.filled
      )
        claimFree('group', 0.5, 'Its cells are names that recur.');
      else if (
        !this.#headingsKnown &&
        contents.fractional > 0 &&
        contents.negative > 0 &&
        contents.least >= -96 &&
        contents.greatest <= 24 &&
        shareOf(contents, 'number') >= 0.9
      )
        claimFree('volume', 0.4, 'Its numbers have fractions and lie within −96 and 24, as levels in dB do.');
    }
  }

  #noteRangesAhead(index: number): boolean {
    return this.#contents.some((contents, other) => other > index && shareOf(contents, 'note-range') >= 0.5);
  }

  #findKeys(): void {
    const candidates = this.#rest()
      .filter((index) => {
        const contents = this.#contents[index];
        return isKeys(contents) && (!this.#headingsKnown || contents.named);
      })
      .slice(0, mostKeyColumns);
    const taken = new Set(this.#taken.keys());
    if (taken.has('key_range')) for (const meaning of ['lokey', 'hikey', 'key'] as const) taken.add(meaning);
    if (taken.has('velocity_range')) for (const meaning of ['lovel', 'hivel'] as const) taken.add(meaning);
    const found = findKeyOrder(
      candidates.map((index) => this.#contents[index]),
      taken,
    );
    for (const [at, meaning] of (found?.meanings ?? []).entries()) {
      this.#claim(candidates[at], meaning, found?.confidence ?? 0, found?.evidence ?? '');
    }
  }

  /** Two or four columns of frame counts in rising order. */
  #findFrames(): void {
    const frames = this.#rest().filter((index) => {
      const contents = this.#contents[index];
      return (
        shareOf(contents, 'number') >= 0.9 &&
        contents.fractional === 0 &&
        contents.negative === 0 &&
        contents.greatest > 1000
      );
    });
    const [first, second, third, fourth] = frames;
    const ordered = (a: number | undefined, b: number | undefined) =>
      a !== undefined && b !== undefined && orderShare(this.#contents[a], this.#contents[b]) >= 0.95;
    const evidence = 'Its numbers are frame counts that rise from column to column.';
    if (frames.length === 2 && ordered(first, second)) {
      this.#claim(first, 'loop_start', 0.45, evidence);
      this.#claim(second, 'loop_end', 0.45, evidence);
    } else if (frames.length === 4 && ordered(first, second) && ordered(third, fourth)) {
      const meanings = ['offset', 'end', 'loop_start', 'loop_end'] as const;
      for (const [at, meaning] of meanings.entries()) this.#claim(frames[at], meaning, 0.4, evidence);
    }
  }
}

function isKeys(contents: ColumnContents): boolean {
  return contents.filled > 0 && contents.keys / contents.filled >= 0.95;
}
