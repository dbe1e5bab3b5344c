import { languages } from './languages';
import { bareWord } from './spelling';

export type Side = 'left' | 'right' | 'centre';

/** The side that a word or its beginning names, and the word. */
export interface NamedSide {
  side: Side;
  word: string;
}

const sides = ['left', 'right', 'centre'] as const;

interface SideWord extends NamedSide {
  /** Without accents. */
  bare: string;
  /** Whether it is another word of its side with something before it, as `zdesna` is `desna`: then its first letters say nothing. */
  isForm: boolean;
}

/** By language, its words for sides; of phrases a beginning says too little. */
const wordsByLanguage: readonly (readonly SideWord[])[] = languages.map(({ cells }) =>
  sides.flatMap((side) => {
    const words = (cells[side] ?? []).filter((word) => !/\s/.test(word));
    const bares = words.map(bareWord);
    return words.map((word, at) => ({
      side,
      word,
      bare: bares[at] ?? '',
      isForm: bares.some((bare) => bare !== bares[at] && bare.length > 1 && bares[at]?.endsWith(bare)),
    }));
  }),
);

/**
 * The sides that some words of one column name together, each as a word of one language or the beginning of one: `izq` and `dcha`, `l`
 * and `p`. Where no language has them all, those of two letters and more that name the same side in all languages that have them.
 */
export function sidesByBeginning(texts: readonly string[]): ReadonlyMap<string, NamedSide> {
  const byLanguage = wordsByLanguage.map(
    (words) =>
      new Map(texts.flatMap((text) => Array.from(named(words, text), (one) => [text, one] as const))),
  );
  const known = texts.filter((text) => text.length < 3 || byLanguage.some((one) => one.has(text)));
  const whole = byLanguage.filter((one) => known.every((text) => one.has(text)));
  const found = new Map<string, NamedSide>();
  for (const text of known) {
    if (whole.length === 0 && text.length < 2) continue;
    const asked = whole.length > 0 ? whole : byLanguage;
    const said = asked.flatMap((one) => one.get(text) ?? []);
    const [first] = said;
    if (first && said.every(({ side }) => side === first.side)) found.set(text, first);
  }
  return found;
}

/** The one side that a text names among the words of a language, as one of them before the beginning of one. */
function named(words: readonly SideWord[], text: string): NamedSide[] {
  const same = words.filter(({ bare }) => bare === text);
  const fitting =
    same.length > 0 ? same : words.filter(({ bare, isForm }) => !isForm && bare.startsWith(text));
  const [first] = fitting;
  return first && fitting.every(({ side }) => side === first.side) ? [first] : [];
}
