import { headingAtStart } from '../headings/headingAtStart';
import { readHeading } from '../headings/headings';
import { unchangedAt } from '../headings/statedScale';
import { unitOf } from '../languages/cellWords';
import { unitByStem } from '../languages/unitStems';
import { namesLoop } from '../loopWords';
import type { ColumnMeaning, Unit } from '../meaning';
import { positionMeanings } from '../meaning';
import { equatedTuning, withoutEquations } from '../phrases/equatedUnit';
import type { UnitPart } from '../phrases/unitFractions';
import { unitFractionIn, unitPartsIn } from '../phrases/unitFractions';
import { rangeEndWords, rangeWords } from '../rangeWords';
import { turningWords } from '../turningWords';
import { panEndsIn } from './amounts/statedSides';
import { clausesOf } from './clauses';

/** A scale that the text around a table gives for columns of a meaning. */
export interface StatedScale {
  unit: Unit | undefined;
  low: number | undefined;
  high: number | undefined;
  /** Set where values count parts of a unit that are none of ours, as 128ths of a semitone; then there is no `unit`. */
  part?: UnitPart | undefined;
  /** The clause that says so. */
  text: string;
}

const longest = 2000;
const range = new RegExp(
  String.raw`(?<![\p{L}\d.])([-\u2212]?\d+(?:[.,]\d+)?)\s*(?:(?:%|dB)\s*)?(?:\.{2,3}|\u2026|[-\u2010-\u2015~\u2192]|through|and|und|e|y|から|에서|부터|(?:down )?${rangeWords}|${rangeEndWords('upTo')})\s*([-\u2212+]?\d+(?:[.,]\d+)?)(?![\p{L}\d])`,
  'iu',
);
const fullLevel =
  /(?<![\d.,])(\d+(?:[.,]\d+)?)\s*%?\s*(?:=|is|means|ist|bedeutet|est|es|é|è|är|er|to|je|は|为)\s*(?:the\s+)?(?:full|max|unity|0 ?db|voll|plein|pleno|plena|loudest|pien[oa]|chei[oa]|t\u00e4ysi|pe\u0142n|pln[ýáé]|полн|teljes|tam(?!\p{L})|\u03c0\u03bb\u03ae\u03c1|最大|满|滿|최대)/iu;
const brackets = /[([][^()[\]]{0,200}[)\]]/gu;
/** By how much something was changed, which is no scale: `louder by a factor of 2`. */
const changedBy = /(?:fa[ck]t[eo]u?r|fattore|fator)\s+(?:of|von|de|di|van|p\u00e5|av|af)\s+\p{Nd}/giu;
/** `a multiple`, not `multiple takes`. */
const aMultiple = /(?<=(?<!\p{L})(?:an?|as|un|de|en|comme) )multiples?(?!\p{L})(?! \p{L}+s(?!\p{L}))/giu;
const factorScale = { unit: 'linear', low: undefined, high: undefined } as const;
/** The number at which a level or a tuning is left as it is, with its scale: `100 = as recorded`. */
function unchangedScale(clause: string, isLevel: boolean): Omit<StatedScale, 'text'> | undefined {
  const number = unchangedAt(clause);
  if (number === 1) return factorScale;
  if (!isLevel) return undefined;
  if (number === 100) return { unit: 'percent', low: undefined, high: undefined };
  return number === 127 || number === 255 ? { unit: undefined, low: 0, high: number } : undefined;
}

const velocities: readonly ColumnMeaning[] = ['lovel', 'hivel', 'velocity_range'];
/** Columns that one subject speaks of. */
const subjects: readonly (readonly ColumnMeaning[])[] = [
  ['volume', 'attenuation'],
  ['tune'],
  ['transpose'],
  ['pan'],
  velocities,
  positionMeanings,
];
const positionWord =
  /^(?:times?|positions?|points?|zeiten?|punkte?|positionen|temps|tiempos?|tempi|tijden)$/iu;
const positionUnits: ReadonlySet<Unit> = new Set(['s', 'ms', 'frames', 'percent']);

/** The scales that texts around tables state for columns of some meanings. */
export function statedScalesIn(texts: readonly string[]): Map<ColumnMeaning, StatedScale> {
  const scales = new Map<ColumnMeaning, StatedScale>();
  for (const whole of texts) {
    const text = whole.slice(0, longest);
    panEnds(text, scales);
    let subject: Subject;
    for (const clause of clausesOf(text)) subject = readScale(clause, scales, subject);
  }
  readBareFactor(texts, scales);
  return scales;
}

/** Numbers beside the words for left and right. */
function panEnds(text: string, scales: Map<ColumnMeaning, StatedScale>): void {
  const found = scales.has('pan') ? undefined : panEndsIn(text);
  if (found) scales.set('pan', { unit: undefined, ...found, text: text.trim() });
}

/** Words before what a statement does not hold for. */
const exception = new RegExp(turningWords('except'), 'iu');

/** The columns that a clause speaks of. */
type Subject = readonly ColumnMeaning[] | undefined;

/**
 * A clause that names columns and gives a unit, two ends, or the number for the full level. One that starts with a number goes on about the
 * level or the tuning `before` it: `Gain: 0 = silence, 1 = unchanged`. Answers what the next one may go on about.
 */
function readScale(whole: string, scales: Map<ColumnMeaning, StatedScale>, before: Subject): Subject {
  const clause = whole.split(exception)[0] ?? whole;
  // In Dutch a scale `loopt`: it runs, and is no loop.
  const named = subjectOf(wordsOfClause(clause).filter((word) => !/^loopt$/iu.test(word)));
  const goesOn = named === undefined && /^[-+\u2212]?\d/.test(clause);
  const meanings = goesOn && before && goesOnAbout.has(before[0]) ? before : named;
  if (!meanings) return goesOn ? before : undefined;
  if (meanings.some((meaning) => isKnown(scales.get(meaning)))) return meanings;
  const stated = partScaleOf(clause, meanings) ?? scaleOf(clause, meanings);
  if (stated) for (const meaning of meanings) scales.set(meaning, { ...scales.get(meaning), ...stated });
  return meanings;
}

const goesOnAbout: ReadonlySet<ColumnMeaning> = new Set(['volume', 'tune', 'transpose']);

/** A line such as `1 = unchanged` that names no column speaks of levels, unless another explains 2, 3 and so on, as words for takes do. */
function readBareFactor(texts: readonly string[], scales: Map<ColumnMeaning, StatedScale>): void {
  if (scales.has('volume')) return;
  const isListed = texts.some((text) =>
    /(?:^|[\n;,]\s{0,3})[2-9]\s?[=:]\s?\p{L}/u.test(text.slice(0, longest)),
  );
  const text = texts.find((one) => one.length < 60 && /^\W*1|1\W*$/.test(one) && unchangedAt(one) === 1);
  if (text === undefined || isListed) return;
  for (const meaning of subjects[0] ?? []) scales.set(meaning, { ...factorScale, text: text.trim() });
}

const particle =
  /(?<=[\p{sc=Han}\p{sc=Katakana}\u30fc])(?:は|が|の|を|です|为|為|是|以)|(?<=\p{sc=Hangul})(?:은|는|이|가|의|을|를)(?!\p{L})/gu;

/** The words of a clause, and percent signs; small words that are written together with others go. */
function wordsOfClause(clause: string): string[] {
  return clause.replace(particle, ' ').match(/[\p{L}%]+/gu) ?? [];
}

/** Whether nothing remains to be said of a scale: a law such as `linear` alone leaves its ends open. */
function isKnown(scale: StatedScale | undefined): boolean {
  return scale !== undefined && (scale.unit !== 'linear' || scale.high !== undefined);
}

/** Parts of a unit that a clause gives and that are no unit of ours; `undefined` where it gives none. */
function partScaleOf(clause: string, meanings: readonly ColumnMeaning[]): StatedScale | undefined {
  const isFit = (unit: Unit) => fits(unit, meanings);
  if (unitFractionIn(clause, isFit) !== 'unknown') return undefined;
  return { unit: undefined, low: undefined, high: undefined, part: unitPartsIn(clause, isFit), text: clause };
}

/** The unit and the ends that a clause gives for values of columns of these meanings; `undefined` where it gives neither. */
export function scaleOf(clause: string, meanings: readonly ColumnMeaning[]): StatedScale | undefined {
  const isPosition = meanings.includes('loop');
  const isVelocity = meanings.includes('lovel');
  // A letter alone is a unit behind `in` only, as in `loops in s`.
  const isUnit = (word: string) =>
    word.length > 1 || new RegExp(`\\b(?:in|en|em)\\s+${word}$`, 'iu').test(clause);
  const unitIn = (text: string) =>
    wordsOfClause(text)
      .filter((word) => word === '%' || isUnit(word))
      .map((word) => unitByStem(word))
      .findLast((one) => one !== undefined && fits(one, meanings));
  const part = unitFractionIn(clause, (one) => fits(one, meanings));
  if (part === 'unknown') return undefined;
  // An example may be in another unit: `in semitones (0.1 = ten cents up)`.
  const said = clause.replace(changedBy, ' ').replace(aMultiple, 'factor');
  const plain = said.replace(brackets, ' ');
  // What stands for an end may stand behind it: `from 0 (silent) to 1 (full)`.
  const ends = isPosition ? null : (range.exec(clause) ?? range.exec(clause.replace(brackets, ' ')));
  const full = meanings[0] === 'volume' ? fullLevel.exec(clause)?.[1] : undefined;
  const isTuning = goesOnAbout.has(meanings[0]) && meanings[0] !== 'volume';
  const unit =
    part ??
    unitIn(withoutEquations(plain)) ??
    (isTuning ? equatedTuning(said) : undefined) ??
    // What 0 dB are equal to is a share of the amplitude.
    (full === undefined ? (unitIn(plain) ?? unitIn(said)) : full === '1' ? 'linear' : undefined);
  const [from, to] = ends ? [numberOf(ends[1]), numberOf(ends[2])] : [];
  // `from 6 down to -40 dB`: the greatest may be said first.
  const isDown = unit === 'dB' && from !== undefined && to !== undefined && from > to;
  const low = (isDown ? to : from) ?? (full === undefined ? undefined : 0);
  const high = (isDown ? from : to) ?? (full === undefined ? undefined : numberOf(full));
  const isOrdered = low !== undefined && high !== undefined && low < high;
  const isLevel = meanings[0] === 'volume';
  const unchanged = goesOnAbout.has(meanings[0]) && !isOrdered ? unchangedScale(clause, isLevel) : undefined;
  if (unchanged && (unit === undefined || unit === 'linear')) return { ...unchanged, text: clause };
  if (unit === undefined && !isOrdered) return undefined;
  if (isVelocity && unit !== 'percent' && !isOrdered) return undefined;
  return { unit, low: isOrdered ? low : undefined, high: isOrdered ? high : undefined, text: clause };
}

/** The columns that the words of a clause name. */
function subjectOf(words: readonly string[]): readonly ColumnMeaning[] | undefined {
  if (words.some((word) => positionWord.test(word) || namesLoop(word))) return positionMeanings;
  for (let from = 0; from < Math.min(words.length, 12); from++) {
    for (const length of [3, 2, 1]) {
      if (from + length > words.length) continue;
      const phrase = words.slice(from, from + length).join(' ');
      const heading =
        readHeading(phrase) ?? readHeading(phrase.replace(/(?:e?[sn]|et)$/, '')) ?? headingAtStart(phrase);
      const meaning = heading?.meaning;
      const subject = meaning && subjects.find((one) => one.includes(meaning));
      // Small words such as `in` and `to` name ends of samples only in headings.
      const isSmall = (meaning === 'offset' || meaning === 'end') && !/\p{L}{6}/u.test(phrase);
      if (subject && phrase.length > 1 && !isSmall && unitOf(phrase) === undefined) return subject;
    }
  }
  return undefined;
}

function fits(unit: Unit, meanings: readonly ColumnMeaning[]): boolean {
  switch (meanings[0]) {
    case 'volume':
      return unit === 'dB' || unit === 'percent' || unit === 'linear' || unit === 'centibels';
    case 'tune':
    case 'transpose':
      return unit === 'cents' || unit === 'semitones' || unit === 'linear';
    case 'loop':
      return positionUnits.has(unit);
    default:
      return unit === 'percent';
  }
}

function numberOf(text: string): number {
  return Number(text.replace('\u2212', '-').replace(',', '.'));
}
