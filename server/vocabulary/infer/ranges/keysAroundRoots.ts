import type { Assigned } from '../assign';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { rowKeyNumber } from './rowKeys';

const ends: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'sw_last', 'sw_down', 'sw_up']);
const leastRows = 3;

/** Adds the ends of key ranges: two places of note names that always have the root key between them, whatever they are called. */
export function withKeysAroundRoots(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const root = all.find(({ target }) => target === 'pitch_keycenter');
  if (!root || root.facts.notes !== root.facts.filled || all.some(({ target }) => ends.has(target)))
    return [...all];
  const roots = root.texts.map(rowKeyNumber);
  const places = rows.columns.flatMap((column) => {
    if (column.level !== root.column.level || all.some((one) => one.column === column)) return [];
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    return facts.notes >= leastRows && facts.notes === rows.count
      ? [{ column, texts, facts, keys: texts.map(rowKeyNumber) }]
      : [];
  });
  if (places.length !== 2) return [...all];
  const isInOrder = (one: readonly (number | undefined)[], other: readonly (number | undefined)[]) =>
    one.every((key, row) => key !== undefined && key <= (other[row] ?? -1));
  const [low, high] = isInOrder(places[0].keys, places[1].keys) ? places : [...places].reverse();
  if (!isInOrder(low.keys, roots) || !isInOrder(roots, high.keys)) return [...all];
  const evidence = 'Its note names lie on one side of the root keys in all regions.';
  const endOf = ({ column, texts, facts }: (typeof places)[number], target: string): Assigned => ({
    ...root,
    column,
    texts,
    facts,
    target,
    weight: 0.72,
    part: undefined,
    between: undefined,
    evidence,
    others: [],
  });
  return [...all, endOf(low, 'lokey'), endOf(high, 'hikey')];
}
