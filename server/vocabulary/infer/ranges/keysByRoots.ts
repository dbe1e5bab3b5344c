import type { Assigned } from '../assign';
import { namedMeaning } from '../columnMeanings';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';
import { saysSo } from '../saysSo';
import type { XmlStatements } from '../stated/statements';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import { keyTargets } from '../values/plausible';
import type { Rows } from '../values/rows';
import { rowKeyNumber } from './rowKeys';

/**
 * What is told where regions give root keys and no other keys, so that these are shared out up to the middles between roots;
 * `undefined` where it is otherwise. Ends of the outermost element are those of the whole.
 */
export function keysByRoots(
  rows: Rows,
  chain: readonly string[],
  assigned: readonly Assigned[],
  { keySpread, lowestKey, outermostKeys }: Pick<XmlStatements, 'keySpread' | 'lowestKey' | 'outermostKeys'>,
): Draft[] | undefined {
  const root = assigned.find(({ target }) => target === 'pitch_keycenter');
  if (!root || assigned.some(isOfRegions)) return undefined;
  // Keys that are not understood may be the ends of ranges.
  if (rows.columns.some((column) => maySayKeys(column, assigned, chain))) return undefined;
  const different = new Set(root.texts.flatMap((text) => (text ? [rowKeyNumber(text) ?? text] : [])));
  if (different.size < 2) return undefined;
  const said = keySpread?.is === 'nearest' ? keySpread.text : undefined;
  const ends = assigned.filter(({ target }) => target === 'lokey' || target === 'hikey');
  const reach =
    ends.length > 0
      ? `the outermost ones up to what ${ends.map(wordedPlace).join(' and ')} ${ends.length > 1 ? 'give' : 'gives'}`
      : lowestKey || outermostKeys.highest
        ? 'the outermost ones as far as the text says'
        : 'the outermost ones up to the ends of the keyboard';
  return [
    {
      id: 'keysByRoots',
      message: `Only root keys are given, in ${wordedPlace(root)}. The keys are shared out among them up to the middles between roots, ${reach}.`,
      confidence: said === undefined ? 0.6 : 0.9,
      isGuess: true,
      evidence: [said === undefined ? 'Nothing else says which keys play the regions.' : saysSo(said)],
      span: firstValueOf(root),
      isAbout: () => false,
      alternatives: [],
    },
  ];
}

/** Whether a place gives keys that are none of the whole; keys that switch layers are none. */
function isOfRegions({ target, column }: Assigned): boolean {
  if (!keyTargets.has(target) || target.startsWith('sw_') || target === 'pitch_keycenter') return false;
  return column.level > 0 || (target !== 'lokey' && target !== 'hikey');
}

const namedKeys: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'key_range']);

/** Whether a place that is read as nothing holds note names, or is called after keys. */
function maySayKeys(column: Column, assigned: readonly Assigned[], chain: readonly string[]): boolean {
  if (column.level < 1 || assigned.some((one) => one.column === column)) return false;
  const { notes, filled, isCounting } = columnFactsOf(textsOf(column));
  if (filled > 0 && notes === filled) return true;
  const meaning = namedMeaning(column, chain);
  return !isCounting && meaning !== undefined && meaning.weight > 0.8 && namedKeys.has(meaning.target);
}
