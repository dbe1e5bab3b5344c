import { readPan } from '../../../trade/readings/panReading';
import { triggerPhrase } from '../../../trade/readings/triggerPhrases';
import { rowKey } from '../ranges/rowKeys';
import type { InferredTarget } from '../words/meaningRules';
import type { Meaning } from '../words/meanings';
import { conceptsOf } from '../words/tradeWords';
import { isReleaseName, panSide, switchWord } from '../words/words';
import type { Column } from './column';
import type { ColumnFacts } from './columnFacts';

interface Named {
  column: Column;
  meaning: Meaning;
}

/** A meaning that the values of a place give it, and why. */
export interface Spoken {
  meaning: Meaning;
  evidence: string;
}

/** A name that says so surely has no need of its values. */
const surelyNamed = 0.75;
const keyMeanings: ReadonlySet<InferredTarget> = new Set('lokey hikey key key_range'.split(' '));

/**
 * What a place is by its values where its name alone does not tell: keys by note name and number, a level in dB, a position between
 * two sides. `region` is the level of the regions, `named` what names say already.
 */
export function spokenBy(
  column: Column,
  facts: ColumnFacts,
  { region, named }: { region: number; named: readonly Named[] },
): Spoken | undefined {
  const said = (target: InferredTarget, evidence: string): Spoken => ({
    meaning: { target, weight: 0.74, unit: undefined },
    evidence,
  });
  if (facts.filled === 0 || column.around.length > 0) return undefined;
  if (!named.some(({ meaning }) => keyMeanings.has(meaning.target)) && areKeysOfNameAndNumber(facts))
    return said('key', 'Its texts are note names, with the numbers of keys beside some.');
  if (named.every((one) => one.column !== column) && isReleaseFlag(column, facts))
    return said('release_switch', 'Its name speaks of letting a key go, and it says yes or no.');
  if (named.every((one) => one.column !== column) && areSideWords(facts))
    return said('pan', 'Its words are those for left, right and the centre.');
  const means = (...concepts: string[]) =>
    column.own.some((word) => conceptsOf(word)?.concepts.some((one) => concepts.includes(one)));
  if (
    areSides(facts, means('pos', 'place', 'pan')) &&
    !named.some((one) => one.meaning.target === 'pan' && one.meaning.weight > surelyNamed)
  )
    return said('pan', 'Its texts are sides, with how far out some are.');
  if (column.level !== region || facts.numeric < facts.filled || facts.filled < 2) return undefined;
  const isUnnamed = !named.some((one) => one.column === column);
  if (isUnnamed && facts.unit === 'dB' && means('vel', 'level'))
    return said('volume', 'Its name speaks of loudness, and its numbers are followed by dB.');
  const isSided = facts.negative > 0 && facts.greatest > 0 && facts.least >= -100 && facts.greatest <= 100;
  if (isSided && facts.unit === undefined && !means('ignored') && means('pos', 'place', 'pan'))
    return said('pan', 'Its name speaks of a place, and its numbers lie on both sides of 0.');
  return undefined;
}

/**
 * Whether all texts name a side or the centre, some of them with a share: `10% left`, `centre`. Letters before numbers, as in `L40`,
 * may be codes too: they are sides where both occur
 * beside the centre or in the steps that pan positions have.
 */
function areSides({ tally, sided, filled }: ColumnFacts, isPlace: boolean): boolean {
  if (sided < filled) return false;
  const texts = [...tally.keys()];
  if (texts.some((text) => /\d/.test(text) && (text.includes('%') || /\p{L}{3}/u.test(text)))) return true;
  const positions = texts.map((text) => (/\d/.test(text) ? (readPan(text) ?? Number.NaN) : 0));
  const shares = positions.filter((one) => one !== 0);
  if (shares.length === 0 || !shares.every((one) => Math.abs(one) <= widest)) return false;
  const areBoth = shares.some((one) => one < 0) && shares.some((one) => one > 0);
  const areInSteps = shares.every((one) => one % 5 === 0);
  const hasCentre = texts.some((text) => !/\d/.test(text) || readPan(text) === 0);
  return isPlace ? areBoth || hasCentre : areBoth && (hasCentre || (areInSteps && shares.length > 2));
}

/** Whether all texts are words for sides, and all three occur: left and right alone may be hands or channels. */
function areSideWords({ tally, sided, filled }: ColumnFacts): boolean {
  if (sided < filled) return false;
  const said = new Set([...tally.keys()].map((text) => (text.trim().length > 1 ? panSide(text) : undefined)));
  return said.size === 3 && !said.has(undefined);
}

/** As far out as pan positions are counted. */
const widest = 127;

/** Whether a place that is named after letting a key go, in any language, says yes in some regions and no in others. */
function isReleaseFlag({ own }: Column, { tally }: ColumnFacts): boolean {
  const said = [...tally.keys()].map(switchWord);
  if (!said.includes(true) || said.includes(undefined)) return false;
  return isReleaseName(own) || triggerPhrase(own.join(' ')) === 'release';
}

/** Whether texts are keys by name, at least one of them with its number, as `C1 (36)`. */
function areKeysOfNameAndNumber({ tally, notes, filled }: ColumnFacts): boolean {
  if (notes < filled || tally.size < 2) return false;
  return [...tally.keys()].some((text) => {
    const key = rowKey(text);
    return key?.number !== undefined && key.named !== undefined;
  });
}
