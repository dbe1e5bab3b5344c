import { withoutApplied } from '../languages/appliedWords';
import { unitOf } from '../languages/cellWords';
import { languages } from '../languages/languages';
import type { LanguageWords } from '../languages/languageWords';
import { bareWord, wordsOf } from '../languages/spelling';
import type { ColumnMeaning, Unit } from '../meaning';
import { rangeWords } from '../rangeWords';
import { abbreviated } from './abbreviated';
import { dictionaryOf, joined } from './dictionary';
import { meaningByStems } from './headingStems';
import { isShortUnknown, misspelt, misspeltWhole } from './misspelt';
import { standardField } from './standardFields';
import { scaleIn } from './statedScale';

/** What a heading says of its column. */
export interface HeadingReading {
  meaning: ColumnMeaning;
  /** The unit that stands in brackets or as the last word. */
  unit: Unit | undefined;
  /**
   * How its words are like those of a known heading: their beginnings, their stems, or the same but for a slip of the fingers. Such a heading
   * counts only where the cells agree with it. `undefined` where the words themselves are known.
   */
  likeness?: 'beginning' | 'spelling' | 'stems' | undefined;
  /** What else a heading with slips may mean: `bsse` is like `basse` and like `base`. */
  orElse?: readonly ColumnMeaning[];
}

const longest = 80;
/** Words that may stand beside others without a meaning of their own. */
const weakWords: ReadonlySet<string> = new Set(
  'midi zone region sample value wert valeur valor valore parameter'.split(' '),
);
const mostRemembered = 5000;
/** The language is found from so many headings. */
const mostLooked = 100;
const remembered = new Map<string, HeadingReading | undefined>();
/** Whether one language alone knows a heading. */
const rememberedAlone = new Map<string, boolean>();

/** A number, and any text without a letter or a sign that goes for a word. */
const noWords = /^[-+.,\d\s]*$/;

/**
 * Finds what a heading such as `Low Key`, `loKey`, `Volume (dB)`, `Tune in cents` or `Untere Taste` means; `undefined`
 * for one whose words are not known. Where languages give a word another meaning, `language` goes before the others.
 */
export function readHeading(text: string, language?: LanguageWords): HeadingReading | undefined {
  if (text.length > longest || noWords.test(text)) return undefined;
  const key = `${language ? languages.indexOf(language) : ''} ${text}`;
  if (remembered.has(key)) return remembered.get(key);
  const order = language ? [language, ...languages.filter((one) => one !== language)] : languages;
  const reading = settled(findHeading(text, order), text);
  if (remembered.size >= mostRemembered) remembered.clear();
  remembered.set(key, reading);
  return reading;
}

/** The language that knows most of some headings, of few known ones with those that have slips; `undefined` where it knows none. */
export function languageOf(headings: readonly string[]): LanguageWords | undefined {
  const looked = headings.slice(0, mostLooked);
  const known: number[] = [];
  for (const language of languages) {
    known.push(looked.filter((text) => isKnownIn(language, text)).length);
    // None that is asked later knows more.
    if (looked.length > 0 && known.at(-1) === looked.length) return language;
  }
  const most = Math.max(...known);
  const scores =
    most * 2 >= looked.length
      ? known
      : languages.map((language, at) => known[at] + sumOf(looked.map((text) => likenessIn(language, text))));
  const best = Math.max(...scores);
  return best === 0 ? undefined : languages[scores.indexOf(best)];
}

/** How surely a language knows a heading but for slips: 1, and more where it knows some of its words; 0 where it does not. */
function likenessIn(language: LanguageWords, text: string): number {
  if (text === '' || text.length > longest || isKnownIn(language, text)) return 0;
  const [words, dictionary] = [wordsOfLabel(text), dictionaryOf(language)];
  if (words.some((word) => isShortUnknown(word, dictionary)) || misspelt(words, dictionary).length === 0)
    return 0;
  return 1 + words.filter((word) => dictionary.words.has(word)).length / words.length / 2;
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, one) => sum + one, 0);
}

/** Whether a language alone knows a heading. */
function isKnownIn(language: LanguageWords, text: string): boolean {
  if (text.length > longest) return false;
  const key = `${languages.indexOf(language)} ${text}`;
  let isKnown = rememberedAlone.get(key);
  if (isKnown === undefined) {
    const found = findHeading(text, [language]);
    // Stems are those of all languages.
    isKnown = found !== undefined && found.likeness !== 'stems';
    if (rememberedAlone.size >= mostRemembered) rememberedAlone.clear();
    rememberedAlone.set(key, isKnown);
  }
  return isKnown;
}

/** A pitch in cents or semitones is no key but a tuning, a level of 0..1 an amplitude, and a MIDI number a key. */
function settled(found: HeadingReading | undefined, text: string): HeadingReading | undefined {
  const reading =
    found && found.unit === undefined ? { ...found, unit: unitOfWords(found.meaning, text) } : found;
  if (reading && isForeign(reading.meaning, text)) return undefined;
  if (reading?.meaning === 'tune' && partOfSemitone.test(text)) return { ...reading, unit: 'cents' };
  if (reading?.meaning === 'volume' && scaleIn(text)?.high === 1) return { ...reading, unit: 'linear' };
  if (reading?.meaning === 'row_number' && /\bmidi\b/i.test(text)) return { ...reading, meaning: 'key' };
  if (reading?.meaning !== 'pitch_keycenter') return reading;
  if (reading.unit === 'cents') return { ...reading, meaning: 'tune' };
  return reading.unit === 'semitones' ? { ...reading, meaning: 'transpose' } : reading;
}

/** A hundredth of a semitone is a cent. */
const partOfSemitone =
  /(?:%|percent|per cent|hundredths?|1\/100|prozent|hundertstel|pour ?cent|centi[eè]mes?|por ?ciento|cent[eé]simas?|percento|centesimi)[^\p{L}]*(?:of|de|di|van|von|eines|d['’]un|do|du)?\s*(?:an?|un[ao]?|een|eines)?\s*(?:semi|half|halb|demi|halve|medio|meio)/iu;
const tunings: ReadonlySet<ColumnMeaning> = new Set(['tune', 'transpose']);
const keysAndVelocities: ReadonlySet<ColumnMeaning> = new Set([
  'pitch_keycenter',
  'key',
  'lokey',
  'hikey',
  'key_range',
  'lovel',
  'hivel',
  'velocity_range',
]);
const frequencyWord = /^(?:freq|frequency|frequenz|frequence|frecuencia|frequenza|frequencia|frequentie)$/;
/** Units that no column of a zone table counts in. */
const foreignUnit =
  /[([{（]\s*(?:[cmk]?m|mm|in|inch(?:es)?|ft|feet|k?g|lbs?|m?l|min(?:utes)?|h|hrs?|hours|days?|years?|°[cf]?|[€$£])\s*[)\]}）]/iu;

/** A unit that a word of a heading says by itself: `Tune cents`, `Root frequency`, `Gain dB`. */
function unitOfWords(meaning: ColumnMeaning, text: string): Unit | undefined {
  const words = wordsOf(text);
  if (meaning === 'pitch_keycenter') return words.some((word) => frequencyWord.test(word)) ? 'Hz' : undefined;
  if (!tunings.has(meaning) && meaning !== 'volume') return undefined;
  const units = words.filter((word) => word.length > 1).map((word) => unitOf(word));
  if (meaning === 'volume') return units.includes('dB') ? 'dB' : undefined;
  return units.find((unit) => unit === 'cents' || unit === 'semitones');
}

/** Whether a heading speaks of lengths, weights or money: nothing that plays is counted so. */
function isForeign(meaning: ColumnMeaning, text: string): boolean {
  return keysAndVelocities.has(meaning) && foreignUnit.test(text);
}

/** The scale of a column behind its name: `pan 0-127`. */
const scaleBehind = new RegExp(
  String.raw`(?<=\p{L})\s+[-+]?\d+(?:[.,]\d+)?\s*(?:-|\u2013|\.{2,3}|${rangeWords})\s*[-+]?\d+(?:[.,]\d+)?\s*$`,
  'iu',
);

function findHeading(text: string, order: readonly LanguageWords[]): HeadingReading | undefined {
  const field = /\s/.test(text.trim()) ? undefined : standardField(text);
  if (field) return { meaning: field, unit: undefined };
  const bracket = /^([^([{（]*)[([{（]([^)\]}）]*)[)\]}）]?(.*)$/.exec(text);
  const whole = meaningOf(text, order) ?? meaningOf(text.replace(scaleBehind, ''), order);
  if (whole) return { meaning: whole, unit: bracket ? unitInBrackets(bracket[2]) : unitOf(signUnit(text)) };
  if (bracket) {
    const meaning = meaningOf(`${bracket[1]} ${bracket[3]}`, order);
    if (meaning) return { meaning, unit: unitInBrackets(bracket[2]) };
  }
  const numbered = numberOfKey(text, order);
  if (numbered) return { meaning: numbered, unit: undefined };
  // In `gainDb` a capital parts the unit from the rest.
  const camel = text.trim().replace(/(\p{Ll})(\p{Lu}\p{Ll}*)$/u, '$1 $2');
  for (const parted of new Set([text.trim(), camel])) {
    const last = /^(.*?)(?:\s+(?:in|en|em))?[\s,/:_.-]+([^\s,/:_.-]+)$/.exec(parted);
    const unit = last ? unitOf(last[2].replace(/[()[\]{}]/g, '')) : undefined;
    const meaning = last && unit ? meaningOf(last[1], order) : undefined;
    if (meaning) return { meaning, unit };
  }
  const bare = withoutApplied(text);
  if (bare !== text) return findHeading(bare, order);
  const parts = wordsOf(bracket ? `${bracket[1]} ${bracket[3]}` : text);
  for (const language of order) {
    const meaning = abbreviated(parts, dictionaryOf(language));
    if (meaning)
      return { meaning, unit: bracket ? unitInBrackets(bracket[2]) : undefined, likeness: 'beginning' };
  }
  const unit = unitInHeading(text);
  const meaning = meaningByStems(text, unit);
  return meaning && { meaning, unit, likeness: 'stems' };
}

/** As {@link readHeading}, also of a heading whose words are known but for slips of the fingers: `Lo Kye`, `Velcity`. */
export function likelyHeading(text: string, language?: LanguageWords): HeadingReading | undefined {
  const known = readHeading(text, language);
  if (known || text.length === 0 || text.length > longest) return known;
  const order = language ? [language, ...languages.filter((one) => one !== language)] : languages;
  const words = wordsOfLabel(text);
  for (const one of order) {
    const dictionary = dictionaryOf(one);
    // A short word of one language is easily like another of a language that nothing else in the table is written in.
    const isExpected = one === language || one === languages[0];
    if (!isExpected && words.some((word) => isShortUnknown(word, dictionary))) continue;
    const byWords = misspelt(words, dictionary);
    const [meaning, ...orElse] =
      byWords.length > 0 || !isExpected ? byWords : misspeltWhole(words, dictionary);
    if (!meaning) continue;
    const reading = settled({ meaning, unit: unitInHeading(text), likeness: 'spelling' }, text);
    return reading && orElse.length > 0 ? { ...reading, orElse } : reading;
  }
  return undefined;
}

/** The words of a heading without its unit. */
function wordsOfLabel(text: string): string[] {
  const hasUnit = unitInHeading(text) !== undefined;
  return wordsOf(text.replace(/[([{（].*$/u, ' ')).filter(
    (word, at, all) => !hasUnit || at < all.length - 1 || unitOf(word) === undefined,
  );
}

/** The unit in the brackets of a heading or as its last word, whether its other words are known or not. */
export function unitInHeading(text: string): Unit | undefined {
  if (text.length > longest) return undefined;
  const bracket = /[([{（]([^)\]}）]*)[)\]}）]/.exec(text)?.[1];
  if (bracket === undefined)
    return unitOf(
      withoutApplied(text)
        .trim()
        .split(/[\s,/:_.-]+/)
        .at(-1) ?? '',
    );
  return unitInBrackets(bracket);
}

/** The unit in brackets, also beside a remark: `%, left is negative`. */
function unitInBrackets(text: string): Unit | undefined {
  const parts = [text, ...text.split(/[,;:\u3001\uff0c\uff1b\uff1a]/)];
  // The sign before a unit is no part of it: `(-dB)`.
  return parts
    .map((part) => unitOf(part.trim().replace(/^(?:[-\u2212\u2013]\s?|minus )(?=db$)/iu, '')))
    .find((unit) => unit !== undefined);
}

const keys: ReadonlySet<ColumnMeaning> = new Set(['pitch_keycenter', 'key', 'lokey', 'hikey', 'key_range']);
/** Short for `number`, as a word before or behind another, or as the end of a compound: `Key No.`, `N° note`, `Tastennr.` */
const shortNumber =
  /(?<=[\p{L}.)]\s)(?:no|n)\.?$|(?<=\p{L})[\s-]?(?:nr|nro|num|n[°º]|№|č)\.?$|^(?:nr|nro|num|n[°º]|№|č|n\.)\.?\s*(?:de |van |der |di )?(?=\p{L})/iu;

/** The key that a heading calls by its number. */
function numberOfKey(text: string, order: readonly LanguageWords[]): ColumnMeaning | undefined {
  const heading = text.trim();
  const name = heading.replace(shortNumber, '').trim();
  const meaning = name === heading || name === '' ? undefined : meaningOf(name, order);
  if (!meaning || !keys.has(meaning)) return undefined;
  return meaning === 'key_range' ? 'key' : meaning;
}

const pages: ReadonlySet<string> = new Set(languages.flatMap((language) => language.pages.map(bareWord)));

/** No word for a page is longer, without accents. */
const longestPage = Math.max(...Array.from(pages, (word) => word.length));

/** Whether a line numbers a page: `Page 2 of 5`. */
export function isPageNumber(text: string): boolean {
  if (!mayNumberPage(text)) return false;
  const match = /^\W*(\p{L}+)\W{0,3}\d/u.exec(text.slice(0, 40));
  return match !== null && pages.has(bareWord(match[1]));
}

/** Whether a text starts with a word as long as those for pages, and a number, as far as it is ASCII. */
function mayNumberPage(text: string): boolean {
  let at = 0;
  while (at < text.length && isSign(text.charCodeAt(at))) at++;
  const start = at;
  while (at < text.length && isLetter(text.charCodeAt(at))) at++;
  if (at - start > longestPage) return false;
  const letters = at - start;
  while (at < text.length && isSign(text.charCodeAt(at))) at++;
  const code = text.charCodeAt(at);
  return code > 127 || (letters > 0 && code >= 48 && code <= 57);
}

function isLetter(code: number): boolean {
  const small = code | 32;
  return small >= 97 && small <= 122;
}

/** ASCII that is neither letter, digit nor `_`. */
function isSign(code: number): boolean {
  return code < 128 && !isLetter(code) && (code < 48 || code > 57) && code !== 95;
}

/** A sign that is a unit at the end of a heading, as in `Volume %`; else the heading itself. */
function signUnit(text: string): string {
  return text.endsWith('%') ? '%' : text;
}

function meaningOf(text: string, order: readonly LanguageWords[]): ColumnMeaning | undefined {
  const words = wordsOf(text);
  const telling = words.filter((word) => !weakWords.has(word));
  for (const some of telling.length > 0 && telling.length < words.length ? [words, telling] : [words]) {
    for (const language of order) {
      const { meanings, fillers } = dictionaryOf(language);
      const meaning = meanings.get(joined(some, fillers));
      if (meaning) return meaning;
    }
  }
  return undefined;
}
