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
    if ((low.target !== 'lokey' && low.target !== 'lovel') || low.part !== undefined) continue;
    const high = starts[low.target];
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
    added.push({
      ...low,
      column: found,
      target: high,
      texts,
      facts: columnFactsOf(texts),
      evidence: 'Its numbers say how many there are from the low end on.',
      weight: Math.min(low.weight, 0.85),
      others: [],
      countedFrom: low.target,
    });
  }
  return [...all.filter((one) => !replaced.has(one)), ...added];
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
  const first = new Set(lows);
  let [filled, follow] = [0, 0];
  const ends = new Set<number>();
  for (const [row, start] of lows.entries()) {
    const count = facts.numbers[row];
    if (start === undefined || Number.isNaN(count)) continue;
    // Names may count octaves from one lower.
    if (start + count > 128 + 12) return false;
    filled++;
    ends.add(start + count);
  }
  for (const end of ends) if (first.has(end) || end === 128) follow++;
  if (filled === 0) return false;
  return (
    saysCount(column) || (ends.size > 2 && follow * 3 >= ends.size * 2 && !isRangeEnd(facts.numbers, lows))
  );
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
