import { panWord } from '../../../trade/languages/cellWords';
import { readNumberText } from '../../forms/numberText';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import { unitTextOf } from './unitText';

/** A form with how sure it is, why, and what else it could be. */
export interface FormReading {
  form: ValueForm;
  confidence: number;
  reason: string;
  others: { label: string; form: ValueForm }[];
}

type Level = Extract<ValueForm, { kind: 'level' }>;
type Pan = Extract<ValueForm, { kind: 'pan' }>;
type Tuning = Extract<ValueForm, { kind: 'tuning' }>;

const levelLabels = { dB: 'dB', centibels: 'centibels', factor: 'a factor', percent: 'percent' } as const;

/** A level: by its unit, else by its numbers. */
export function levelForm({ facts, unit, target }: Assigned): FormReading {
  const isNamedAttenuation = target === 'attenuation';
  const reading = (level: Level['unit'], confidence: number, reason: string): FormReading => {
    const attenuation = isNamedAttenuation && facts.negative === 0;
    const formOf = (one: Level['unit']): Level => ({
      kind: 'level',
      unit: one,
      ...(attenuation && { attenuation: true }),
      ...unitTextOf(facts),
    });
    const units: Level['unit'][] = [
      'dB',
      'factor',
      'percent',
      ...(isNamedAttenuation ? (['centibels'] as const) : []),
    ];
    return {
      form: formOf(level),
      confidence: isNamedAttenuation && facts.negative > 0 ? Math.min(confidence, 0.6) : confidence,
      reason:
        isNamedAttenuation && facts.negative > 0
          ? 'It is named an attenuation, and yet numbers below 0 occur.'
          : reason,
      others: [
        ...units
          .filter((one) => one !== level)
          .map((one) => ({ label: levelLabels[one], form: formOf(one) })),
        ...(isNamedAttenuation
          ? [{ label: attenuation ? 'greater is louder' : 'greater is quieter', form: turned(formOf(level)) }]
          : []),
      ],
    };
  };
  if (facts.unit === 'dB') return reading('dB', 0.98, 'The numbers are followed by dB.');
  if (facts.unit === 'percent')
    return reading('percent', 0.98, 'The numbers are followed by a percent sign.');
  if (/^\s*(?:cb|centibels?)$/i.test(facts.unitText ?? ''))
    return reading('centibels', 0.98, 'The numbers are followed by the unit.');
  if (unit === 'centibels') return reading('centibels', 0.95, 'The name says centibels.');
  if (unit === 'dB') return reading('dB', 0.95, 'The name says dB.');
  if (unit === 'percent') return reading('percent', 0.95, 'The name says percent.');
  if (unit === 'ratio') return reading('factor', 0.92, 'The name says that it is a factor.');
  const { least, greatest } = facts;
  if (facts.negative > 0) return reading('dB', 0.95, 'Numbers below 0 occur, which only dB have.');
  if (isNamedAttenuation) {
    const isFraction = greatest < 1 && facts.whole < facts.numeric;
    return reading('dB', isFraction ? 0.6 : 0.85, 'It is named an attenuation, which is counted in dB.');
  }
  if (facts.tally.size <= 2 && (greatest === 0 || (greatest === 1 && facts.whole === facts.numeric))) {
    const [only] = facts.tally.keys();
    if (greatest === 0) return reading('dB', 0.7, `Only ${only} occurs, which would be silence as a factor.`);
    return reading('factor', 0.6, least === 1 ? `Only ${only} occurs.` : 'Only 0 and 1 occur.');
  }
  if (greatest <= 1) return reading('factor', 0.92, 'All numbers lie from 0 to 1.');
  if (greatest <= 4 && least > 0)
    return reading('factor', 0.85, `All numbers lie around 1, from ${least} to ${greatest}.`);
  if (greatest > 24) {
    return reading('percent', greatest <= 200 ? 0.88 : 0.6, `All numbers lie from ${least} to ${greatest}.`);
  }
  return reading(least === 0 ? 'dB' : 'percent', 0.55, `All numbers lie from ${least} to ${greatest}.`);
}

function turned(form: Level): Level {
  const { attenuation, ...rest } = form;
  return attenuation ? rest : { ...rest, attenuation: true };
}

/** A pan position: by the numbers that occur. */
export function panForm({ facts, unit }: Assigned): FormReading {
  if (facts.sided > 0 && facts.negative === 0) return sidedPanForm(facts, unit === 'percent');
  const { least, greatest } = facts;
  const most = Math.max(Math.abs(least), Math.abs(greatest));
  const reading = (range: Range, confidence: number, reason: string): FormReading => ({
    form: panOf(range, facts),
    confidence,
    reason,
    others: ranges
      .filter(
        (one) => one !== range && least >= Math.min(one[0], one[2]) && greatest <= Math.max(one[0], one[2]),
      )
      .map((one) => ({ label: `from ${one[0]} over ${one[1]} to ${one[2]}`, form: panOf(one, facts) })),
  });
  const said = `The numbers lie from ${least} to ${greatest}`;
  if (facts.isConstant && facts.filled > 0 && (most === 0 || facts.negative === 0)) {
    const centred = ranges.find(([, centre]) => centre === least && centre !== 0);
    return reading(centred ?? hundred, centred ? 0.65 : 0.6, `Only ${least} occurs.`);
  }
  if (facts.unit === 'percent') {
    const isAround = facts.numbers.includes(50) && least < 50 && greatest > 50;
    return facts.negative > 0
      ? reading(hundred, 0.95, 'The numbers are followed by a percent sign.')
      : reading(
          halfHundred,
          isAround ? 0.8 : 0.6,
          `${said} percent${isAround ? ', with 50 for the centre' : ''}.`,
        );
  }
  if (facts.negative > 0) {
    if (most <= 1)
      return reading(one, facts.whole < facts.numeric || facts.tally.size > 2 ? 0.95 : 0.8, `${said}.`);
    if (least === -64 && greatest <= 64)
      return reading(
        greatest === 64 ? even64 : sixtyFour,
        0.9,
        `${said}, and -64 is the left end of a number of seven bits.`,
      );
    if (greatest === 63 && least >= -64)
      return reading(sixtyFour, 0.85, `${said}, and 63 is the right end of a number of seven bits.`);
    if (most === 50) return reading(fifty, 0.76, `${said}, as far to the left as to the right.`);
    if (most > 100) return reading(most <= 127 ? wide : hundred, 0.7, `${said}.`);
    return reading(hundred, most === 100 ? 0.97 : most > 64 ? 0.85 : 0.76, `${said}.`);
  }
  if (greatest <= 1) {
    const isCentred = facts.numbers.includes(0.5) || (least < 0.5 && greatest > 0.5);
    if (least === 0 && greatest === 0) return reading(hundred, 0.6, 'Only 0 occurs.');
    return reading(half, isCentred && facts.whole < facts.numeric ? 0.9 : 0.6, `${said}.`);
  }
  const has = (number: number) => facts.numbers.includes(number);
  if (greatest === 127 || (greatest > 100 && greatest <= 127)) {
    return reading(
      sevenBits,
      has(64) ? 0.95 : 0.85,
      has(64) ? `${said}, with 64 for the centre.` : `${said}.`,
    );
  }
  if (greatest === 128) return reading([0, 64, 128], 0.85, `${said}.`);
  if (has(64) && !has(50))
    return reading(sevenBits, least < 64 && greatest > 64 ? 0.85 : 0.65, `${said}, with 64 for the centre.`);
  if (has(50) && !has(64))
    return reading(
      halfHundred,
      greatest === 100 || (least < 50 && greatest > 50) ? 0.85 : 0.65,
      `${said}, with 50 for the centre.`,
    );
  if (has(0)) return reading(greatest === 100 ? hundred : hundred, 0.6, `${said}, and none is below 0.`);
  return reading(sevenBits, 0.5, `${said}.`);
}

/** A letter for the side beside each number, as in `50R`. */
function sidedPanForm(facts: Assigned['facts'], isNamedPercent: boolean): FormReading {
  const sides: Partial<Record<'left' | 'centre' | 'right', string>> = {};
  let sidesStand: 'before' | 'behind' = 'behind';
  let most = 0;
  for (const text of facts.tally.keys()) {
    const found = /^\s*([^\d\s.,]*)[\s:]*([\d.,]*)\s*%?\s*([^\d\s.,%]*)\s*$/u.exec(text);
    const word = found && found[1] + found[3];
    const side = word && panWord(word);
    if (!found || !word || (side !== 'left' && side !== 'right' && side !== 'centre')) continue;
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
  const ends = [50, 63, 64, 100, 127].filter((end) => end >= most);
  const isShare = percent || isNamedPercent;
  const end = most > 100 ? 127 : most === 50 && !isShare ? 50 : 100;
  return {
    form: formOf(end),
    confidence: most === 100 || isShare ? 0.95 : most > 64 ? 0.85 : 0.6,
    reason: `Letters name the sides, and the greatest number beside one is ${most}.`,
    others: ends
      .filter((other) => other !== end)
      .map((other) => ({ label: `up to ${other}`, form: formOf(other) })),
  };
}

type Range = readonly [left: number, centre: number, right: number];
const hundred: Range = [-100, 0, 100];
const one: Range = [-1, 0, 1];
const sevenBits: Range = [0, 64, 127];
const half: Range = [0, 0.5, 1];
const halfHundred: Range = [0, 50, 100];
const fifty: Range = [-50, 0, 50];
const sixtyFour: Range = [-64, 0, 63];
const even64: Range = [-64, 0, 64];
const wide: Range = [-127, 0, 127];
const ranges: readonly Range[] = [hundred, one, sevenBits, half, halfHundred, fifty, sixtyFour, even64, wide];

function panOf([left, centre, right]: Range, facts: Assigned['facts']): Pan {
  return { kind: 'pan', left, centre, right, ...unitTextOf(facts) };
}

/** A tuning: by its unit, else by its numbers. */
export function tuningForm({ facts, unit, column }: Assigned): FormReading {
  const formOf = (one: Tuning['unit']): Tuning => ({ kind: 'tuning', unit: one, ...unitTextOf(facts) });
  const units: Tuning['unit'][] = ['cents', 'semitones', 'ratio'];
  const reading = (tuning: Tuning['unit'], confidence: number, reason: string): FormReading => ({
    form: formOf(tuning),
    confidence,
    reason,
    others: units.filter((one) => one !== tuning).map((one) => ({ label: `in ${one}`, form: formOf(one) })),
  });
  if (facts.unit === 'cents' || facts.unit === 'semitones') {
    return reading(facts.unit, 0.98, `The numbers are followed by "${facts.unitText?.trim()}".`);
  }
  const { least, greatest, decimals } = facts;
  const most = Math.max(Math.abs(least), Math.abs(greatest));
  const isFractional = facts.whole < facts.numeric;
  if (unit === 'ratio') return reading('ratio', least > 0 ? 0.95 : 0.5, 'The name says that it is a ratio.');
  if (unit === 'cents' || unit === 'semitones') {
    const says = `The name says ${unit}.`;
    if (unit === 'cents' && isFractional && most < 1 && facts.tally.size > 2)
      return reading('cents', 0.7, `${says} But all numbers lie within ±1.`);
    return reading(unit, 0.96, says);
  }
  if (least > 0.4 && greatest < 2.1 && isFractional && (decimals >= 3 || facts.numbers.includes(1))) {
    return reading(
      'ratio',
      decimals >= 3 ? 0.93 : 0.7,
      `All numbers lie near 1, from ${least} to ${greatest}.`,
    );
  }
  const said = `The numbers lie from ${least} to ${greatest}`;
  if (isFractional && most <= 1) return reading('semitones', 0.88, `${said}, with fractions.`);
  const isFine = column.own.some((word) => /^(?:fine|detune|fein|micro)/.test(word));
  if (isFractional && most <= 13)
    return isFine
      ? reading('cents', 0.8, `${said}, and the name speaks of a fine tuning.`)
      : reading('semitones', most <= 1.5 ? 0.78 : 0.7, `${said}, with fractions.`);
  if (most === 0) return reading('cents', 0.7, 'Only 0 occurs.');
  if (most > 13) return reading('cents', 0.93, `${said}.`);
  return reading(
    'cents',
    isFine ? 0.78 : 0.6,
    `${said}${isFine ? ', and the name speaks of a fine tuning' : ''}.`,
  );
}
