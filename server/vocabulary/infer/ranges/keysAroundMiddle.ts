import type { Proposal } from '../proposal';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import type { InferredTarget } from '../words/meaningRules';
import type { KeyEnds, KeyPlace } from './keyPlaces';
import { rowKeyNumber } from './rowKeys';

/** Keys that instruments are seldom played beyond, and layers of velocities nearly always reach beyond (our choice). */
const usualKeys = { least: 12, most: 120 };
/** What a name says for sure (our choice). */
const surely = 0.85;
const ofKeys: ReadonlySet<InferredTarget> = new Set([
  'lokey',
  'hikey',
  'key',
  'key_range',
  'pitch_keycenter',
]);

/** Pairs of words for the two sides of what lies between, in some languages (from memory). */
const sides: readonly (readonly [string, string])[] = (
  'left right,bottom top,under over,near far,start stop,begin end,west east,south north,low high,down up,first last,back front,' +
  'links rechts,unten oben,gauche droite,bas haut,izquierda derecha,abajo arriba,sinistra destra,basso alto,esquerda direita,onder boven'
)
  .split(',')
  .map((pair) => pair.split(' ') as [string, string]);

/**
 * Two places that are the ends of few ranges of keys, because a third one always lies between them, and no name says where else keys are:
 * ranges that follow one another, or a single one between places that are named like two sides.
 */
export function aroundMiddle(
  rows: Rows,
  level: number,
  places: readonly KeyPlace[],
  named: readonly Proposal[],
): KeyEnds | undefined {
  const ends = places.filter(({ highs }) => highs === undefined);
  for (const low of ends)
    for (const high of ends) {
      if (low === high || low.column.around.join() !== high.column.around.join()) continue;
      const ranges = rangesOf(low, high);
      if (!ranges || (ranges.length === 1 ? !areSides(low, high) : !doFollow(ranges))) continue;
      if (hasMiddle(rows, level, low, high) && !areNamedElsewhere(named, low, high)) return { low, high };
    }
  return undefined;
}

/** The different ranges, in order; `undefined` where some have no two ends or lie where keys seldom do. */
function rangesOf(low: KeyPlace, high: KeyPlace): (readonly [number, number])[] | undefined {
  const ranges = new Map<string, readonly [number, number]>();
  for (const [row, from] of low.keys.entries()) {
    const to = high.keys[row];
    if (from === undefined || to === undefined || from > to) return undefined;
    if (from < usualKeys.least || to > usualKeys.most) return undefined;
    ranges.set(`${from} ${to}`, [from, to]);
  }
  const sorted = [...ranges.values()].sort(([one], [other]) => one - other);
  return sorted.some(([from, to]) => from < to) ? sorted : undefined;
}

function doFollow(ranges: readonly (readonly [number, number])[]): boolean {
  return ranges.every(([from], at) => at === 0 || from === (ranges[at - 1]?.[1] ?? 0) + 1);
}

/** Whether a place is named like one of two sides, which may be those of the keyboard. */
export function isSide({ own }: Column): boolean {
  const name = own.join(' ');
  return sides.some((pair) => pair.includes(name));
}

function areSides(low: KeyPlace, high: KeyPlace): boolean {
  const [one, other] = [low.column.own.join(' '), high.column.own.join(' ')];
  return sides.some(([from, to]) => from === one && to === other);
}

/** Whether another place has a key of each range, and not always an end of it. */
function hasMiddle({ columns }: Rows, level: number, low: KeyPlace, high: KeyPlace): boolean {
  return columns.some((column) => {
    if (column === low.column || column === high.column || column.level !== level) return false;
    if (column.around.join() !== low.column.around.join()) return false;
    const texts = textsOf(column);
    const { filled, notes, whole } = columnFactsOf(texts);
    if (filled < texts.length || notes + whole < filled) return false;
    const keys = texts.map((text) => rowKeyNumber(text) ?? Number.NaN);
    const isWithin = (key: number, row: number) =>
      key >= (low.keys[row] ?? 128) && key <= (high.keys[row] ?? -1);
    const isInside = (key: number, row: number) =>
      key > (low.keys[row] ?? 128) && key < (high.keys[row] ?? -1);
    return keys.every(isWithin) && keys.some(isInside);
  });
}

/** Whether a name says for sure that another place holds keys, or that one of these holds something else. */
function areNamedElsewhere(named: readonly Proposal[], low: KeyPlace, high: KeyPlace): boolean {
  return named.some(({ column, meaning }) => {
    if (meaning.weight < surely || column.level !== low.column.level) return false;
    const isEnd = column === low.column || column === high.column;
    if (isEnd) return meaning.target === 'lovel' || meaning.target === 'hivel';
    return ofKeys.has(meaning.target) && meaning.target !== 'pitch_keycenter';
  });
}
