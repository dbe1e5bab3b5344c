import { isAudioFileName } from '../../../model/fileNames';
import type { Unit } from '../../../trade/meaning';
import { writtenUnit } from '../../../trade/phrases/writtenUnit';
import { readKey } from '../../../trade/readings/keyReading';
import { lacksLines } from '../../../trade/readings/linedKeys';
import { hasSide, readPan } from '../../../trade/readings/panReading';
import { readNumberText } from '../../forms/numberText';
import type { Column } from './column';
import { countSided } from './sides';
import type { ThousandsMark } from './thousands';
import { fitsMark, thousandsIn, withoutMarks } from './thousands';

/** What the values of a place look like. */
export interface ColumnFacts {
  /** Rows that hold something. */
  filled: number;
  /** The number of each row, NaN where there is none. */
  numbers: Float64Array;
  /** How many are numbers, whole numbers, negative, note names, audio file names. */
  numeric: number;
  whole: number;
  negative: number;
  notes: number;
  files: number;
  /** How many are note names without a number of their octave, as the great and the small octave have it. */
  unlined: number;
  least: number;
  greatest: number;
  /** What stands behind the numbers, blanks included, where it is the same everywhere. */
  unitText: string | undefined;
  unit: Unit | undefined;
  /** How often each text occurs, as long as they are few. */
  tally: ReadonlyMap<string, number>;
  isConstant: boolean;
  /** The most digits behind a decimal point. */
  decimals: number;
  /** How many are numbers in hexadecimal, such as `0x3C`. */
  hexadecimal: number;
  /** How many are numbers with a letter for a side, such as `50R`, or the letter of the centre. */
  sided: number;
  /** What stands between groups of three digits, where the values show that something does. */
  thousands: ThousandsMark | undefined;
  /** Whether the values are 0, 1, 2 ... or 1, 2, 3 ... in the order of the rows. */
  isCounting: boolean;
}

const mostTallied = 80;
/** Longer words behind a number are no unit that nobody knows. */
const longestUnit = 12;
const noteName = /^[A-Ga-g]\s?(?:#|♯|b|♭)?\s?-?\d{1,2}$/;
const hexadecimal = /^\s*0x/i;
const endless = /^\s*[-−]?\s*(?:inf(?:inity)?|∞)\s*(?:dB|cB)?\s*$/i;
/** Longer texts name no side. */
const longestSided = 32;

/** Whether a text names a side with a letter or a word, how far out or not: `50R`, `30 % à gauche`, `hard left`. */
function isSided(text: string): boolean {
  if (text.length > longestSided || !/\p{L}/u.test(text)) return false;
  return hasSide(text) && readPan(text) !== undefined;
}

/** Whether a text is a note name with its octave, also as German, French, Spanish or Italian name notes. */
export function isNoteName(text: string): boolean {
  if (noteName.test(text.trim())) return true;
  if (text.length < 16 && /\d\s?[)\]]?\s*$/.test(text) && hasNameAndNumber(text)) return true;
  if (text.length > 10 || !/^\s*[a-hdrmfslt]\p{L}{0,4}[#♯b♭]?\s?-?\d{1,2}\s*$/iu.test(text)) return false;
  const key = readKey(text);
  return key !== undefined && key.number === undefined;
}

/** Whether a text is a key by its name and its number: `C1 (36)`. */
function hasNameAndNumber(text: string): boolean {
  if (!/^\s*[\p{L}\d#♯♭]+\s?-?\d*\s*[([/=]/u.test(text)) return false;
  const key = readKey(text);
  return key?.number !== undefined && key.named !== undefined;
}

/** Looks at what stands in a place; `mark` is what stands between thousands in others like it, or that nothing does. */
export function columnFactsOf(
  texts: readonly (string | undefined)[],
  mark?: ThousandsMark | 'none',
): ColumnFacts {
  const look = new ColumnLook(texts.length, mark === 'none' ? undefined : markOf(texts, mark));
  for (const [row, text] of texts.entries()) if (text !== undefined) look.add(row, text);
  return look.facts();
}

function markOf(texts: readonly (string | undefined)[], mark: ThousandsMark | undefined) {
  return thousandsIn(texts) ?? (mark !== undefined && fitsMark(texts, mark) ? mark : undefined);
}

/** What was seen of a place so far. */
class ColumnLook {
  readonly #thousands: ThousandsMark | undefined;
  readonly #numbers: Float64Array;
  readonly #tally = new Map<string, number>();
  readonly #counts = {
    filled: 0,
    numeric: 0,
    whole: 0,
    negative: 0,
    notes: 0,
    files: 0,
    unlined: 0,
    hexadecimal: 0,
    sided: 0,
  };
  #least = Number.POSITIVE_INFINITY;
  #greatest = Number.NEGATIVE_INFINITY;
  #decimals = 0;
  /** The number that would go on counting. */
  #next: number | undefined;
  #isCounting = true;
  #unitText: string | undefined;
  #unit: Unit | undefined;
  #first: string | undefined;
  #isConstant = true;

  constructor(rows: number, thousands: ThousandsMark | undefined) {
    this.#numbers = new Float64Array(rows).fill(Number.NaN);
    this.#thousands = thousands;
  }

  add(row: number, text: string): void {
    this.#addText(text);
    const counts = this.#counts;
    if (endless.test(text)) {
      this.#numbers[row] = Number.NEGATIVE_INFINITY;
      counts.numeric++;
      counts.whole++;
      if (/^\s*[-−]/.test(text)) counts.negative++;
      return;
    }
    const read = readNumberText(this.#thousands === undefined ? text : withoutMarks(text));
    if (this.#next === undefined && (read?.number === 0 || read?.number === 1)) this.#next = read.number;
    if (this.#next === undefined || read?.number !== this.#next++) this.#isCounting = false;
    if (!read) return;
    if (hexadecimal.test(text)) counts.hexadecimal++;
    if (read.unit !== '' && !this.#addUnit(text, read.unit)) return;
    this.#addNumber(row, text, read.number);
  }

  #addText(text: string): void {
    const counts = this.#counts;
    counts.filled++;
    this.#first ??= text;
    if (text !== this.#first) this.#isConstant = false;
    if (this.#tally.size < mostTallied || this.#tally.has(text))
      this.#tally.set(text, (this.#tally.get(text) ?? 0) + 1);
    if (isNoteName(text)) counts.notes++;
    else if (text.length < 6 && lacksLines(text)) counts.unlined++;
    if (isAudioFileName(text)) counts.files++;
    if (isSided(text)) counts.sided++;
  }

  /** Whether what stands behind a number can be a unit. */
  #addUnit(text: string, unit: string): boolean {
    const behind = /[^\d.,][^\d]*$/u.exec(text.trimStart().replace(/^[-+−]/, ''))?.[0];
    const known = writtenUnit(unit);
    if (behind === undefined || (known === undefined && unit.length > longestUnit)) return false;
    this.#unitText ??= behind;
    this.#unit ??= known;
    return true;
  }

  #addNumber(row: number, text: string, number: number): void {
    const counts = this.#counts;
    this.#numbers[row] = number;
    counts.numeric++;
    if (Number.isInteger(number)) counts.whole++;
    else this.#decimals = Math.max(this.#decimals, (text.split(/[.,]/)[1] ?? '').replace(/\D.*$/, '').length);
    if (number < 0) counts.negative++;
    this.#least = Math.min(this.#least, number);
    this.#greatest = Math.max(this.#greatest, number);
  }

  facts(): ColumnFacts {
    const counts = this.#counts;
    const sided = Math.max(counts.sided, countSided(this.#tally));
    return {
      ...counts,
      sided,
      numbers: this.#numbers,
      least: this.#least,
      greatest: this.#greatest,
      decimals: this.#decimals,
      thousands: this.#thousands,
      unitText: this.#unitText,
      unit: this.#unit,
      tally: this.#tally,
      isConstant: this.#isConstant,
      isCounting: this.#isCounting && this.#counts.filled > 1,
    };
  }
}

/** The texts of a column. */
export function textsOf(column: Column): (string | undefined)[] {
  return column.cells.map((cell) => cell?.text);
}
