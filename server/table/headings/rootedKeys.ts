import type { KeyRangeReading, KeyReading, NoteNaming } from '../../trade/readings/keyReading';
import { readKeyRange } from '../../trade/readings/keyReading';

/** A range of keys and the root key beside it. */
export interface RootedKeys {
  low: KeyReading;
  high: KeyReading;
  root: KeyReading;
}

const parting = /\s*[([{\])}:;,/|@]\s*/u;
/** A word such as `root` or `keys`. */
const leadingWord = /^\p{L}{3,}[.:]?\s+/u;
/** Middle C may be C4, C5 or C3. */
const shifts: readonly number[] = [0, -12, 12];

/**
 * The ranges and root keys of headings that all give both, such as `F3 (52-54)` and `40..44 @42`. Where the roots are names and the ranges
 * numbers, the octave is the first in which all roots lie in their ranges; `undefined` where there is none.
 */
export function rootedKeysIn(headings: readonly string[], naming: NoteNaming): RootedKeys[] | undefined {
  const found = headings.map((heading) => rootedKeys(heading, naming));
  const all = found.filter((one) => one !== undefined);
  if (all.length < headings.length) return undefined;
  const shift = shifts.find((one) => all.every((keys) => liesWithin(keys, one)));
  if (shift === undefined) return undefined;
  return all.map(({ low, high, root }) => ({
    low,
    high,
    root: isMixed(low, root) ? { number: keyOf(root) + shift, named: undefined } : root,
  }));
}

function rootedKeys(heading: string, naming: NoteNaming): RootedKeys | undefined {
  const parts = heading.split(parting).filter((part) => part !== '');
  const words = parts.length === 1 ? heading.trim().split(/\s+/u) : parts;
  const keys = words.map((part) => readKeyRange(part.replace(leadingWord, '').trim(), naming));
  const [first, second] = keys;
  if (keys.length !== 2 || !first || !second || first.single === second.single) return undefined;
  const [root, range] = first.single ? [first, second] : [second, first];
  return range.open === undefined ? { ...endsOf(range), root: root.low } : undefined;
}

function endsOf({ low, high }: KeyRangeReading): { low: KeyReading; high: KeyReading } {
  return { low, high };
}

/** Whether a root is a name beside a range of numbers. */
function isMixed(low: KeyReading, root: KeyReading): boolean {
  return low.number !== undefined && root.number === undefined;
}

function liesWithin({ low, high, root }: RootedKeys, shift: number): boolean {
  const key = keyOf(root) + (isMixed(low, root) ? shift : 0);
  return keyOf(low) <= key && key <= keyOf(high);
}

function keyOf({ number, named }: KeyReading): number {
  return number ?? named ?? Number.NaN;
}
