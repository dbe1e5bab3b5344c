import { byCount } from '../../model/wording/counted';
import type { SecondPoint } from '../../trade/readings/loopReading';
import { endsIn } from '../../trade/statements/playing/statedEnds';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { Positions } from './positions';

/** The heading of the open SFZ format, by which the end is the last frame that is played (sfzformat.com, `loop_end`). */
const opcode = 'loop_end';
const kinds: readonly SecondPoint[] = ['end', 'length', 'open'];

/** What the points of all loops of a table say together. */
interface Tally {
  /** Loops whose second number is no length for sure, as it would reach past the end of the sample. */
  tooLong: number;
  /** Loops that end before they start, if the second number is an end. */
  backward: number;
  /** Loops that end with the sample, or with the loop of the file itself, if the second number is a length. */
  lengths: number;
  ends: number;
  /** As ends: the same as the number of frames, or one behind the end of the file's own loop. */
  behind: number;
  /** As ends: the last frame, or the end of the file's own loop. */
  included: number;
  /** Starts and ends that are both one more than those of the file's own loop. */
  fromOne: number;
}

/**
 * Decides for all loops of a table together what their points mean, with the sample files as witnesses: whether the second
 * number is an end or a length, and whether an end is the last frame of the loop or the one behind it.
 */
export class LoopJudge {
  readonly #starts: Float64Array;
  readonly #seconds: Float64Array;
  /** One more than the position among {@link kinds}; 0 where there are no points. */
  readonly #kinds: Uint8Array;
  readonly #times: Uint8Array;
  #areLengths = false;
  #areTimesBehind = false;
  /** What is taken off each start and each end. */
  #fromStart = 0;
  #fromEnd = 0;

  constructor(
    readonly table: ZoneCells,
    readonly positions: Positions,
  ) {
    const most = table.end - table.first;
    this.#starts = new Float64Array(most);
    this.#seconds = new Float64Array(most);
    this.#kinds = new Uint8Array(most);
    this.#times = new Uint8Array(most);
  }

  /** Keeps the points of a zone, in frames; `isTime`: they were counted as a time. */
  keep(zone: number, start: number, second: number, kind: SecondPoint, isTime: boolean): void {
    const at = zone - this.table.first;
    this.#starts[at] = start;
    this.#seconds[at] = second;
    this.#kinds[at] = kinds.indexOf(kind) + 1;
    this.#times[at] = isTime ? 1 : 0;
  }

  /** Decides for all of them, with notes at a column. */
  settle(column: ColumnReading | undefined): void {
    if (!column) return;
    if (this.#times.includes(1)) this.#decideTimes(column);
    const tally = this.#tally();
    this.#areLengths = this.#decideLengths(column, tally);
    if (!this.#areLengths) this.#decideEnds(column, tally);
  }

  /** First and last frame of a zone's loop; `undefined` where it has no points. */
  pointsOf(zone: number): { start: number; end: number } | undefined {
    const at = zone - this.table.first;
    const kind = kinds[this.#kinds[at] - 1];
    if (!kind) return undefined;
    const [start, second] = [this.#starts[at], this.#seconds[at]];
    // Frames count from 0 and the last one belongs to the loop.
    if (kind === 'length' || this.#areLengths) return { start, end: second === 0 ? 0 : start + second - 1 };
    if (this.#times[at] === 1) {
      // What ends with the sample ends with its last frame, which stands before that time.
      const isLast = second === this.positions.framesIn(zone);
      return { start, end: second > 0 && (this.#areTimesBehind || isLast) ? second - 1 : second };
    }
    return { start: Math.max(0, start - this.#fromStart), end: second - this.#fromEnd };
  }

  #tally(): Tally {
    const tally: Tally = {
      tooLong: 0,
      backward: 0,
      lengths: 0,
      ends: 0,
      behind: 0,
      included: 0,
      fromOne: 0,
    };
    const { table } = this;
    const { loopOf } = table.options;
    for (let at = 0; at < this.#kinds.length; at++) {
      const kind = kinds[this.#kinds[at] - 1];
      if (kind === undefined || kind === 'length' || this.#times[at] === 1) continue;
      const [start, second] = [this.#starts[at], this.#seconds[at]];
      if (second > 0) tally.ends++;
      if (second > 0 && second <= start) tally.backward++;
      const zone = table.first + at;
      const frames = this.positions.framesIn(zone);
      const own = loopOf?.(table.zones.sample(zone));
      if (frames !== undefined) {
        if (start + second > frames) tally.tooLong++;
        else if (start + second === frames) tally.lengths++;
        if (second === frames) tally.behind++;
        else if (second === frames - 1) tally.included++;
      }
      if (!own) continue;
      if (start === own.start && start + second === own.end + 1) tally.lengths++;
      if (second === own.end + 1) {
        if (start === own.start + 1) tally.fromOne++;
        else tally.behind++;
      } else if (second === own.end) tally.included++;
    }
    return tally;
  }

  #decideLengths(column: ColumnReading, tally: Tally): boolean {
    const { ends, backward, lengths, tooLong } = tally;
    if (ends === 0 || tooLong > 0) return false;
    const isOpen = this.#kinds.includes(kinds.indexOf('open') + 1);
    // Under a heading that says end, a number is a length only where the files say so.
    const isLength = isOpen ? backward > 0 || lengths > 0 : lengths > 0 && backward > 0;
    if (isOpen || isLength) {
      const because =
        lengths > 0
          ? 'start and length together end where the samples do'
          : backward > 0
            ? 'some of them lie before the start'
            : 'none of them lies before the start';
      // Nothing but numbers that could be both.
      const isInDoubt = !isLength && tally.included + tally.behind + tally.fromOne === 0;
      const doubt = isInDoubt ? ' If it is a length, say so in the heading.' : '';
      this.table.noteColumn(
        column,
        `The second number of each loop in ${columnName(column)} is read as its ${isLength ? 'length' : 'end'}, as ${because}.${doubt}`,
      );
    }
    return isLength;
  }

  #decideEnds(column: ColumnReading, { behind, included, fromOne, ends, backward }: Tally): void {
    const { firstFrame, ends: saidAround } = this.table.options.statements;
    if (firstFrame?.is === 1 || (fromOne > 0 && included === 0 && behind === 0)) {
      this.#fromStart = 1;
      this.#fromEnd = 1;
      const because = firstFrame
        ? `as "${shortened(firstFrame.text)}" says`
        : `as ${filesSay(fromOne, ends)}`;
      this.#noteEnds(column, `count frames from 1, ${because}. 1 is taken off each start and end`);
      return;
    }
    const said = endsIn(column.heading) ?? saidAround;
    if (said) {
      if (said.are === 'included') return;
      this.#fromEnd = 1;
      const because = `as "${shortened(said.text)}" says`;
      this.#noteEnds(column, `name the frame after their last one, ${because}. 1 is taken off each end`);
      return;
    }
    if (included > behind || ends === backward) return;
    if (behind === 0 || included > 0) {
      // The name of the open format's opcode says which frame is meant, where no file says otherwise.
      if (column.heading === opcode) return;
      this.table.noteColumn(
        column,
        `Nothing says whether the loops in ${columnName(column)} end with the given frame or with the one before it. The given frame is read as the last one that is played. If the loops end before it, take 1 off loop_end.`,
      );
      return;
    }
    this.#fromEnd = 1;
    this.#noteEnds(
      column,
      `name the frame after their last one, as ${filesSay(behind, ends)}. 1 is taken off each end`,
    );
  }

  /** A time lies between two frames, so that a loop can end with either, unless the files or the text tell. */
  #decideTimes(column: ColumnReading): void {
    const ends = [...this.#kinds.keys()].filter(
      (at) => this.#times[at] === 1 && kinds[this.#kinds[at] - 1] !== 'length',
    );
    const { loopOf, statements } = this.table.options;
    let [behind, included] = [0, 0];
    for (const at of ends) {
      const zone = this.table.first + at;
      const own = loopOf?.(this.table.zones.sample(zone));
      if (this.#seconds[at] === this.positions.framesIn(zone)) behind++;
      else if (own && this.#seconds[at] === own.end + 1) behind++;
      else if (own && this.#seconds[at] === own.end) included++;
    }
    const said = endsIn(column.heading) ?? statements.ends;
    const areShares = this.positions.styleOf(column).unit === 'percent';
    this.#areTimesBehind = said ? said.are === 'behind' : behind > 0 && included === 0;
    if (this.#areTimesBehind)
      this.#noteEnds(
        column,
        `end with the frame before the ${areShares ? 'place' : 'time'} that is given, as ${said ? `"${shortened(said.text)}" says` : filesSay(behind, ends.length)}`,
      );
    else if (ends.length > 0 && !said)
      this.table.noteColumn(
        column,
        `The loop ends in ${columnName(column)} are ${areShares ? 'percentages' : 'times'}, not frames. The frame at each is read as the last one that is played. If the loops end before it, take 1 off loop_end.`,
      );
  }

  #noteEnds(column: ColumnReading, what: string): void {
    this.table.noteColumn(column, `The loops in ${columnName(column)} ${what}.`);
  }
}

function filesSay(count: number, all: number): string {
  return `only then ${all === 1 ? 'it agrees with its sample file' : `${count} of ${all} ${byCount(count, 'agrees', 'agree')} with the sample files`}`;
}
