import { readHeading } from '../../../trade/headings/headings';
import type { ColumnMeaning } from '../../../trade/meaning';
import { readKeyRange } from '../../../trade/readings/keyReading';
import { meansShared } from '../../../trade/sharedWords';
import type { LiteralField } from './literalField';
import type { LiteralMap, LiteralNode } from './literalTree';

/** Values for all zones, under the name that says so. */
export interface SharedValues {
  name: string;
  map: LiteralMap;
}

/** Maps are looked into so deep. */
const deepest = 4;
const ranges: readonly (readonly [low: ColumnMeaning, high: ColumnMeaning, both: ColumnMeaning])[] = [
  ['lokey', 'hikey', 'key_range'],
  ['lovel', 'hivel', 'velocity_range'],
];
/** Ends of zones under headings that say of what only beside others. */
const openEnds = { low: 'offset', high: 'end' } as const;

/** The values for all zones that stand somewhere inside a part that holds no zone, as in `{"patch": {"defaults": {…}}}`. */
export function sharedInside(node: LiteralNode, depth = 0): SharedValues[] {
  if (node.kind !== 'map' || depth > deepest) return [];
  return node.entries.flatMap(({ key, value }) =>
    meansShared(key.text) && value.kind === 'map' && value.entries.some(isKnown)
      ? [{ name: key.text, map: value }]
      : sharedInside(value, depth + 1),
  );
}

function isKnown({ key }: LiteralMap['entries'][number]): boolean {
  return readHeading(key.text) !== undefined;
}

/**
 * What is handed on to a zone and not given by itself, nor by a part of the instrument nearer to it: under the same heading, or as both ends of
 * a range in place of the whole. `handed` has what is nearer later.
 */
export function withoutOverridden(
  own: readonly LiteralField[],
  handed: readonly LiteralField[],
): LiteralField[] {
  const headings = new Set(own.map(({ heading }) => heading.toLowerCase()));
  const others = handed.filter(({ heading }) => !headings.has(heading.toLowerCase()));
  const meanings = others.map(({ heading }) => meaningOf(heading));
  const given = new Map(own.map((field) => [meaningOf(field.heading), field]));
  const left = new Set<ColumnMeaning | undefined>();
  for (const [low, high, both] of ranges) {
    const isGiven = given.has(both) || (given.has(low) && given.has(high));
    if (isGiven || (both === 'key_range' && hasKeysWithin(given, others, meanings)))
      for (const one of [low, high, both]) left.add(one);
  }
  return others.filter((_, at) => !left.has(meanings[at]));
}

/** Whether a zone gives keys as `from` and `to` that lie within those that are handed on to it. */
function hasKeysWithin(
  given: ReadonlyMap<ColumnMeaning | undefined, LiteralField>,
  others: readonly LiteralField[],
  meanings: readonly (ColumnMeaning | undefined)[],
): boolean {
  const find = (meaning: ColumnMeaning) => others.findLast((_, at) => meanings[at] === meaning);
  const key = (field: LiteralField | undefined, end: 'low' | 'high') => {
    const found = field && readKeyRange(field.text)?.[end];
    return found?.number ?? found?.named ?? Number.NaN;
  };
  const [from, to] = [key(given.get(openEnds.low), 'low'), key(given.get(openEnds.high), 'high')];
  const whole = find('key_range');
  const [least, most] = [key(whole ?? find('lokey'), 'low'), key(whole ?? find('hikey'), 'high')];
  const root = key(given.get('pitch_keycenter'), 'low');
  return least <= from && from <= to && to <= most && !(root < from || root > to);
}

function meaningOf(heading: string): ColumnMeaning | undefined {
  return readHeading(heading)?.meaning;
}
