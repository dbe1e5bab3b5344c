import { byCount } from '../../model/wording/counted';
import type { Unit } from '../../trade/meaning';
import { positionMeanings } from '../../trade/meaning';
import { readLoop } from '../../trade/readings/loopReading';
import type { NumberReading } from '../../trade/readings/numberReading';
import { readNumber } from '../../trade/readings/numberReading';
import { DistinctTexts } from '../cells/distinctTexts';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened, statedReason } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import { endsAreStarts } from './touchingPieces';

const mostFrameDigits = 15;
/** Samples seldom last longer than a minute (our choice). */
const longestSeconds = 60;
/** What positions are counted in. */
const positionUnits = ['frames', 's', 'ms', 'percent'] as const;
type PositionUnit = (typeof positionUnits)[number];

const unitWords: Readonly<Record<PositionUnit, string>> = {
  frames: 'frames',
  s: 'seconds',
  ms: 'milliseconds',
  percent: 'percent of the sample',
};

/** How the positions of a column are written. */
interface PositionStyle {
  unit: PositionUnit | undefined;
  /** The decimal mark, where some cell shows it. */
  decimal: '.' | ',' | undefined;
  /** Whether marks before three last digits part thousands of a time. */
  arePart?: boolean;
  /** How many of the numbers make up one of the unit, as 10 for tenths of a second; 1 where left out. */
  parts?: number;
}

/** Where a number stands, and whether it is an end. */
interface Place {
  zone: number;
  cell: number;
  column: ColumnReading;
  isEnd: boolean;
}

/** Reads positions in samples as frames: counts, times, and percentages of the length. */
export class Positions {
  readonly #styles = new Map<ColumnReading, PositionStyle>();
  #guess: PositionUnit | undefined;
  #arePart: boolean | undefined;

  /** `rates` are the sample rates that the table gives, by zone; 0 where it gives none. */
  constructor(
    readonly table: ZoneCells,
    readonly rates: Float64Array | undefined,
  ) {}

  /** Reads where the samples of all zones start and end; 0 is where one starts, and none ends there. */
  read(): void {
    const { table } = this;
    for (const meaning of ['offset', 'end'] as const) {
      const column = table.column(meaning);
      if (!column) continue;
      const isEnd = meaning === 'end';
      const frames = table.zones.column(meaning);
      const behind = isEnd && this.#endsAreBehind(column) ? 1 : 0;
      table.each(column, (zone, cell) => {
        const frame = this.frameIn({ zone, cell, column, isEnd });
        if (frame === undefined || frame <= 0) return;
        frames.set(zone, cell, frame - behind);
        this.noteBeyond(zone, cell, column, frame - behind);
      });
    }
  }

  /** Whether the ends of samples are counts of their frames: then the last frame is the one before. */
  #endsAreBehind(column: ColumnReading): boolean {
    const { table } = this;
    let behind = 0;
    let last = 0;
    if (table.options.framesOf && this.styleOf(column).unit === 'frames')
      table.each(column, (zone, cell) => {
        const frame = table.cells.digits(cell, mostFrameDigits);
        const frames = this.framesIn(zone);
        if (frames === undefined || frame < 0) return;
        if (frame === frames) behind++;
        else if (frame === frames - 1) last++;
      });
    const { ends } = table.options.statements;
    const areStarts = endsAreStarts(table, column);
    if (ends === undefined && !areStarts && (behind === 0 || last > 0)) return false;
    if (ends?.are === 'included') return false;
    const because = ends
      ? `as "${shortened(ends.text)}" says`
      : areStarts
        ? 'as pieces of a recording end where others start'
        : 'as its numbers equal the numbers of frames';
    table.noteColumn(
      column,
      `${columnName(column)} names the frame after the last one, ${because}. 1 is taken off each.`,
      'approximated',
    );
    return true;
  }

  /** How many frames the sample of a zone has, where that is known. */
  framesIn(zone: number): number | undefined {
    const frames = this.table.options.framesOf?.(this.table.zones.sample(zone));
    return frames === 0 ? undefined : frames;
  }

  /** The frame in a cell; anything else is noted and answered as `undefined`. */
  frameIn(place: Place): number | undefined {
    const { cell, column } = place;
    const style = this.styleOf(column);
    if (style.unit === 'frames') {
      const number = this.table.cells.digits(cell, mostFrameDigits);
      if (number >= 0) return number;
    }
    const readings = {
      of: (one: number) => this.#numberIn(this.table.cells.plain(one), style),
      read: (text: string) => this.#numberIn(text, style),
    };
    const reading = this.table.reading(readings, cell, column);
    if (reading) return this.framesOf(reading, place);
    this.table.drop(cell, column, 'is not a whole number of frames');
    return undefined;
  }

  /** A number as a column writes its positions. */
  numberIn(text: string, column: ColumnReading): NumberReading | undefined {
    return this.#numberIn(text, this.styleOf(column));
  }

  #numberIn(text: string, { unit, decimal, arePart }: PositionStyle): NumberReading | undefined {
    if (arePart) return readNumber(text.replace(/[.,](?=\d{3}(?!\d))/g, ''), 'time');
    const marks = decimal === ',' ? /[.'\u2019\s](?=\d{3}(?!\d))/g : /[,'\u2019\s](?=\d{3}(?!\d))/g;
    const plain = decimal === undefined ? text : text.replace(marks, '');
    return readNumber(plain, unit === 'frames' && decimal === undefined ? 'frames' : 'time');
  }

  /** A number as a frame: a time is counted in frames where the sample's rate is known. */
  framesOf(reading: NumberReading, place: Place): number | undefined {
    const { zone, cell, column, isEnd } = place;
    const { table } = this;
    const style = this.styleOf(column);
    const unit = reading.unit ?? style.unit;
    const perUnit = unit === undefined ? undefined : this.#framesPer(unit, zone);
    const parts = reading.unit === undefined ? (style.parts ?? 1) : 1;
    const frames = (reading.number / parts) * (perUnit ?? 1);
    if (!isPositionUnit(unit) || !Number.isFinite(frames)) {
      table.drop(cell, column, 'is not a whole number of frames');
      return undefined;
    }
    if (perUnit === undefined) {
      const lacking = unit === 'percent' ? 'length' : 'rate';
      const what = unit === 'percent' ? 'a percentage' : 'a time';
      table.drop(
        cell,
        column,
        `is ${what}, and the ${lacking} of its sample is not known, so no frame can be worked out`,
      );
      return undefined;
    }
    if (frames < 0) {
      table.drop(cell, column, 'is below frame 0');
      return undefined;
    }
    const whole = Math.round(frames);
    if (unit === 'frames' && Math.abs(frames - whole) > 1e-6) {
      table.drop(cell, column, 'is not a whole number of frames');
      return undefined;
    }
    if (Math.abs(frames - whole) > 1e-6)
      table.approximate(cell, column, `is written as the nearest frame, ${whole}`);
    // A time at the very end is behind the last frame.
    return isEnd && unit !== 'frames' && whole === this.framesIn(zone) ? whole - 1 : whole;
  }

  #framesPer(unit: Unit, zone: number): number | undefined {
    if (unit === 'frames') return 1;
    if (unit === 'percent') {
      const frames = this.framesIn(zone);
      return frames === undefined ? undefined : frames / 100;
    }
    const { rateOf, statements } = this.table.options;
    const rate = rateOf?.(this.table.zones.sample(zone)) ?? (this.rates?.[zone] || statements.sampleRate);
    return rate === undefined || rate === 0 ? undefined : unit === 'ms' ? rate * 0.001 : rate;
  }

  /** Notes a position that lies past the last frame of its sample. */
  noteBeyond(zone: number, cell: number, column: ColumnReading, frame: number): void {
    const frames = this.framesIn(zone);
    if (frames === undefined || frame < frames) return;
    const { table } = this;
    const isWritten = table.cells.digits(cell, mostFrameDigits) === frame;
    const what = `${isWritten ? 'is' : `leads to frame ${frame}, which is`} past frame ${frames - 1}, the last one of its sample`;
    table.assume(cell, column, `${what}. It is kept. Correct the number, or choose the right sample`);
  }

  /** How the positions of a column are written, found from all of its cells. */
  styleOf(column: ColumnReading): PositionStyle {
    let style = this.#styles.get(column);
    if (!style) {
      style = this.#findStyle(column);
      this.#styles.set(column, style);
    }
    return style;
  }

  #findStyle(column: ColumnReading): PositionStyle {
    const { table } = this;
    const marks = this.#marksIn([column]);
    const chosen = positionUnits.find((one) => one === table.options.scales?.get(column.index));
    const part = chosen === undefined ? table.countedPart(column, ['s', 'ms']) : undefined;
    const unit = chosen ?? part?.whole ?? this.#saidUnit(column) ?? this.#guessedUnit();
    column.scale = {
      taken: unit,
      reason: chosen
        ? ''
        : part || this.#saidUnit(column)
          ? statedReason
          : 'The numbers and the lengths of the samples tell.',
      options: positionUnits.map((id) => ({ id, label: unitWords[id] })),
    };
    if (part && isPositionUnit(unit)) return { unit, decimal: marks.decimal, parts: part.parts };
    if ((unit === 's' || unit === 'ms') && marks.groups > 0 && marks.isOpen && marks.decimal === undefined)
      return { unit, decimal: undefined, arePart: this.#partThousands(unit) };
    const isCount = unit === 'frames' && !marks.hasFractions;
    return { unit: isPositionUnit(unit) ? unit : undefined, decimal: isCount ? undefined : marks.decimal };
  }

  /**
   * Whether the mark in times such as `1.500` parts thousands: of milliseconds, which nobody counts in thousandths, else of those with
   * which loops end behind their starts and within their samples.
   */
  #partThousands(unit: 's' | 'ms'): boolean {
    this.#arePart ??= this.#findThousands(unit);
    return this.#arePart;
  }

  #findThousands(unit: 's' | 'ms'): boolean {
    const [parted, whole] = [this.#misfits(unit, true), this.#misfits(unit, false)];
    const arePart = unit === 'ms' ? parted <= whole : parted < whole;
    const example = this.#exampleOfMark();
    if (!example) return arePart;
    const number = this.#numberIn(example.text, { unit, decimal: undefined, arePart })?.number;
    const because =
      parted === whole
        ? `as is usual for ${unitWords[unit]}`
        : 'as otherwise loops would end before they start, or times would lie past the ends of samples or past a minute';
    const advice = arePart
      ? 'If its mark is a decimal one, write it with two digits behind the mark.'
      : 'If its mark parts thousands, write it without the mark.';
    this.table.noteColumn(
      example.column,
      `"${example.text}" in ${columnName(example.column)} is read as ${number} ${unitWords[unit]}, ${because}. ${advice}`,
    );
    return arePart;
  }

  /** The first number with a mark before three last digits, and its column. */
  #exampleOfMark(): { text: string; column: ColumnReading } | undefined {
    const { table } = this;
    for (const column of this.#timed())
      for (let zone = table.first; zone < table.end; zone++) {
        const cell = table.cellOf(table.zones.rows[zone], column);
        const text =
          cell < 0 ? undefined : /(?<![\d.,])\d{1,3}[.,]\d{3}(?![\d.,])/.exec(table.cells.plain(cell))?.[0];
        if (text !== undefined) return { text, column };
      }
    return undefined;
  }

  #timed(): ColumnReading[] {
    return positionMeanings.flatMap((meaning) => this.table.column(meaning) ?? []);
  }

  /** How many loops end before they start, and how many positions lie past the end of their samples, as numbers are read. */
  #misfits(unit: 's' | 'ms', arePart: boolean): number {
    const { table } = this;
    const style: PositionStyle = { unit, decimal: undefined, arePart };
    const starts = table.column('loop_start');
    const ends = table.column('loop_end');
    let count = 0;
    for (let zone = table.first; zone < table.end; zone++) {
      const row = table.zones.rows[zone];
      const at = (column: ColumnReading | undefined) => {
        const cell = table.cellOf(row, column);
        return cell < 0 ? undefined : this.#numberIn(table.cells.plain(cell), style)?.number;
      };
      const [start, end] = [at(starts), at(ends)];
      if (start !== undefined && end !== undefined && end > 0 && end <= start) count++;
      const frames = this.framesIn(zone);
      const per = this.#framesPer(unit, zone);
      const most =
        frames !== undefined && per !== undefined
          ? frames / per
          : longestSeconds * (unit === 'ms' ? 1000 : 1);
      for (const column of this.#timed()) {
        if (column.meaning !== 'loop') {
          if ((at(column) ?? 0) > most) count++;
          continue;
        }
        const cell = table.cellOf(row, column);
        const pair =
          cell < 0
            ? undefined
            : readLoop(table.cells.plain(cell), (text) => readNumber(text) && this.#numberIn(text, style));
        const [from, to] = [pair?.start?.number ?? 0, pair?.second?.number ?? 0];
        const end = pair?.secondIs === 'length' ? from + to : to;
        if (Math.max(from, end) > most) count++;
        if (pair?.secondIs === 'end' && end > 0 && end <= from) count++;
      }
    }
    return count;
  }

  #saidUnit(column: ColumnReading): Unit | undefined {
    return column.unit ?? this.table.stated(column)?.unit;
  }

  #marksIn(columns: readonly ColumnReading[]): Marks {
    const { cells, data } = this.table;
    const marks = new Marks();
    for (const column of columns) {
      const texts = new DistinctTexts(cells);
      for (const row of data) {
        const cell = this.table.cellOf(row, column);
        if (cell < 0 || cells.digits(cell, mostFrameDigits) >= 0) continue;
        const seen = texts.count;
        if (texts.numberOf(cell) === seen) marks.look(cells.plain(cell), data.length === 1);
      }
    }
    return marks;
  }

  /** What all columns of positions without a unit count in: one hand wrote them. */
  #guessedUnit(): PositionUnit {
    this.#guess ??= this.#guessUnit(
      positionMeanings
        .flatMap((meaning) => this.table.column(meaning) ?? [])
        .filter((column) => this.#saidUnit(column) === undefined),
    );
    return this.#guess;
  }

  /** Fractions are times; whether in seconds or milliseconds, the lengths of the samples tell. */
  #guessUnit(columns: readonly ColumnReading[]): PositionUnit {
    const marks = this.#marksIn(columns);
    const named = columns.map(columnName).join(' and ');
    if (marks.hasFractions) {
      const unit = this.#lieWithin(columns, marks.decimal, 's') ? 's' : 'ms';
      const what = `${named} ${byCount(columns.length, 'gives', 'give')} no unit; the numbers have fractions, so they are read as ${unitWords[unit]}.`;
      this.table.noteColumn(columns[0], what);
      return unit;
    }
    if (marks.groups === 0 || !marks.isOpen) return 'frames';
    // Numbers such as `1.250`, all with three digits behind the mark.
    const isTime = !this.#lieWithin(columns, undefined, 'frames') && this.#lieWithin(columns, undefined, 's');
    this.table.noteColumn(
      columns[0],
      isTime
        ? `The numbers in ${named} are read as seconds: as frames they would lie past the end of the samples.`
        : `The marks in the numbers in ${named} are read as thousands separators.`,
    );
    return isTime ? 's' : 'frames';
  }

  /** Whether all positions in some columns lie within their samples, as far as those are known, if counted in a unit. */
  #lieWithin(
    columns: readonly ColumnReading[],
    decimal: PositionStyle['decimal'],
    unit: 'frames' | 's',
  ): boolean {
    const { table } = this;
    let within = true;
    let greatest = 0;
    let known = 0;
    for (const column of columns) {
      table.each(column, (zone, cell) => {
        const text = table.cells.plain(cell);
        const numbers = column.meaning === 'loop' ? (text.match(/\d[\d.,'\u2019]*/g) ?? []) : [text];
        const frames = this.framesIn(zone);
        const per = this.#framesPer(unit, zone);
        for (const one of numbers) {
          const number = this.#numberIn(one, { unit, decimal })?.number;
          if (number === undefined) continue;
          greatest = Math.max(greatest, number);
          if (frames === undefined || per === undefined) continue;
          known++;
          if (number * per > frames) within = false;
        }
      });
    }
    return known > 0 ? within : unit === 'frames' || greatest <= longestSeconds;
  }
}

function isPositionUnit(unit: Unit | undefined): unit is PositionUnit {
  return unit !== undefined && (positionUnits as readonly Unit[]).includes(unit);
}

/** The marks in the numbers of a column. */
class Marks {
  /** How many numbers have a mark before three last digits. */
  groups = 0;
  /** How many have a fraction. */
  #fractions = 0;
  #fewest = 2;
  /** Whether nothing tells whether marks before three digits part thousands. */
  isOpen = true;
  decimal: '.' | ',' | undefined;

  /** Whether more than one number has a fraction, or the only one. */
  get hasFractions(): boolean {
    return this.#fractions >= this.#fewest;
  }

  /** Looks at a text without a unit; `isOnly`: it stands in the only row. */
  look(text: string, isOnly: boolean): void {
    if (isOnly) this.#fewest = 1;
    if (/[\p{L}:%]/u.test(text)) return;
    for (const [number] of text.matchAll(/\d[\d.,'\u2019]*\d/g)) {
      const marks = number.replace(/\d/g, '');
      if (marks === '') continue;
      const last = marks.at(-1);
      const digits = number.slice(number.search(/[.,][^.,]*$/) + 1);
      const isRepeated = marks.length > 1 && marks.indexOf(marks[0]) !== marks.lastIndexOf(marks[0]);
      if (last !== '.' && last !== ',') this.isOpen = false;
      else if (isRepeated && new Set(marks).size === 1) this.isOpen = false;
      else if (marks.length > 1 || digits.length !== 3 || /^0[.,]/.test(number)) {
        this.decimal = last;
        if (/[1-9]/.test(digits)) this.#fractions++;
      } else this.groups++;
    }
  }
}
