import { nearestKey } from '../../forms/keys';
import type { Column } from '../values/column';
import type { ColumnFacts } from '../values/columnFacts';
import type { InferredTarget } from '../words/meaningRules';
import { isBare } from '../words/meanings';
import { rowKeyNumber } from './rowKeys';

/** What a place holds, as far as it matters here. */
interface Held {
  column: Column;
  target: InferredTarget;
  unit?: string | undefined;
  weight: number;
  part: 1 | 2 | undefined;
  facts: ColumnFacts;
  evidence: string | undefined;
}

const keyEnds: ReadonlySet<string> = new Set(['lokey', 'hikey']);
const anyKeys: ReadonlySet<string> = new Set([...keyEnds, 'key', 'pitch_keycenter']);
const velocityOf: Readonly<Record<string, string>> = { lokey: 'lovel', hikey: 'hivel' };
/** Velocities of MIDI and percentages end here. */
const velocityTops: ReadonlySet<number> = new Set([127, 100, 128]);

/**
 * Bare ends such as `from` and `to`, or a bare `span` of both, are velocities where they stand in an element whose keys another one around it gives, and reach
 * the greatest velocity.
 */
export function withVelocitiesInKeys<One extends Held>(all: readonly One[]): One[] {
  if (all.some(({ target }) => target === 'lovel' || target === 'hivel')) return [...all];
  const bare = all.filter(
    ({ target, column, facts }) =>
      keyEnds.has(target) &&
      facts.notes === 0 &&
      facts.unlined === 0 &&
      isBare(column.own) &&
      column.around.every(isBare),
  );
  const levels = [...new Set(bare.map(({ column }) => column.level))].sort((one, other) => other - one);
  for (const level of levels) {
    const here = bare.filter(({ column }) => column.level === level);
    // Beside a root key alone a range in one place could be that of its keys.
    const areRanges = here.some(({ part }) => part !== undefined);
    const isKeyed = all.some(
      ({ target, column }) =>
        anyKeys.has(target) && column.level < level && !(areRanges && target === 'pitch_keycenter'),
    );
    const hasOwnRoot = all.some(
      ({ target, column }) => target === 'pitch_keycenter' && column.level === level,
    );
    const top = Math.max(...here.map(({ facts }) => facts.greatest));
    if (!isKeyed || hasOwnRoot || !velocityTops.has(top)) continue;
    const evidence = 'An element around it gives the keys, and its numbers reach the greatest velocity.';
    return all.map((one) =>
      here.includes(one)
        ? { ...one, target: velocityOf[one.target], weight: Math.max(0.8, one.weight), evidence }
        : one,
    );
  }
  return [...all];
}

const keyOf: Readonly<Record<string, string>> = { lovel: 'lokey', hivel: 'hikey' };
const fewestRoots = 3;

/**
 * Bare ends such as `lowest` and `highest` in an element that is named after a stroke are keys where each root key lies within its range,
 * the ranges of different roots do not overlap, and no place gives keys. `isLetter`: its name is a letter, which may be short for voice
 * as well as for velocity, so that fewer ranges are enough.
 */
export function withKeysAroundOwnRoots<One extends Held>(all: readonly One[], isLetter: boolean): One[] {
  const bare = (target: string) =>
    all.find((one) => one.target === target && one.part === undefined && isBare(one.column.own));
  const [low, high] = [bare('lovel'), bare('hivel')];
  const root = all.find(({ target }) => target === 'pitch_keycenter');
  const hasKeys = all.some(({ target }) => keyEnds.has(target) || target === 'key');
  if (!low || !high || hasKeys) return [...all];
  if (!root) return asKeysOfNoLayers(all, low, high, isLetter ? 1 : fewestRoots);
  if (low.column.around.length > 0) return [...all];
  const ranges = new Map<number, { low: number; high: number }>();
  let turned = 0;
  for (const [row, cell] of root.column.cells.entries()) {
    const own = root.unit === 'Hz' ? nearestKey(Number(cell?.text)) : rowKeyNumber(cell?.text);
    const [one, other] = [low, high].map(({ column }) => rowKeyNumber(column.cells[row]?.text));
    if (own === undefined || one === undefined || other === undefined) return [...all];
    // Somebody may have exchanged the ends of a few.
    const [from, to] = [Math.min(one, other), Math.max(one, other)];
    if (own < from || own > to) return [...all];
    if (one > other) turned++;
    const known = ranges.get(own);
    if (known && (known.low !== from || known.high !== to)) return [...all];
    ranges.set(own, { low: from, high: to });
  }
  const sorted = [...ranges.values()].sort((one, other) => one.low - other.low);
  const areApart = sorted.every((one, at) => at === 0 || one.low > (sorted[at - 1]?.high ?? 0));
  // Two layers that divide all velocities could each hold a root too.
  const isPart = (sorted[0]?.low ?? 0) > 1 && (sorted.at(-1)?.high ?? 127) < 127;
  const isMostlyTurned = turned * 2 >= root.column.cells.length;
  if (sorted.length < (isPart ? (isLetter ? 1 : 2) : fewestRoots) || !areApart || isMostlyTurned)
    return [...all];
  const evidence = 'Each root key lies within its own range.';
  return all.map((one) =>
    one === low || one === high ? { ...one, target: keyOf[one.target], weight: 0.74, evidence } : one,
  );
}

/** Keys that instruments are seldom played beyond, and layers nearly always reach beyond (our choice). */
const usualKeys = { least: 12, most: 120 };

/** Bare ends where no place gives keys are those of keys if they do not overlap and leave the softest and the loudest velocities out. */
function asKeysOfNoLayers<One extends Held>(all: readonly One[], low: One, high: One, fewest: number): One[] {
  const ranges = low.column.cells.map((cell, row) =>
    [cell, high.column.cells[row]]
      .map((place) => rowKeyNumber(place?.text) ?? Number.NaN)
      .sort((one, other) => one - other),
  );
  // Layers and turns have the same range several times.
  const seen = new Map(ranges.map((range) => [range.join(), range]));
  const sorted = [...seen.values()].sort(([one], [other]) => one - other);
  const areKeys = sorted.every(
    ([from, to], at) =>
      from >= usualKeys.least && to <= usualKeys.most && (at === 0 || from > (sorted[at - 1]?.[1] ?? 0)),
  );
  if (sorted.length < fewest || !areKeys) return [...all];
  const evidence =
    'No place gives keys, and no two ranges overlap or reach the softest or the loudest velocity.';
  return all.map((one) =>
    one === low || one === high ? { ...one, target: keyOf[one.target], weight: 0.7, evidence } : one,
  );
}

/** The pitch of an element that is named after a note is its key, where no place gives keys. */
export function withKeysOfPitches<One extends Held>(all: readonly One[]): One[] {
  if (all.some(({ target }) => keyEnds.has(target) || target === 'key')) return [...all];
  return all.map((one) => {
    const { own } = one.column;
    const isPitch = own.some((word) => pitchWords.has(word)) && own.every((word) => pitchWords.has(word));
    if (one.target !== 'pitch_keycenter' || !isPitch) return one;
    const evidence = 'No place gives the keys, and its name speaks of a note.';
    return { ...one, target: 'key', weight: Math.min(one.weight, 0.72), evidence };
  });
}

const pitchWords: ReadonlySet<string> = new Set(
  'pitch tone note ton tonhohe hauteur tono altura altezza toonhoogte tonhojd'.split(' '),
);
