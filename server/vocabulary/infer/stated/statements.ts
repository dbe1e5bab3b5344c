import type { ColumnMeaning } from '../../../trade/meaning';
import { pianoKeyShift, pianoKeysIn } from '../../../trade/statements/keys/pianoKeys';
import { middleCIn, middleKeyIn } from '../../../trade/statements/keys/statedOctave';
import { namedStatement } from '../../../trade/statements/namedStatement';
import { playsOutIn } from '../../../trade/statements/playing/playsOut';
import type { Statements } from '../../../trade/statements/statements';
import { statementsIn } from '../../../trade/statements/statements';
import type { Assigned } from '../assign';
import type { RegionElement } from '../elements/regionElement';
import type { ElementType, Site, Survey } from '../elements/survey';
import type { Column } from '../values/column';
import { namesDefaults } from '../values/defaultElements';
import { velocityTargets } from '../values/plausible';
import type { InferredTarget } from '../words/meaningRules';
import type { NameUnit } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import type { Combined } from './combining';
import { combiningIn } from './combining';
import type { OuterValues } from './nesting';
import { nestingIn } from './nesting';
import type { ToldPlace } from './toldPlaces';

/** What a document says of how its values are to be read, in comments and around its regions. */
export interface XmlStatements extends Statements {
  nesting: OuterValues | undefined;
  /** How values of outer elements go with those of regions, of the values that the document names. */
  combining: ReadonlyMap<Combined, OuterValues>;
  /** How far the numbers of keys lie above those of MIDI. */
  keyOffset: { is: number; text: string } | undefined;
  /** The text that says that regions play to their end whatever the key does. */
  playsOut: string | undefined;
  /** The sample rate that stands beside the sample of each row. */
  rates?: readonly (number | undefined)[];
}

const mostTexts = 200;
const longest = 1000;
/** What is said of all regions stands near the outermost element. */
const mostDepth = 3;

/** Reads what a document states of its values. */
export function statedIn(
  text: string,
  survey: Survey,
  { chain, types }: RegionElement,
  assigned: readonly Assigned[],
): XmlStatements {
  const read = new Set(
    assigned
      .filter(({ target }) => target !== 'label')
      .map(({ column }) => `${chain[column.level]}/${column.at}`),
  );
  const isRegion = (type: ElementType): boolean =>
    types.has(type) || (type.parent !== undefined && isRegion(type.parent));
  const isRead = (type: ElementType, place: string) =>
    isRegion(type) ||
    read.has(`${type.name}/${place}`) ||
    read.has(`${type.parent?.name}/${type.name}/${place}`);
  const texts = [...textsOfSingles(survey, isRead), ...proseOfRows(survey, isRegion), ...commentsIn(text)];
  return {
    ...statementsIn(texts),
    keyOffset: keyOffsetIn(texts),
    playsOut: playsOutIn(texts),
    nesting: nestingIn(texts),
    combining: combiningIn(survey, isRegion),
  };
}

/** How far numbers of keys lie above those of MIDI by the number of middle C, which there is 60 (MIDI 1.0). */
function keyOffsetIn(texts: readonly string[]): XmlStatements['keyOffset'] {
  for (const text of texts) {
    const key = middleKeyIn(text);
    if (key !== undefined) return key === 60 ? undefined : { is: key - 60, text };
  }
  const piano = pianoKeysIn(texts);
  return piano === undefined ? undefined : { is: -pianoKeyShift, text: piano };
}

/** All that a document says outside of its regions, for names of places to be looked for in it. */
export function proseIn(text: string, survey: Survey, { types }: RegionElement): string[] {
  const isRegion = (type: ElementType): boolean =>
    types.has(type) || (type.parent !== undefined && isRegion(type.parent));
  return [...textsOfSingles(survey, isRegion), ...proseOfRows(survey, isRegion), ...commentsIn(text)];
}

const mostLines = 40;

/** Sentences in elements that repeat outside of regions, as the lines of a remark, and what a legend explains. */
function proseOfRows({ types }: Survey, isRegion: (type: ElementType) => boolean): string[] {
  return types.flatMap((type) => {
    const { count, text, attributes } = type;
    if (count > mostLines || isRegion(type)) return [];
    if (attributes.size > 0) return legendOf(type);
    if (count < 2 || !text) return [];
    return text.values.map((value) => value.text).filter((value) => value.trim().split(/\s+/).length > 3);
  });
}

/** Longer texts and those with blanks are no names of places. */
const longestName = 30;

/** What elements of a legend explain, one name each with its text or another attribute: `fine = 64ths of a semitone`. */
function legendOf({ count, text, attributes }: ElementType): string[] {
  const sites = [...attributes.values(), ...(text ? [text] : [])].filter((site) => site.count === count);
  const isName = ({ values }: Site) =>
    values.every((value) => /^\p{L}\S*$/u.test(value.text) && value.text.length <= longestName);
  const names = sites.find(isName);
  const says = sites.find(
    (site) => site !== names && site.values.every((value) => /\p{L}/u.test(value.text)),
  );
  if (!names || !says || says.values.every((value) => !/\s/.test(value.text.trim()))) return [];
  return names.values.map((name, at) => `${name.text} = ${says.values[at]?.text ?? ''}`);
}

/** What elements say that occur once, with the words of the place before it. */
function textsOfSingles({ types }: Survey, isRead: (type: ElementType, place: string) => boolean): string[] {
  const texts: string[] = [];
  for (const type of types) {
    const { name, count, depth, attributes, text } = type;
    if (count > 1 || depth > mostDepth) continue;
    // A default is a value itself, and says of no other how it counts.
    const sites: [string, Site | undefined][] = namesDefaults(nameWords(name)) ? [] : [...attributes];
    sites.push([name, text]);
    for (const [place, site] of sites) {
      const value = site?.values[0]?.text;
      const at = site === text ? '.' : `@${place}`;
      if (value === undefined || texts.length >= mostTexts || isRead(type, at)) continue;
      texts.push([...nameWords(place), value].join(' '));
      // A key that is called so, or the name of a key: `c4="60"`, `key60="C3"`.
      if (/\d/.test(place)) texts.push(namedStatement(place, value));
      // What an element is about may stand in its own name.
      const isTelling = site !== text && type.parent && nameWords(name).some((word) => conceptsOf(word));
      if (isTelling) texts.push([...nameWords(name), ...nameWords(place), value].join(' '));
    }
  }
  return texts;
}

/** The comments of a document, some of many and not all of long ones. */
export function commentsIn(text: string): string[] {
  const texts: string[] = [];
  for (let from = text.indexOf('<!--'); from >= 0 && texts.length < mostTexts; ) {
    const end = text.indexOf('-->', from);
    if (end < 0) break;
    texts.push(text.slice(from + 4, Math.min(end, from + longest)).trim());
    from = text.indexOf('<!--', end);
  }
  return texts;
}

/** Targets with the columns of tables that say the same. */
const meanings: Readonly<Record<InferredTarget, ColumnMeaning>> = {
  volume: 'volume',
  attenuation: 'volume',
  tune: 'tune',
  transpose: 'transpose',
  pan: 'pan',
  lovel: 'lovel',
  hivel: 'hivel',
  loop_start: 'loop_start',
  loop_end: 'loop_end',
  loop_length: 'loop_length',
  offset: 'offset',
  end: 'end',
};

/**
 * Without names and ranges of the outermost element that tell how values are to be read, and set nothing: the least and the greatest
 * velocity there are the scale of those within.
 */
export function withoutStatements(assigned: readonly Assigned[]): Assigned[] {
  const telling = assigned.filter(({ target, column, texts }) => {
    if (column.level > 0) return false;
    if (target === 'label') return texts.some((text) => text !== undefined && middleCIn(text) !== undefined);
    const isInner = (other: Assigned) => other.target === target && other.column.level > 0;
    const inner = assigned.filter(isInner);
    const isVoid = texts.every((_, row) => inner.some((one) => one.column.cells[row] !== undefined));
    return velocityTargets.has(target) && inner.length > 0 && isVoid;
  });
  const kept = assigned.filter((one) => !telling.includes(one));
  const range = velocitiesOf(telling);
  return range ? kept.map((one) => (velocityTargets.has(one.target) ? withStated(one, range) : one)) : kept;
}

/** The velocities that the outermost element gives, with what says so. */
function velocitiesOf(telling: readonly Assigned[]): Pick<ToldPlace, 'text' | 'unit' | 'range'> | undefined {
  const low = telling.find(({ target }) => target === 'lovel');
  const high = telling.find(({ target }) => target === 'hivel');
  if (!low || !high?.facts.isConstant || high.facts.whole < high.facts.filled) return undefined;
  const name = high.column.at.replace(/^.*@/, '');
  return {
    text: `${name}="${high.column.cells.find((cell) => cell)?.text ?? ''}"`,
    unit: undefined,
    range: { low: low.facts.least, high: high.facts.greatest },
  };
}

/** Places whose values tell how those within are read; they are no values of regions. */
export function scalePlaces(assigned: readonly Assigned[], named: readonly Assigned[]): Column[] {
  const isKept = (column: Column) => named.some((one) => one.column === column);
  return assigned
    .filter(({ target, column }) => velocityTargets.has(target) && !isKept(column))
    .map(({ column }) => column);
}

/** Places with the unit and range that the document states for them, where neither name nor values give a unit. */
export function withStatements(
  assigned: readonly Assigned[],
  { scales, countsDown }: XmlStatements,
  told: ReadonlyMap<Column, ToldPlace>,
): Assigned[] {
  const [down] = assigned.some(({ target }) => target === 'attenuation') ? [] : countsDown;
  return assigned.map((given) => {
    // Levels that the document says to be attenuations, and that have no sign.
    const isDown = down && given.target === 'volume' && given.facts.negative === 0;
    const one: Assigned = isDown
      ? { ...given, target: 'attenuation', stated: { text: down.text, range: undefined } }
      : given;
    const own = told.get(one.column);
    if (own?.isMeasured && (one.target === 'tune' || one.target === 'transpose'))
      return {
        ...one,
        unit: own.unit ?? one.unit,
        isMeasured: true,
        stated: { text: own.text, range: undefined },
      };
    if (own && (own.unit !== undefined || own.range) && one.facts.unit === undefined) {
      const said = withStated(one, own);
      if (said !== one) return said;
    }
    const meaning = meanings[one.target];
    const stated = meaning && scales.get(meaning);
    if (!stated || one.unit !== undefined || one.facts.unit !== undefined) return one;
    const { low, high, text } = stated;
    const unit: NameUnit | undefined = stated.unit === 'linear' ? 'ratio' : stated.unit;
    const range = low === undefined || high === undefined ? undefined : { low, high };
    return withStated(one, { text, unit, range });
  });
}

/** The greatest factor that a level is multiplied by (our choice). */
const greatestFactor = 16;

/** A place with a scale that is stated for it, where its values lie in that. */
function withStated(
  one: Assigned,
  { text, unit, range }: Pick<ToldPlace, 'text' | 'unit' | 'range'>,
): Assigned {
  const { least, greatest } = one.facts;
  if (range && !(least >= range.low && greatest <= range.high)) return one;
  if (unit === 'ratio' && !range && (least < 0 || greatest > greatestFactor)) return one;
  // The ends of a range say how a share counts, `linear` no more than that it is one.
  return { ...one, unit: range && unit === 'ratio' ? undefined : unit, stated: { text, range } };
}
