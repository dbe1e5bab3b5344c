import type { Assigned } from '../assign';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import { keyTargets } from '../values/plausible';
import type { Rows } from '../values/rows';
import type { InferredTarget } from '../words/meaningRules';
import { isBare } from '../words/meanings';
import { conceptsOf } from '../words/tradeWords';
import { rowKeyNumber } from './rowKeys';

/** Fewer keys may lie so by chance (our choice). */
const fewestRoots = 3;
/** A name of more than a bare word that says something else so surely is believed. */
const surelyNamed = 0.8;

/**
 * Adds the one end of key ranges that stands beside root keys, whatever it is called: keys that all lie above the root before and not
 * above their own are low ends, those not below their own and below the next are high ends. The other end follows from it.
 */
export function withEndBesideRoots(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const root = all.find(({ target }) => target === 'pitch_keycenter');
  // One key of an element around regions is the end of them all.
  const isOfAll = ({ column, target, facts }: Assigned) =>
    column.level < (root?.column.level ?? 0) &&
    (target === 'lokey' || target === 'hikey') &&
    facts.isConstant;
  const isEnd = (one: Assigned) =>
    one.target !== 'pitch_keycenter' &&
    !one.target.startsWith('sw_') &&
    keyTargets.has(one.target) &&
    !isOfAll(one);
  if (!root || root.part !== undefined || all.some(isEnd)) return [...all];
  for (const column of rows.columns) {
    const taken = all.filter((one) => one.column === column);
    if (
      column.level !== root.column.level ||
      column.listed ||
      column === root.column ||
      speaksOfOther(column)
    )
      continue;
    const named = taken.map(({ target }) => ofKeys[target]).find((target) => target !== undefined);
    if (!named && taken.some(({ weight }) => weight >= surelyNamed && !isBare(column.own))) continue;
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    if (facts.unit !== undefined || facts.filled < fewestRoots || facts.notes + facts.whole < facts.filled)
      continue;
    const target = endOf(root.texts.map(rowKeyNumber), texts.map(rowKeyNumber), named);
    if (!target) continue;
    // Of several places of note names that nothing explains none is sure.
    if (facts.notes > 0 && rows.columns.some((other) => other !== column && isUnreadNotes(other, all)))
      continue;
    const end: Assigned = {
      ...root,
      column,
      target,
      texts,
      facts,
      unit: undefined,
      weight: 0.74,
      others: taken.map((one) => one.target),
      evidence: `Each of its numbers lies between the root key of its region and the ${target === 'lokey' ? 'lower' : 'higher'} one beside.`,
    };
    return [...all.filter((one) => !taken.includes(one)), end];
  }
  return [...all];
}

/** What places are that are named like the start and the end of a sample, where they hold keys. */
const ofKeys: Readonly<Partial<Record<InferredTarget, 'lokey' | 'hikey'>>> = {
  offset: 'lokey',
  end: 'hikey',
};

/** What the name of an end may speak of. */
const endConcepts: ReadonlySet<string> = new Set(
  'lo hi first last start end down up key midi num number weak play pos range'.split(' '),
);

function speaksOfOther({ own }: Column): boolean {
  return own.some((word) => conceptsOf(word)?.concepts.every((one) => !endConcepts.has(one)) === true);
}

function isUnreadNotes(column: Column, all: readonly Assigned[]): boolean {
  if (all.some((one) => one.column === column)) return false;
  const { notes, filled } = columnFactsOf(textsOf(column));
  return filled > 0 && notes === filled;
}

/**
 * The end that keys are beside roots; `undefined` where they are none, or the roots themselves, unless their name says which end these
 * are.
 */
function endOf(
  roots: readonly (number | undefined)[],
  keys: readonly (number | undefined)[],
  named: 'lokey' | 'hikey' | undefined,
): 'lokey' | 'hikey' | undefined {
  const byRoot = new Map<number, number>();
  for (const [row, root] of roots.entries()) {
    const key = keys[row];
    if (root === undefined || key === undefined || (byRoot.get(root) ?? key) !== key) return undefined;
    byRoot.set(root, key);
  }
  const sorted = [...byRoot].sort(([one], [other]) => one - other);
  if (sorted.length < fewestRoots) return undefined;
  if (sorted.every(([root, key]) => root === key)) return named;
  if (sorted.every(([root, key], at) => key <= root && key > (sorted[at - 1]?.[0] ?? -1))) return 'lokey';
  const isHigh = sorted.every(([root, key], at) => key >= root && key < (sorted[at + 1]?.[0] ?? 128));
  return isHigh ? 'hikey' : undefined;
}
