import { listText } from '../../model/wording/listText';
import { volumeBounds } from '../../trade/bounds';
import { rounded } from '../../trade/decimal';
import { saysFactor, scaleIn } from '../../trade/headings/statedScale';
import { levelScaleOf, readLevel } from '../../trade/readings/levelReading';
import type { LevelScale } from '../../trade/scales/levelScale';
import {
  decibelsOf,
  fullLevels,
  guessedLevels,
  levelScaleNames,
  levelScalePhrases,
} from '../../trade/scales/levelScale';
import type { ScaleReading } from '../../trade/scales/numbers';
import { countsDownIn } from '../../trade/statements/amounts/countsDown';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened, statedReason } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { ColumnNumbers } from './columnNumbers';

/** How a column of levels is read: in a scale, or left at 0 dB where its numbers leave it open and could raise. */
type Decision = {
  scale: LevelScale | 'none';
  isAttenuation: boolean;
  isGuess: boolean;
  reason: string;
  /** How many of the numbers make up one of the scale; 1 where left out. */
  parts?: number;
};

const choices = ['dB', 'percent', 'sevenBits', 'factor', 'none'] as const;
const noLevel = 'not written';
/** Words that are more often said of what is measured than of what is set, and the greatest level below which that is likely (our choice). */
const loudness = /loudness|luidheid|响度/iu;
const mostMeasured = -6;
/** Words that say that levels are shares of the amplitude. */
const amplitude = /ampl|ampiezza|linea[rl]|linéaire|lineær|линейн|амплитуд|πλάτος|振幅|진폭/iu;

/** Reads levels and attenuations, each column in one scale; nothing is raised on a guess. */
export class LevelColumns {
  constructor(readonly table: ZoneCells) {}

  /** Reads the levels of all zones of the table. */
  read(): void {
    const { table } = this;
    const volume = table.column('volume');
    const attenuation = table.column('attenuation');
    if (volume) table.each(volume, this.#levelsIn(volume, this.#countsDown(volume, attenuation)));
    if (!attenuation) return;
    const levels = this.#levelsIn(attenuation, !this.#hasOwnSigns(attenuation));
    table.each(attenuation, (zone, cell) => {
      if (table.cellOf(table.zones.rows[zone], volume) >= 0)
        table.drop(cell, attenuation, 'is an attenuation, but its row has a level too');
      else levels(zone, cell);
    });
  }

  /** Whether the heading of a column of levels, or the text around, says that its numbers are by how much samples are quieter. */
  #countsDown(column: ColumnReading, attenuation: ColumnReading | undefined): boolean {
    const { table } = this;
    const isOther = (text: string) =>
      table.columns.some((one) => one !== column && one.heading !== '' && one.heading.includes(text));
    const around = attenuation
      ? []
      : table.options.statements.countsDown.filter(({ text }) => !isOther(text));
    const said = [...countsDownIn([column.heading]), ...around];
    const told = said.find(({ isSigned }) => isSigned) ?? said[0];
    const { isSigned, plain } = this.table.numbersIn(column);
    if (!told || table.options.scales?.has(column.index) || plain.greatest <= 0) return false;
    const clashes = !told.isSigned && (isSigned || plain.negative > 0);
    const what = clashes
      ? 'are written with their own signs, though'
      : 'are by how much samples are quieter, as';
    table.noteColumn(
      column,
      `The numbers in ${columnName(column)} ${what} the text says "${shortened(told.text)}".`,
    );
    return !clashes;
  }

  /** Whether all numbers of a column of attenuations that say something are below 0: then they are levels, and nothing is raised. */
  #hasOwnSigns(column: ColumnReading): boolean {
    const { plain } = this.table.numbersIn(column);
    if (column.unit !== 'dB') return false;
    if (plain.negative === 0 || plain.greatest > 0 || this.table.options.scales?.has(column.index))
      return false;
    this.table.noteColumn(
      column,
      `The numbers in ${columnName(column)} are below 0, so they are written as levels with their own signs.`,
    );
    return true;
  }

  #levelsIn(column: ColumnReading, named: boolean): (zone: number, cell: number) => void {
    const { table } = this;
    const volumes = table.zones.column('volume');
    const { scale, isAttenuation, isGuess, reason, parts = 1 } = this.#decide(column, named);
    column.scale = {
      taken: scale,
      reason,
      options: choices.map((id) => ({ id, label: id === 'none' ? noLevel : levelScaleNames[id] })),
    };
    if (scale === 'none') return () => {};
    const levels = new CellReadings(table.cells, (text) => readLevel(text, scale, isAttenuation, parts));
    const inDecibels = scale === 'dB' && !isAttenuation && parts === 1;
    // Of a scale that was found from the numbers, one note says how all of them are written.
    const isOverall = isGuess && scale !== 'dB';
    const isTold = isOverall || (!isGuess && this.#noteLaw(column, scale, isAttenuation));
    return (zone, cell) => {
      const number = inDecibels ? table.cells.number(cell) : Number.NaN;
      if (number >= volumeBounds.least && number <= volumeBounds.most) {
        if (number !== 0) volumes.set(zone, cell, rounded(number));
        return;
      }
      const level = table.reading(levels, cell, column, (one) => !('fault' in one));
      if ('fault' in level) table.drop(cell, column, level.fault);
      else if (isOverall && level.decibels > 0)
        table.drop(cell, column, 'is above the full level of the others');
      else {
        if (level.how && !isTold) table.approximate(cell, column, level.how);
        if (level.decibels !== 0) volumes.set(zone, cell, rounded(level.decibels));
      }
    };
  }

  #decide(column: ColumnReading, named: boolean): Decision {
    const { table } = this;
    const chosen = table.options.scales?.get(column.index);
    const taken = choices.find((one) => one === chosen);
    if (taken) return { scale: taken, isAttenuation: named, isGuess: false, reason: '' };
    const numbers = this.table.numbersIn(column);
    const part = this.#inParts(column, numbers, named);
    if (part) return part;
    const said = this.#said(column, numbers) ?? this.#sharedSign(column, numbers);
    if (said) return { scale: said, isAttenuation: named, isGuess: false, reason: statedReason };
    // Numbers below 0 count down by themselves, but where the text says what those above 0 do.
    if (named && column.meaning === 'volume' && numbers.plain.negative > 0)
      return { scale: 'dB', isAttenuation: true, isGuess: false, reason: statedReason };
    const isAttenuation = named && numbers.plain.negative === 0;
    const guess = guessedLevels(numbers.plain, isAttenuation);
    if (!guess.isOpen) {
      if (named !== isAttenuation || (!isAttenuation && numbers.plain.greatest > 0))
        this.#noteDecibels(column);
      else if (numbers.plain.greatest < mostMeasured && loudness.test(column.heading))
        table.noteColumn(
          column,
          `${columnName(column)} gives no unit: it is read as levels to set, in dB. If it tells how loud the samples are, say so in the heading, as in "Loudness (LUFS)".`,
        );
      return { scale: guess.scale, isAttenuation, isGuess: true, reason: guess.reason };
    }
    if (guess.isLeft) {
      this.#noteNothing(column, guess);
      return {
        scale: 'none',
        isAttenuation,
        isGuess: true,
        reason: `${guess.reason} Nothing is raised on a guess.`,
      };
    }
    this.#noteShare(column, guess, numbers, isAttenuation);
    return { scale: guess.scale, isAttenuation, isGuess: true, reason: guess.reason };
  }

  /** Levels that count parts of a unit, as quarters of a dB, where that is said. */
  #inParts(column: ColumnReading, { plain }: ColumnNumbers, named: boolean): Decision | undefined {
    const part = this.table.countedPart(column, ['dB', 'percent']);
    const scale = levelScaleOf(part?.whole);
    if (!part || scale === undefined) return undefined;
    const isAttenuation = named && plain.negative === 0;
    return { scale, isAttenuation, isGuess: false, reason: statedReason, parts: part.parts };
  }

  /** The scale that the heading, the units of some cells or the text around the table state. */
  #said(column: ColumnReading, { unit, isSigned, plain }: ColumnNumbers): LevelScale | undefined {
    const around = this.table.stated(column);
    const stated = scaleIn(column.heading) ?? around;
    const full = (['factor', 'percent', 'sevenBits', 'eightBits'] as const).find(
      (one) => stated?.low === 0 && fullLevels[one] === stated.high,
    );
    return (
      levelScaleOf(column.unit) ??
      full ??
      (saysFactor(column.heading) ? 'factor' : undefined) ??
      levelScaleOf(unit) ??
      // A text that speaks of a factor beside levels below 0 speaks of something else.
      (around?.unit === 'linear' && plain.negative > 0 ? undefined : levelScaleOf(around?.unit)) ??
      (isSigned ? 'dB' : undefined)
    );
  }

  /** Percent, where some cells have its sign and the numbers of the others are no larger and no fractions of 1. */
  #sharedSign(column: ColumnReading, { anyUnit, plain, united }: ColumnNumbers): LevelScale | undefined {
    const isShared =
      anyUnit === 'percent' &&
      plain.least >= 0 &&
      plain.greatest > 1 &&
      plain.greatest <= Math.max(fullLevels.percent, united.greatest);
    if (!isShared) return undefined;
    this.table.noteColumn(
      column,
      `The numbers in ${columnName(column)} are read as percent, as some cells have the sign for it and the others are alike.`,
    );
    return 'percent';
  }

  /** Notes that a scale of bits is said, but not how its numbers rise; `false` where nothing is open. */
  #noteLaw(column: ColumnReading, scale: LevelScale, isAttenuation: boolean): boolean {
    if ((scale !== 'sevenBits' && scale !== 'eightBits') || amplitude.test(column.heading)) return false;
    const { plain } = this.table.numbersIn(column);
    const decibels = decibelsOf(plain.least, scale, isAttenuation);
    const written = Math.max(volumeBounds.least, rounded(decibels));
    if (plain.numeric === 0 || Number.isNaN(written)) return false;
    this.table.noteColumn(
      column,
      `${columnName(column)} gives levels ${levelScalePhrases[scale]}, but not how loud each is. Each is taken as a share of the amplitude: ${plain.least} is written as ${written} dB. If quiet levels sound too loud, give the levels in dB.`,
    );
    return true;
  }

  #noteShare(
    column: ColumnReading,
    { scale, others }: ScaleReading<LevelScale>,
    { plain }: ColumnNumbers,
    isAttenuation: boolean,
  ): void {
    const written = decibelsOf(plain.least, scale, isAttenuation);
    const quiet = Math.max(volumeBounds.least, rounded(written));
    const full = scale === 'dB' || scale === 'centibels' ? 0 : fullLevels[scale];
    this.#note(
      column,
      `${levelScaleNames[scale]} is assumed, with ${full} for the full level, so ${plain.least} is written as ${quiet} dB`,
      others,
    );
  }

  #noteNothing(column: ColumnReading, { scale, others }: ScaleReading<LevelScale>): void {
    this.#note(column, 'its numbers could be several things, so all levels are left at 0 dB', [
      scale,
      ...others,
    ]);
  }

  #noteDecibels(column: ColumnReading): void {
    this.#note(column, 'dB is assumed, as some numbers are below 0', []);
  }

  #note(column: ColumnReading, what: string, others: readonly LevelScale[]): void {
    const otherwise = others.slice(0, 3).map((one) => levelScaleNames[one]);
    const advice =
      otherwise.length === 0
        ? ''
        : ` If it is ${listText(otherwise, 'or')}, say so in the heading, as in "${exampleHeading(column)} (dB)".`;
    this.table.noteColumn(column, `${columnName(column)} gives no unit: ${what}.${advice}`);
  }
}

function exampleHeading({ heading }: ColumnReading): string {
  // What stands in brackets would be a second unit.
  const bare = heading.replace(/\s*[([{].*$/u, '').trim();
  return bare === '' || bare.length > 20 ? 'Level' : bare;
}
