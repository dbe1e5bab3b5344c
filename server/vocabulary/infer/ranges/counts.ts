import type { Assigned } from '../assign';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { conceptsOf } from '../words/tradeWords';
import { rowKeyNumber } from './rowKeys';
import { doShareKeys } from './sharedKeys';

const starts = { lokey: 'hikey', lovel: 'hivel' } as const;
/** Words for how many there are, besides those of the trade (common practice). */
const countWords: ReadonlySet<string> = new Set(
  'how quantity number width anzahl wieviele viele breite combien nombre cuantas cuantos cantidad numero quante quanti numero quantas quantos aantal hoeveel antal ile liczba pocet kolik maara'.split(
    ' ',
  ),
);

/**
 * Adds high ends that are written as how many keys or velocities there are from the low end on: a place of whole numbers beside a
 * low end without a high one, where its name says so or most ranges then end where another one starts.
 */
export function withCounts(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const added: Assigned[] = [];
  const replaced = new Set<Assigned>();
  for (const low of all) {
    if (low.target !== 'lokey' && low.target !== 'lovel') continue;
    const high = starts[low.target];
    if (low.part !== undefined) {
      const other = all.find(({ target, column }) => target === high && column === low.column);
      if (!other || other === low || !areCountsBehind(low, other)) continue;
      replaced.add(other);
      added.push(countOf(low, other));
      continue;
    }
    const { column } = low;
    const isHere = (other: Column) =>
      other.level === column.level && placeOf(other) === placeOf(column) && other !== column;
    const given = all.find((one) => one.target === high && one.column.level === column.level);
    if (given && !(isHere(given.column) && saysCount(given.column))) continue;
    const counts = rows.columns.filter((one) => {
      const taken = all.find((other) => other.column === one);
      return isHere(one) && (!taken || taken === given || taken.weight < 0.85) && areCounts(one, low);
    });
    // A number of the element itself may be called so too.
    const found = counts.find((one) => low.target === 'lokey' && doShare(low, one)) ?? counts[0];
    if (!found) continue;
    for (const one of all) if (one.column === found) replaced.add(one);
    const texts = textsOf(found);
    added.push(countOf(low, { ...low, column: found, target: high, texts, facts: columnFactsOf(texts) }));
  }
  return [...all.filter((one) => !replaced.has(one)), ...added];
}

/** A high end that is how many there are from the low end on. */
function countOf(low: Assigned, high: Assigned): Assigned {
  const evidence = 'Its numbers say how many there are from the low end on.';
  return {
    ...high,
    evidence,
    weight: Math.min(low.weight, 0.85),
    others: [],
    countedFrom: low.target as keyof typeof starts,
  };
}

/**
 * Whether the second numbers of one place are how many there are from the first on: some lie below it, as no high end does, and most
 * ranges then end where another one starts.
 */
function areCountsBehind(low: Assigned, { facts }: Assigned): boolean {
  if (facts.whole < facts.filled || facts.filled === 0 || facts.least < 1) return false;
  const lows = low.texts.map(low.target === 'lokey' ? rowKeyNumber : numberIn);
  const ends = endsOf(facts.numbers, lows);
  return ends !== undefined && !isRangeEnd(facts.numbers, lows) && isMet(ends, lows, 1 / 2);
}

/** The path of the element that a place belongs to; of the one around it where the place is an element's text. */
function placeOf({ at }: Column): string {
  return at.replace(/@?[^/\]@"]*$/, '');
}

function saysCount({ own }: Column): boolean {
  return own.some(
    (word) =>
      countWords.has(word) || conceptsOf(word)?.concepts.some((one) => one === 'count' || one === 'num'),
  );
}

function areCounts(column: Column, low: Assigned): boolean {
  const facts = columnFactsOf(textsOf(column));
  if (facts.whole < facts.filled || facts.filled === 0 || facts.least < 1 || facts.greatest > 128)
    return false;
  const lows = low.texts.map(low.target === 'lokey' ? rowKeyNumber : numberIn);
  const ends = endsOf(facts.numbers, lows);
  if (!ends || ends.size === 0) return false;
  if (saysCount(column)) return true;
  return ends.size > 2 && isMet(ends, lows, 2 / 3) && !isRangeEnd(facts.numbers, lows);
}

/** Where ranges end that are so long, one behind their last; `undefined` where one reaches beyond what there is. */
function endsOf(
  counts: Float64Array,
  lows: readonly (number | undefined)[],
): ReadonlySet<number> | undefined {
  const ends = new Set<number>();
  for (const [row, start] of lows.entries()) {
    const count = counts[row];
    if (start === undefined || Number.isNaN(count)) continue;
    // Names may count octaves from one lower.
    if (start + count > 128 + 12) return undefined;
    ends.add(start + count);
  }
  return ends;
}

/** Whether at so many of the ends another range starts, or nothing more can. */
function isMet(ends: ReadonlySet<number>, lows: readonly (number | undefined)[], share: number): boolean {
  const first = new Set(lows);
  const follow = [...ends].filter((end) => first.has(end) || end === 128).length;
  return follow >= ends.size * share;
}

/** Whether as many keys as a place says share the keyboard out with the low keys. */
function doShare(low: Assigned, column: Column): boolean {
  const lows = low.texts.map(rowKeyNumber);
  const highs = textsOf(column).map((text, row) => {
    const [key, count] = [lows[row], numberIn(text)];
    return key === undefined || count === undefined ? undefined : key + count - 1;
  });
  return doShareKeys(lows, highs);
}

/** Whether numbers could be high ends, none being below its low end. */
function isRangeEnd(numbers: Float64Array, lows: readonly (number | undefined)[]): boolean {
  return lows.every((low, row) => low === undefined || Number.isNaN(numbers[row]) || numbers[row] >= low);
}

function numberIn(text: string | undefined): number | undefined {
  const number = Number(text);
  return text === undefined || text.trim() === '' || Number.isNaN(number) ? undefined : number;
}
