import { dynamicPairs } from '../../../trade/dynamicPairs';
import { pairsInNames } from '../../../trade/rangeWords';
import { readNumberText } from '../../forms/numberText';
import { conceptsOf } from '../words/tradeWords';
import { changed, elementOf, groupsOf, holdsNumbers, lastSlash } from './besideColumns';
import { withUnits } from './besideUnits';
import type { Column } from './column';
import { withEndsBehind } from './endsBehind';
import { withLoopPlaces, withLoops } from './loopColumns';
import { withoutPartsOfKeys } from './octavePlaces';
import { withOuterUnits } from './outerUnits';
import type { Rows } from './rows';

/** Words for the two ends of a range that say something only beside one another. */
const pairs = [...pairsInNames, ['a', 'b'] as const];
const numberWords: ReadonlySet<string> = new Set('number num nr no n id cc numero nummer which'.split(' '));
/** Controllers by the words for them (MIDI 1.0, table of control changes). */
const controllers: ReadonlyMap<string, number> = new Map([
  ['modwheel', 1],
  ['breath', 2],
  ['expression', 11],
  ['pedal', 64],
  ['sustainpedal', 64],
  ['damper', 64],
]);

/** Columns with what those beside them say of them: their unit, the other end of a range, a controller's number, a loop's mode. */
export function withNeighbours(rows: Rows): Rows {
  const columns = withControllers(
    withOuterUnits(
      withUnits(
        withEnvelopes(withLoops(withLoopPlaces(withEndsBehind(withPairs(withoutPartsOfKeys(rows.columns)))))),
      ),
    ),
  );
  return columns === rows.columns ? rows : { ...rows, columns: [...columns] };
}

/** Whether no number of one place is above that of the other. */
function areInOrder(low: Column, high: Column): boolean {
  return low.cells.every((cell, row) => {
    const other = high.cells[row];
    if (!cell || !other) return true;
    const [from, to] = [readNumberText(cell.text)?.number, readNumberText(other.text)?.number];
    return from !== undefined && to !== undefined && from >= 0 && from <= to;
  });
}

/** The place whose name is that of another one but for the word of the other end: `anello-da` and `anello-a`. */
function partnerOf(
  { own }: Column,
  lowWord: string,
  highWord: string,
  group: readonly Column[],
): Column | undefined {
  if (!own.includes(lowWord) || own.length > 3) return undefined;
  const wanted = replacedIn(own, lowWord, highWord).join(' ');
  return group.find((other) => other.own.join(' ') === wanted);
}

function replacedIn(words: readonly string[], word: string, other: string): string[] {
  return words.map((one) => (one === word ? other : one));
}

/** `de` and `a` beside one another are the ends of a range. */
function withPairs(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const named = (word: string) => group.find(({ own }) => own.length === 1 && own[0] === word);
    for (const [lowWord, highWord] of pairs) {
      for (const low of group) {
        const high = partnerOf(low, lowWord, highWord, group);
        if (!high || changes.has(low) || changes.has(high)) continue;
        changes.set(low, [{ ...low, own: replacedIn(low.own, lowWord, 'from') }]);
        changes.set(high, [{ ...high, own: replacedIn(high.own, highWord, 'to') }]);
      }
    }
    for (const [softWord, loudWord] of dynamicPairs) {
      const [low, high] = [named(softWord), named(loudWord)];
      if (!low || !high || changes.has(low) || changes.has(high) || !areInOrder(low, high)) continue;
      changes.set(low, [{ ...low, own: ['low', 'velocity'] }]);
      changes.set(high, [{ ...high, own: ['high', 'velocity'] }]);
    }
  }
  return changed(columns, changes);
}

/** The parts of an envelope by their first letters (common practice). */
const stages: ReadonlyMap<string, string> = new Map([
  ['a', 'attack'],
  ['h', 'hold'],
  ['d', 'decay'],
  ['s', 'sustain'],
  ['r', 'release'],
]);

/** Single letters in an element that is named after an envelope are its parts. */
function withEnvelopes(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const around = group[0].around.at(-1);
    const isEnvelope = around?.some((word) => conceptsOf(word)?.concepts.includes('env'));
    const letters = group.filter(({ own }) => own.length === 1 && stages.has(own[0]));
    if (!isEnvelope || letters.length < 2) continue;
    for (const column of letters)
      changes.set(column, [{ ...column, own: [stages.get(column.own[0]) as string] }]);
  }
  return changed(columns, changes);
}

/** Ends of ranges of controllers with the controller's number, which then tells elements of that name apart. */
function withControllers(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const ofController = group.filter(speaksOfController);
    if (ofController.length === 0) continue;
    const number = group.find(
      (column) =>
        holdsNumbers(column) &&
        column.own.some((word) => numberWords.has(word)) &&
        column.own.every((word) => numberWords.has(word) || isController(word)),
    );
    for (const column of ofController) {
      if (column === number) continue;
      const parts = withNumber(column, number);
      if (parts) {
        changes.set(column, parts);
        if (number) changes.set(number, []);
      }
    }
  }
  return changed(columns, changes);
}

function isController(word: string): boolean {
  return conceptsOf(word)?.concepts.join() === 'ctrl';
}

function speaksOfController({ own, around }: Column): boolean {
  return [...own, ...(around.at(-1) ?? [])].some(isController);
}

function withNumber(column: Column, number: Column | undefined): Column[] | undefined {
  const words = [...(column.around.at(-1) ?? []), ...column.own];
  const at = words.findIndex(
    (word, position) => isController(word) && /^\d+$/.test(words[position + 1] ?? ''),
  );
  if (at >= 0) {
    const digits = words[at + 1];
    const without = (list: readonly string[]) => list.filter((word) => word !== digits);
    return [
      {
        ...column,
        own: without(column.own),
        around: column.around.map(without),
        controller: Number(digits),
      },
    ];
  }
  const known = words.map((word) => controllers.get(word)).find((one) => one !== undefined);
  if (!number) return known === undefined ? undefined : [{ ...column, controller: known }];
  const numbers = new Set(column.cells.flatMap((cell, row) => (cell ? [number.cells[row]?.text] : [])));
  if (numbers.has(undefined)) return undefined;
  const path = elementOf(column);
  if (path === '' || !number.at.includes('@')) {
    const [only] = numbers;
    return numbers.size === 1 ? [{ ...column, controller: Number(only) }] : undefined;
  }
  const name = number.at.slice(lastSlash(number.at) + 2);
  return [...numbers].map((text) => ({
    ...column,
    at: `${path}[@${name}="${text}"]${column.at.slice(path.length)}`,
    controller: Number(text),
    cells: column.cells.map((cell, row) => (number.cells[row]?.text === text ? cell : undefined)),
  }));
}
