import type { LanguageWords } from '../languages/languageWords';
import { bareWord, wordsOf } from '../languages/spelling';
import type { ColumnMeaning } from '../meaning';

/** A heading of a language, its words parted. */
export interface Phrase {
  words: readonly string[];
  meaning: ColumnMeaning;
}

/** The headings of a language. */
export interface Dictionary {
  fillers: ReadonlySet<string>;
  meanings: ReadonlyMap<string, ColumnMeaning>;
  /** Phrases by the number of their words and the first two letters, to find abbreviations. */
  byStart: ReadonlyMap<string, readonly Phrase[]>;
  /** All words of its phrases, to find misspelt ones. */
  words: ReadonlySet<string>;
}

const dictionaries = new Map<LanguageWords, Dictionary>();

/** Small words do not count, but for the last: in `Note de` it says that a range starts there. */
export function joined(words: readonly string[], fillers: ReadonlySet<string>): string {
  return words.filter((word, at) => at === words.length - 1 || !fillers.has(word)).join('');
}

/** The number of words and the first letters, by which {@link Dictionary.byStart} finds headings. */
export function phraseStart(words: readonly string[]): string {
  return `${words.length}${words[0]?.slice(0, 2) ?? ''}`;
}

/** The headings of a language, put together once. */
export function dictionaryOf(language: LanguageWords): Dictionary {
  let dictionary = dictionaries.get(language);
  if (!dictionary) {
    dictionary = expand(language);
    dictionaries.set(language, dictionary);
  }
  return dictionary;
}

/** A phrase written out counts before one that is put together from parts, and that before one turned round. */
function expand({ parts, phrases: lists, fillers: small }: LanguageWords): Dictionary {
  const fillers = new Set(small.map(bareWord));
  const meanings = new Map<string, ColumnMeaning>();
  const byStart = new Map<string, Phrase[]>();
  const turned: Phrase[] = [];
  const add = (words: readonly string[], meaning: ColumnMeaning) => {
    const key = joined(words, fillers);
    if (key !== '' && !meanings.has(key)) {
      meanings.set(key, meaning);
      const telling = words.filter((word) => !fillers.has(word));
      const list = byStart.get(phraseStart(telling));
      if (list) list.push({ words: telling, meaning });
      else byStart.set(phraseStart(telling), [{ words: telling, meaning }]);
    }
  };
  const all = (Object.entries(lists) as [ColumnMeaning, readonly string[]][]).flatMap(([meaning, list]) =>
    list.map((phrase) => ({ phrase, meaning })),
  );
  for (const { phrase, meaning } of all) {
    if (!phrase.includes('{')) add(wordsOf(phrase), meaning);
  }
  for (const { phrase, meaning } of all) {
    for (const written of fill(phrase, parts)) {
      const words = wordsOf(written);
      add(words, meaning);
      if (words.length === 2) turned.push({ words: [words[1], words[0]], meaning });
    }
  }
  for (const { words, meaning } of turned) add(words, meaning);
  const words = new Set([...byStart.values()].flatMap((list) => list.flatMap((phrase) => [...phrase.words])));
  return { fillers, meanings, byStart, words };
}

function fill(phrase: string, parts: Readonly<Record<string, readonly string[]>>): string[] {
  const slot = /\{(\w+)\}/.exec(phrase);
  if (!slot) return [phrase];
  const choices = parts[slot[1]] ?? [];
  return choices.flatMap((word) => fill(phrase.replace(slot[0], word), parts));
}
