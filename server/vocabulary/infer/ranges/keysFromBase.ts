import { turningWords } from '../../../trade/turningWords';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';
import type { RegionElement } from '../elements/regionElement';
import { saysSo } from '../saysSo';
import type { Column } from '../values/column';
import { columnFactsOf, textsOf } from '../values/columnFacts';
import type { Rows } from '../values/rows';
import { isOctaveWord } from '../values/unitNames';
import { isBaseName } from '../words/baseWords';
import { conceptsOf } from '../words/tradeWords';

/** Keys that are counted from one that an element around the regions names. */
export interface KeysFromBase {
  assigned: Assigned[];
  /** The place of the key that they are counted from, where they are. */
  base?: Column;
  drafts: Draft[];
}

/** Words for a distance between keys, in names of places (from memory). */
const distances: ReadonlySet<string> = new Set(
  'offset shift step steps semitone semitones semi semis halftone halbton halbtone degree plus rel relative interval distance delta abstand versatz schritt ecart decalage pas desplazamiento intervalo distanza scarto afstand'.split(
    ' ',
  ),
);
const keyTargets: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'pitch_keycenter']);
/** How a text says that numbers start at another one (from memory). */
const countedFrom =
  /(?<!\p{L})(?:count\p{L}*|from|relative|add(?:ed|s)?|above|upwards?|offset|distance|plus|sum|gez\u00e4hlt|ab|\u00fcber|addiert|abstand|relativ|compt\p{L}*|\u00e0 partir|ajout\p{L}*|relati\p{L}*|desde|sum\p{L}*|cont\p{L}*|a partire|aggiun\p{L}*|geteld|vanaf|opgeteld|r\u00e4kn\p{L}*|fr\u00e5n|talt|fra)(?!\p{L})/iu;
const longest = 400;
const greatestKey = 127;

/**
 * Takes keys that are counted from a key of an element around the regions, as `at="2"` within `baseKey="36"`, for what they are: where
 * the text says so, or a place named after a distance holds whole numbers and nothing else gives keys.
 */
export function withKeysFromBase(
  rows: Rows,
  assigned: readonly Assigned[],
  prose: readonly string[],
  { chain }: RegionElement,
): KeysFromBase {
  const unchanged = { assigned: [...assigned], drafts: openShifts(assigned, chain) };
  const shift = shiftOf(rows, assigned, prose);
  const base = shift ?? baseOf(rows, assigned);
  if (!base) return unchanged;
  const said = shift?.said ?? sentenceOf(prose, base.column);
  const inner = assigned.filter((one) => keyTargets.has(one.target) && one.column.level > base.column.level);
  const isAlone = !inner.some(({ target }) => target !== 'pitch_keycenter');
  if (inner.length > 0 && (said === undefined || !inner.every((one) => staysWithin(one.facts, base.key))))
    return unchanged;
  const own = isAlone ? distanceOf(rows, assigned, base, said) : undefined;
  if (!own && isAlone) return unchanged;
  const moved = (one: Assigned): Assigned => ({ ...one, base: base.key });
  const kept = assigned
    .filter(({ column }) => column !== base.column)
    .map((one) => (inner.includes(one) ? moved(one) : one));
  const all = own ? [...kept.filter(({ column }) => column !== own.column), moved(own)] : kept;
  const element = chain[base.column.level];
  const place = base.column.at.replace(/^@/, '');
  const first = all.find((one) => one.base !== undefined);
  if (!first) return unchanged;
  const draft: Draft = {
    id: 'keysFromBase',
    message: shift
      ? `Keys are moved by ${base.key}, which "${place}" of <${element}> gives.`
      : `${wordedPlace(first)} counts keys from key ${base.key}, which "${place}" of <${element}> gives.`,
    confidence: said === undefined ? 0.7 : 0.9,
    isGuess: true,
    evidence: [said === undefined ? 'Nothing else says which keys play the regions.' : saysSo(said)],
    span: firstValueOf(first),
    isAbout: () => false,
    alternatives: [],
  };
  return { assigned: all, base: base.column, drafts: [draft] };
}

interface Base {
  column: Column;
  key: number;
}

/** The one key number of an element around the regions that is named after a beginning or a base. */
function baseOf({ columns }: Rows, assigned: readonly Assigned[]): Base | undefined {
  const region = Math.max(...columns.map(({ level }) => level));
  for (const column of columns) {
    if (column.level >= region || column.listed || !isBaseName(column.own)) continue;
    const one = assigned.find((other) => other.column === column);
    const facts = columnFactsOf(textsOf(column));
    const isKey = one === undefined ? column.own.length === 1 : keyTargets.has(one.target);
    const isWhole = facts.isConstant && facts.whole === facts.filled && facts.filled === column.cells.length;
    if (isKey && isWhole && facts.least >= 0 && facts.greatest <= greatestKey)
      return { column, key: facts.least };
  }
  return undefined;
}

/** How a text names the numbers of keys (from memory). */
const keyNumbers =
  /(?<!\p{L})(?:(?:key|note)[ -]?(?:number|value|no)s?|(?:all|every|each|any|these|those|both|the) (?:key|note)s?|tasten(?:nummer\p{L}*)?|noten?nummer\p{L}*|num[e\u00e9]ros? de (?:touche|note)s?|(?:toutes les )?touches|n[u\u00fa]meros? de (?:tecla|nota)s?|teclas|numer[io] d(?:i|ei) (?:tast[oi]|nota)|tasti|toetsnummers?|toetsen|nootnummers?)(?!\p{L})/iu;
/** What plays a key and not the numbers that are written (from memory). */
const whilePlaying =
  /(?<!\p{L})(?:incoming|when (?:it is )?played|while playing|pitch|sounds? (?:higher|lower)|tonh\u00f6he|beim spielen)(?!\p{L})/iu;
/** How a text says that a number moves others (from memory). */
const moves =
  /(?<!\p{L})(?:add(?:ed|s)?|plus|sum(?:med)?|shift(?:s|ed)?|mov(?:es?|ed)|addier\p{L}*|hinzu\p{L}*|dazu\p{L}*|verschieb\p{L}*|verschoben|ajout\p{L}*|d\u00e9cal\p{L}*|suma\p{L}*|desplaz\p{L}*|aggiun\p{L}*|spost\p{L}*|somma\p{L}*|opgeteld|verscho\p{L}*|adder\p{L}*|l\u00e6gges)(?!\p{L})/iu;
const notAdded = new RegExp(turningWords('not', 'none', 'already'), 'iu');
const inOctaves = /(?<!\p{L})o[kc]ta[vw]\p{L}*|ottav\p{L}/iu;
/** So far keys are moved at most: up or down ten octaves. */
const mostShift = 120;

/** The one number of an element around the regions that a sentence says is added to all numbers of keys. */
function shiftOf(
  { columns }: Rows,
  assigned: readonly Assigned[],
  prose: readonly string[],
): (Base & { said: string }) | undefined {
  const region = Math.max(...columns.map(({ level }) => level));
  for (const column of columns) {
    if (column.level >= region || column.listed || column.own.length === 0) continue;
    const one = assigned.find((other) => other.column === column);
    if (one !== undefined && !shiftTargets.has(one.target)) continue;
    const facts = columnFactsOf(textsOf(column));
    const isWhole = facts.isConstant && facts.whole === facts.filled && facts.filled === column.cells.length;
    if (!isWhole) continue;
    const isOfKeys = (sentence: string) =>
      keyNumbers.test(sentence) && !whilePlaying.test(sentence) && !notAdded.test(sentence);
    const said = sentenceOf(prose, column, moves, isOfKeys);
    if (said === undefined) continue;
    const keys = facts.least * (inOctaves.test(said) || column.own.some(isOctaveWord) ? 12 : 1);
    if (Math.abs(keys) <= mostShift) return { column, key: keys, said };
  }
  return undefined;
}

/** The questions whether numbers of elements around regions that are named after a shift of keys move the sound or the keys. */
function openShifts(assigned: readonly Assigned[], chain: readonly string[]): Draft[] {
  return assigned
    .filter(({ target, column, facts }) => {
      const { own, level } = column;
      const isNamed =
        own.some((word) => distances.has(word)) &&
        own.some((word) => conceptsOf(word)?.concepts.join() === 'key');
      return (
        target === 'transpose' &&
        level < chain.length - 1 &&
        isNamed &&
        !(facts.least === 0 && facts.greatest === 0)
      );
    })
    .map((one) => ({
      id: `${chain[one.column.level]}/${one.column.at}.shift`,
      message: `${wordedPlace(one)} of <${chain[one.column.level]}> transposes the sound and leaves the keys.`,
      confidence: 0.6,
      isGuess: true,
      evidence: ['It could also move the keys that are written: no text says which.'],
      span: firstValueOf(one),
      isAbout: (parameter) => parameter.parameter === 'transpose',
      alternatives: [],
    }));
}

/** What a place may be taken for whose number is added to keys. */
const shiftTargets: ReadonlySet<string> = new Set('transpose tune offset octave'.split(' '));

/** A sentence that says that something is counted from a place, by its name. */
function sentenceOf(
  prose: readonly string[],
  { own }: Column,
  says = countedFrom,
  fits: (sentence: string) => boolean = () => true,
): string | undefined {
  const name = own.join('');
  return prose
    .flatMap((text) => text.slice(0, longest * 4).split(/[.!?;](?=\s|$)/u))
    .map((sentence) => sentence.replace(/\s+/g, ' ').trim().slice(0, longest))
    .find(
      (sentence) =>
        sentence
          .toLowerCase()
          .replace(/[\s_.-]+/g, '')
          .includes(name) &&
        says.test(sentence) &&
        fits(sentence),
    );
}

function staysWithin({ least, greatest, whole, filled }: Assigned['facts'], base: number): boolean {
  return whole === filled && least + base >= 0 && greatest + base <= greatestKey;
}

/** The place of regions, or of elements around them, that holds the distances. */
function distanceOf(
  rows: Rows,
  assigned: readonly Assigned[],
  base: Base,
  said: string | undefined,
): Assigned | undefined {
  const sample = assigned.find(({ target }) => target === 'sample');
  if (!sample) return undefined;
  const named = new Set(said?.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []);
  for (const column of rows.columns) {
    if (column.level <= base.column.level || column.listed || column.own.length === 0) continue;
    const isNamed =
      column.own.some((word) => distances.has(word)) || column.own.every((word) => named.has(word));
    const taken = assigned.find((one) => one.column === column);
    const isFree = taken === undefined || /^(?:transpose|tune|offset|lokey|lovel)$/.test(taken.target);
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const isEverywhere = facts.filled === rows.count && facts.tally.size > 1;
    if (!isNamed || !isFree || !isEverywhere || !staysWithin(facts, base.key)) continue;
    return {
      ...sample,
      column,
      target: 'key',
      weight: said === undefined ? 0.7 : 0.9,
      unit: undefined,
      part: undefined,
      between: undefined,
      texts,
      facts,
      others: [],
      evidence: said === undefined ? undefined : saysSo(said),
    };
  }
  return undefined;
}
