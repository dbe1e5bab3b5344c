import { readHeading } from '../../../trade/headings/headings';
import { loopWord } from '../../../trade/languages/cellWords';
import { isOpenHeading } from '../../../trade/languages/shortTriggerWords';
import { wordsOf } from '../../../trade/languages/spelling';
import { namesPlayMode } from '../../../trade/loopWords';
import type { ColumnMeaning } from '../../../trade/meaning';
import { saysUsual, triggerBelow } from '../../../trade/readings/keyMoves';
import { triggerBesideRelease, triggerInShort } from '../../../trade/readings/triggers';
import { mostlyFilled } from '../columnContents';
import type { ColumnState } from '../columnState';
import { tellsApart } from './rowsAlike';

export const velocityMeanings: readonly ColumnMeaning[] = ['lovel', 'hivel', 'velocity_range'];

/** So many letters for dynamics stand beside one odd cell (our choice). */
const lettersBesideOdd = 4;

/** Letters such as `mf`, or words such as `soft`, where no velocities are given. */
export function findDynamics(state: ColumnState): void {
  const { taken, columns, contents } = state;
  if (taken.has('dynamics') || velocityMeanings.some((meaning) => taken.has(meaning))) return;
  const rest = state.rest();
  // A heading of remarks says little where the cells tell rows of the same keys apart.
  const remarks = columns
    .filter(({ index, meaning }) => meaning === 'comment' && !state.chosen.has(index))
    .map(({ index }) => index)
    .filter((index) => contents[index].distinct > 1 && tellsApart(state, index));
  for (const index of [...rest, ...remarks]) {
    const column = columns[index];
    const { filled, distinct, dynamicLetters, dynamicWords } = contents[index];
    const isRemark = column.meaning === 'comment';
    const meaning = readHeading(column.heading)?.meaning;
    // Names without a heading may be those of groups.
    const isOther =
      !isRemark &&
      (column.heading === '' ||
        (meaning !== undefined && ![...velocityMeanings, 'dynamics', 'volume', 'enabled'].includes(meaning)));
    const telling = dynamicLetters + (isOther ? 0 : dynamicWords);
    // One odd cell among letters leaves the others what they are.
    const isOneOdd = !isOther && !isRemark && dynamicLetters >= lettersBesideOdd && telling === filled - 1;
    if (distinct < 2 || (telling < filled * mostlyFilled && !isOneOdd)) continue;
    column.evidence.length = 0;
    const evidence = isRemark
      ? 'Its cells are dynamics, and tell rows of the same keys apart.'
      : 'Its cells are dynamics.';
    state.claim(index, 'dynamics', isRemark ? 0.8 : 0.9, evidence);
    return;
  }
}

/** Words such as `press` and `release`, and which way a key goes where the heading speaks of keys or of what starts. */
export function findTriggers(state: ColumnState): void {
  const { taken, columns, contents, cells, looked } = state;
  if (taken.has('trigger')) return;
  for (const { index, meaning, heading } of columns) {
    const { filled, triggers, releases } = contents[index];
    const isFree = meaning === 'unknown' || meaning === 'comment' || meaning === 'loop';
    if (!isFree || state.chosen.has(index) || filled === 0) continue;
    const isSaid = releases > 0 && triggers >= filled * mostlyFilled;
    if (!isSaid) {
      const texts = looked
        .map((row) => cells.plain(cells.cell(row, index)).trim())
        .filter((text) => text !== '');
      const said = texts.map((text) => {
        const isUsual = meaning !== 'loop' && saysUsual(text);
        return triggerBelow(heading, text) ?? triggerBesideRelease(text) ?? (isUsual ? 'attack' : undefined);
      });
      const isTold = said.includes('release') && !said.includes(undefined);
      // Under a heading of loops they are how these go on.
      const isShort = readHeading(heading)?.meaning !== 'loop' && areShort(texts);
      if (!isTold && !isShort && !areSwitched(state, index, texts)) continue;
    }
    columns[index].evidence.length = 0;
    columns[index].repeats = undefined;
    state.claim(index, 'trigger', isSaid ? 0.9 : 0.8, 'Its cells say what starts the zones.');
    return;
  }
}

/** Headings of a column that may say how its samples play; words for groups may be the names of some. */
const besidePlayModes: readonly ColumnMeaning[] = ['unknown', 'comment', 'enabled', 'disabled', 'trigger'];

/** Ways to play, such as `one-shot` beside `loop`, whatever the heading calls them. */
export function findPlayModes(state: ColumnState): void {
  const { columns, contents, cells, looked } = state;
  for (const { index, meaning } of columns) {
    const isFree = besidePlayModes.includes(meaning) && !state.chosen.has(index);
    if (!isFree || contents[index].counts.switch < contents[index].filled || contents[index].filled === 0)
      continue;
    const texts = looked.map((row) => cells.plain(cells.cell(row, index))).filter((text) => text !== '');
    if (!texts.some(namesPlayMode) || texts.some((text) => loopWord(text) === undefined)) continue;
    columns[index].evidence.length = 0;
    columns[index].meaning = 'unknown';
    if (state.taken.get(meaning) === index) state.taken.delete(meaning);
    state.claim(index, 'loop', 0.85, 'Its cells say how the samples play.');
    return;
  }
}

/** Whether short words such as `sus` and `rel` say all of what starts zones, in both ways. */
function areShort(texts: readonly string[]): boolean {
  const said = texts.map(triggerInShort);
  return said.includes('release') && said.includes('attack') && !said.includes(undefined);
}

/** Whether `on` and `off` tell zones of the same keys apart, under a heading that leaves open what is on. */
function areSwitched(state: ColumnState, index: number, texts: readonly string[]): boolean {
  const words = new Set(texts.map((text) => text.toLowerCase()));
  if (words.size !== 2 || !words.has('on') || !words.has('off')) return false;
  const heading = wordsOf(state.columns[index].heading);
  return heading.length > 0 && heading.every(isOpenHeading) && tellsApart(state, index);
}
