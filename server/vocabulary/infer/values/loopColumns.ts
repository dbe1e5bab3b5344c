import { readNumberText } from '../../forms/numberText';
import { conceptsOf } from '../words/tradeWords';
import { loopMode, loopUntil } from '../words/words';
import { changed, groupsOf, holdsNumbers } from './besideColumns';
import type { Column } from './column';
import { isUnitName } from './unitNames';

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
/** What says alone how many are repeated. */
const frames: ReadonlySet<string> = new Set(['frames']);
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

/** Small words for where a loop starts, in an element of loops that gives its end or length too (common practice). */
const placeWords: ReadonlySet<string> = new Set('at point position pos bei an stelle'.split(' '));

/** Small words for how long a loop is (common practice). */
const lengthWords: ReadonlySet<string> = new Set('for lasts lasting fur fuer pour durante voor'.split(' '));

/** What stands `at` a place in an element of loops, beside an end or a length, is the start; what it goes on `for` from a start is the length. */
export function withLoopPlaces(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const isAround = (word: string) => conceptsOf(word)?.concepts.includes('loop') === true;
    if (group[0]?.around.at(-1)?.some(isAround) !== true) continue;
    const isOf = ({ own }: Column, words: ReadonlySet<string>) =>
      own.length > 0 &&
      own.every((word) => conceptsOf(word)?.concepts.every((one) => words.has(one)) === true);
    const calledAfter = (words: ReadonlySet<string>) =>
      group.filter((column) => column.own.length === 1 && words.has(column.own[0]) && holdsNumbers(column));
    const [length, ...more] = calledAfter(lengthWords);
    if (length && more.length === 0 && group.some((column) => isOf(column, starts)))
      changes.set(length, [{ ...length, own: ['length'] }]);
    const [place, other] = calledAfter(placeWords);
    if (!place || other || group.some((column) => column !== place && isOf(column, starts))) continue;
    if (group.some((column) => column !== place && (isOf(column, ends) || isOf(column, frames))))
      changes.set(place, [{ ...place, own: ['start'] }]);
  }
  return changed(columns, changes);
}

const sounding: ReadonlySet<string> = new Set(['sus', 'hold', 'loop', 'rr', 'weak']);

/** Whether an element is named after what goes on while a key is held, as a loop does. */
function isOfSounding(words: readonly string[]): boolean {
  return words.every((word) => conceptsOf(word)?.concepts.every((one) => sounding.has(one)) === true);
}

/**
 * A start and an end in an element that is named after what sounds on, as in `<sustain from="4000" length="9000"/>`, and the same
 * with a mode of loops in one whose name says nothing, are those of a loop.
 */
export function withLoops(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const around = group[0].around.at(-1);
    if (!around || !(isUntold(around) || (isOfSounding(around) && group.some(hasGreatNumbers)))) continue;
    const isNamed = (column: Column, words: ReadonlySet<string>) =>
      holdsNumbers(column) &&
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
