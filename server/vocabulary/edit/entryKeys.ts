import { nameOf, nameWithoutEnding } from '../../model/paths';

/** A key of a list that stands, and the path that it stands for. */
export interface KnownKey {
  key: string;
  path: string;
}

/**
 * Keys for new entries of a list, in the way of those that it has: numbers, numbers behind letters, names of files, or `s1`, `s2`
 * where they have no way in common. None of `taken` is answered.
 */
export function newKeys(
  known: readonly KnownKey[],
  paths: readonly string[],
  taken: ReadonlySet<string>,
): string[] {
  const named = nameStyles.find(
    (style) => known.length > 0 && known.every(({ key, path }) => key === style(path)),
  );
  const used = new Set(taken);
  if (named) return paths.map((path) => unused(named(path), used));
  const { before, first, digits, behind } = countedStyle(known.map(({ key }) => key));
  let next = first;
  return paths.map(() => {
    let key: string;
    do key = before + String(next++).padStart(digits, '0') + behind;
    while (used.has(key));
    used.add(key);
    return key;
  });
}

const nameStyles: readonly ((path: string) => string)[] = [
  (path) => nameWithoutEnding(nameOf(path)),
  (path) => nameOf(path),
  (path) => nameWithoutEnding(nameOf(path)).toLowerCase(),
  (path) => path,
];

function unused(name: string, used: Set<string>): string {
  let key = name;
  for (let count = 2; used.has(key); count++) key = `${name}_${count}`;
  used.add(key);
  return key;
}

const counted = /^(.*?)(\d{1,9})(\D*)$/s;

/** How keys are counted: the lowest number, the letters around it and the digits that it has at least. */
function countedStyle(keys: readonly string[]): {
  before: string;
  first: number;
  digits: number;
  behind: string;
} {
  const all = keys.map((key) => counted.exec(key));
  const [, before = '', , behind = ''] = all[0] ?? [];
  const isOneStyle = all.length > 0 && all.every((one) => one?.[1] === before && one[3] === behind);
  if (!isOneStyle) return { before: 's', first: 1, digits: 1, behind: '' };
  const numbers = all.map((one) => one?.[2] ?? '');
  const isPadded = numbers.some((one) => one.length > 1 && one.startsWith('0'));
  return {
    before,
    first: Math.min(...numbers.map(Number)),
    digits: isPadded ? numbers[0].length : 1,
    behind,
  };
}
