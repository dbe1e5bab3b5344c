import { dynamicIn } from '../../trade/dynamics';
import { languages } from '../../trade/languages/languages';
import { bareWord, wordsOf } from '../../trade/languages/spelling';
import { nameKinds } from '../../trade/nameParts';
import type { ColumnReading, SideLabel } from './columnReading';

/** Words for a sample file of all languages. */
const fileWords: ReadonlySet<string> = new Set(
  languages.flatMap(({ parts }) => (parts.file ?? []).map(bareWord)),
);
const groupKinds = nameKinds.filter(({ kind }) => kind === 'microphones' || kind === 'articulations');

/**
 * The labels of columns that name samples side by side, where all their headings tell dynamics, round robin positions,
 * microphones or articulations, each another one; `undefined` where they leave open what the columns are to one another.
 */
export function labelsSideBySide(columns: readonly ColumnReading[]): SideLabel[] | undefined {
  if (columns.length < 2) return undefined;
  const names = columns.map(({ heading }) =>
    wordsOf(heading).filter((word) => !fileWords.has(word) && !fileWords.has(word.replace(/s$/, ''))),
  );
  if (new Set(names.map((words) => words.join(' '))).size < columns.length) return undefined;
  const dynamics = names.map(([word = '', ...more]) => (more.length > 0 ? -1 : dynamicIn(word)));
  if (areDifferent(dynamics)) return dynamics.map((dynamic) => ({ kind: 'dynamics', dynamic }));
  const positions = names.map((words) => roundRobinIn(words.join('')));
  if (areDifferent(positions)) return positions.map((position) => ({ kind: 'round_robin', position }));
  const kind = groupKinds.find(({ labelOf }) =>
    names.every(([word = '', ...more]) => more.length === 0 && labelOf(word) !== undefined),
  );
  return kind && names.map(() => ({ kind: 'group' }));
}

function areDifferent(numbers: readonly number[]): boolean {
  return numbers.every((number) => number >= 0) && new Set(numbers).size === numbers.length;
}

function roundRobinIn(word: string): number {
  const number = /^(?:rr|roundrobin|robin|take)0*([1-9]\d?)$/.exec(word)?.[1];
  return number === undefined ? -1 : Number(number);
}
