import { dynamicPairs } from '../../../trade/dynamicPairs';
import { unitOf } from '../../../trade/languages/cellWords';
import type { Unit } from '../../../trade/meaning';
import { pairsInNames } from '../../../trade/rangeWords';
import { readNumberText } from '../../forms/numberText';
import type { Cell } from '../elements/survey';
import { octaves } from '../words/meanings';
import { conceptsOf } from '../words/tradeWords';
import { loopMode, loopUntil } from '../words/words';
import type { Column } from './column';
import type { Rows } from './rows';
import { isOctaveWord, isUnitName } from './unitNames';

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
  const columns = withControllers(withUnits(withEnvelopes(withLoops(withPairs(rows.columns)))));
  return columns === rows.columns ? rows : { ...rows, columns: [...columns] };
}

/** The path of the element that a place belongs to; of the element around it where the place is an element's text. */
function elementOf({ at }: Column): string {
  if (at === '.') return '';
  return at.slice(0, Math.max(0, lastSlash(at)));
}

/** The last slash of a place that stands outside of what elements are told apart by. */
function lastSlash(at: string): number {
  let depth = 0;
  for (let position = at.length - 1; position >= 0; position--) {
    const sign = at[position];
    if (sign === ']') depth++;
    else if (sign === '[') depth--;
    else if (sign === '/' && depth === 0) return position;
  }
  return -1;
}

function groupsOf(columns: readonly Column[]): Map<string, Column[]> {
  const groups = new Map<string, Column[]>();
  for (const column of columns) {
    const id = `${column.level} ${elementOf(column)}`;
    const group = groups.get(id);
    if (group) group.push(column);
    else groups.set(id, [column]);
  }
  return groups;
}

function changed(
  columns: readonly Column[],
  changes: ReadonlyMap<Column, readonly Column[]>,
): readonly Column[] {
  if (changes.size === 0) return columns;
  return columns.flatMap((column) => changes.get(column) ?? [column]);
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

/** Whether the words of an element say nothing of what it is. */
function isUntold(words: readonly string[]): boolean {
  return words.every((word) => {
    const known = conceptsOf(word)?.concepts;
    return !known || known.every((concept) => concept === 'weak' || concept === 'sus');
  });
}

/** Nobody records so many takes of one note. */
const mostTurns = 200;

function hasGreatNumbers({ cells }: Column): boolean {
  return cells.some((cell) => (cell && (readNumberText(cell.text)?.number ?? 0) > mostTurns) === true);
}

const starts: ReadonlySet<string> = new Set(['start', 'first', 'lo', 'in']);
const ends: ReadonlySet<string> = new Set(['end', 'last', 'hi', 'out', 'len']);
/** Of frames; so often nothing is repeated. */
const counts: ReadonlySet<string> = new Set(['count']);
const loopConcepts: ReadonlySet<string> = new Set([
  ...starts,
  ...ends,
  'xfade',
  'fade',
  'count',
  'tune',
  'fine',
]);

const sounding: ReadonlySet<string> = new Set(['sus', 'hold', 'loop', 'rr', 'weak']);

/** Whether an element is named after what goes on while a key is held, as a loop does. */
function isOfSounding(words: readonly string[]): boolean {
  return words.every((word) => conceptsOf(word)?.concepts.every((one) => sounding.has(one)) === true);
}

/**
 * A start and an end in an element that is named after what sounds on, as in `<sustain from="4000" length="9000"/>`, and the same
 * with a mode of loops in one whose name says nothing, are those of a loop.
 */
function withLoops(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const around = group[0].around.at(-1);
    if (!around || !(isUntold(around) || (isOfSounding(around) && group.some(hasGreatNumbers)))) continue;
    const isNamed = (column: Column, words: ReadonlySet<string>) =>
      isNumeric(column) &&
      column.own.every((word) => conceptsOf(word)?.concepts.every((one) => words.has(one)));
    const named = (words: ReadonlySet<string>) => group.some((column) => isNamed(column, words));
    const isOfLoop = (column: Column) =>
      isMode(column) || isUnitName(column.own) || isNamed(column, loopConcepts);
    const isMode = ({ cells }: Column) =>
      cells.some((cell) => cell) &&
      cells.every((cell) => !cell || !!loopMode(cell.text) || loopUntil(cell.text) !== undefined);
    const saysMore = ({ cells }: Column) => cells.some((cell) => cell && !/^\s*[01]\s*$/.test(cell.text));
    if (!group.every(isOfLoop)) continue;
    const isCounted = (column: Column) =>
      !named(ends) && isNamed(column, counts) && hasGreatNumbers(column) && isOfSounding(around);
    if (!named(starts) || !(named(ends) || group.some(isCounted))) continue;
    // No envelope and no round robin counts so far.
    const areFrames = isOfSounding(around) && group.some(hasGreatNumbers);
    if (!areFrames && !group.some((one) => isMode(one) && saysMore(one))) continue;
    for (const column of group) {
      const isUnnamedMode =
        isMode(column) && saysMore(column) && conceptsOf(column.own[0] ?? '') === undefined;
      const own = isUnnamedMode ? ['mode'] : isCounted(column) ? ['length'] : column.own;
      changes.set(column, [{ ...column, own, around: [...column.around.slice(0, -1), ['loop']] }]);
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

function isNumeric({ cells }: Column): boolean {
  return (
    cells.some((cell) => cell) &&
    cells.every((cell) => !cell || readNumberText(cell.text) !== undefined || /^\s*-?inf/i.test(cell.text))
  );
}

/** Concepts of names by the units that they stand for. */
const unitConcepts: Readonly<Record<Unit, string | undefined>> = {
  dB: 'dB',
  centibels: 'centibels',
  percent: 'percent',
  linear: 'ratio',
  cents: 'cents',
  semitones: 'semis',
  frames: 'frames',
  s: 's',
  ms: 'ms',
  Hz: 'hertz',
  kHz: undefined,
};

/** The unit that a place beside others states, as a concept of names; `undefined` where it states none. */
function statedUnit(cell: Cell): string | undefined {
  const text = cell.text.trim();
  if (isOctaveWord(text)) return octaves;
  const unit = unitOf(text);
  return unit && unitConcepts[unit];
}

/** Whether a place states units: all that stands there are units, or its name says so and some are. */
function statesUnits({ own, cells, at }: Column): boolean {
  const isUnit = (cell: Cell | undefined) => cell !== undefined && statedUnit(cell) !== undefined;
  if (isUnitName(own)) return cells.some(isUnit);
  // A letter may stand for much.
  return (
    at.includes('@') &&
    cells.some(isUnit) &&
    cells.every((cell) => !cell || (isUnit(cell) && cell.text.trim().length > 1))
  );
}

/** Numbers in child elements with the unit that stands beside them, which then tells elements of that name apart. */
function withUnits(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  const byElement = new Map<string, Column[]>();
  for (const column of columns) {
    const path = column.at.includes('@') ? elementOf(column) : column.at;
    if (path === '' || path === '.') continue;
    const id = `${column.level} ${path}`;
    byElement.set(id, [...(byElement.get(id) ?? []), column]);
  }
  for (const group of byElement.values()) {
    const unit = group.find(statesUnits);
    if (!unit) continue;
    let isUsed = false;
    for (const column of group) {
      if (column === unit || !isNumeric(column)) continue;
      const parts = partsByUnit(column, unit);
      if (!parts) continue;
      isUsed = true;
      changes.set(column, parts);
    }
    if (isUsed) changes.set(unit, []);
  }
  return changed(columns, changes);
}

/** A place once for each unit; `undefined` where a value has none. */
function partsByUnit(column: Column, unit: Column): Column[] | undefined {
  const name = unit.at.slice(lastSlash(unit.at) + 2);
  const parts = new Map<string, Column>();
  for (const [row, cell] of column.cells.entries()) {
    if (!cell) continue;
    const said = unit.cells[row];
    if (said && /["&<]/.test(said.text)) return undefined;
    // What is in a unit that nobody knows is not read, and told.
    if (said && statedUnit(said) === undefined) continue;
    let part = parts.get(said?.text ?? '');
    if (!part) {
      const isText = !column.at.includes('@');
      const path = isText ? column.at : elementOf(column);
      const behind = isText ? '' : column.at.slice(path.length);
      part = {
        ...column,
        ...(said && { at: `${path}[@${name}="${said.text}"]${behind}`, unit: statedUnit(said) }),
        cells: new Array(column.cells.length).fill(undefined),
      };
      parts.set(said?.text ?? '', part);
    }
    part.cells[row] = cell;
  }
  return [...parts.values()];
}

/** Ends of ranges of controllers with the controller's number, which then tells elements of that name apart. */
function withControllers(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const ofController = group.filter(speaksOfController);
    if (ofController.length === 0) continue;
    const number = group.find(
      (column) =>
        isNumeric(column) &&
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
