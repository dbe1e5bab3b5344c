import { editDistance } from '../text/nearest';
import { fillPattern, listOpcodes, resolveOpcode } from './resolve';

const longestName = 64;
const mostEdits = 4;
/** The families that people write most, for a word that ends several names (common practice). */
const commonFamily = /^(?:pitch|ampeg)_/;

interface Near {
  readonly name: string;
  readonly distance: number;
  readonly rank: number;
}

/**
 * The opcode names that a name in text was most likely meant to be, the likeliest first, at most `most` of them. The
 * numbers in the name are kept: `cutof_oncc74` gives `cutoff_oncc74`. Nearness is the optimal string alignment
 * distance (insertions, deletions, replacements, swaps of neighbours); a name that differs in more than about
 * a quarter of its letters is not offered. Where nothing is spelt nearly so, names that end in the whole word are: `keycenter`
 * gives `pitch_keycenter`.
 */
export function nearestOpcodes(name: string, most: number): string[] {
  const word = name.toLowerCase();
  // Stryker disable next-line all: it saves time, as no opcode is nearly so long
  if (word.length > longestName) return [];
  const controller = /_?(?:on|curve|smooth|step)?cc\d{1,3}$/.exec(word);
  const whole = spelledLike(word);
  if (controller) {
    for (const base of spelledLike(word.slice(0, controller.index))) {
      const moved = base.name + controller[0];
      if (resolveOpcode(moved)) whole.push({ ...base, name: moved });
    }
  }
  const found = whole.length > 0 ? whole : endingIn(word);
  found.sort((a, b) => a.distance - b.distance || a.rank - b.rank);
  const names = new Map<string, string>();
  for (const { name: near } of found) {
    // Stryker disable next-line OptionalChaining: all names that are found are known
    const canonical = resolveOpcode(near)?.canonical ?? near;
    if (!names.has(canonical)) names.set(canonical, near);
  }
  return [...names.values()].slice(0, most);
}

function concreteNames(word: string): { name: string; rank: number }[] {
  const numbers = (word.match(/\d{1,3}/g) ?? []).map(Number);
  const names: { name: string; rank: number }[] = [];
  for (const { pattern, level, category } of listOpcodes()) {
    const letters = pattern.match(/N+|[XYZ]/g)?.length ?? 0;
    if (letters > numbers.length || pattern.includes('*') || category === 'Embedded Data') continue;
    // A directive is written without "=", and would bring in another text in the place of a value.
    if (pattern.startsWith('#')) continue;
    names.push({ name: fillPattern(pattern, numbers), rank: level === 'v1' ? 0 : level === 'v2' ? 1 : 2 });
  }
  return names;
}

function spelledLike(word: string): Near[] {
  const limit = Math.min(mostEdits, Math.max(1, Math.floor(word.length / 4)));
  const found: Near[] = [];
  for (const { name, rank } of concreteNames(word)) {
    const distance = editDistance(word, name, limit);
    if (distance <= limit && name !== word) found.push({ name, distance, rank });
  }
  return found;
}

function endingIn(word: string): Near[] {
  if (word.length < 4) return [];
  return concreteNames(word)
    .filter(({ name }) => name.endsWith(`_${word}`))
    .map(({ name, rank }) => ({
      name,
      // Stryker disable next-line ArithmeticOperator: the word is as long for all names
      distance: commonFamily.test(name) ? 0 : name.length - word.length,
      rank,
    }));
}
