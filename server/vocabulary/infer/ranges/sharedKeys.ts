import type { Proposal } from '../proposal';
import type { Column } from '../values/column';
import { type ColumnFacts, columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import type { InferredTarget } from '../words/meaningRules';
import { conceptsOf } from '../words/tradeWords';
import type { KeyEnds, KeyPlace } from './keyPlaces';
import { aroundMiddle, isSide } from './keysAroundMiddle';
import { rangesOf } from './rangeText';
import { rowKeyNumber } from './rowKeys';

/** Key 12 is C0 (16 Hz, ISO 16 taken on), below what is recorded; numbers from 0 on could be velocities. */
const leastKey = 12;
/** So many ranges have to follow one another for them to be the keys of an instrument (our choice). */
const fewestRanges = 3;
const mostPlaces = 16;
/** No range of keys is longer. */
const longestKeys = 24;
const greatestKey = 127;

/**
 * Tells keys by what values share out over the instrument, whatever places are called: two places, or the parts of one, whose ranges
 * follow one another without gap or overlap, or a place whose numbers with those of another come to the next of its own. Proposals
 * for other keys of the same element, which share nothing out, are left out; so are those of these places for anything else.
 */
export function withSharedKeys(rows: Rows, named: readonly Proposal[]): Proposal[] {
  const places = rows.columns.flatMap((column, order) => placeOf(column, order));
  const levels = [...new Set(places.map(({ column }) => column.level))];
  let all = [...named];
  for (const level of levels) {
    const here = places.filter(({ column }) => column.level === level).slice(0, mostPlaces);
    if (isNamedSo(here, named)) continue;
    const found =
      sharedBy(here.filter(({ column }) => !speaksOfOther(column))) ?? aroundMiddle(rows, level, here, named);
    if (found && !isContradicted(found, named)) all = withShared(found, all);
  }
  return all;
}

function placeOf(column: Column, order: number): KeyPlace[] {
  const first = column.cells.find((cell) => cell !== undefined)?.text ?? '';
  if (column.listed || first.length > longestKeys || !/\d/.test(first)) return [];
  if (speaksOfOther(column) && !isSide(column)) return [];
  const texts = textsOf(column);
  const ranges = rangesOf(texts);
  if (ranges) {
    const [first, second] = [columnFactsOf(ranges.first), columnFactsOf(ranges.second)];
    if (!areKeys(first) || !areKeys(second)) return [];
    return [{ order, column, keys: ranges.first.map(rowKeyNumber), highs: ranges.second.map(rowKeyNumber) }];
  }
  return areKeys(columnFactsOf(texts))
    ? [{ order, column, keys: texts.map(rowKeyNumber), highs: undefined }]
    : [];
}

/** Concepts of names that no place of keys has. */
const otherConcepts: ReadonlySet<string> = new Set(
  'root vel ctrl loop xfade rand switch rr chan env atk dec sus rel level pan tune lfo s ms hertz frames percent ignored'.split(
    ' ',
  ),
);

function speaksOfOther({ own, around }: Column): boolean {
  return [...around.flat(), ...own].some(
    (word) =>
      word.length > 1 && conceptsOf(word)?.concepts.some((concept) => otherConcepts.has(concept)) === true,
  );
}

function areKeys({ filled, notes, whole, numeric, least, greatest, unit }: ColumnFacts): boolean {
  if (filled < 1 || unit !== undefined || notes + whole < filled) return false;
  return numeric === 0 || (least >= 0 && greatest <= greatestKey);
}

/** What a name says for sure (our choice). */
const surely = 0.85;

/** Whether names tell already which places the keys are in: for sure, or so that ranges share them out. */
function isNamedSo(places: readonly KeyPlace[], named: readonly Proposal[]): boolean {
  const best = (place: KeyPlace) =>
    named
      .filter(({ column }) => column === place.column)
      .sort((one, other) => other.meaning.weight - one.meaning.weight)[0]?.meaning;
  const as = (target: InferredTarget) => places.filter((place) => best(place)?.target === target);
  if (as('key_range').some(({ highs }) => highs !== undefined)) return true;
  const isSure = (place: KeyPlace) => (best(place)?.weight ?? 0) >= surely;
  return as('lokey').some((low) =>
    as('hikey').some((high) => (isSure(low) && isSure(high)) || doShareKeys(low.keys, high.keys)),
  );
}

const keyTargets: ReadonlySet<InferredTarget> = new Set(['lokey', 'hikey', 'key_range', 'key']);

/** Whether another place is named like keys for sure and has some outside of the ranges, of which no name speaks. */
function isContradicted({ low, high }: KeyEnds, named: readonly Proposal[]): boolean {
  const isOneOf = (column: Column) => column === low.column || column === high?.column;
  if (named.some(({ column, meaning }) => isOneOf(column) && keyTargets.has(meaning.target))) return false;
  const highs = high?.highs ?? high?.keys;
  return named.some(({ column, meaning, texts }) => {
    if (isOneOf(column) || !keyTargets.has(meaning.target) || meaning.weight < surely) return false;
    // What an element around the regions gives as a bound lies around their ranges.
    const isBound = column.level < low.column.level;
    return texts.some((text, row) => {
      const key = rowKeyNumber(text);
      if (key === undefined) return false;
      const isBelow = key < (low.keys[row] ?? 0) && !(isBound && meaning.target === 'lokey');
      return isBelow || (key > (highs?.[row] ?? -1) && !(isBound && meaning.target === 'hikey'));
    });
  });
}

function sharedBy(places: readonly KeyPlace[]): KeyEnds | undefined {
  for (const low of places) if (low.highs && doShareKeys(low.keys, low.highs)) return { low, high: low };
  const ends = places.filter(({ highs }) => highs === undefined);
  for (const low of ends)
    for (const high of ends) if (low !== high && doShareKeys(low.keys, high.keys)) return { low, high };
  for (const low of ends) {
    const counts = ends.find((one) => one !== low && areCounts(low.keys, one.keys));
    if (counts) return { low, high: undefined };
  }
  return undefined;
}

/** Whether ranges of keys, by row, follow each other with neither gap nor overlap, but for some; at least one of several keys. */
export function doShareKeys(
  lows: readonly (number | undefined)[],
  highs: readonly (number | undefined)[],
): boolean {
  const ranges = new Map<number, number>();
  for (const [row, low] of lows.entries()) {
    const high = highs[row];
    if (low === undefined && high === undefined) continue;
    if (low === undefined || high === undefined || low > high || low < leastKey) return false;
    if ((ranges.get(low) ?? high) !== high) return false;
    ranges.set(low, high);
  }
  const sorted = [...ranges].sort(([one], [other]) => one - other);
  if (sorted.length < fewestRanges || sorted.every(([low, high]) => low === high)) return false;
  let follow = 0;
  for (let at = 1; at < sorted.length; at++) {
    const [before, next] = [sorted[at - 1]?.[1] ?? 0, sorted[at]?.[0] ?? 0];
    if (next <= before) return false;
    if (next === before + 1) follow++;
  }
  return follow * 5 >= (sorted.length - 1) * 4;
}

/** Whether each number with that of another place comes to the next greater one, so that the other says how many there are. */
function areCounts(lows: readonly (number | undefined)[], counts: readonly (number | undefined)[]): boolean {
  const ends = lows.map((low, row) => {
    const count = counts[row];
    return low === undefined || count === undefined || count < 1 ? undefined : low + count - 1;
  });
  return doShareKeys(lows, ends);
}

const ofRange = 'Its ranges of keys follow one another over the instrument.';
const ofEnds = 'With those of another place its numbers are ranges of keys that follow one another.';
/** What values tell against no name, or with one that says which end it is. */
const [unnamed, agreed] = [0.74, 0.88];

function withShared({ low, high }: KeyEnds, named: readonly Proposal[]): Proposal[] {
  const isTaken = ({ column, meaning }: Proposal) =>
    column === low.column ||
    column === high?.column ||
    (column.level === low.column.level && keyTargets.has(meaning.target));
  const propose = (place: KeyPlace, target: InferredTarget, evidence: string): Proposal => {
    const { column, order } = place;
    const texts = textsOf(column);
    const isAgreed = named.some((one) => one.column === column && one.meaning.target === target);
    const meaning = { target, weight: isAgreed ? agreed : unnamed, unit: undefined };
    return { column, order, texts, facts: columnFactsOf(texts), meaning, evidence };
  };
  const rest = named.filter((one) => !isTaken(one));
  if (high === low) return [...rest, propose(low, 'key_range', ofRange)];
  return [...rest, propose(low, 'lokey', ofEnds), ...(high ? [propose(high, 'hikey', ofEnds)] : [])];
}
