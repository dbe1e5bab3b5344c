import { unitByStem } from '../languages/unitStems';
import type { Unit } from '../meaning';

/** Words for a tenth, a hundredth and a thousandth, as they stand before a unit (from memory). */
const tenth = String.raw`tenths?|zehntel|dixi[e\u00e8]mes?|d[e\u00e9]cimas?|d[e\u00e9]cim[oi]s?|tienden?|tiondels?|tiendedele?|kymmenesosa\p{L}*|dziesi\u0105t\p{L}*|desetin\p{L}*|\u0434\u0435\u0441\u044f\u0442\p{L}*|1\s?\/\s?10|0[.,]1`;
const hundredth = String.raw`hundredths?|hundertstel|centi[e\u00e8]mes?|cent[e\u00e9]simas?|cent[e\u00e9]sim[oi]s?|honderdsten?|hundradels?|hundrededele?|sadasosa\p{L}*|setn\p{L}*|setin\p{L}*|\u0441\u043e\u0442\p{L}*|1\s?\/\s?100|0[.,]01`;
const thousandth = String.raw`thousandths?|tausendstel|milli[e\u00e8]mes?|mil[e\u00e9]simas?|mill[e\u00e9]sim[oi]s?|duizendsten?|tusendels?|1\s?\/\s?1000|0[.,]001`;
const small = String.raw`\s*(?:of|von|de|di|del|van|av|af|z)?\s*(?:(?:an?|one|eines?|einem|un|una|uno|een|ett|et)\s+)?`;
const fraction = new RegExp(
  String.raw`(?<![\p{L}\d.,/])(?:(${tenth})|(${hundredth})|(${thousandth}))${small}-?\s*(\p{L}{2,20})`,
  'giu',
);

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
export function unitPartsIn(
  text: string,
  fits: (unit: Unit) => boolean,
): { whole: Unit; parts: number } | undefined {
  for (const [, tenths, hundredths, , word = ''] of text.matchAll(fraction)) {
    const whole = unitByStem(word);
    if (whole === undefined || !fits(whole)) continue;
    return { whole, parts: tenths !== undefined ? 10 : hundredths !== undefined ? 100 : 1000 };
  }
  return undefined;
}
