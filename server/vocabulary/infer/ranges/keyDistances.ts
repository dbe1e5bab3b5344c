import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf } from '../draft';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { conceptsOf } from '../words/tradeWords';
import { rangesOf } from './rangeText';
import { rowKeyNumber } from './rowKeys';
import { doShareKeys } from './sharedKeys';

/** What is said of distances by mistake, as their numbers are small. */
const replaceable: ReadonlySet<string> = new Set(
  'lokey hikey key lovel hivel tune transpose bend_up bend_down offset end'.split(' '),
);
/** No sample is played further from its root key (our choice). */
const furthest = 60;
/** Nor is it stretched over more to both sides on a guess (our choice). */
const longestReach = 24;
const mostPlaces = 16;
const longestText = 24;
/** Words for what lies below and above, besides those of the trade (common practice). */
const belows: ReadonlySet<string> = new Set(
  'below beneath under down downwards lower left unter unten runter abwarts sotto giu dessous bas vers-bas debajo abajo onder omlaag abaixo nedat ned w-dol'.split(
    ' ',
  ),
);
const aboves: ReadonlySet<string> = new Set(
  'above over up upwards upper right uber ueber oben rauf hoch aufwarts sopra su dessus haut encima arriba boven omhoog acima uppat op'.split(
    ' ',
  ),
);

interface Distances {
  column: Column;
  texts: readonly (string | undefined)[];
  facts: Assigned['facts'];
  /** Which part of a text such as `-3 +2` it is. */
  part: 1 | 2 | undefined;
  between: string | undefined;
}

/** The ends of key ranges by their distances from root keys. */
export interface KeyDistances {
  assigned: Assigned[];
  drafts: Draft[];
}

/**
 * Takes two places of small whole numbers beside root keys, one, or the two parts of one, for how many keys below and above those each region reaches: where
 * the ranges then follow one another over the instrument, or the names say below and above.
 */
export function withKeyDistances(rows: Rows, all: readonly Assigned[]): KeyDistances {
  const unchanged = { assigned: [...all], drafts: [] };
  const root = rootIn(all);
  if (!root || hasRangesAround(root, all)) return unchanged;
  const roots = root.texts.map(rowKeyNumber);
  const places = rows.columns.flatMap((column) => distancesIn(column, root, all)).slice(0, mostPlaces);
  const single = places.filter(({ part }) => part === undefined);
  const found =
    sharingPair(places, roots) ??
    namedPair(single) ??
    namedReach(single, roots) ??
    namedParts(places.filter(({ part }) => part !== undefined));
  if (!found) return unchanged;
  const { low, high, evidence } = found;
  const taken = [low.column, high.column];
  const kept = all.filter(({ column }) => !taken.includes(column) && column !== root.column);
  const endOf = (place: Distances, target: string): Assigned => ({
    ...root,
    ...place,
    target,
    weight: 0.74,
    evidence,
    others: [],
    countedFrom: 'pitch_keycenter',
  });
  const lowEnd = endOf(low, 'lokey');
  return {
    assigned: [...kept, { ...root, target: 'pitch_keycenter' }, lowEnd, endOf(high, 'hikey')],
    drafts: [
      {
        id: 'keyDistances',
        message: 'Key ranges are written as so many keys below and above the root key.',
        confidence: 0.74,
        isGuess: true,
        evidence: [evidence],
        span: firstValueOf(lowEnd),
        isAbout: () => false,
        alternatives: [],
      },
    ],
  };
}

/** The place that gives one key for each region. */
function rootIn(all: readonly Assigned[]): Assigned | undefined {
  const root =
    all.find(({ target }) => target === 'pitch_keycenter') ?? all.find(({ target }) => target === 'key');
  if (!root || root.part !== undefined || root.unit !== undefined) return undefined;
  return root.facts.whole + root.facts.notes === root.facts.filled ? root : undefined;
}

/** Whether places that are named like the ends of ranges have the root keys between them. */
function hasRangesAround(root: Assigned, all: readonly Assigned[]): boolean {
  const [lows, highs] = ['lokey', 'hikey'].map((target) =>
    all
      .filter((one) => one.target === target && one.column !== root.column)
      .map(({ texts }) => texts.map(rowKeyNumber)),
  );
  if (all.some(({ target, countedFrom }) => countedFrom !== undefined && target === 'hikey')) return true;
  return root.texts.some((text, row) => {
    const key = rowKeyNumber(text);
    if (key === undefined) return false;
    return (
      lows?.some((keys) => (keys[row] ?? 128) <= key && highs?.some((other) => (other[row] ?? -1) >= key)) ===
      true
    );
  });
}

function distancesIn(column: Column, root: Assigned, all: readonly Assigned[]): Distances[] {
  if (column.level !== root.column.level || column === root.column || column.listed) return [];
  const taken = all.find((one) => one.column === column);
  if (taken && !replaceable.has(taken.target)) return [];
  const texts = textsOf(column);
  const ranges = (texts.find((text) => text !== undefined)?.length ?? 0) <= longestText && rangesOf(texts);
  const places: Distances[] = ranges
    ? [ranges.first, ranges.second].map((side, at) => ({
        column,
        texts: side,
        facts: columnFactsOf(side),
        part: at === 0 ? 1 : 2,
        between: ranges.between,
      }))
    : [{ column, texts, facts: columnFactsOf(texts), part: undefined, between: undefined }];
  return places.every(({ facts }) => areSmall(facts, root)) ? places : [];
}

function areSmall({ unit, least, greatest, whole, filled }: Assigned['facts'], root: Assigned): boolean {
  const isUnit = unit === undefined || unit === 'semitones';
  const isEverywhere = whole === filled && filled === root.facts.filled;
  return isUnit && least >= -furthest && greatest <= furthest && isEverywhere && filled > 0;
}

/** Whether two places, or one twice, or the parts of one, can be the distances below and above. */
function areSides(low: Distances, high: Distances): boolean {
  return low.part === undefined
    ? high.part === undefined
    : low.part === 1 && high.part === 2 && low.column === high.column;
}

interface Pair {
  low: Distances;
  high: Distances;
  evidence: string;
}

/** Two places, or one for both sides, with which ranges follow one another over the instrument. */
function sharingPair(places: readonly Distances[], roots: readonly (number | undefined)[]): Pair | undefined {
  for (const low of places)
    for (const high of places) {
      if (!areSides(low, high) || high.facts.least < 0 || (low.facts.negative > 0 && low.facts.greatest > 0))
        continue;
      const at = (side: Distances, sign: number) =>
        roots.map((root, row) => {
          const distance = side.facts.numbers[row] ?? Number.NaN;
          return root === undefined || Number.isNaN(distance) ? undefined : root + sign * Math.abs(distance);
        });
      if (low === high && (low.facts.negative > 0 || low.facts.greatest === 0)) continue;
      if (doShareKeys(at(low, -1), at(high, 1)))
        return {
          low,
          high,
          evidence: 'Ranges that reach so far from the root keys follow one another over the instrument.',
        };
    }
  return undefined;
}

/** One place that is named after a range and holds single numbers, all of them far from the root keys. */
function namedReach(places: readonly Distances[], roots: readonly (number | undefined)[]): Pair | undefined {
  const found = places.filter(
    ({ column, facts }) =>
      column.own.some((word) => conceptsOf(word)?.concepts.includes('range') === true) &&
      column.own.every(isOfKeys) &&
      facts.least >= 0 &&
      facts.greatest <= longestReach &&
      roots.every((root, row) => root === undefined || root > (facts.numbers[row] ?? 0) + longestReach / 2),
  );
  const [one] = found;
  if (!one || found.length > 1) return undefined;
  const evidence = 'Its name says range, and its numbers are no keys around the root keys.';
  return { low: one, high: one, evidence };
}

/** The two parts of a place that is named after a range, of which the first ones lie below and the second ones above. */
function namedParts(places: readonly Distances[]): Pair | undefined {
  const [low, high, ...others] = places;
  if (!low || !high || others.length > 0 || !low.column.own.every(isOfKeys)) return undefined;
  if (low.facts.greatest > 0 || low.facts.least === 0 || high.facts.least < 0) return undefined;
  const evidence = 'Its texts give a number below and one above, and its name says range.';
  return { low, high, evidence };
}

/** Two places that are named below and above. */
function namedPair(places: readonly Distances[]): Pair | undefined {
  const named = (words: ReadonlySet<string>) =>
    places.filter(({ column }) => column.own.some((word) => words.has(word)));
  const [low, ...otherLows] = named(belows);
  const [high, ...otherHighs] = named(aboves);
  if (!low || !high || low === high || otherLows.length + otherHighs.length > 0) return undefined;
  const rest = ({ column }: Distances, words: ReadonlySet<string>) =>
    column.own.filter((word) => !words.has(word)).every((word) => isOfKeys(word));
  if (!rest(low, belows) || !rest(high, aboves) || high.facts.least < 0) return undefined;
  if (low.facts.negative > 0 && low.facts.greatest > 0) return undefined;
  return {
    low,
    high,
    evidence: 'Their names say below and above, and their numbers are no keys around the root keys.',
  };
}

function isOfKeys(word: string): boolean {
  const concepts = conceptsOf(word)?.concepts ?? [];
  return (
    concepts.length > 0 &&
    concepts.every((one) => one === 'key' || one === 'semis' || one === 'range' || one === 'root')
  );
}
