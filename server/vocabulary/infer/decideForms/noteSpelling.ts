import { defaultNoteNames, readKeyForm } from '../../forms/keys';
import type { ValueForm } from '../../vocabulary';

type Key = Extract<ValueForm, { kind: 'key' }>;

/** The name of a note without its octave. */
const namePart = /^\s*(\p{L}{1,4}[#\u266f\u266d]?)\s*[-\u2212]?\d{1,2}\s*$/u;
const naturals: readonly number[] = [0, 2, 4, 5, 7, 9, 11];
/** By the key in its octave that has a sign, the natural key below and above it. */
const signed: readonly (readonly [key: number, below: number, above: number])[] = [
  [1, 0, 2],
  [3, 2, 4],
  [6, 5, 7],
  [8, 7, 9],
  [10, 9, 11],
];
/** Syllables that have an accent where others of the same language have theirs. */
const accented = { do: 'dó', re: 'ré', fa: 'fá', la: 'lá' } as const;

/**
 * How a document spells the notes of the twelve keys of an octave, from its own names: their case, their signs and their accents.
 * `undefined` where it spells them as is usual.
 */
export function noteSpellingOf(texts: readonly string[], form: Key): string | undefined {
  const written = new Map<number, string>();
  for (const text of texts) {
    const name = namePart.exec(text)?.[1];
    const key = name === undefined ? undefined : keyOf(name, form);
    if (name !== undefined && key !== undefined && !written.has(key)) written.set(key, name);
  }
  if (written.size === 0) return undefined;
  const usual = defaultNoteNames(form.naming);
  const all = [...written.values()];
  const cased = caseOf(all);
  const accent = accentsOf(all);
  const names = usual.map((name, key) => written.get(key) ?? cased(accent(name)));
  const sign = signOf(written, names, form);
  for (const [key, below, above] of signed)
    if (!written.has(key)) names[key] = sign(names[below] ?? '', names[above] ?? '', names[key] ?? '');
  const isSound = names.every((name, key) => keyOf(name, form) === key);
  return isSound && names.join(' ') !== usual.join(' ') ? names.join(' ') : undefined;
}

/** The key in its octave of a name without one. */
function keyOf(name: string, form: Key): number | undefined {
  const key = readKeyForm({ ...form, written: 'name', middleC: 'C4', offset: 0 }, `${name}4`);
  return key === undefined ? undefined : key % 12;
}

/** How names are cased: as most of them. */
function caseOf(names: readonly string[]): (name: string) => string {
  const letters = names.map((name) => name.replace(/(?<=.)[#\u266f\u266db]$/u, ''));
  const small = letters.filter((name) => name === name.toLowerCase()).length;
  const long = letters.filter((name) => name.length > 1);
  if (small * 2 > letters.length) return (name) => name.toLowerCase();
  // Of a letter with a sign such as `Bb` nothing is known of the case of long names.
  if (long.length > 0 && long.every((name) => name === name.toUpperCase()))
    return (name) => name.toUpperCase();
  return (name) => name.slice(0, 1).toUpperCase() + name.slice(1);
}

/** Puts accents on syllables as names have them: on all of them, or on `ré` alone. */
function accentsOf(names: readonly string[]): (name: string) => string {
  const all = names.join(' ').toLowerCase();
  const known = /[óá]/u.test(all) ? ['do', 're', 'fa', 'la'] : /é/u.test(all) ? ['re'] : [];
  return (name) => {
    const found = known.find((one) => name === one);
    return found ? accented[found as keyof typeof accented] : name;
  };
}

/** Names a key between two naturals as the first one is that a document names: after the one below it or above. */
function signOf(
  written: ReadonlyMap<number, string>,
  names: readonly string[],
  { naming }: Key,
): (below: string, above: string, usual: string) => string {
  for (const [key, below, above] of signed) {
    const name = written.get(key);
    if (name === undefined || naturals.includes(key)) continue;
    const [low, high] = [names[below] ?? '', names[above] ?? ''];
    const rest = (of: string) => name.slice(of.length);
    if (name.startsWith(low) && rest(low) !== '') return (one) => one + rest(low);
    if (name.startsWith(high) && rest(high) !== '') {
      const sign = rest(high);
      return naming === 'german' && /^e?s$/i.test(sign)
        ? (_, one, usual) => germanFlat(one, sign, usual)
        : (_, one) => one + sign;
    }
  }
  return (below, _, usual) => below + usual.replace(/^[^#]*/u, '');
}

/** The flat of a natural in German: `Des`, `Es`, `As`, and `B` below `H`. */
function germanFlat(natural: string, sign: string, usual: string): string {
  if (/^h$/i.test(natural)) return usual;
  const ending = /^[ae]$/i.test(natural) ? 's' : 'es';
  return natural + (sign === sign.toUpperCase() ? ending.toUpperCase() : ending);
}
