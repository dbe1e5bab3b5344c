import { bareWord } from '../../trade/languages/spelling';
import { namesLoop } from '../../trade/loopWords';
import { loopModeInWords } from '../../trade/readings/loopPhrases';
import { startInWords } from '../../trade/readings/triggerPhrases';
import type { ListedLayers } from './layers/listedLayers';
import type { Proposal } from './proposal';
import { areTurns } from './ranges/rangeText';
import { saysSo } from './saysSo';
import type { ToldPlace } from './stated/toldPlaces';
import type { Column } from './values/column';
import { columnFactsOf, textsOf } from './values/columnFacts';
import { readByUnit, readKeyTriple } from './values/contents';
import type { Rows } from './values/rows';
import { spokenBy } from './values/spokenPlaces';
import type { InferredTarget } from './words/meaningRules';
import { conceptsOf } from './words/tradeWords';
import { surelyTrigger } from './words/words';

/** What the places of regions whose names say little are by their values. */
export function proposalsByContents(rows: Rows, region: number, named: readonly Proposal[]): Proposal[] {
  const places = rows.columns.flatMap((column, order) => {
    const best = Math.max(
      0,
      ...named.filter((one) => one.column === column).map(({ meaning }) => meaning.weight),
    );
    const isLetter = column.own.length === 1 && column.own[0]?.length === 1 && column.around.length === 0;
    if (column.level !== region || !isLetter || best > 0.8) return [];
    const texts = textsOf(column);
    return [{ column, order, texts, facts: columnFactsOf(texts), name: column.own[0] }];
  });
  const labels = rows.columns.flatMap((column, order): Proposal[] => {
    const texts = column.level < region && column.own.join() === 'n' ? textsOf(column) : [];
    const facts = columnFactsOf(texts);
    if (facts.filled === 0 || facts.numeric + facts.notes + facts.files > 0) return [];
    const meaning = { target: 'label', weight: 0.8, unit: undefined };
    return [{ column, order, texts, facts, meaning, evidence: 'It holds words, as names do.' }];
  });
  const triggers = rows.columns.flatMap((column, order): Proposal[] => {
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const values = [...facts.tally.keys()];
    // A sentence may speak of keys that are let go; it starts nothing.
    if (values.some((text) => text.length > longestWord)) return [];
    const said = values.map(startSaidBy);
    if (facts.filled === 0 || !said.includes('release') || said.includes(undefined)) return [];
    const meaning = { target: 'trigger', weight: 0.74, unit: undefined };
    const words = new Map(values.map((text, at) => [bareWord(text), said[at] ?? 'attack']));
    return [
      { column, order, texts, facts, meaning, evidence: 'It holds words for what starts a region.', words },
    ];
  });
  const turns = rows.columns.flatMap((column, order): Proposal[] => {
    const texts = textsOf(column);
    if (!areTurns(texts)) return [];
    const meaning = { target: 'seq', weight: 0.93, unit: undefined };
    const evidence = 'It holds positions out of how many there are.';
    return [{ column, order, texts, facts: columnFactsOf(texts), meaning, evidence }];
  });
  const spoken = rows.columns.flatMap((column, order): Proposal[] => {
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const said = spokenBy(column, facts, { region, named });
    return said ? [{ column, order, texts, facts, ...said }] : [];
  });
  const keys = readKeyTriple(places);
  const read = places.flatMap((place): Proposal[] => {
    const reading = keys.get(place) ?? readByUnit(place);
    if (!reading) return [];
    const { target, weight, evidence } = reading;
    const { column, order, texts, facts } = place;
    const unit = facts.unit === 'semitones' || facts.unit === 'cents' ? facts.unit : undefined;
    return [{ column, order, texts, facts, evidence, meaning: { target, weight, unit } }];
  });
  return [...read, ...tuningsByUnit(rows, named), ...labels, ...triggers, ...turns, ...spoken];
}

/** Places whose names say nothing and whose numbers have a unit of tuning behind them, which nothing else is counted in. */
function tuningsByUnit(rows: Rows, named: readonly Proposal[]): Proposal[] {
  return rows.columns.flatMap((column, order): Proposal[] => {
    if (named.some((one) => one.column === column) || column.own.join('').length < 2) return [];
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const isTuning = facts.unit === 'cents' || facts.unit === 'semitones';
    const reading = isTuning && facts.numeric === facts.filled ? readByUnit({ facts }) : undefined;
    if (!reading || column.own.some((word) => isBend(word))) return [];
    const meaning = { target: reading.target, weight: 0.72, unit: facts.unit };
    return [{ column, order, texts, facts, evidence: reading.evidence, meaning }];
  });
}

function isBend(word: string): boolean {
  return (
    conceptsOf(word)?.concepts.some((one) => ['bend', 'lfo', 'range', 'env', 'ignored'].includes(one)) ===
    true
  );
}

/** What starts a region, by a word or a few that say nothing else: `release`, `when the key comes up`. */
function startSaidBy(text: string): string | undefined {
  return surelyTrigger(text) ?? (/\s/.test(text.trim()) ? startInWords(text) : undefined);
}

/** Values are no longer than that where they are words and no sentences. */
const longestWord = 40;

/** Places whose values the document explains as what starts a region or how it loops. */
export function proposalsByToldValues(rows: Rows, told: ReadonlyMap<Column, ToldPlace>): Proposal[] {
  return rows.columns.flatMap((column, order): Proposal[] => {
    const said = told.get(column);
    if (!said || said.values.size === 0) return [];
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const isLoop = (word: string) => conceptsOf(word)?.concepts.includes('loop') === true;
    const isOfLoop = column.around.some((words) => words.some(isLoop));
    // `0 = no touch` is nothing of a loop by itself.
    const namesMode = isOfLoop || column.own.some(isLoop) || [...said.values.values()].some(namesLoop);
    let best: Proposal | undefined;
    for (const [target, read] of isOfLoop ? [...explained].reverse() : explained) {
      const words = new Map<string, string>();
      for (const [value, says] of said.values) {
        const is = read(says);
        if (is !== undefined) words.set(value, is);
      }
      endHeldSounds(words, said.values);
      if (![...facts.tally.keys()].some((text) => words.has(bareWord(text)))) continue;
      if (target === 'loop' && !namesMode && [...words.values()].every((is) => is === 'no_loop')) continue;
      const meaning = { target, weight: 0.95, unit: undefined };
      if ((best?.words?.size ?? 0) < words.size)
        best = { column, order, texts, facts, meaning, evidence: saysSo(said.text), words };
    }
    return best ? [best] : [];
  });
}

/** Beside what plays once to its end, what sounds while the key is held stops with it, where no loop is spoken of. */
function endHeldSounds(words: Map<string, string>, says: ReadonlyMap<string, string>): void {
  if (![...words.values()].includes('one_shot') || [...says.values()].some(namesLoop)) return;
  for (const [value, is] of words) if (is === 'loop_sustain') words.set(value, 'no_loop');
}

/** Proposals with those for places that name layers whose velocities a list gives, in place of what else these could be. */
export function withListedLayers(
  rows: Rows,
  layers: ReadonlyMap<Column, ListedLayers>,
  proposals: readonly Proposal[],
): Proposal[] {
  const listed = rows.columns.flatMap((column, order): Proposal[] => {
    const found = layers.get(column);
    if (!found) return [];
    const texts = textsOf(column);
    const meaning = { target: 'dynamics', weight: 0.95, unit: undefined };
    const evidence = `The velocities of each stand in <${found.element}>.`;
    return [
      { column, order, texts, facts: columnFactsOf(texts), meaning, evidence, layers: found.velocities },
    ];
  });
  const lists = [...layers.values()];
  // What else an entry says of its layer, as a level, holds for the regions; how it is numbered does not.
  const isOfList = ({ column, meaning }: Proposal) =>
    lists.some(
      ({ element, places }) =>
        column.listed?.element === element &&
        meaning.target !== 'label' &&
        (column.listed.at === column.listed.key ||
          places.includes(column.listed.at) ||
          numbering.test(meaning.target) ||
          meaning.weight < surely),
    );
  return [...proposals.filter((one) => !layers.has(one.column) && !isOfList(one)), ...listed];
}

/** What velocities and numbers of layers could be taken for. */
const numbering = /^(?:lovel|hivel|velocity_range|dynamics|seq|seq_position|seq_length|group|sample)$/;
/** A name says less where its weight is less (our choice). */
const surely = 0.6;

/** Proposals without those that take what is referred to for a name where the list that it stands in gives one. */
export function withoutCodes(proposals: readonly Proposal[]): Proposal[] {
  const listed = proposals.filter(({ column, meaning }) => column.listed && meaning.target === 'label');
  const isCode = ({ column, meaning }: Proposal) =>
    !column.listed &&
    (meaning.target === 'group_name' || meaning.target === 'label') &&
    listed.some((one) => one.column.level === column.level && one.column.at === column.at);
  return proposals.filter((one) => !isCode(one));
}

const explained: readonly (readonly [InferredTarget, (says: string) => string | undefined])[] = [
  ['trigger', startInWords],
  ['loop', (says) => loopModeInWords(says)?.mode],
];
