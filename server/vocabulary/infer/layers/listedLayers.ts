import type { Steps } from '../../../model/steps';
import type { LayerEnds } from '../../../trade/layerLimits';
import { endsFromLimits, limitsOfLayers } from '../../../trade/layerLimits';
import { rangeEndWords } from '../../../trade/rangeWords';
import { readEntriesInSteps } from '../../read/sampleList';
import type { RegionElement } from '../elements/regionElement';
import type { ElementType, Survey } from '../elements/survey';
import { readRangeText } from '../ranges/rangeText';
import type { Column } from '../values/column';
import type { Rows } from '../values/rows';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import { nameLayers } from './layerNames';

/** What the texts of a place stand for where a list elsewhere gives the velocities of layers by name. */
export interface ListedLayers {
  /** The element that is an entry of the list. */
  element: string;
  /** The places of an entry that give its velocities. */
  places: readonly string[];
  /** By text, several names in one text taken together. */
  velocities: ReadonlyMap<string, LayerEnds>;
}

const whole: LayerEnds = { low: 1, high: 127 };
const mostLists = 12;
const mostEntries = 64;
/** Numbers of layers are no greater, their ends are. */
const mostCounted = 16;
const between = /[\s,;+|&/]+/u;

/**
 * Finds places of regions that name layers whose velocities a list gives: their ends, a range, or the upper or lower ends alone. In
 * steps.
 */
export function* listedLayers(
  text: string,
  rows: Rows,
  { types }: Survey,
  { chain, types: regions }: RegionElement,
): Steps<ReadonlyMap<Column, ListedLayers>> {
  const found = new Map<Column, ListedLayers>();
  let looked = 0;
  for (const type of types) {
    if (regions.has(type) || chain.includes(type.name) || type.count < 2 || type.count > mostEntries)
      continue;
    if (isInside(type, regions) || looked++ >= mostLists) continue;
    const layers = yield* layersOf(text, type);
    if (!layers) continue;
    for (const column of rows.columns) {
      if (column.listed || found.has(column)) continue;
      const velocities = velocitiesIn(column, layers.byName, type);
      if (velocities) found.set(column, { element: type.name, places: layers.places, velocities });
    }
  }
  return found;
}

function isInside(type: ElementType, regions: ReadonlySet<ElementType>): boolean {
  for (let at = type.parent; at; at = at.parent) if (regions.has(at)) return true;
  return false;
}

/** The velocities of the entries of a list by each name that an entry has; `undefined` where the list gives none. */
function* layersOf(
  text: string,
  type: ElementType,
): Steps<{ byName: ReadonlyMap<string, LayerEnds>; places: readonly string[] } | undefined> {
  const entries = yield* readEntriesInSteps(text, type.name);
  const places = new Map<string, (string | undefined)[]>();
  for (const [at, { values }] of entries.entries())
    for (const [place, value] of values) {
      const column = places.get(place) ?? new Array(entries.length).fill(undefined);
      column[at] = value.text;
      places.set(place, column);
    }
  const given = endsOf(places, nameWords(type.name));
  if (!given) return undefined;
  const layers = new Map<string, LayerEnds>();
  for (const column of places.values()) {
    const names = column.filter((name) => name !== undefined);
    if (new Set(names).size < names.length || names.some((name) => Number(name) > mostCounted)) continue;
    for (const [at, name] of column.entries())
      if (name !== undefined && !layers.has(name)) layers.set(name, given.ends[at] ?? whole);
  }
  return layers.size > 1 ? { byName: layers, places: given.places } : undefined;
}

/** The ends of layers by entry, and the places that hold them. */
interface GivenEnds {
  ends: readonly (LayerEnds | undefined)[];
  places: readonly string[];
}

/** The ends of each entry, by the places of a list that hold velocities. */
function endsOf(
  places: ReadonlyMap<string, readonly (string | undefined)[]>,
  entry: readonly string[],
): GivenEnds | undefined {
  const numbers: { place: string; all: number[] }[] = [];
  for (const [place, column] of places) {
    if (namesSound(place)) continue;
    const ranges = column.map((text) => (text === undefined ? undefined : readRangeText(text)));
    if (ranges.some((range) => range) && ranges.every((range, at) => range || column[at] === undefined)) {
      const ends = ranges.map((range) => range && { low: Number(range.first), high: Number(range.second) });
      if (areVelocities(ends)) return { ends, places: [place] };
    }
    const past = pastEnd(place);
    const all = column.map(
      (text) => past + (text === undefined ? Number.NaN : Number(text.trim() || Number.NaN)),
    );
    const filled = all.filter((number) => !Number.isNaN(number));
    if (
      filled.length > 1 &&
      filled.every((number) => Number.isInteger(number) && number >= 0 && number <= 127)
    )
      numbers.push({ place, all });
  }
  for (const low of numbers)
    for (const high of numbers) {
      if (low === high) continue;
      const ends = low.all.map((from, at) =>
        Number.isNaN(from) || Number.isNaN(high.all[at] ?? Number.NaN)
          ? undefined
          : { low: from, high: high.all[at] },
      );
      if (areVelocities(ends)) return { ends, places: [low.place, high.place] };
    }
  for (const { place, all } of numbers) {
    const ends = fromOneEnd(all, nameWords(lastName(place)), entry);
    if (ends && areVelocities(ends)) return { ends, places: [place] };
  }
  return undefined;
}

function lastName(place: string): string {
  return place.replace(/^.*[/@]/, '');
}

/** Whether a place is named after how a sound is set. A level may be that of the key stroke. */
function namesSound(place: string): boolean {
  const words = nameWords(lastName(place));
  return soundTargets.has(meaningsOf(words, [], [])[0]?.target ?? '');
}

const soundTargets: ReadonlySet<string> = new Set(
  'pan tune transpose delay offset polyphony channel'.split(' '),
);

const above = new RegExp(`^${rangeEndWords('above')}$`, 'iu');
const below = new RegExp(`^${rangeEndWords('below')}$`, 'iu');

/** How far the end itself lies from what a place names: `above` and `below` name what is outside. */
function pastEnd(place: string): number {
  const name = lastName(place);
  return above.test(name) ? 1 : below.test(name) ? -1 : 0;
}

/** Layers whose upper ends alone are given, the last at 127, or whose lower ends are, the first at 0 or 1. */
function fromOneEnd(
  numbers: readonly number[],
  own: readonly string[],
  entry: readonly string[],
): (LayerEnds | undefined)[] | undefined {
  const filled = numbers.filter((number) => !Number.isNaN(number));
  const are = limitsOfLayers([filled]);
  if (are === undefined || (are === 'lower' && !nameLowEnds(own, entry))) return undefined;
  return endsFromLimits(numbers, are);
}

/** Whether names say that numbers are lower ends, or speak of velocities or layers. Numbers from 0 on may be many things. */
function nameLowEnds(own: readonly string[], entry: readonly string[]): boolean {
  const all = [...own, ...entry];
  const isTelling = (word: string) =>
    conceptsOf(word)?.concepts.some((concept) => lowConcepts.has(concept)) === true;
  return nameLayers(all) || all.some(isTelling) || pastEnd(own.join(' ')) !== 0;
}

const lowConcepts: ReadonlySet<string> = new Set(['lo', 'start', 'first', 'vel']);

/** Whether ranges follow each other from the softest to the loudest velocity. */
function areVelocities(ends: readonly (LayerEnds | undefined)[]): boolean {
  const layers = ends.filter((one) => one !== undefined).sort((one, other) => one.low - other.low);
  if (layers.length < 2 || layers[0].low > 1 || layers.at(-1)?.high !== 127) return false;
  return layers.every(({ low, high }, at) => low <= high && (at === 0 || low === layers[at - 1].high + 1));
}

/** What the texts of a place stand for where all of them name layers. */
function velocitiesIn(
  { cells, own }: Column,
  layers: ReadonlyMap<string, LayerEnds>,
  type: ElementType,
): ReadonlyMap<string, LayerEnds> | undefined {
  const found = new Map<string, LayerEnds>();
  for (const cell of cells) {
    if (!cell || found.has(cell.text)) continue;
    const ends = endsOfText(cell.text.trim(), layers);
    if (!ends) return undefined;
    found.set(cell.text, ends);
  }
  if (found.size === 0) return undefined;
  const ofType = new Set(nameWords(type.name));
  const isNumeric = [...found.keys()].every((text) => /^\s*\d+\s*$/.test(text));
  return !isNumeric || own.some((word) => ofType.has(word)) ? found : undefined;
}

function endsOfText(text: string, layers: ReadonlyMap<string, LayerEnds>): LayerEnds | undefined {
  const known = layers.get(text);
  if (known) return known;
  const parts = text.split(between).map((part) => layers.get(part));
  if (parts.length < 2) return undefined;
  let [low, high] = [127, 0];
  for (const part of parts) {
    if (!part) return undefined;
    low = Math.min(low, part.low);
    high = Math.max(high, part.high);
  }
  return { low, high };
}
