import { lookAt } from '../../columns/cellKinds';
import type { Word } from './lineWords';
import type { InOrder, NameAndValues } from './namedLines';

/** What full rows tell of a column: where its values start and end in their lines, and what they are. */
export interface ValuePlace {
  starts: number | undefined;
  ends: number | undefined;
  kinds: ReadonlySet<string>;
  least: number;
  most: number;
}

/** Numbers this far beyond those of a column and its width may still belong to it (our choice). */
const reach = 12;
/** The best way has to be so much better than another one (our choice). */
const margin = 0.5;
/** More ways are not compared. */
const mostValues = 12;

/** What the values of full rows tell of their columns. */
export function placesInRows(text: string, rows: readonly NameAndValues[]): ValuePlace[] {
  return rows[0].values.map((_, column) => {
    const words = rows.map(({ line, values }) => ({ line, word: values[column] }));
    const looks = words.map(({ word }) => lookAt(text.slice(word.start, word.end)));
    const numbers = looks.map(({ value }) => value).filter((value) => !Number.isNaN(value));
    return {
      starts: shared(words.map(({ line, word }) => word.start - line)),
      ends: shared(words.map(({ line, word }) => word.end - line)),
      kinds: new Set(looks.map(({ kind }) => kind)),
      least: Math.min(...numbers),
      most: Math.max(...numbers),
    };
  });
}

function shared(places: readonly number[]): number | undefined {
  return places.every((place) => place === places[0]) ? places[0] : undefined;
}

/** The columns of the values of a short row, −1 where that stays open, and whether they are told by where they stand. */
export function columnsOfValues(
  text: string,
  row: NameAndValues,
  places: readonly ValuePlace[],
  inOrder: InOrder,
): { columns: number[]; isPlaced: boolean } {
  const placed = standing(row, places);
  return placed
    ? { columns: placed, isPlaced: true }
    : { columns: fitting(text, row, places, inOrder), isPlaced: false };
}

/** The columns that values stand in, where each stands below those of one column; single blanks alone make no columns. */
function standing(
  { line, name, values }: NameAndValues,
  places: readonly ValuePlace[],
): number[] | undefined {
  const isWide = values.some(({ start }, at) => start - (values[at - 1] ?? name).end > 1);
  if (!isWide) return undefined;
  const columns = values.map(({ start, end }) =>
    places.findIndex((place) => place.starts === start - line || place.ends === end - line),
  );
  return columns.every((column, at) => column > (columns[at - 1] ?? -1)) ? columns : undefined;
}

function fitting(
  text: string,
  { values }: NameAndValues,
  places: readonly ValuePlace[],
  inOrder: InOrder,
): number[] {
  if (places.length > mostValues) return values.map(() => -1);
  const looks = values.map(({ start, end }) => lookAt(text.slice(start, end)));
  const closeness = (number: number, { least, most }: ValuePlace) => {
    const away = Math.max(least - number, number - most, 0);
    return Math.max(0, 1 - away / (2 * (most - least) + reach)) || 0;
  };
  const ways = waysOf(values.length, places.length).filter((columns) =>
    inOrder(places.map((_, column) => values[columns.indexOf(column)] as Word)),
  );
  const scored = ways.map((columns) => ({
    columns,
    score: columns.reduce((sum, column, at) => {
      const place = places[column];
      return sum + (place.kinds.has(looks[at].kind) ? 2 : 0) + closeness(looks[at].value, place);
    }, 0),
  }));
  const best = Math.max(...scored.map(({ score }) => score));
  const good = scored.filter(({ score }) => score > best - margin);
  return values.map((_, at) => {
    const columns = new Set(good.map((way) => way.columns[at]));
    const [column] = columns;
    return columns.size === 1 ? (column ?? -1) : -1;
  });
}

/** All ways to put some values into more columns in their order, as the column of each value. */
export function waysOf(values: number, columns: number): number[][] {
  const ways: number[][] = [];
  const put = (way: readonly number[], from: number) => {
    if (way.length === values) ways.push([...way]);
    else
      for (let column = from; column <= columns - (values - way.length); column++)
        put([...way, column], column + 1);
  };
  put([], 0);
  return ways;
}
