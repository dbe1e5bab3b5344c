import { languages } from '../languages/languages';
import { bareWord, wordsOf } from '../languages/spelling';
import { namesLoop } from '../loopWords';
import type { ColumnMeaning, Unit } from '../meaning';
import { pairedEnds } from '../rangeWords';

/** Stems of words for leaving out what stands at the start, without accents. */
const skip =
  /^(?:skip|crop|cut|discard|uberspr|ausgelass|auslass|weglass|abschneid|saut(?:er|es?)$|ignor|coup(?:er|e)$|omit|salta|recort|taglia|pular|descart|oversla|hoppa|bortse|spring|udelad|ohit|pomin|pomij|przeskocz|preskoc|vynech|пропу|отреза|обрез)/u;
const skipSigns = /スキップ|飛ばす|跳过|跳過|건너/u;
const startStem =
  /^(?:start|begin|beginn|anfang|debut|demarr|commenc|inici|comienz|comenz|empiez|empez|arranq|inizi|comec|part(?:enza|ire)|alku|alka|pocz|zaczyn|zacat|zacin|borja|нача|head|lead|front|first)/u;
const frameWord = /^(?:frames?|samples?|abtastwerte?|ramk\p{L}+)$/u;
const positionUnits: ReadonlySet<Unit> = new Set(['frames', 'ms', 's']);
const soft =
  /^(?:soft|quiet|gentl|leis|weich|sanft|schwach|zart|dou(?:x|ce)|faible|suav|debil|floj|pian|debol|frac|zacht|svag|tyst|hilj|cich|slab|tich|слаб|тих)/u;
const loud =
  /^(?:loud|hard|strong|laut|hart|stark|kraft|fort|fuert|dur[oae]$|luid|sterk|starkast|hog|kova|voimak|glosn|mocn|siln|hlasit|громк|сильн)/u;
type End = 'lokey' | 'hikey' | 'lovel' | 'hivel';

/** By the words of a subject and of a limit, the end that they name together, in any one language. */
const ends = new Map<string, End>();
const subjects = new Set<string>();
for (const { parts, limits } of languages) {
  for (const [limit, part, [ofKeys, ofVelocities]] of [
    ['least', 'low', ['lokey', 'lovel']],
    ['most', 'high', ['hikey', 'hivel']],
  ] as const) {
    const limiting = [...limits[limit], ...(parts[part] ?? [])].map((one) => wordsOf(one).join(' '));
    for (const [subject, end] of [
      [parts.velocity, ofVelocities],
      [parts.key, ofKeys],
    ] as const) {
      for (const word of (subject ?? []).map(bareWord)) {
        subjects.add(word);
        for (const one of limiting) if (!ends.has(`${word} ${one}`)) ends.set(`${word} ${one}`, end);
      }
    }
  }
}

const words = (part: 'low' | 'high') =>
  new Set(languages.flatMap(({ parts }) => (parts[part] ?? []).map(bareWord)));
/** Words of the two ends that are read as such only beside each other, since alone they say little. */
const fromWords = new Set(pairedEnds.map(([low]) => low));
const toWords = new Set(pairedEnds.map(([, high]) => high));
const lows = words('low');
const highs = words('high');

/**
 * What a heading means by the stems of its words, where the whole is not known: `Frames to skip`, `Pominąć na początku`, `Velocity up
 * to`, `bis Anschlag`. To be believed where the cells agree.
 */
export function meaningByStems(text: string, unit: Unit | undefined): ColumnMeaning | undefined {
  const words = wordsOf(text.replace(/[([{（].*$/u, ' '));
  if (words.length > 8) return undefined;
  const isSkip = words.some((word) => skip.test(word)) || skipSigns.test(text);
  const isPosition =
    (unit !== undefined && positionUnits.has(unit)) ||
    words.some((word) => startStem.test(word) || frameWord.test(word));
  if (isSkip && isPosition) return 'offset';
  return (
    loopPart(words) ??
    endOf(words) ??
    (unit ? undefined : endWithKey(words)) ??
    (isStart(words) ? 'offset' : undefined)
  );
}

const startWord = /^(?:starts?|begins?|begin\p{L}*|beg)$/u;
const endWord = /^(?:ends?|stops?|finish(?:es)?)$/u;
const startWords = new Set(languages.flatMap(({ parts }) => (parts.start ?? []).map(bareWord)));
const endWords = new Set(languages.flatMap(({ parts }) => (parts.end ?? []).map(bareWord)));
/** Words for a length, without accents. */
const lengthWord =
  /^(?:len(?:gth)?|size|duration|dur|lange|laenge|dauer|longueur|duree|longitud|duracion|lunghezza|durata|comprimento|duracao|lengte|duur|langd|laengde|laengd|varaktighet|varighed|pituus|kesto|dlugosc|delka|длина|длительность)$/u;

/** Whether a word speaks of a length. */
export function isLengthWord(word: string): boolean {
  return lengthWord.test(bareWord(word));
}

/** The part of a loop that a heading names beside a word for loops, as `Schleife ab` and `Bucle desde`. */
function loopPart(words: readonly string[]): ColumnMeaning | undefined {
  if (words.length === 1 && namesLoop(words[0])) return 'loop';
  const rest = words.filter((word) => !namesLoop(word));
  if (rest.length === words.length || rest.length === 0 || rest.length > 3) return undefined;
  if (rest.some((word) => isLengthWord(word))) return 'loop_length';
  const startsWord = (word: string) => startWord.test(word) || startWords.has(word);
  const endsWord = (word: string) => endWord.test(word) || endWords.has(word);
  // A small word between, as in `Início do loop`, may be one for an end in another language.
  const isNamed = rest.some((word) => startsWord(word) || endsWord(word));
  const isStart = rest.some(isNamed ? startsWord : (word) => lows.has(word) || fromWords.has(word));
  const isEnd = rest.some(isNamed ? endsWord : (word) => highs.has(word) || toWords.has(word));
  if (isStart === isEnd) return undefined;
  return isStart ? 'loop_start' : 'loop_end';
}

/** Whether a heading speaks of starting and of nothing else, as `Empezar en`. */
function isStart(words: readonly string[]): boolean {
  const others = words.filter((word) => !startStem.test(word));
  return others.length < words.length && others.length < 3 && others.every((word) => word.length < 4);
}

/** Stems of words for ending, without accents. */
const endStem =
  /^(?:ends?$|ending|stop|finish|endet|enden|fini|termin|acab|finisc|eind|slut|loppu|koncz|konci|kon[ce]c|заканч|конец)/u;
/** Words for what starts and ends, which say nothing of which end is meant. */
const fillers =
  /^(?:which|where|plays?|playing|zon[eas]|zonen|region|regions|samples?|file|midi|number|chaque|dove|donde|dont|ktor\p{L}+)$/u;
const keyWords = new Set(languages.flatMap(({ parts }) => (parts.key ?? []).map(bareWord)));

/** The end of a range that a heading names by a verb beside a word for keys: `starts at key`, `beginnt bei Taste`, `note it stops on`. */
function endWithKey(words: readonly string[]): 'lokey' | 'hikey' | undefined {
  const isVerb = (word: string) => startStem.test(word) || endStem.test(word);
  const verbs = words.filter(isVerb);
  const keys = words.filter((word) => keyWords.has(word) && !isVerb(word));
  if (verbs.length !== 1 || keys.length !== 1) return undefined;
  const others = words.filter((word) => word !== verbs[0] && word !== keys[0]);
  if (others.some((word) => word.length > 3 && !fillers.test(word))) return undefined;
  return startStem.test(verbs[0]) ? 'lokey' : 'hikey';
}

function endOf(words: readonly string[]): End | undefined {
  if (words.length < 2 || words.length > 5) return undefined;
  for (const [at, word] of words.entries()) {
    if (!subjects.has(word)) continue;
    const end = ends.get([word, ...words.slice(0, at), ...words.slice(at + 1)].join(' '));
    if (end) return end;
  }
  return undefined;
}

/** The end that a heading of one word names, as `aguda` and `laag`: that of keys where its cells are keys. */
export function aloneEnd(text: string): 'lokey' | 'hikey' | undefined {
  const [only = '', ...others] = wordsOf(text);
  if (others.length > 0 || only.length < 2) return undefined;
  return lows.has(only) ? 'lokey' : highs.has(only) ? 'hikey' : undefined;
}

/** Whether a word of a heading of a few words names the lower or the upper end, as in `Od klawisza` and `au`; `undefined` where none or both do. */
export function limitWord(text: string): 'low' | 'high' | undefined {
  const words = wordsOf(text);
  if (words.length > 4) return undefined;
  const isLow = words.some((word) => lows.has(word) || fromWords.has(word));
  const isHigh = words.some((word) => highs.has(word) || toWords.has(word));
  return isLow === isHigh ? undefined : isLow ? 'low' : 'high';
}

/** Whether a heading speaks of the softest or the loudest, as `Soft limit` and `lauteste Stufe`; `undefined` for any other. */
export function loudnessEnd(text: string): 'soft' | 'loud' | undefined {
  const words = wordsOf(text);
  if (words.length > 4) return undefined;
  const [isSoft, isLoud] = [soft, loud].map((stem) => words.some((word) => stem.test(word)));
  return isSoft === isLoud ? undefined : isSoft ? 'soft' : 'loud';
}
