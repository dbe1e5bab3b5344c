import { unitByStem } from '../languages/unitStems';
import type { Unit } from '../meaning';

/** Words for a tenth, a hundredth and a thousandth, as they stand before a unit (from memory). */
const tenth = String.raw`tenths?|zehnteln?|dixi[e\u00e8]mes?|d[e\u00e9]cimas?|d[e\u00e9]cim[oi]s?|tienden?|tiondels?|tiendedele?|kymmenesosa\p{L}*|dziesi\u0105t\p{L}*|desetin\p{L}*|\u0434\u0435\u0441\u044f\u0442\p{L}*|0[.,]1`;
const hundredth = String.raw`hundredths?|hundertsteln?|centi[e\u00e8]mes?|cent[e\u00e9]simas?|cent[e\u00e9]sim[oi]s?|honderdsten?|hundradels?|hundrededele?|sadasosa\p{L}*|setn\p{L}*|setin\p{L}*|\u0441\u043e\u0442\p{L}*|0[.,]01`;
const thousandth = String.raw`thousandths?|tausendsteln?|milli[e\u00e8]mes?|mil[e\u00e9]simas?|mill[e\u00e9]sim[oi]s?|duizendsten?|tusendels?|0[.,]001`;
/** Other parts, by their words (from memory). */
const otherParts: readonly (readonly [words: string, parts: number])[] = [
  ['quarters?|vierteln?|quarts?|cuartos?|quarti|kwart(?:en)?', 4],
  ['eighths?|achteln?|huiti[e\u00e8]mes?', 8],
  ['sixteenths?|sechzehnteln?', 16],
  ['twentieths?|zwanzigsteln?|vingti[e\u00e8]mes?', 20],
  ['thirty-seconds?|zweiunddrei\u00dfigsteln?', 32],
  ['fiftieths?|f\u00fcnfzigsteln?|cinquanti[e\u00e8]mes?', 50],
  ['sixty-fourths?|vierundsechzigsteln?|soixante-quatri[e\u00e8]mes?', 64],
];
/** A part by its number, as in `64ths`, `1/64`, `64stel`, `64es`, `64avos`. */
const numbered = String.raw`1\s?\/\s?(\d{1,4})|(\d{1,4})(?:[-.]?(?:ths?|nds?|rds?|sts?|stel[ns]?|teln?|i?[e\u00e8]mes?|es?|avos?|avas?|esim[ioa]|sten?|den?|dels?))`;
const small = String.raw`\s*(?:of|von|de|di|del|van|av|af|z)?\s*(?:(?:an?|one|eines?|einem|un|una|uno|een|ett|et)\s+)?`;
const fraction = new RegExp(
  String.raw`(?<![\p{L}\d.,/])(?:(${tenth})|(${hundredth})|(${thousandth})|${numbered}|(${otherParts.map(([words]) => words).join('|')}))(?![\p{L}\d])${small}-?\s*(\p{L}{2,20})(-?\s?(?:ton|tone|tons|tones|tono|toni|tonos|toon|tonen|steps?)(?!\p{L}))?`,
  'giu',
);

/** A unit of which values count parts, and how many of them make it up. */
export interface UnitPart {
  whole: Unit;
  parts: number;
}

const known: Readonly<Record<string, Unit>> = {
  '10 dB': 'centibels',
  '100 semitones': 'cents',
  '1000 s': 'ms',
};

/**
 * The unit that a text gives as a part of another, as `tenths of a dB`: of centibels, cents and milliseconds that unit, of other parts
 * `unknown`, since values would be read too great by the whole one. `undefined` where it gives none.
 */
export function unitFractionIn(text: string, fits: (unit: Unit) => boolean): Unit | 'unknown' | undefined {
  const found = unitPartsIn(text, fits);
  return found && (known[`${found.parts} ${found.whole}`] ?? 'unknown');
}

/** The unit of which a text gives a part, and how many of those parts make it up; `undefined` where it gives none. */
export function unitPartsIn(text: string, fits: (unit: Unit) => boolean): UnitPart | undefined {
  for (const [, tenths, hundredths, thousandths, below, ordinal, other, word = '', rest] of text.matchAll(
    fraction,
  )) {
    const whole = (rest === undefined ? undefined : unitByStem(`${word}${rest}`)) ?? unitByStem(word);
    if (whole === undefined || !fits(whole)) continue;
    if (tenths !== undefined) return { whole, parts: 10 };
    if (hundredths !== undefined) return { whole, parts: 100 };
    if (thousandths !== undefined) return { whole, parts: 1000 };
    const parts = other === undefined ? Number(below ?? ordinal) : partsOf(other);
    if (parts > 1) return { whole, parts };
  }
  return steppedPartsIn(text, fits);
}

/** How many steps a whole one has, as `64 steps per semitone` and `64 = 1 semitone`; of other units a text may give rates so. */
const stepped =
  /(?<![\p{L}\d.,/])\+?(\d{2,4})\s*(?:(?:\p{L}{1,20}\s+){0,2}(?:per|to (?:the|an?|one)|in (?:an?|one)|je|pro|par|por|na|\u043d\u0430)|=|is|ist|sind|est|es|makes?|equals?)\s*(?:(?:an?|one|\+?1|einen?|eine[mr]?|une?|una|uno|een|ett|et)\s+)?(\p{L}{2,20})(-?\s?(?:ton|tone|tons|tones|tono|toni|tonos|toon|tonen)(?!\p{L}))?/giu;

function steppedPartsIn(text: string, fits: (unit: Unit) => boolean): UnitPart | undefined {
  for (const [, count, word = '', rest] of text.matchAll(stepped)) {
    const whole = (rest === undefined ? undefined : unitByStem(`${word}${rest}`)) ?? unitByStem(word);
    const isStep = whole === 'semitones' || whole === 'dB';
    if (isStep && fits(whole)) return { whole, parts: Number(count) };
  }
  return undefined;
}

function partsOf(word: string): number {
  return otherParts.find(([words]) => new RegExp(`^(?:${words})$`, 'iu').test(word))?.[1] ?? Number.NaN;
}
