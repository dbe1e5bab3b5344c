import { saysOf } from '../../../trade/phrases/toldWords';
import { readKey } from '../../../trade/readings/keyReading';
import { noteName } from '../../../trade/readings/notePatterns';
import type { PlacedValue } from './clauseReader';
import type { ToldLine } from './toldLine';

/** A key in a sentence. */
const saidKey = new RegExp(
  String.raw`(?<![\p{L}\p{N}_.+-])(?:${noteName}-?\d|\d{1,3})(?![\p{L}\p{N}_]|[.,]\d|\s?(?:dB|cents?|ct|st|Hz|%|\u00a2)(?!\p{L}))`,
  'giu',
);
const ends = /^(\S+) \u2013 (\S+)$/u;

/**
 * The key that a sentence puts in the place of one that an entry has, by the old one: `goes up to 65, not 60` for an entry of 56 to 60.
 * `undefined` where it does not name exactly one key of the entry and one other, or where two of its values are the old one.
 */
export function correctedKey(entry: ToldLine, sentence: string, at: number): PlacedValue | undefined {
  const all = Array.from(sentence.matchAll(saidKey), ({ 0: text, index }) => ({ text, index }));
  if (all.length !== 2 || all.some(({ text }) => readKey(text) === undefined)) return undefined;
  const found = all.flatMap((old, which) => {
    const other = all[1 - which];
    return other && sameKey(old.text, other.text)
      ? []
      : placesOf(entry, old.text).map((place) => ({ ...place, other }));
  });
  const isOfRoot = saysOf(sentence, 'root');
  const meant = found.filter(({ value }) => (value.meaning === 'pitch_keycenter') === isOfRoot);
  const [only, ...others] = isOfRoot || meant.length > 0 ? meant : found;
  if (!only || others.length > 0) return undefined;
  const { value, part, other } = only;
  const start = at + other.index;
  const place = { start, end: start + other.text.length, meaning: value.meaning, isNamed: true };
  const [, low = '', high = ''] = ends.exec(value.text) ?? [];
  if (part === 'whole') return { ...place, text: other.text };
  const text = part === 'low' ? `${other.text} \u2013 ${high}` : `${low} \u2013 ${other.text}`;
  const [first, last] = text.split(' \u2013 ').map((one) => readKey(one));
  const isTurned = (first?.number ?? first?.named ?? 0) > (last?.number ?? last?.named ?? 127);
  return isTurned ? undefined : { ...place, text };
}

interface Place {
  value: PlacedValue;
  part: 'low' | 'high' | 'whole';
}

/** Where an entry has a key: as an end of its range, or as a value of its own. */
function placesOf({ values }: ToldLine, key: string): Place[] {
  return values.flatMap((value): Place[] => {
    if (value.meaning === 'key_range') {
      const [, low = '', high = ''] = ends.exec(value.text) ?? [];
      const parts: Place[] = [
        { value, part: 'low' },
        { value, part: 'high' },
      ];
      return parts.filter(({ part }) => sameKey(part === 'low' ? low : high, key));
    }
    const isKey = ['lokey', 'hikey', 'key', 'pitch_keycenter'].includes(value.meaning);
    return isKey && sameKey(value.text, key) ? [{ value, part: 'whole' }] : [];
  });
}

function sameKey(one: string, other: string): boolean {
  const [a, b] = [readKey(one), readKey(other)];
  return a !== undefined && b !== undefined && a.number === b.number && a.named === b.named;
}
