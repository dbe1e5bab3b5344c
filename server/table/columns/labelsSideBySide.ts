import { dynamicIn } from '../../trade/dynamics';
import { panWord } from '../../trade/languages/cellWords';
import { languages } from '../../trade/languages/languages';
import { bareWord, wordsOf } from '../../trade/languages/spelling';
import { nameKinds } from '../../trade/nameParts';
import { triggerIn } from '../../trade/triggers';
import type { ColumnReading, SideLabel } from './columnReading';

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
export function labelsSideBySide(columns: readonly ColumnReading[]): SideLabel[] | undefined {
  if (columns.length < 2) return undefined;
  const all = columns.map(({ heading }) => wordsOf(heading));
  if (all.some((words) => words.some((word) => formerWord.test(word)))) return undefined;
  const names = all.map((words) =>
    words.filter((word) => !fileWords.has(word) && !fileWords.has(word.replace(/s$/, ''))),
  );
  const only = names.map((words) => (words.length === 1 ? words[0] : ''));
  const dynamics = only.map(dynamicIn);
  if (areDifferent(dynamics)) return dynamics.map((dynamic) => ({ kind: 'dynamics', dynamic }));
  const positions = names.map((words) => roundRobinIn(words.join('')));
  if (areDifferent(positions)) return positions.map((position) => ({ kind: 'round_robin', position }));
  const sides = only.map((word) => panWord(word));
  if (sides.includes('left') && sides.includes('right') && sides.every((side) => side !== undefined))
    return sides.map((side) => ({ kind: 'pan', pan: side === 'left' ? -100 : side === 'right' ? 100 : 0 }));
  const triggers = names.map((words) => (words.length === 0 ? 'attack' : triggerIn(words.join(' '))));
  if (triggers.includes('release') && triggers.every((trigger) => trigger !== undefined))
    return triggers.map((trigger) => ({ kind: 'trigger', trigger }));
  const isKnown = groupKinds.some(({ labelOf }) => only.every((word) => labelOf(word) !== undefined));
  return columns.map(() => ({ kind: 'group', isKnown }));
}

function areDifferent(numbers: readonly number[]): boolean {
  return numbers.every((number) => number >= 0) && new Set(numbers).size === numbers.length;
}

/** The position that a heading gives, without the word for a sample: `RR 2`, `take 2`, `2`. */
function roundRobinIn(word: string): number {
  const number = /^(?:rr|roundrobin|robin|take|round|alternate|alt|variation)?0*([1-9]\d?)$/.exec(word)?.[1];
  return number === undefined ? -1 : Number(number);
}
