import { panWord } from '../../../trade/languages/cellWords';

/** What letters beside numbers of a place stand for. */
export type Sides = ReadonlyMap<string, 'left' | 'right' | 'centre'>;

/** First letters of the words for left and right, by language (common practice). */
const pairs: readonly (readonly [left: string, right: string])[] = [
  ['l', 'r'],
  ['l', 'p'],
  ['g', 'd'],
  ['i', 'd'],
  ['s', 'd'],
  ['e', 'd'],
  ['v', 'h'],
  ['\u043b', '\u043f'],
];
const sided = /^\s*(?:(\p{L})[\s:]?[\d.,]+\s?%?|[\d.,]+\s?%?\s?(\p{L}))\s*$/u;
const alone = /^\s*(\p{L})\s*$/u;

/**
 * The sides that letters beside numbers name where both occur, and a third letter that stands alone as the centre: `L20`, `P30`, `S`.
 * `undefined` where they are no pair that is known.
 */
export function sidesIn(texts: Iterable<string>): Sides | undefined {
  const beside = new Set<string>();
  const lone = new Set<string>();
  for (const text of texts) {
    const [, before, behind] = sided.exec(text) ?? [];
    const letter = (before ?? behind)?.toLowerCase();
    const single = alone.exec(text)?.[1]?.toLowerCase();
    if (letter) beside.add(letter);
    else if (single) lone.add(single);
    else if (!/^[\s+-]*[\d.,]+\s*%?\s*$/.test(text)) return undefined;
  }
  const pair = pairs.find(([left, right]) => beside.size === 2 && beside.has(left) && beside.has(right));
  if (!pair) return undefined;
  const others = [...lone].filter((letter) => !pair.includes(letter));
  if (others.length > 1) return undefined;
  return new Map([
    [pair[0], 'left'],
    [pair[1], 'right'],
    ...others.map((letter) => [letter, 'centre'] as const),
  ]);
}

/** How many texts name a side by the letters that {@link sidesIn} knows, or are the letter of the centre. */
export function countSided(tally: ReadonlyMap<string, number>): number {
  const sides = sidesIn(tally.keys());
  if (!sides) return 0;
  let count = 0;
  for (const [text, times] of tally) if (/\p{L}/u.test(text)) count += times;
  return count;
}

/** The side that a word of a place names, by its letters or in any language. */
export function letteredSide(
  word: string,
  sides: Sides | undefined,
): 'left' | 'right' | 'centre' | undefined {
  const known = sides?.get(word.toLowerCase());
  if (known) return known;
  const said = panWord(word);
  return said === 'left' || said === 'right' || said === 'centre' ? said : undefined;
}
