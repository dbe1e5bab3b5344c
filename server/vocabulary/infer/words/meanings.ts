import type { Unit } from '../../../trade/meaning';
import type { InferredTarget } from './meaningRules';
import { meaningsOfThings, setKey } from './meaningRules';
import { conceptsOf, letteredConcepts, pairConcepts } from './tradeWords';

/** One thing that the name of a place can mean. */
export interface Meaning {
  target: InferredTarget;
  /** 0..1: how well the name says so. */
  weight: number;
  unit: NameUnit | undefined;
  /** The numbers that a name says its values lie among, as `vol127` does. */
  range?: { low: number; high: number };
}

/** A unit that a name gives. */
export type NameUnit = Unit | 'ratio' | 'octaves' | 'millibels';

/** Units of which several things are counted. */
const shares: ReadonlySet<string> = new Set(['ratio', 'percent']);

/** What is counted in dB. */
const inDecibels: ReadonlySet<InferredTarget> = new Set([
  'volume',
  'attenuation',
  'resonance',
  'ampeg_sustain',
  'amp_veltrack',
]);

/** A dB and its tenths and hundredths. */
const ofDecibels: ReadonlySet<NameUnit> = new Set(['dB', 'centibels', 'millibels']);

/** The concept of octaves that stand as a unit beside a number; in a name the word may mean one octave of the keyboard. */
export const octaves = 'octaves';

const units: Readonly<Record<string, NameUnit>> = {
  dB: 'dB',
  centibels: 'centibels',
  millibels: 'millibels',
  percent: 'percent',
  cents: 'cents',
  semis: 'semitones',
  ratio: 'ratio',
  frames: 'frames',
  s: 's',
  ms: 'ms',
  hertz: 'Hz',
  [octaves]: 'octaves',
};

/** Words for an end of a range that say the same of keys, velocities and positions. */
const sameEnds: readonly (readonly [from: string, to: string])[] = [
  ['first', 'lo'],
  ['last', 'hi'],
  ['start', 'lo'],
  ['end', 'hi'],
];
const laterEnds: readonly (readonly [from: string, to: string])[] = [
  ['down', 'lo'],
  ['up', 'hi'],
  ['in', 'lo'],
  ['out', 'hi'],
];
/** What may be left out, one after the other, until the rest says something. */
const droppable: readonly (readonly string[])[] = [
  ['weak', 'play'],
  ['midi', 'num'],
  ['on'],
  Object.keys(units),
  ['env', 'level'],
  ['file'],
  ['name', 'count'],
  ['pos', 'mode'],
  ['group', 'range'],
];

interface Understood {
  concepts: string[];
  certainty: number;
  unknown: number;
}

function understand(written: readonly string[]): Understood {
  const understood: Understood = { concepts: [], certainty: 1, unknown: 0 };
  let skipped = -1;
  const words = withoutPhrases(written);
  for (const [at, word] of words.entries()) {
    if (at === skipped) continue;
    const next = words[at + 1] ?? '';
    const joined =
      pairConcepts(word, next) ?? (word.length === 1 ? letteredConcepts(word + next) : undefined);
    if (joined) {
      understood.concepts.push(...joined);
      skipped = at + 1;
      continue;
    }
    if (smallWords.has(word) && isUnitWord(words[at + 1])) continue;
    if (smallWords.has(words[at - 1] ?? '') && sampleWords.has(word)) {
      understood.concepts.push('frames');
      continue;
    }
    if (isOfAnEnd(word, words) || isBeforeStart(word, words[at + 1])) continue;
    if (/^\d+$/.test(word)) {
      understood.concepts.push(word === '1' || word === '0' ? 'lo' : word === '2' ? 'hi' : 'number');
      continue;
    }
    const found = conceptsOf(word);
    if (!found) {
      understood.unknown++;
      continue;
    }
    understood.concepts.push(...found.concepts);
    understood.certainty = Math.min(understood.certainty, found.certainty);
  }
  return understood;
}

/** `exclusive` beside the word for an end says how that is counted, and names no group of sounds. */
function isOfAnEnd(word: string, words: readonly string[]): boolean {
  if (!/^(?:ex|in)clusive$/.test(word)) return false;
  return words.some((one) => one !== word && conceptsOf(one)?.concepts.some((concept) => ends.has(concept)));
}

/** Small words before one for what starts a sound: `au-relâchement`, `beim Loslassen`, `on release`. */
const beforeStarts: ReadonlySet<string> = new Set(
  'au aux beim bei am al ao bij on at upon by vid ved na przy pri'.split(' '),
);

function isBeforeStart(word: string, next: string | undefined): boolean {
  return beforeStarts.has(word) && next !== undefined && (conceptsOf(next)?.concepts.join() ?? '') === 'rel';
}

/** Whole names of more than one word, and what they come to. */
const phrases: readonly (readonly [pattern: RegExp, words: readonly string[]])[] = [
  [/\b(?:die|dies|fade|fades|ring|rings) (?:away|off)\b/, ['release']],
  [/\b(?:ring|rings|tail) (?:out|time)\b/, ['release']],
];

/** The words of a name with phrases put into one. */
function withoutPhrases(words: readonly string[]): readonly string[] {
  if (words.length < 2) return words;
  const text = words.join(' ');
  for (const [pattern, put] of phrases)
    if (pattern.test(text)) return text.replace(pattern, put.join(' ')).split(' ');
  return words;
}

const ends: ReadonlySet<string> = new Set(['hi', 'end', 'last', 'frames', 'len']);

/** What stands before a unit: `GainInDecibels`. */
const smallWords: ReadonlySet<string> = new Set(['in', 'en', 'em']);
/** Frames are often called samples. */
const sampleWords: ReadonlySet<string> = new Set(['sample', 'samples']);

function isUnitWord(word: string | undefined): boolean {
  if (word === undefined) return false;
  return (
    sampleWords.has(word) || (conceptsOf(word)?.concepts.every((one) => units[one] !== undefined) ?? false)
  );
}

/**
 * What a place can mean by its name: `own` are the words of the attribute (or of the element whose text it is), `around`
 * those of the child elements that it stands in, from the outermost inwards, and `level` those of the element that
 * carries it, `beside` the unit that stands beside it. The likeliest first; empty where nothing is known of it.
 */
export function meaningsOf(
  own: readonly string[],
  around: readonly (readonly string[])[],
  level: readonly string[],
  beside?: string,
): Meaning[] {
  const inner = understand(own);
  if (inner.concepts.includes('ignored') || inner.concepts.includes('lfo')) return [];
  if (own.length > 0 && inner.unknown === own.length && (own[0]?.length !== 1 || around.length > 0))
    return [];
  const all = understand(around.flat());
  const nearest = understand(around.at(-1) ?? []);
  // The ends of what is not read are no ends of keys.
  if (nearest.concepts.length > 0 && nearest.concepts.every((one) => one === 'ignored')) return [];
  const unit = unitIn(beside === undefined ? inner.concepts : [beside]) ?? unitIn(nearest.concepts);
  const found: Meaning[] = [];
  const push = (named: readonly string[], certainty: number) => {
    const concepts = beside === undefined || named.includes(beside) ? named : [...named, beside];
    // A ratio or a share of what is not said.
    const times = shares.has(concepts.join()) || isOutlet(own) ? 0.6 : 1;
    for (const [at, target] of (targetsOf(concepts) ?? []).entries()) {
      if (found.some((one) => one.target === target)) continue;
      if (unit !== undefined && ofDecibels.has(unit) && !inDecibels.has(target)) {
        if (at === 0) found.push({ target: 'volume', weight: certainty * 0.6, unit });
        continue;
      }
      found.push({ target, weight: certainty * times * (at === 0 ? 1 : 0.8), unit });
    }
  };
  const doubt = inner.unknown > 0 ? 0.7 : 1;
  if (around.length > 0) {
    if (all.unknown === 0)
      push([...all.concepts, ...inner.concepts], inner.certainty * all.certainty * doubt);
    if (around.length > 1 || all.unknown > 0) {
      push([...nearest.concepts, ...inner.concepts], inner.certainty * nearest.certainty * doubt * 0.98);
    }
  }
  let isTold = false;
  const bare = inner.concepts.filter((one) => !generic.has(one)).length === 0;
  if (bare && level.length > 0) {
    const outer = understand(level);
    const telling = outer.concepts.filter((one) => telled.has(one));
    if (telling.length > 0) push([...telling, ...inner.concepts], inner.certainty * 0.9 * doubt);
    isTold = telling.length > 0;
  }
  const certainty = inner.certainty * (around.length > 0 && !found.length ? 0.9 : 1) * doubt;
  push(inner.concepts, certainty * (bare && (around.length > 0 || isTold) ? 0.7 : 1));
  const [letter] = own;
  if (own.length === 1 && letter?.length === 1 && around.length === 0) {
    for (const target of letters[letter] ?? []) {
      if (!found.some((one) => one.target === target)) found.push({ target, weight: 0.5, unit: undefined });
    }
  }
  // A place beside a level is one between left and right, if it is not one in a file.
  if (inner.concepts.join() === 'pos' && nearest.concepts.some((one) => one === 'key' || one === 'level')) {
    found.push({ target: 'pan', weight: 0.6, unit: undefined });
  }
  return found;
}

/** Whether a name is that of where the sound goes, which may be its level and more often is a number of an outlet. */
function isOutlet(own: readonly string[]): boolean {
  return own.length === 1 && /^outputs?$/.test(own[0]);
}

/** What a single letter may stand for; it says so little that the values have to tell. */
const letters: Readonly<Record<string, readonly InferredTarget[]>> = {
  l: ['lokey'],
  h: ['hikey'],
  r: ['pitch_keycenter'],
  p: ['pan'],
  t: ['tune'],
  a: ['volume'],
  g: ['volume'],
  n: ['label'],
};

/** Whether words say little without what stands around them: `from`, `max`. */
export function isBare(words: readonly string[]): boolean {
  return understand(words).concepts.every((one) => generic.has(one));
}

/** Whether a name says low or high and decibels alone, as the levels of a filter's bands do: `low-db`. */
export function isLevelOfBand(words: readonly string[]): boolean {
  const { concepts, unknown } = understand(words);
  const isEnd = (one: string) => one === 'lo' || one === 'hi';
  return unknown === 0 && concepts.length === 2 && concepts.includes('dB') && concepts.some(isEnd);
}

/** Words that say little without what stands around them. */
const generic: ReadonlySet<string> = new Set(
  'lo hi first last start end in out range name weak count pos mode on len number num'.split(' '),
);
/** What the name of an element tells of its bare attributes. */
const telled: ReadonlySet<string> = new Set('key vel loop rr rand switch xfade'.split(' '));

function unitIn(concepts: readonly string[]): NameUnit | undefined {
  // Names such as `cents-in-semitones` leave it open.
  if (concepts.includes('cents') && concepts.includes('semis')) return undefined;
  for (const concept of concepts) if (units[concept]) return units[concept];
  return undefined;
}

function targetsOf(concepts: readonly string[]): readonly InferredTarget[] | undefined {
  let left = new Set(concepts);
  for (const dropped of [[], ...droppable]) {
    for (const one of dropped) if (left.size > 1) left.delete(one);
    // What is left must still say what it is an end of, if anything did.
    if (
      [...left].every((one) => generic.has(one)) &&
      concepts.some((one) => !generic.has(one) && !isUnit(one))
    ) {
      return undefined;
    }
    const found =
      meaningsOfThings.get(setKey([...left])) ??
      meaningsOfThings.get(replaced(left, sameEnds)) ??
      meaningsOfThings.get(replaced(left, [...sameEnds, ...laterEnds]));
    if (found) return found;
    left = new Set(left);
  }
  return undefined;
}

function isUnit(concept: string): boolean {
  return units[concept] !== undefined || concept === 'midi';
}

function replaced(concepts: ReadonlySet<string>, ends: readonly (readonly [string, string])[]): string {
  return setKey([...concepts].map((one) => ends.find(([from]) => from === one)?.[1] ?? one));
}
