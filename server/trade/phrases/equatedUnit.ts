import { bareWord } from '../languages/spelling';
import { unitByStem } from '../languages/unitStems';
import type { Unit } from '../meaning';
import { numberOfWord } from '../numberWords';

/** A number that is put equal to an amount in a unit, up to the next mark: `0.05 = five cents up`, `50 = half a semitone`. */
const equation =
  /(?<![\p{L}\d.,])([-+\u2212]?\d+(?:[.,]\d+)?)\s*(?:=|\u2192|->)\s*([-+\u2212]?\d+(?:[.,]\d+)?|\p{L}{1,10})\s?(\p{L}{2,20}|%)?[^,;()[\]\n]{0,80}/gu;

/** A text without what it gives as examples of single values, which may be in another unit. */
export function withoutEquations(text: string): string {
  return text.replace(equation, ' ');
}

/** The unit of tuning of numbers that an example counts out in cents: `0.05 = five cents` is in semitones. */
export function equatedTuning(text: string): Unit | undefined {
  for (const [, written = '', amount = '', word = ''] of text.matchAll(equation)) {
    if (unitByStem(word) !== 'cents') continue;
    const times = (numberOf(amount) ?? Number.NaN) / (numberOf(written) ?? Number.NaN);
    if (Math.abs(times - 100) < 1e-6) return 'semitones';
    if (times === 1) return 'cents';
  }
  return undefined;
}

function numberOf(text: string): number | undefined {
  const number = Number(text.replace('\u2212', '-').replace(',', '.'));
  return Number.isNaN(number) ? numberOfWord(bareWord(text)) : number;
}
