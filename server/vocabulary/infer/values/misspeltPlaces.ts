import { editDistance } from '../../../model/text/nearest';
import { counted } from '../../../model/wording/counted';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';
import { rangesOf } from '../ranges/rangeText';
import { conceptsOf } from '../words/tradeWords';
import type { Column } from './column';
import type { ColumnFacts } from './columnFacts';
import { columnFactsOf, textsOf } from './columnFacts';
import type { Rows } from './rows';

const shortest = 5;
/** Two slips need a name of so many letters. */
const long = 8;
/** For one misspelt name there are so many right ones (our choice). */
const fewestRight = 2;

/**
 * Adds places whose names are those of others with a slip, where a region has one or the other and never both: they hold the same. What
 * is added is told.
 */
export function withMisspelt(
  rows: Rows,
  assigned: readonly Assigned[],
): { assigned: Assigned[]; drafts: Draft[] } {
  const added: Assigned[] = [];
  const drafts: Draft[] = [];
  for (const column of rows.columns) {
    const isRead = assigned.some((one) => one.column === column);
    // What is read by a part of its name alone may be misspelt in another.
    if (column.listed || (isRead && column.own.every(conceptsOf))) continue;
    const same = assigned.filter((one) => isSlipOf(column, one.column));
    const [first] = same;
    // Of several places that it could be none is it.
    if (!first || same.some((one) => one.column !== first.column)) continue;
    const all = inPlaceOf(same, column);
    if (!all.every(({ facts }, at) => areAlike(facts, same[at]?.facts))) continue;
    added.push(...all);
    drafts.push(misspeltDraft(column, first));
  }
  const isMisspelt = ({ column }: Assigned) => added.some((one) => one.column === column);
  return { assigned: [...assigned.filter((one) => !isMisspelt(one)), ...added], drafts };
}

function isSlipOf(column: Column, other: Column): boolean {
  if (other.listed || column.level !== other.level) return false;
  const filled = column.cells.filter((cell) => cell).length;
  const isBeside = column.cells.every((cell, row) => !cell || !other.cells[row]);
  if (!isBeside || filled * fewestRight > other.cells.filter((cell) => cell).length) return false;
  const [one, right] = [stepsOf(column), stepsOf(other)];
  const differing = one.flatMap((name, at) => (name === right[at] ? [] : [at]));
  const [at] = differing;
  if (one.length !== right.length || differing.length !== 1 || at === undefined) return false;
  return isSlip(one[at] ?? '', right[at] ?? '');
}

function stepsOf({ at }: Column): string[] {
  return at.toLowerCase().split('/');
}

function isSlip(name: string, right: string): boolean {
  // `loop1` and `loop2` are no slips of one another, nor is an attribute one of an element.
  if (/\d|[[\]]/.test(name + right) || name.startsWith('@') !== right.startsWith('@')) return false;
  const most = right.length >= long ? 2 : right.length >= shortest ? 1 : 0;
  return most > 0 && editDistance(name, right, most) <= most;
}

/** What a place holds, with the values of a misspelt one. */
function inPlaceOf(same: readonly Assigned[], column: Column): Assigned[] {
  const whole = textsOf(column);
  const ranges = rangesOf(whole);
  return same.map((one) => {
    const texts = one.part === undefined || !ranges ? whole : one.part === 1 ? ranges.first : ranges.second;
    return { ...one, column, texts, facts: columnFactsOf(texts) };
  });
}

/** Whether values are numbers, names of notes or other texts as those of another place are. */
function areAlike(facts: ColumnFacts, other: ColumnFacts | undefined): boolean {
  if (!other || facts.unit !== other.unit) return false;
  return (['numeric', 'notes'] as const).every(
    (kind) =>
      (facts[kind] === 0 || other[kind] > 0) && (facts[kind] === facts.filled || other[kind] < other.filled),
  );
}

function misspeltDraft(column: Column, right: Assigned): Draft {
  const count = column.cells.filter((cell) => cell).length;
  const one = { ...right, column };
  return {
    id: `${column.at}.misspelt`,
    message: `${wordedPlace(one)} of ${counted(count, 'region')} is read as ${wordedPlace(right)}, which others have instead. The name is probably misspelt.`,
    confidence: 0.8,
    isGuess: true,
    evidence: ['No region has both.'],
    span: firstValueOf(one),
    isAbout: ({ at }) => at === column.at,
    alternatives: [{ label: 'something else', change: () => undefined }],
  };
}
