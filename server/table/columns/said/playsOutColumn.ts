import { readHeading } from '../../../trade/headings/headings';
import { loopWord } from '../../../trade/languages/cellWords';
import { headsPlaysOut } from '../../../trade/statements/playing/playsOut';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import type { Glossary } from '../../headings/glossary';
import { shortened } from '../columnReading';

const mostColumns = 100;
const oneShot = 'one shot';

/**
 * Reads a column that says yes or no to playing to the end, such as `One-shot`, as one of loop modes: yes is a one-shot, no leaves it open.
 * Beside a column of loops, it is put in there where that one says no.
 */
export function usePlaysOut(cells: TableCells, tables: readonly TableRows[], glossary: Glossary): void {
  for (const { headings, data, width } of tables) {
    const count = Math.min(width, mostColumns);
    const texts = headings.slice(0, count).map(({ text }) => text);
    const column = texts.findIndex((text) => text !== '' && headsPlaysOut(text));
    if (column < 0) continue;
    const answers = answersIn(cells, data, column);
    if (!answers) continue;
    const heading = texts[column] ?? '';
    const loop = texts.findIndex((text, at) => at !== column && readHeading(text)?.meaning === 'loop');
    for (const [row, isYes] of answers) {
      const cell = cells.cell(row, column);
      if (loop >= 0) putBeside(cells, row, loop, isYes);
      else if (isYes) cells.rewritten.set(cell, oneShot);
      else cells.empty(row, cell);
    }
    if (loop < 0) glossary.settle(heading, 'loop', heading);
    const span = headings[column].cell;
    const start = span < 0 ? 0 : cells.starts[span];
    const text = `Samples with a yes under "${shortened(heading)}" are one-shots; no leaves the loop as it is.`;
    cells.assumptions = [...cells.assumptions, { text, start, end: span < 0 ? 0 : cells.ends[span] }];
  }
}

/** What each row answers; `undefined` where a cell holds something other than yes and no. */
function answersIn(
  cells: TableCells,
  data: readonly number[],
  column: number,
): Map<number, boolean> | undefined {
  const answers = new Map<number, boolean>();
  for (const row of data) {
    const cell = cells.cell(row, column);
    if (cell < 0 || cells.starts[cell] === cells.ends[cell] || cells.filled(row) < 2) continue;
    const text = cells.plain(cell);
    const word = /^[xX]$/.test(text) ? 'loop_continuous' : loopWord(text);
    const isYes = word === 'loop_continuous' || word === 'one_shot';
    if (!isYes && word !== 'no_loop') return undefined;
    answers.set(row, isYes);
  }
  return answers.size > 0 ? answers : undefined;
}

function putBeside(cells: TableCells, row: number, loop: number, isYes: boolean): void {
  const cell = cells.cell(row, loop);
  const isFree = cell >= 0 && (cells.isEmpty(row, loop) || loopWord(cells.plain(cell)) === 'no_loop');
  if (isYes && isFree && !cells.isEmpty(row, loop)) cells.rewritten.set(cell, oneShot);
}
