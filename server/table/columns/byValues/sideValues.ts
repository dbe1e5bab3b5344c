import { readHeading, unitInHeading } from '../../../trade/headings/headings';
import { givesMeasuredUnit, namesMeasure } from '../../../trade/languages/measuredWords';
import { wordsOf } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { fitOf } from '../../headings/headingFit';
import { shareOf } from '../columnContents';
import type { ColumnReading } from '../columnReading';
import { columnName } from '../columnReading';
import type { ColumnState } from '../columnState';

/** What samples side by side may have of their own. */
const own: ReadonlySet<ColumnMeaning> = new Set([
  'volume',
  'attenuation',
  'pan',
  'tune',
  'transpose',
  'offset',
  'end',
  'loop',
  'loop_start',
  'loop_end',
  'loop_length',
  'pitch_keycenter',
  'lovel',
  'hivel',
  'velocity_range',
  'lokey',
  'hikey',
  'key_range',
]);

/**
 * Finds the columns that give values for one of several columns of samples side by side: those whose headings share the words that
 * tell its heading from the others, as `close dB` beside `close mic file`, or the same ones behind each.
 */
export function findSideValues(state: ColumnState): void {
  const sides = state.columns.filter(({ side }) => side !== undefined);
  if (sides.length < 2) return;
  findByWords(state, sides);
  findByPlace(state, sides);
}

function findByWords(state: ColumnState, sides: readonly ColumnReading[]): void {
  const words = sides.map(({ heading }) => wordsOf(heading));
  const telling = words.map((some, at) =>
    some.filter((word) => words.every((others, other) => other === at || !others.includes(word))),
  );
  if (telling.some(({ length }) => length === 0)) return;
  for (const column of state.columns) {
    if (!isOpen(state, column)) continue;
    const all = wordsOf(column.heading);
    const found = sides.filter((_, at) => telling[at]?.every((word) => all.includes(word)));
    const [side] = found;
    if (!side || found.length > 1) continue;
    const named = telling[sides.indexOf(side)] ?? [];
    const rest = all.filter((word) => !named.includes(word)).join(' ');
    give(state, column, side, rest);
  }
}

/** The same headings behind each column of samples belong to that one. */
function findByPlace(state: ColumnState, sides: readonly ColumnReading[]): void {
  const { columns } = state;
  const [first, second] = sides;
  const width = (second?.index ?? 0) - (first?.index ?? 0);
  if (!first || width < 2 || sides.some(({ index }, at) => index !== first.index + at * width)) return;
  const blocks = sides.map(({ index }) => columns.slice(index + 1, index + width));
  const texts = blocks.map((block) => block.map(({ heading }) => wordsOf(heading).join(' ')));
  if (texts.some((block) => block.some((text, at) => text === '' || text !== texts[0]?.[at]))) return;
  for (const [at, block] of blocks.entries())
    for (const column of block)
      if (column.owner === undefined && isFree(state, column))
        give(state, column, sides[at] ?? first, column.heading);
}

function isOpen(state: ColumnState, { index, heading, side, meaning }: ColumnReading): boolean {
  return side === undefined && heading !== '' && !state.chosen.has(index) && meaning !== 'row_number';
}

function isFree(state: ColumnState, column: ColumnReading): boolean {
  return isOpen(state, column) && state.contents[column.index].filled > 0;
}

/** Gives a column to one of samples, by the words of its heading that do not name that one. */
function give(state: ColumnState, column: ColumnReading, side: ColumnReading, words: string): void {
  const said = words === '' ? undefined : readHeading(words);
  const contents = state.contents[column.index];
  const unit = said?.unit ?? unitInHeading(column.heading);
  const meaning = said && own.has(said.meaning) ? said.meaning : unit === 'dB' ? 'volume' : undefined;
  const fits = meaning && fitOf({ meaning, unit }, contents, true) === 'yes';
  const isMeasured = givesMeasuredUnit(column.heading) || namesMeasure(words);
  const isNumber = shareOf(contents, 'number', 'pan', 'note', 'note-range', 'number-range') >= 0.5;
  if (!meaning || !fits || !isNumber || isMeasured) return;
  if (state.taken.get(column.meaning) === column.index) state.taken.delete(column.meaning);
  column.meaning = meaning;
  column.unit = unit;
  column.owner = side.index;
  column.repeats = undefined;
  column.confidence = 0.85;
  column.evidence = [`It belongs to the samples in ${columnName(side)}.`];
}
