import { keyOrderIn } from '../../../trade/statements/keys/keyOrder';
import type { VocabularyLevel } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf } from '../draft';
import { saysSo } from '../saysSo';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import { keyTargets, velocityTargets } from '../values/plausible';
import type { Rows } from '../values/rows';
import { conceptsOf } from '../words/tradeWords';
import { rowKeyNumber } from './rowKeys';

/** Regions that play one key each in their order. */
export interface KeysInOrder {
  assigned: Assigned[];
  /** The key of the first region, where the text alone gives it. */
  first: string | undefined;
  drafts: Draft[];
}

const startConcepts: ReadonlySet<string> = new Set(['first', 'start', 'lo', 'root']);
const mostKeys = 128;

/**
 * Takes regions without keys for sounds that lie on one key each in their order: where the text says so and gives the first key, or an
 * element around them names one that they start at. `undefined` where it is otherwise.
 */
export function keysInOrder(
  rows: Rows,
  assigned: readonly Assigned[],
  prose: readonly string[],
): KeysInOrder | undefined {
  const sample = assigned.find(({ target }) => target === 'sample');
  if (!sample || rows.count < 2 || rows.count > mostKeys) return undefined;
  const isTold = ({ target, column, base }: Assigned) =>
    (keyTargets.has(target) || velocityTargets.has(target)) &&
    (base !== undefined || column.level >= sample.column.level || target === 'hikey');
  if (assigned.some(isTold)) return undefined;
  const said = keyOrderIn(prose);
  const start = startOf(rows, sample, assigned, said !== undefined);
  const first = start ? undefined : said?.first?.number;
  if (!start && first === undefined) return undefined;
  const kept = assigned.filter(({ column }) => column !== start?.column);
  return {
    assigned: start ? [...kept, start] : kept,
    first: first === undefined ? undefined : String(first),
    drafts: [
      {
        id: 'keysInOrder',
        message: `The regions play one key each, in their order, from key ${first ?? rowKeyNumber(start?.texts[0])} on. Each sounds there as it was recorded.`,
        confidence: said ? 0.9 : 0.6,
        isGuess: true,
        evidence: [said ? saysSo(said.text) : 'Nothing else says which keys play the regions.'],
        span: firstValueOf(start ?? sample),
        isAbout: () => false,
        alternatives: [],
      },
    ],
  };
}

/** The one key of an element around the regions that is named after a first key. */
function startOf(
  rows: Rows,
  sample: Assigned,
  assigned: readonly Assigned[],
  isSaid: boolean,
): Assigned | undefined {
  for (const column of rows.columns) {
    if (column.level >= sample.column.level || column.listed || column.around.length > 0) continue;
    if (!isStart(column, isSaid)) continue;
    const taken = assigned.find((one) => one.column === column);
    const texts = textsOf(column);
    if (taken && !keyTargets.has(taken.target)) continue;
    if (texts.some((text) => rowKeyNumber(text) === undefined)) continue;
    return {
      ...sample,
      column,
      target: 'lokey',
      weight: 0.8,
      texts,
      facts: columnFactsOf(texts),
      others: [],
      evidence: 'It names the key that the regions start at.',
    };
  }
  return undefined;
}

/** Whether a name says first and key; where the text speaks of the order, either will do. */
function isStart({ own }: Column, isSaid: boolean): boolean {
  const said = own.flatMap((word) => conceptsOf(word)?.concepts ?? []);
  const isFirst = said.some(
    (one) => startConcepts.has(one) && (isSaid || one === 'first' || one === 'start'),
  );
  const isKey = said.includes('key') || said.includes('midi');
  return isSaid ? isFirst || isKey : isFirst && isKey;
}

/** The levels with the key that the regions start at, where the text alone gives it. */
export function withFirstKey(
  [outermost, ...levels]: readonly VocabularyLevel[],
  order: KeysInOrder | undefined,
): VocabularyLevel[] {
  if (!outermost) return [];
  const isSet = order?.first !== undefined && outermost.is !== 'region';
  return [
    isSet ? { ...outermost, sets: { ...outermost.sets, lokey: order.first ?? '' } } : outermost,
    ...levels,
  ];
}
