import { readNumberText } from '../../forms/numberText';
import { conceptsOf } from '../words/tradeWords';
import { changed, groupsOf, holdsNumbers } from './besideColumns';
import type { Column } from './column';

/** Words for what lies behind the last frame of a loop (from memory). */
const behindWords: ReadonlySet<string> = new Set(
  'after beyond behind past before excl exclusive excluding unplayed silent nach dahinter hinter vor apres avant despues antes dopo prima depois na voor efter fore efter etter po'.split(
    ' ',
  ),
);
const startConcepts: ReadonlySet<string> = new Set(['start', 'first', 'lo', 'in']);

/**
 * Where a loop has a start, a place of greater numbers whose name speaks of what comes behind is its end, the frame that is not played any
 * more: `firstAfter`, `beyond`, `stopBefore`, `notPlayed`, `loopEndExcl`.
 */
export function withEndsBehind(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    const ofLoop = group.filter((column) => isOfLoop(column) && holdsNumbers(column));
    const [behind, other] = ofLoop.filter(({ own }) => speaksOfBehind(own));
    const start = ofLoop.find((column) => column !== behind && column.own.some(isStart));
    if (!behind || other || !start || !isAlwaysAbove(behind, start)) continue;
    const loops = behind.own.filter((word) => hasConcept(word, 'loop'));
    changes.set(behind, [{ ...behind, own: [...loops, 'end', 'exclusive'] }]);
  }
  return changed(columns, changes);
}

function isOfLoop({ own, around }: Column): boolean {
  const isSustained = around.at(-1)?.some((word) => hasConcept(word, 'sus')) === true;
  return isSustained || [...own, ...(around.at(-1) ?? [])].some((word) => hasConcept(word, 'loop'));
}

function speaksOfBehind(own: readonly string[]): boolean {
  return own.some((word) => behindWords.has(word)) || /\bnot played\b/.test(own.join(' '));
}

function isStart(word: string): boolean {
  return conceptsOf(word)?.concepts.some((one) => startConcepts.has(one)) === true;
}

function hasConcept(word: string, concept: string): boolean {
  return conceptsOf(word)?.concepts.includes(concept) === true;
}

/** Whether each number that is not 0, as where there is no loop, lies above that of the start. */
function isAlwaysAbove(behind: Column, start: Column): boolean {
  return behind.cells.every((cell, row) => {
    const end = readNumberText(cell?.text ?? '')?.number ?? 0;
    return end === 0 || end > (readNumberText(start.cells[row]?.text ?? '')?.number ?? 0);
  });
}
