import type { Assigned } from '../assign';
import type { InferredTarget } from '../words/meaningRules';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import type { Column } from './column';
import { columnFactsOf, textsOf } from './columnFacts';
import { keyTargets, velocityTargets } from './plausible';
import type { Rows } from './rows';

const turnTargets: ReadonlySet<InferredTarget> = new Set('seq_position seq_length lorand hirand'.split(' '));
const layerTargets: ReadonlySet<InferredTarget> = new Set([
  ...velocityTargets,
  'velocity_range',
  'dynamics',
  'trigger',
  'release_switch',
  'group_name',
]);
/** Nobody records so many takes of one note. */
const mostTurns = 64;
/** Fewer sets may be numbered so by chance (our choice). */
const fewestSets = 2;
const numberConcepts: ReadonlySet<string> = new Set(['number', 'num', 'weak', 'pos', 'name', 'count']);

/**
 * Adds the positions in round robins whatever they are called: small numbers that count the regions of the same keys and velocities
 * anew, of which there are several sets. They could count layers too, which is told.
 */
export function withUnnamedTurns(rows: Rows, all: readonly Assigned[], chain: readonly string[]): Assigned[] {
  const sample = all.find(({ target }) => target === 'sample');
  if (!sample || all.some(({ target }) => turnTargets.has(target))) return [...all];
  const alike = all.filter(({ target }) => keyTargets.has(target) || layerTargets.has(target));
  if (!alike.some(({ target }) => keyTargets.has(target))) return [...all];
  const sets = new Map<string, number[]>();
  for (let row = 0; row < rows.count; row++) {
    const id = alike.map(({ texts }) => texts[row] ?? '').join('|');
    const set = sets.get(id);
    if (set) set.push(row);
    else sets.set(id, [row]);
  }
  const several = [...sets.values()].filter(({ length }) => length > 1);
  if (several.length < fewestSets || several.length * 2 < sets.size) return [...all];
  const isLayered = alike.some(({ target }) => velocityTargets.has(target));
  const what = isLayered ? 'keys and velocities' : 'keys';
  for (const column of rows.columns) {
    if (!mayNumberTakes(column, chain) || column.listed || column.around.length > 0) continue;
    if (all.some((one) => one.column === column) || speaksOfOther(column.own)) continue;
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    if (facts.whole < facts.filled || facts.unit !== undefined || facts.greatest > mostTurns) continue;
    if (![...sets.values()].every((set) => counts(set.map((row) => facts.numbers[row])))) continue;
    return [
      ...all,
      {
        ...sample,
        column,
        target: 'seq_position',
        weight: 0.74,
        unit: undefined,
        part: undefined,
        between: undefined,
        texts,
        facts,
        others: [],
        evidence: `Its numbers count the regions of the same ${what} anew each time. They could also count what sounds together.`,
      },
    ];
  }
  return [...all];
}

const takeConcepts: ReadonlySet<string> = new Set(['file', 'rr']);

/** Whether a place is of regions, or of elements around them that are called takes or turns. */
export function mayNumberTakes({ level }: Column, chain: readonly string[]): boolean {
  if (level === chain.length - 1) return true;
  const words = level > 0 ? nameWords(chain[level] ?? '') : [];
  return words.some((word) => conceptsOf(word)?.concepts.some((one) => takeConcepts.has(one)));
}

/** Whether numbers are 1, 2 ... as many as they are, in any order. */
function counts(numbers: readonly number[]): boolean {
  const sorted = [...numbers].sort((one, other) => one - other);
  return sorted.every((number, at) => number === at + 1);
}

function speaksOfOther(own: readonly string[]): boolean {
  return own.some((word) => conceptsOf(word)?.concepts.some((one) => !numberConcepts.has(one)));
}

/**
 * Adds how many turns there are: beside their positions, a place called `of` or after a count whose numbers are never below those, or one
 * that says of each region how many have the same keys.
 */
export function withTurnCounts(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const position = all.find(({ target, part }) => target === 'seq_position' && part === undefined);
  if (!position || all.some(({ target }) => target === 'seq_length')) return [...all];
  const besides = rows.columns.flatMap((column) => {
    const { level, listed, around, own } = column;
    const isBeside = level === position.column.level && around.join() === position.column.around.join();
    if (!isBeside || listed || own.length === 0 || all.some((one) => one.column === column)) return [];
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const isAbove = [...facts.numbers].every((number, row) => !(number < position.facts.numbers[row]));
    return isAbove && facts.whole === facts.filled && facts.greatest <= mostTurns
      ? [{ column, texts, facts }]
      : [];
  });
  const saysCount = ({ own }: Column) => own.every((word) => conceptsOf(word)?.concepts.join() === 'count');
  const named = besides.filter(({ column }) => saysCount(column));
  const evidence = 'It stands beside the positions, and none of these is greater.';
  const [one, ...others] = named.length > 0 ? named : besides.filter((found) => areSizesOfSets(found, all));
  if (!one || others.length > 0) return [...all];
  return [...all, { ...position, ...one, target: 'seq_length', weight: 0.74, others: [], evidence }];
}

/** Whether a place says of each region how many have the same keys and velocities, of which there are several somewhere. */
function areSizesOfSets(
  { column, facts }: Pick<Assigned, 'column' | 'facts'>,
  all: readonly Assigned[],
): boolean {
  const isTurnWord = (word: string) => conceptsOf(word)?.concepts.some((one) => turnConcepts.has(one));
  if (!column.own.some(isTurnWord) && speaksOfOther(column.own)) return false;
  const alike = all.filter(({ target }) => keyTargets.has(target) || layerTargets.has(target));
  if (!alike.some(({ target }) => keyTargets.has(target))) return false;
  const ids = Array.from(facts.numbers, (_, row) => alike.map(({ texts }) => texts[row] ?? '').join('|'));
  const sizes = new Map<string, number>();
  for (const id of ids) sizes.set(id, (sizes.get(id) ?? 0) + 1);
  return facts.greatest > 1 && ids.every((id, row) => sizes.get(id) === facts.numbers[row]);
}

const turnConcepts: ReadonlySet<string> = new Set(['rr', 'file', 'count']);
