import { saysNone } from '../../trade/languages/cellWords';
import { unitNames } from './numberForm';
import { readNumberText } from './numberText';

const octaveNames = ['oct', 'octs', 'octave', 'octaves', 'ok', 'oktave', 'oktaven', '8va', '8ve'];

/** How many cents one of each unit of tuning is, by the unit's names in small letters. */
export const centsByUnit: Readonly<Record<string, number>> = Object.fromEntries([
  ...unitNames.cents.map((name) => [name, 1] as const),
  ...unitNames.semitones.map((name) => [name, 100] as const),
  ...octaveNames.map((name) => [name, 1200] as const),
]);

const longest = 60;
const parts = /[-+\u2212]?\s?\d[\d.,]*\s?[^\d\s+\-\u2212.,]{1,9}/gu;

/**
 * The cents of a tuning of several numbers with a unit each, which are added: `2 st -10 ct`. `undefined` for other texts, those of one
 * number among them.
 */
export function readTuningSum(text: string): number | undefined {
  if (text.length > longest) return undefined;
  const found = text.match(parts) ?? [];
  if (found.length < 2 || text.replace(parts, '').replace(/[\s,;]+|and|und|et/giu, '') !== '')
    return undefined;
  let sum = 0;
  for (const part of found) {
    const read = readNumberText(part.replace(/^([-+\u2212])\s/, '$1'));
    const cents = read && centsByUnit[read.unit.toLowerCase()];
    if (!read || cents === undefined) return undefined;
    sum += read.number * cents;
  }
  return sum;
}

/** Whether texts give tunings in more than one unit, several in one text, in octaves, or with a word for none among them. */
export function areTuningsInUnits(texts: Iterable<string>): boolean {
  const kinds = new Set<number | 'sum' | 'none'>();
  for (const text of texts) {
    if (saysNone(text)) kinds.add('none');
    else if (readTuningSum(text) !== undefined) kinds.add('sum');
    else {
      const read = readNumberText(text);
      const cents = read && centsByUnit[read.unit.toLowerCase()];
      if (cents === undefined && !(read?.number === 0 && read.unit === '')) return false;
      if (cents !== undefined) kinds.add(cents);
    }
  }
  const isNone = kinds.delete('none');
  return kinds.size > 1 || kinds.has('sum') || kinds.has(1200) || (isNone && kinds.size > 0);
}
