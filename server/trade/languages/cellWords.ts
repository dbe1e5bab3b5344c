import type { Unit } from '../meaning';
import { languages } from './languages';
import type { CellWord } from './languageWords';
import { bareWord } from './spelling';

/** Signs that say the same in every language. */
const signs: readonly (readonly [sign: string, word: CellWord])[] = [
  ['-', 'no_loop'],
  ['–', 'no_loop'],
  ['—', 'no_loop'],
  ['✗', 'no_loop'],
  ['✘', 'no_loop'],
  ['☐', 'no_loop'],
  ['□', 'no_loop'],
  ['✓', 'loop_continuous'],
  ['✔', 'loop_continuous'],
  ['☑', 'loop_continuous'],
  ['☒', 'loop_continuous'],
  ['■', 'loop_continuous'],
  ['•', 'loop_continuous'],
  ['●', 'loop_continuous'],
  ['→', 'loop_continuous'],
  ['↔', 'alternate'],
  ['⇄', 'alternate'],
  ['←', 'backward'],
  ['0', 'no_loop'],
  ['1', 'loop_continuous'],
];

/** Marks for a cell that holds the same as the one above it. */
const dittoSigns: readonly string[] = [
  '"',
  '""',
  '″',
  '〃',
  "''",
  '’’',
  '”',
  '“',
  '‘‘',
  '„',
  ',,',
  '↓',
  '⇣',
  '^',
  '^^',
  '^^^',
  '::',
  ':::',
  '⋮',
];

const unitSigns: readonly (readonly [sign: string, unit: Unit])[] = [
  ['%', 'percent'],
  ['¢', 'cents'],
];

/** What says that there is none, besides the words that answer a heading of loops. */
const nones: ReadonlySet<string> = new Set([
  ...['nil', 'n/a', 'rien', 'niente', 'nada'],
  ...languages.flatMap(({ turning }) => turning.none.map(bareWord)),
]);
const pans = wordsOf(['left', 'right', 'centre']);
const loops = wordsOf([
  'no_loop',
  'one_shot',
  'loop_continuous',
  'loop_sustain',
  'alternate',
  'backward',
  'whole',
]);
const triggers = wordsOf(['release', 'press', 'first', 'legato']);
const dittos: ReadonlySet<string> = new Set([
  ...dittoSigns,
  ...languages.flatMap(({ ditto }) => ditto.map(bareWord)),
]);
const units: ReadonlyMap<string, Unit> = new Map([
  ...unitSigns,
  ...languages.flatMap((language) =>
    (Object.entries(language.units) as [Unit, readonly string[]][]).flatMap(([unit, words]) =>
      words.map((word) => [bareWord(word), unit] as const),
    ),
  ),
]);
/** No mark for the same as above is longer. */
export const longestDitto = Math.max(...[...dittos].map((word) => word.length));

/** By the first character, the lengths of the marks for the same as above as bits. */
const dittoLengths = new Int32Array(128);
for (const word of dittos) {
  const code = word.charCodeAt(0);
  if (code < 128) dittoLengths[code] |= 1 << word.length;
}

const dash = 45;
/** A mark between dashes, as `-"-` and `— ″ —`. */
const dashed =
  /^[-\u2010-\u2015]{1,2} ?(?:["\u2033\u3003\u201c-\u201e]|''|\u2019\u2019|,,|\/\/) ?[-\u2010-\u2015]{1,2}$/u;

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** Whether ASCII text may be a mark for the same as above, by its first character and length; `true` for other text. */
export function mayBeDitto(codes: Uint8Array, start: number, length: number): boolean {
  for (let at = start; at < start + length; at++) if (codes[at] > 127) return true;
  const first = codes[start];
  if (first === dash) return length < 6 && !isDigit(codes[start + 1]);
  const small = first >= 65 && first <= 90 ? first + 32 : first;
  return (dittoLengths[small] & (1 << length)) !== 0;
}

/** Words that take a side as far as it goes, and to the half; without accents. */
const fully =
  /^(?:hard|full|fully|far|extreme|extremely|completely|all the way|100|ganz|voll|vollstandig|hart|aussen|tout|tout a fait|completement|a fond|extreme|todo|del todo|completamente|totalmente|a fondo|tutto|tutta|helemaal|volledig|uiterst|uiterst|helt|langst|calkiem|skrajnie|maksymalnie|uplne|zcela|полностью|крайне|до упора|совсем|max|maximal)$/u;
const half =
  /^(?:half|halfway|half way|halb|zur halfte|a moitie|moitie|demi|mi|medio|media|a media|a mitad|mitad|a meta|meta|mezzo|meio|metade|half|halverwege|halvt|halvvags|polowe|w polowie|napul|napolovic|наполовину|на половину)$/u;
/** Small words between the two. */
const linkingWords =
  'to(?: the)?|nach|zur|auf|a(?: la)?|à(?: la)?|al|alla|hacia la|la|verso|para|op|naar|at|till|til|åt|na|w|do|vers(?: la)?|in|direction';
const linking = new RegExp(`^(?:${linkingWords})$`, 'u');
const linkAtStart = new RegExp(`^(?:${linkingWords})\\s`, 'iu');
const linkAtEnd = new RegExp(`\\s(?:${linkingWords})$`, 'iu');

/** A text without the small words behind it that lead up to a side: `30 % to the`. */
export function withoutLink(text: string): string {
  return text.replace(linkAtEnd, '');
}

/** A text without the small words before a side: `to the left 30`. */
export function withoutLead(text: string): string {
  return text.replace(linkAtStart, '');
}

/** A side in several words, as a share of the way there: `ganz rechts`, `hard left`, `à moitié à gauche`; `undefined` for others. */
export function sidePhrase(text: string): { side: CellWord; share: number } | undefined {
  const words = bareWord(text).split(/[\s_-]+/u);
  if (words.length < 2 || words.length > 6) return undefined;
  const at = words.findIndex((word) => pans.has(word) && word.length > 1 && pans.get(word) !== 'centre');
  const side = pans.get(words[at] ?? '');
  if (!side) return undefined;
  const rest = words.filter((_, index) => index !== at);
  while (rest.length > 0 && linking.test(rest.at(-1) ?? '')) rest.pop();
  const how = rest.join(' ');
  if (how === '' || fully.test(how)) return { side, share: 1 };
  return half.test(how) ? { side, share: 0.5 } : undefined;
}

/** The side that a word of any language names: left, right or centre. */
export function panWord(word: string): CellWord | undefined {
  return pans.get(bareWord(word));
}

/** The loop mode that a word or sign of any language names. */
export function loopWord(word: string): CellWord | undefined {
  return loops.get(word) ?? loops.get(bareWord(word).replace(/[_-]/g, ' '));
}

/** Whether a cell says that there is none of what its column holds: `none`, `keine`, `-`; a letter or a number may be a value. */
export function saysNone(text: string): boolean {
  const word = bareWord(text);
  return !/^[a-z\d]?$/.test(word) && (nones.has(word) || loopWord(word) === 'no_loop');
}

/** Whether a cell says that it is the same as the one above it. */
export function isDitto(text: string): boolean {
  if (text.length > longestDitto) return false;
  return dittos.has(text) || dittos.has(bareWord(text)) || dashed.test(text);
}

/** The unit that a word stands for, in any letter case and with hyphens for blanks; `undefined` for other words. */
export function unitOf(word: string): Unit | undefined {
  const bare = bareWord(word);
  return units.get(bare) ?? units.get(bare.replace(/(?<=\p{L})[-_\u2010\u2011](?=\p{L})/gu, ' '));
}

function wordsOf(wanted: readonly CellWord[]): ReadonlyMap<string, CellWord> {
  const map = new Map<string, CellWord>();
  for (const [sign, word] of signs) if (wanted.includes(word)) map.set(sign, word);
  for (const { cells } of languages) {
    for (const word of wanted) {
      for (const written of cells[word] ?? []) {
        const bare = bareWord(written);
        if (!map.has(bare)) map.set(bare, word);
      }
    }
  }
  return map;
}

/** What starts a zone by a word of any language: pressing a key, letting it go, the first note or a tied one. */
export function triggerWord(word: string): CellWord | undefined {
  return triggers.get(bareWord(word).replace(/[_-]/g, ' '));
}
