import { likelyHeading, readHeading, unitInHeading } from '../../../trade/headings/headings';
import { bareWord, wordsOf } from '../../../trade/languages/spelling';
import { namesLoop } from '../../../trade/loopWords';
import type { ColumnState } from '../columnState';
import { agrees } from '../likeness';

/** Numbers and letters that count two things, with those of other scripts behind them. */
const marks: readonly (readonly [string, string])[] = [
  ['1', '2'],
  ['a', 'b'],
  ['0', '1'],
  ['i', 'ii'],
  ['а', 'б'],
  ['α', 'β'],
];
/** Words for points and marks in a recording (general dictionaries); over frames they may be those of a loop. */
const pointWords: ReadonlySet<string> = new Set(
  'l lp p pt point points punkt pkt punto ponto punt point bod bodu pont nokta piste marker mark marke marque marca markor σημειο точка ポイント 点'
    .split(' ')
    .map(bareWord),
);
/** Keys, velocities and levels are lower (our choice). */
const leastFrames = 1000;
const mostWords = 5;
const articles: ReadonlySet<string> = new Set('of the de du di da do des der la le el van w z'.split(' '));
const pointMeanings = ['loop_start', 'loop_end', 'loop_length'] as const;

interface Numbered {
  index: number;
  mark: string;
}

/**
 * Two columns of positions that headings only number, as `loop1` and `loop2`, `Loop A` and `Loop B`, `Punkt 1` and `Punkt 2`: the start of
 * the loops and a second number, an end or a length.
 */
export function settleNumberedPoints(state: ColumnState): void {
  const { taken, columns } = state;
  const stems = new Map<string, Numbered[]>();
  for (const { index, heading } of columns)
    for (const { stem, mark } of numberedHeadings(heading)) {
      const list = stems.get(stem);
      if (list) list.push({ index, mark });
      else stems.set(stem, [{ index, mark }]);
    }
  const holders = pointMeanings.flatMap((meaning) => taken.get(meaning) ?? []);
  const free = new Set([...state.rest(), ...holders.filter((index) => isOnlyLike(state, index))]);
  const pairs = [...stems].flatMap(([stem, numbered]) => {
    const pair = pairOf(numbered);
    const [start, second] = pair ?? [];
    if (start === undefined || second === undefined || !free.has(start) || !free.has(second)) return [];
    if (holders.some((index) => index !== start && index !== second)) return [];
    return arePoints(state, stem, start, second) ? [{ stem, start, second }] : [];
  });
  const [only] = pairs;
  if (!only || pairs.length > 1) return;
  const isSaid = speaksOfLoops(only.stem);
  const evidence = isSaid
    ? 'Its heading speaks of loops and numbers their points.'
    : 'Its heading numbers points, and positions in pairs are those of loops.';
  for (const meaning of pointMeanings) taken.delete(meaning);
  for (const [index, meaning] of [
    [only.start, 'loop_start'],
    [only.second, 'loop_end'],
  ] as const) {
    columns[index].evidence.length = 0;
    columns[index].repeats = undefined;
    columns[index].unit = unitInHeading(columns[index].heading);
    state.claim(index, meaning, isSaid ? 0.7 : 0.5, evidence);
  }
  columns[only.second].isEndOrLength = true;
}

/** Whether a heading is only like one for what its column was taken for. */
function isOnlyLike({ chosen, columns }: ColumnState, index: number): boolean {
  return !chosen.has(index) && likelyHeading(columns[index].heading)?.likeness !== undefined;
}

/** What a heading may number: the words beside a number or a letter, and that one. */
function numberedHeadings(heading: string): { stem: string; mark: string }[] {
  const parted = heading
    .replace(/[([{（].*$/u, '')
    .replace(/(\d)(?:st|nd|er|[eè]re|e|[eè]me|[ºªoa])(?=[\s._-])/giu, '$1')
    .replace(/(\p{L})(\d)/gu, '$1 $2')
    .replace(/(\d)(\p{L})/gu, '$1 $2')
    // A capital behind a whole word, as in `loopA`.
    .replace(/(\p{Ll})(\p{Lu})$/u, '$1 $2');
  const words = wordsOf(parted);
  if (words.length < 2 || words.length > mostWords) return [];
  const ends = [words.length - 1, 0].filter((at) => isMark(words[at]));
  return ends.slice(0, 1).map((at) => ({
    stem: words.filter((_, other) => other !== at).join(' '),
    mark: words[at],
  }));
}

function isMark(word: string): boolean {
  return /^\d$/.test(word) || marks.some((pair) => pair.includes(word));
}

/** The columns of the first and the second of two; none where more than two are numbered. */
function pairOf([one, other, ...more]: readonly Numbered[]): [number, number] | undefined {
  if (!one || !other || more.length > 0) return undefined;
  for (const [first, second] of marks) {
    if (one.mark === first && other.mark === second) return [one.index, other.index];
    if (other.mark === first && one.mark === second) return [other.index, one.index];
  }
  return undefined;
}

function speaksOfLoops(stem: string): boolean {
  return stem.split(' ').some(namesLoop);
}

/** Whether words name loops or points and not which end of them is meant, as `loop start` does. */
function areOpenWords(stem: string): boolean {
  const words = stem.split(' ');
  const isPoint = (word: string) => pointWords.has(bareWord(word));
  if (!words.every((word) => isPoint(word) || namesLoop(word) || articles.has(word))) return false;
  const said = readHeading(stem)?.meaning;
  return words.some(isPoint) || said === undefined || said === 'loop';
}

/** Whether the cells of two columns are positions; where no word says loop, whole frames that leave the first one out. */
function arePoints(state: ColumnState, stem: string, start: number, second: number): boolean {
  if (!areOpenWords(stem)) return false;
  if (!agrees(state, start, 'loop_start') || !agrees(state, second, 'loop_end')) return false;
  if (speaksOfLoops(stem)) return true;
  const { least, greatest, fractional } = state.contents[start];
  const areFrames = least > 0 && greatest >= leastFrames && fractional === 0;
  return areFrames;
}
