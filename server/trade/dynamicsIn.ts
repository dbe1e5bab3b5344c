import { dynamicIn, dynamicOf } from './dynamics';
import { languages } from './languages/languages';
import { isUnspaced, oneOfWords } from './languages/wordPattern';
import { rangeArrows, rangeEndWords } from './rangeWords';

/** Dynamics that a text names, as positions among `dynamicLetters`; `areLetters` where all are letters such as `mf`. */
export interface DynamicRange {
  soft: number;
  loud: number;
  areLetters: boolean;
}

const longest = 40;
const words = languages.flatMap(({ and, between, told }) => [
  ...and,
  ...between,
  ...(told.last ?? []),
  ...(told.behindFirst ?? []),
]);
const signs = String.raw`\s*(?:\.{2,3}|\u2026|${rangeArrows}|[-/&+,;~\u2010-\u2015\u2212\u301c\uff5e\u3001\u30fb])\s*`;
const joint = new RegExp(
  String.raw`\s${oneOfWords(words.filter((word) => !isUnspaced(word)))}\s|\s*${oneOfWords(words.filter(isUnspaced))}\s*|${signs}`,
  'giu',
);
const opening = new RegExp(
  String.raw`^(?:${rangeEndWords('opening')}|${oneOfWords(languages.flatMap(({ told }) => told.first))})\s`,
  'iu',
);
const ending = new RegExp(
  String.raw`\s*${oneOfWords(languages.flatMap(({ told }) => (told.behindLast ?? []).filter(isUnspaced)))}$`,
  'iu',
);

/** Reads one dynamic, or several that hold together: `mf`, `p+mf`, `soft and loud`, `from p to f`; `undefined` for other text. */
export function dynamicsIn(text: string): DynamicRange | undefined {
  const whole = text.trim();
  if (whole.length > longest) return undefined;
  return joined(whole) ?? joined(whole.replace(opening, '').replace(ending, '').trim());
}

function joined(text: string): DynamicRange | undefined {
  const one = dynamicIn(text);
  if (one >= 0) return { soft: one, loud: one, areLetters: dynamicOf(text) >= 0 };
  for (const { 0: sign, index } of text.matchAll(joint)) {
    const first = text.slice(0, index);
    const own = dynamicIn(first);
    const others = own < 0 ? undefined : joined(text.slice(index + sign.length));
    if (!others) continue;
    return {
      soft: Math.min(own, others.soft),
      loud: Math.max(own, others.loud),
      areLetters: others.areLetters && dynamicOf(first) >= 0,
    };
  }
  return undefined;
}
