import { dynamicIn } from '../../trade/dynamics';
import { panWord } from '../../trade/languages/cellWords';
import { languages } from '../../trade/languages/languages';
import { bareWord, wordsOf } from '../../trade/languages/spelling';
import { isUnspaced, oneOfWords } from '../../trade/languages/wordPattern';
import { nameKinds } from '../../trade/names/nameParts';
import { rangeWords } from '../../trade/rangeWords';
import { lettersIn, readKeyRange } from '../../trade/readings/keyReading';
import { triggerIn } from '../../trade/readings/triggers';
import { statedSettings } from '../../trade/statements/settings';
import type { ColumnReading, SideLabel } from '../columns/columnReading';
import { rootedKeysIn } from './rootedKeys';

/** Words for a sample file of all languages, and for what stands before a file. */
const fileWords: ReadonlySet<string> = new Set([
  ...languages.flatMap(({ parts }) => (parts.file ?? []).map(bareWord)),
  ...'mic mics microphone microphones mikro mikrofon micro microfono channel chan ch side kanal'.split(' '),
]);
const groupKinds = nameKinds.filter(({ kind }) => kind === 'microphones' || kind === 'articulations');
/** Headings of names that a file had before. */
const formerWord = /^(?:old|former|original|source|previous|backup|renamed|alt|alte[rs]?|ancien|antiguo)$/;

/**
 * What columns that name samples side by side are to one another, by their headings: dynamics, round robin positions, sides,
 * what starts them, or groups of their own. `undefined` where one of them gives a name that the file had before.
 */
export function labelsSideBySide(columns: readonly ColumnReading[], hasKeys = true): SideLabel[] | undefined {
  if (columns.length < 2) return undefined;
  const rooted = hasKeys ? undefined : rootedIn(columns);
  const labels = rooted ?? velocitiesIn(columns) ?? (hasKeys ? undefined : keysIn(columns));
  if (labels) return labels;
  const all = columns.map(({ heading }) => wordsOf(statedSettings(heading)?.name || heading));
  if (all.some((words) => words.some((word) => formerWord.test(word)))) return undefined;
  const names = all.map((words) =>
    words.filter((word) => !fileWords.has(word) && !fileWords.has(word.replace(/s$/, ''))),
  );
  const only = names.map((words) => (words.length === 1 ? words[0] : ''));
  const dynamics = only.map(dynamicIn);
  if (areDifferent(dynamics)) return dynamics.map((dynamic) => ({ kind: 'dynamics', dynamic }));
  const positions = names.map((words) => roundRobinIn(words.join('')));
  if (areDifferent(positions)) return positions.map((position) => ({ kind: 'round_robin', position }));
  const sides = names.map(sideIn);
  if (sides.includes('left') && sides.includes('right') && sides.every((side) => side !== undefined))
    return sides.map((side) => ({ kind: 'pan', pan: side === 'left' ? -100 : side === 'right' ? 100 : 0 }));
  const triggers = names.map((words) => (words.length === 0 ? 'attack' : triggerIn(words.join(' '))));
  if (triggers.includes('release') && triggers.every((trigger) => trigger !== undefined))
    return triggers.map((trigger) => ({ kind: 'trigger', trigger }));
  const isKnown = groupKinds.some(({ labelOf }) => only.every((word) => labelOf(word) !== undefined));
  return columns.map(({ heading }) => ({ kind: 'group', isKnown, name: groupOf(heading) }));
}

/** Small words before a side: `de gauche`, `din stânga`. */
const smallWords: ReadonlySet<string> = new Set(languages.flatMap(({ fillers }) => fillers.map(bareWord)));
const unspacedFiles = oneOfWords([...fileWords].filter(isUnspaced));
const unspacedFile = new RegExp(`^${unspacedFiles}|${unspacedFiles}$`, 'gu');

/** The side that the words of a heading name, with small words at most beside it: `fichier de gauche` without its first word, `左ファイル`. */
function sideIn(words: readonly string[]): ReturnType<typeof panWord> {
  const [word = '', ...others] = words.filter((one, at) => at === words.length - 1 || !smallWords.has(one));
  return others.length > 0 ? undefined : (panWord(word) ?? panWord(word.replace(unspacedFile, '')));
}

const microphone =
  /(?<!\p{L})(?:mic(?:rophone)?s?|mikr?os?|mikrofone?|micros?|microphones|microfon[io]|microfones?|mikrofon\p{L}*|микрофон\p{L}*)(?!\p{L})|マイク/giu;

/** The name of a group in a heading: without the values that it gives and without the word for microphones. */
function groupOf(heading: string): string {
  const name = statedSettings(heading)?.name || heading;
  const bare = name.replace(microphone, ' ').replace(/\s+/g, ' ').trim();
  const short = bare.replace(/^[-_:,]\s*|\s*[-_:,]$/g, '');
  return /\p{L}/u.test(short) ? short : name;
}

const between = new RegExp(
  String.raw`(?<![\p{L}\d.])(\d{1,3})\s*(?:[-\u2010-\u2015\u2212~\u2192]|\.{2,3}|\u2026|${rangeWords})\s*(\d{1,3})(?![\p{L}\d.])`,
  'iu',
);
const velocityWord = /\b(?:vel\p{L}*|dyn\p{L}*|anschlag\p{L}*|v\u00e9l\p{L}*|aanslag)/iu;

/** Velocities in all headings, such as `soft (1-45)`: said to be, or sharing out 1 to 127 without a hole. */
function velocitiesIn(columns: readonly ColumnReading[]): SideLabel[] | undefined {
  const ranges = columns.map(({ heading }) => {
    const [, low, high] = between.exec(heading) ?? [];
    return { kind: 'velocity', low: Number(low ?? Number.NaN), high: Number(high ?? Number.NaN) } as const;
  });
  if (!ranges.every(({ low, high }) => low <= high && high <= 127)) return undefined;
  const sorted = [...ranges].sort((a, b) => a.low - b.low);
  const isShared = sorted.every(({ low }, at) =>
    at === 0 ? low <= 1 : low === (sorted[at - 1]?.high ?? 0) + 1,
  );
  const isSaid = columns.every(
    ({ heading }) =>
      velocityWord.test(heading) || dynamicIn(heading.replace(/[^\p{L} ].*$/u, '').trim()) >= 0,
  );
  return isSaid || (isShared && sorted.at(-1)?.high === 127) ? ranges : undefined;
}

/** A range of keys and its root key in each heading. */
function rootedIn(columns: readonly ColumnReading[]): SideLabel[] | undefined {
  const headings = columns.map(({ heading }) => heading);
  return rootedKeysIn(headings, lettersIn(headings).naming())?.map((keys) => ({ kind: 'key', ...keys }));
}

/** A key or a range of keys in each heading. */
function keysIn(columns: readonly ColumnReading[]): SideLabel[] | undefined {
  const naming = lettersIn(columns.map(({ heading }) => heading)).naming();
  const found = columns.map(({ heading }) =>
    readKeyRange(
      heading.replace(/^\s*(?:key|note|midi|taste|touche|tecla|tasto|nota|toets)\s+/i, ''),
      naming,
    ),
  );
  const names = new Set(found.map((key) => key?.low.named ?? key?.low.number));
  if (found.includes(undefined) || names.size < columns.length) return undefined;
  return found.flatMap((key) => (key ? [{ kind: 'key', low: key.low, high: key.high }] : []));
}

function areDifferent(numbers: readonly number[]): boolean {
  return numbers.every((number) => number >= 0) && new Set(numbers).size === numbers.length;
}

/** The position that a heading gives, without the word for a sample: `RR 2`, `take 2`, `2`. */
function roundRobinIn(word: string): number {
  const number = /^(?:rr|roundrobin|robin|take|round|alternate|alt|variation)?0*([1-9]\d?)$/.exec(word)?.[1];
  return number === undefined ? -1 : Number(number);
}
