import type { Assigned } from '../assign';
import { rangesOf } from '../ranges/rangeText';
import type { Column } from '../values/column';
import type { ColumnFacts } from '../values/columnFacts';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import { velocityTargets } from '../values/plausible';
import type { Rows } from '../values/rows';

/** The greatest velocity (MIDI 1.0). */
const greatest = 127;
const keyEnds: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'pitch_keycenter']);
const layerTargets: ReadonlySet<string> = new Set([...velocityTargets, 'velocity_range', 'dynamics']);

interface Ends {
  column: Column;
  texts: readonly (string | undefined)[];
  facts: ColumnFacts;
  /** For ranges in one place: which part of them it is, and what stands between the parts. */
  part?: 1 | 2;
  between?: string;
}

/**
 * Adds the ends of velocities whatever they are called: two places of whole numbers beside one another or one of ranges, the first never
 * above the second, whose pairs part 1 to 127 among regions of the same keys without a gap. A pair of all velocities may stand beside.
 */
export function withUnnamedLayers(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const sample = all.find(({ target }) => target === 'sample');
  if (!sample || all.some(({ target }) => layerTargets.has(target))) return [...all];
  const taken = new Set(all.filter(({ weight }) => weight >= 0.6).map(({ column }) => column));
  const columns = rows.columns.filter((column) => !taken.has(column) && !column.listed);
  const free = columns.flatMap((column) => endsOf(column, textsOf(column)));
  const ofRanges = columns.flatMap(rangeEnds);
  for (const low of [...free, ...ofRanges]) {
    const others = low.part === undefined ? free : ofRanges;
    const high = others.find((one) => areBeside(low, one) && doPart(low, one, all, rows.count));
    if (!high) continue;
    const kept = all.filter(({ column }) => column !== low.column && column !== high.column);
    return [...kept, asEnd(sample, low, 'lovel'), asEnd(sample, high, 'hivel')];
  }
  return [...all];
}

function endsOf(column: Column, texts: readonly (string | undefined)[]): Ends[] {
  const facts = columnFactsOf(texts);
  const isVelocity =
    facts.filled > 1 &&
    facts.whole === facts.filled &&
    facts.unit === undefined &&
    facts.least >= 0 &&
    facts.greatest <= greatest;
  return isVelocity && !facts.isConstant ? [{ column, texts, facts }] : [];
}

/** The two ends of a place that holds ranges. */
function rangeEnds(column: Column): Ends[] {
  const ranges = rangesOf(textsOf(column));
  if (!ranges) return [];
  const { first, second, between } = ranges;
  const [low] = endsOf(column, first);
  const [high] = endsOf(column, second);
  return low && high
    ? [
        { ...low, part: 1, between },
        { ...high, part: 2, between },
      ]
    : [];
}

function areBeside(one: Ends, other: Ends): boolean {
  if (one.part !== undefined) return one.column === other.column && one.part < (other.part ?? 0);
  const [first, second] = [one.column, other.column];
  return first !== second && first.level === second.level && first.around.join() === second.around.join();
}

/** Whether pairs of ends part all velocities in each set of regions that have the same keys, and at least one in several. */
function doPart(low: Ends, high: Ends, all: readonly Assigned[], count: number): boolean {
  const keys = all.filter(({ target }) => keyEnds.has(target));
  const byKeys = new Map<string, Map<number, number>>();
  for (let row = 0; row < count; row++) {
    const [from, to] = [low.facts.numbers[row], high.facts.numbers[row]];
    if (Number.isNaN(from) !== Number.isNaN(to) || from > to) return false;
    const id = keys.map(({ texts }) => texts[row] ?? '').join('|');
    const layers = byKeys.get(id) ?? new Map<number, number>();
    byKeys.set(id, layers);
    if (Number.isNaN(from) || (from <= 1 && to === greatest)) continue;
    if ((layers.get(from) ?? to) !== to) return false;
    layers.set(from, to);
  }
  const parted = [...byKeys.values()].filter(({ size }) => size > 0);
  return keys.length > 0 && parted.length > 0 && parted.every(areWhole);
}

/** Whether layers follow each other from the least velocity to the greatest. */
function areWhole(layers: ReadonlyMap<number, number>): boolean {
  const sorted = [...layers].sort(([one], [other]) => one - other);
  const follow = sorted.every(([from], at) => at === 0 || from === (sorted[at - 1]?.[1] ?? -1) + 1);
  return sorted.length > 1 && (sorted[0]?.[0] ?? 2) <= 1 && sorted.at(-1)?.[1] === greatest && follow;
}

function asEnd(
  sample: Assigned,
  { column, texts, facts, part, between }: Ends,
  target: 'lovel' | 'hivel',
): Assigned {
  const beside = part === undefined ? 'With the place beside it, it divides' : 'Its ranges divide';
  return {
    column,
    target,
    weight: 0.72,
    unit: undefined,
    part,
    between,
    texts: sample.texts.map((_, row) => texts[row]),
    facts,
    others: [],
    evidence: `${beside} 1 to 127 among regions of the same keys.`,
  };
}
