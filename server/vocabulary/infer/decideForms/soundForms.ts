import { readPan } from '../../../trade/readings/panReading';
import type { LevelScale } from '../../../trade/scales/levelScale';
import { guessedLevels, levelScaleNames } from '../../../trade/scales/levelScale';
import type { ScaleReading } from '../../../trade/scales/numbers';
import type { PanScale } from '../../../trade/scales/panScale';
import { panScale, sidedPanScale } from '../../../trade/scales/panScale';
import { tuningScale } from '../../../trade/scales/tuningScale';
import { readNumberText } from '../../forms/numberText';
import { areTuningsInUnits } from '../../forms/tuningSum';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import { letteredSide, sidesIn } from '../values/sides';
import { unitTextOf } from './unitText';

/** A form with how sure it is, why, and what else it could be. */
export interface FormReading {
  form: ValueForm;
  confidence: number;
  reason: string;
  /** Whether nothing but the numbers says so. */
  isOpen?: boolean;
  /** Whether even the numbers do not say so, so that nothing is read until a person chooses. */
  isLeft?: boolean;
  others: { label: string; form: ValueForm }[];
}

type LevelUnit = NonNullable<Assigned['unit']> | 'sevenBits' | 'eightBits';
type Level = Extract<ValueForm, { kind: 'level' }>;
type Pan = Extract<ValueForm, { kind: 'pan' }>;
type Tuning = Extract<ValueForm, { kind: 'tuning' }>;

/** A level: by its unit, else by its numbers. */
export function decideLevelForm({ facts, unit, target, stated }: Assigned): FormReading {
  const isNamedAttenuation = target === 'attenuation';
  const attenuation = isNamedAttenuation && facts.negative === 0;
  const formOf = (one: Level['unit']): Level => ({
    kind: 'level',
    unit: one,
    ...(attenuation && { attenuation: true }),
    ...topOf(one, stated?.range, attenuation),
    ...unitTextOf(facts),
  });
  const { scale, confidence, reason, isOpen, isLeft, others } = levelUnit(
    facts,
    unit ?? unitOfRange(stated?.range),
    attenuation,
  );
  const isOdd = isNamedAttenuation && facts.negative > 0;
  const turnedLabel = attenuation ? 'greater is louder' : 'greater is quieter';
  return {
    form: formOf(scale),
    confidence: isOdd ? Math.min(confidence, 0.6) : confidence,
    reason: isOdd ? 'It is named an attenuation, and yet numbers below 0 occur.' : reason,
    isOpen,
    isLeft,
    others: [
      ...(isLeft ? [scale, ...others] : others).map((one) => ({
        label: levelScaleNames[one],
        form: formOf(one),
      })),
      ...(isNamedAttenuation ? [{ label: turnedLabel, form: turned(formOf(scale)) }] : []),
    ],
  };
}

/** The greatest number of a level, where it is said and the unit has none of its own. */
function topOf(
  unit: Level['unit'],
  range: { low: number; high: number } | undefined,
  attenuation: boolean,
): Pick<Level, 'most'> {
  if (!range || unit === 'sevenBits' || unit === 'eightBits') return {};
  const startsAtNone = unit === 'percent' || unit === 'factor' || attenuation;
  return range.low === 0 || !startsAtNone ? { most: range.high } : {};
}

/** The unit of levels that run from 0 to a number. */
function unitOfRange(range: { low: number; high: number } | undefined): LevelUnit | undefined {
  if (range?.low !== 0) return undefined;
  return { 1: 'ratio', 100: 'percent', 127: 'sevenBits', 255: 'eightBits' }[range.high] as
    | LevelUnit
    | undefined;
}

/** The unit of a level: as the values or the name say it, else by the numbers. */
function levelUnit(
  facts: Assigned['facts'],
  named: LevelUnit | undefined,
  attenuation: boolean,
): ScaleReading<LevelScale> & { isLeft: boolean } {
  const guess = guessedLevels(facts, attenuation);
  const said = (scale: LevelScale, confidence: number, reason: string) => ({
    ...guess,
    scale,
    confidence,
    reason,
    isOpen: false,
    isLeft: false,
    others: [guess.scale, ...guess.others].filter((one) => one !== scale),
  });
  if (facts.unit === 'dB') return said('dB', 0.98, 'The numbers are followed by dB.');
  if (facts.unit === 'percent') return said('percent', 0.98, 'The numbers are followed by a percent sign.');
  if (/^\s*(?:cb|centibels?)$/i.test(facts.unitText ?? ''))
    return said('centibels', 0.98, 'The numbers are followed by the unit.');
  if ([...facts.tally.keys()].some((text) => /^\s*\+/.test(text)))
    return said('dB', 0.95, 'Numbers are written with a plus sign, as changes are.');
  if (named === 'centibels') return said('centibels', 0.95, 'The name says centibels.');
  if (named === 'dB') return said('dB', 0.95, 'The name says dB.');
  if (named === 'percent') return said('percent', 0.95, 'The name says percent.');
  if (named === 'sevenBits' || named === 'eightBits') return said(named, 0.95, 'The text says so.');
  if (named === 'ratio') return said('factor', 0.92, 'The name says that it is a factor.');
  return guess;
}

function turned(form: Level): Level {
  const { attenuation, ...rest } = form;
  return attenuation ? rest : { ...rest, attenuation: true };
}

/** A pan position: by the numbers that occur. */
export function decidePanForm({ facts, unit, stated }: Assigned): FormReading {
  if (facts.sided > 0 && facts.negative === 0) return sidedPanForm(facts, unit === 'percent');
  if (stated?.range) {
    const { low, high } = stated.range;
    const centre =
      low < 0 ? 0 : Number.isInteger(high) && high > 1 ? Math.ceil((low + high) / 2) : (low + high) / 2;
    return { form: panOf([low, centre, high], facts), confidence: 0.96, reason: '', others: [] };
  }
  const { scale, confidence, reason, isOpen, others } = panScale(
    facts,
    facts.unit === 'percent' || (unit === 'percent' && facts.negative > 0),
  );
  return {
    form: panOf(scale, facts),
    confidence,
    reason,
    isOpen,
    others: others.map((one) => ({
      label: `from ${one[0]} over ${one[1]} to ${one[2]}`,
      form: panOf(one, facts),
    })),
  };
}

/** A letter for the side beside each number, as in `50R`. */
function sidedPanForm(facts: Assigned['facts'], isNamedPercent: boolean): FormReading {
  const sides: Partial<Record<'left' | 'centre' | 'right', string>> = {};
  let sidesStand: 'before' | 'behind' = 'behind';
  let most = 0;
  const known = sidesIn(facts.tally.keys());
  for (const text of facts.tally.keys()) {
    const found = /^\s*([^\d\s.,]*)[\s:]*([\d.,]*)\s*%?\s*([^\d\s.,%]*)\s*$/u.exec(text);
    const word = found && found[1] + found[3];
    const side = word ? letteredSide(word, known) : undefined;
    if (!found || !word || !side) {
      if (/\d/.test(text)) most = Math.max(most, Math.abs(readPan(text) ?? 0));
      continue;
    }
    sides[side] ??= word;
    if (found[1] !== '' && found[2] !== '') sidesStand = 'before';
    most = Math.max(most, readNumberText(found[2])?.number ?? 0);
  }
  const letters = Object.values(sides).join('');
  const isSmall = letters !== '' && letters === letters.toLowerCase();
  const isLong = Object.values(sides).some((word) => word.length > 1);
  const [left, centre, right] = isLong ? ['left', 'centre', 'right'] : ['L', 'C', 'R'];
  const usual = (word: string | undefined) => (isSmall ? word?.toLowerCase() : word) as string;
  const percent = facts.unit === 'percent' || [...facts.tally.keys()].some((text) => text.includes('%'));
  const formOf = (side: number): Pan => ({
    kind: 'pan',
    left: 0 - side,
    centre: 0,
    right: side,
    sides: {
      left: sides.left ?? usual(left),
      centre: sides.centre ?? usual(centre),
      right: sides.right ?? usual(right),
    },
    ...(sidesStand === 'before' && { sidesStand }),
    ...(percent && { unitText: '%' }),
  });
  const { scale, confidence, reason, others } = sidedPanScale(most, percent || isNamedPercent);
  return {
    form: formOf(scale),
    confidence,
    reason,
    others: others.map((other) => ({ label: `up to ${other}`, form: formOf(other) })),
  };
}

function panOf([left, centre, right]: PanScale, facts: Assigned['facts']): Pan {
  return { kind: 'pan', left, centre, right, ...unitTextOf(facts) };
}

/** A tuning: by its unit, else by its numbers. */
export function decideTuningForm({ facts, unit, column, isMeasured }: Assigned): FormReading {
  const formOf = (one: Tuning['unit']): Tuning => ({
    kind: 'tuning',
    unit: one,
    ...(isMeasured && { measured: true }),
    ...unitTextOf(facts),
  });
  const units: Tuning['unit'][] = ['cents', 'semitones', 'ratio'];
  const reading = (tuning: Tuning['unit'], confidence: number, reason: string): FormReading => ({
    form: formOf(tuning),
    confidence,
    reason,
    others: units.filter((one) => one !== tuning).map((one) => ({ label: `in ${one}`, form: formOf(one) })),
  });
  if (areTuningsInUnits(facts.tally.keys())) {
    const { unitText = ' ct' } = facts.unit === 'cents' ? unitTextOf(facts) : {};
    const form: Tuning = { kind: 'tuning', unit: 'cents', ...(isMeasured && { measured: true }), unitText };
    return { form, confidence: 0.96, reason: 'Each number has its unit behind it.', others: [] };
  }
  if (facts.unit === 'cents' || facts.unit === 'semitones') {
    return reading(facts.unit, 0.98, `The numbers are followed by "${facts.unitText?.trim()}".`);
  }
  const isFine = column.own.some((word) => /^(?:fine|detune|fein|micro)/.test(word));
  const { scale, confidence, reason, isOpen } = tuningScale(facts, isFine ? 'fine' : undefined);
  const most = Math.max(Math.abs(facts.least), Math.abs(facts.greatest));
  if (unit === 'ratio')
    return reading('ratio', facts.least > 0 ? 0.95 : 0.5, 'The name says that it is a ratio.');
  if (unit === 'cents' || unit === 'semitones') {
    const says = `The name says ${unit}.`;
    if (unit === 'cents' && facts.whole < facts.numeric && most < 1 && facts.tally.size > 2)
      return reading('cents', 0.7, `${says} But all numbers lie within ±1.`);
    if (unit === 'cents' && mayBeCoarse(facts, column))
      return { ...reading('cents', 0.55, `${says} But it may be short for a coarse tuning.`), isOpen: true };
    return reading(unit, 0.96, says);
  }
  return { ...reading(scale, confidence, reason), isOpen };
}

/** Farther away a coarse tuning seldom lies (our choice). */
const mostCoarse = 24;

/** Whether a tuning called no more than `ct` has numbers as those of semitones: small whole ones, nearly all below those of cents. */
function mayBeCoarse({ whole, filled, least, greatest }: Assigned['facts'], { own }: Assigned['column']) {
  const most = Math.max(Math.abs(least), Math.abs(greatest));
  return own.join('') === 'ct' && whole === filled && most > 0 && most <= mostCoarse;
}
