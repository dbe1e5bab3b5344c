import { isAudioFileName, sampleEndings } from '../../../model/fileNames';
import { isNoteName } from '../values/columnFacts';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { isForeignElement } from './foreignElement';
import type { Selectors } from './selectors';
import type { Cell, ElementType, Site, Survey } from './survey';

/** The element that is the region, with the elements around it. */
export interface RegionElement {
  /** From the outermost element to the region; no name stands twice. */
  chain: string[];
  /** The types of elements that are such a region, and what stands around them in the nesting. */
  types: Set<ElementType>;
  /** Other names of elements that are such a region. */
  also: readonly string[];
  count: number;
  /** A path to an audio file of one. */
  example: Cell;
  /** Where its path stands, as in `VocabularyParameter.at`; `undefined` where the values alone tell. */
  pathAt: string | undefined;
  /** Whether the element of each position in the chain stands several times in the one around it. */
  repeats: boolean[];
  /** How many of an element of each position stand in one another around a region: more than 1 where it stands in itself. */
  nested: number[];
}

interface Candidate {
  region: ElementType;
  example: Cell;
  pathAt: string | undefined;
  score: number;
}

const keyTargets: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key_range']);
const anyKeyTargets: ReadonlySet<string> = new Set([...keyTargets, 'key', 'pitch_keycenter']);
const zoneTargets: ReadonlySet<string> = new Set([...keyTargets, 'key', 'lovel', 'hivel', 'velocity_range']);
const mostCandidates = 60;
const mostNested = 5;

/** The element that repeats and carries a path to an audio file, in itself or in what it holds; `undefined` where there is none. */
export function findRegionElement(survey: Survey, selectors: Selectors): RegionElement | undefined {
  const places = pathPlaces(survey, selectors, true);
  if (places.length === 0) places.push(...pathPlaces(survey, selectors, false));
  if (places.length === 0 && statedEnding(survey) !== undefined)
    places.push(...namePlaces(survey, selectors));
  const candidates = places.map((place) => {
    const twins = places.map(({ holder }) => holder).filter(({ name }) => name === place.holder.name);
    return candidateOf(place, selectors, twins);
  });
  let best: Candidate | undefined;
  for (const one of candidates) if (!best || one.score > best.score) best = one;
  return best && withOthers(withTwins(best, survey, candidates), survey, selectors);
}

function pathPlaces(survey: Survey, selectors: Selectors, withEnding: boolean): PathPlace[] {
  const places: PathPlace[] = [];
  for (const type of survey.types) {
    if (places.length >= mostCandidates) break;
    if (isWithinForeign(type)) continue;
    const place = pathPlace(type, selectors, withEnding);
    if (place) places.push(place);
  }
  return places;
}

const endingNames: ReadonlySet<string> = new Set(
  'ext extension suffix ending filetype endung dateiendung dateityp estensione extensie bestandstype sufijo'.split(
    ' ',
  ),
);

/** The ending of audio files that an element near the outermost states: `ext="wav"`, with its point. */
export function statedEnding({ types }: Survey): string | undefined {
  for (const { depth, attributes, name, text } of types) {
    if (depth > 2) continue;
    const sites: [string, Site][] = [...attributes, ...(text ? [[name, text] as [string, Site]] : [])];
    for (const [place, { values }] of sites) {
      const said =
        values[0]?.text
          .trim()
          .replace(/^[.*]+/, '')
          .toLowerCase() ?? '';
      if (
        nameWords(place).join('') !== '' &&
        endingNames.has(nameWords(place).join('')) &&
        (sampleEndings as readonly string[]).includes(said)
      )
        return `.${said}`;
    }
  }
  return undefined;
}

/** Names of elements that name keys, where the ending of all files is stated elsewhere. */
function namePlaces(survey: Survey, selectors: Selectors): PathPlace[] {
  return survey.types.flatMap((type): PathPlace[] => {
    if (isWithinForeign(type) || selectors.has(type) || !namesKeys(type)) return [];
    for (const [name, site] of type.attributes) {
      const target = meaningsOf(nameWords(name), [], [])[0]?.target;
      const [example] = site.values;
      const areDifferent = new Set(site.values.map(({ text }) => text)).size * 2 > site.values.length;
      if (target !== 'label' || !example || site.count !== type.count || !areDifferent) continue;
      return [{ holder: type, example, type, attribute: name, likeness: 0.4 }];
    }
    return [];
  });
}

/** Whether a type is an effect or part of a panel, or stands in one. */
function isWithinForeign(type: ElementType): boolean {
  // The outermost element holds everything, whatever it is called.
  for (let at = type; at.parent; at = at.parent) if (isForeignElement(at, false)) return true;
  return false;
}

/** The element that a path belongs to, one such path, and the attribute that it stands in, or the element's text. */
interface PathPlace {
  holder: ElementType;
  example: Cell;
  type: ElementType;
  attribute: string | undefined;
  /** How much it looks like a path: 1 for an ending of audio files. */
  likeness: number;
}

function pathPlace(type: ElementType, selectors: Selectors, withEnding: boolean): PathPlace | undefined {
  const naming = selectors.get(type);
  let best: PathPlace | undefined;
  for (const [name, site] of sitesOf(type)) {
    if (name === naming) continue;
    const holder = naming !== undefined && type.parent ? type.parent : type;
    if (withEnding) {
      const example = audioPath(site, naming !== undefined);
      if (example) return { holder, example, type, attribute: undefined, likeness: 1 };
    } else if (naming === undefined) {
      const found = unendedPath(type, name, site);
      if (found && found.likeness > (best?.likeness ?? 0)) best = { holder, type, attribute: name, ...found };
    }
  }
  return best;
}

function* sitesOf(type: ElementType): Iterable<[string, Site]> {
  yield* type.attributes;
  if (type.text) yield ['', type.text];
}

function audioPath(site: Site, some: boolean): Cell | undefined {
  const paths = site.values.filter(({ text }) => isAudioFileName(text));
  const filled = site.values.filter(({ text }) => text !== '').length;
  return paths.length > 0 && (some || paths.length * 10 >= filled * 6) ? paths[0] : undefined;
}

/** Texts, no numbers, in a place that is named after an audio file or that look like paths, where keys are named as well. */
function unendedPath(
  type: ElementType,
  name: string,
  site: Site,
): { example: Cell; likeness: number } | undefined {
  // An entity that nothing expands says nothing of a file.
  const filled = site.values.filter(({ text }) => text !== '' && !/&[^\s;]+;/.test(text));
  const example = filled.find(({ text }) => /\p{L}/u.test(text) && text.length > 1);
  if (!example || filled.filter(({ text }) => /\p{L}/u.test(text)).length * 10 < filled.length * 9)
    return undefined;
  if (filled.filter(({ text }) => isNoteName(text)).length * 2 > filled.length) return undefined;
  const words = name === '' ? nameWords(type.name) : nameWords(name);
  const around = name === '' ? [] : [nameWords(type.name)];
  const alone = meaningsOf(words, [], [])[0]?.target;
  const target = alone === 'sample' ? alone : meaningsOf(words, around, [])[0]?.target;
  const slashed = filled.filter(({ text }) => /[^/\\\s][/\\][^/\\\s]/.test(text)).length;
  const isSlashed = slashed * 10 >= filled.length * 6;
  const isText = name === '' && type.attributes.size > 1;
  const likeness =
    (target === 'sample' ? 0.5 : 0) + (isSlashed ? 0.4 : 0) + (isText && target === undefined ? 0.2 : 0);
  if (likeness === 0 || (target !== undefined && target !== 'sample' && !isSlashed)) return undefined;
  const holder = name === '' && type.parent && type.attributes.size === 0 ? type.parent : type;
  return namesKeys(holder) ? { example, likeness } : undefined;
}

/** Whether an element names keys, or names other things of a region inside one that does. */
function namesKeys(holder: ElementType): boolean {
  const own = tradeTargets(holder, new Map());
  if (own.some((one) => anyKeyTargets.has(one))) return true;
  if (!own.some((one) => one !== 'sample' && one !== 'label')) return false;
  for (let at = holder.parent; at; at = at.parent) {
    const level = nameWords(at.name);
    for (const name of at.attributes.keys()) {
      if (anyKeyTargets.has(meaningsOf(nameWords(name), [], level)[0]?.target ?? '')) return true;
    }
  }
  return false;
}

/** Whether an element names keys or velocities, so that it could be a region. */
export function namesZones(type: ElementType, selectors: Selectors): boolean {
  return tradeTargets(type, selectors).some((target) => anyKeyTargets.has(target) || zoneTargets.has(target));
}

/** Whether an element names ends of key or velocity ranges, so that it is a region and no entry of a list. */
export function namesRanges(type: ElementType, selectors: Selectors): boolean {
  return tradeTargets(type, selectors).some((target) => zoneTargets.has(target) && target !== 'key');
}

/** A type of elements as the region, with what stands around it. */
export function regionOf(
  region: ElementType,
  survey: Survey,
  example: Cell,
  pathAt: string | undefined,
): RegionElement {
  return withTwins({ region, example, pathAt, score: 0 }, survey, []);
}

/** The targets that the names in an element say, children included that stand in it once. */
function tradeTargets(type: ElementType, selectors: Selectors): string[] {
  const targets: string[] = [];
  const visit = (at: ElementType, around: string[][], depth: number): void => {
    if (targets.length > 200) return;
    const naming = selectors.get(at);
    if (naming !== undefined) {
      for (const name of at.attributes.get(naming)?.tally?.keys() ?? [])
        add(nameWords(name), around.slice(0, -1));
    } else for (const name of at.attributes.keys()) add(nameWords(name), around);
    if (at.text && depth > 0) add(around.at(-1) ?? [], around.slice(0, -1));
    if (depth >= 3) return;
    for (const child of at.children.values()) {
      if (child.mostInParent === 1 || selectors.has(child))
        visit(child, [...around, nameWords(child.name)], depth + 1);
    }
  };
  const add = (own: readonly string[], around: readonly (readonly string[])[]): void => {
    const target = meaningsOf(own, around, nameWords(type.name))[0]?.target;
    if (target) targets.push(target);
  };
  visit(type, [], 0);
  return targets;
}

/** From the element with the path outwards to the one that repeats. */
function candidateOf(
  { holder, example, type, attribute, likeness }: PathPlace,
  selectors: Selectors,
  twins: readonly ElementType[],
): Candidate {
  let region: ElementType = holder;
  let alike: readonly (ElementType | undefined)[] = twins;
  while (region.mostInParent === 1 && region.parent && region.count === region.parent.count) {
    const around: ElementType = region.parent;
    // What stands in elements of several names, or in ones that stand in themselves, is a region by itself.
    if (alike.some((twin) => twin?.parent?.name !== around.name || standsInItself(twin.parent))) break;
    alike = alike.map((twin) => twin?.parent);
    region = around;
  }
  if (region.mostInParent === 1 && region.parent === undefined) {
    // Nothing repeats: the innermost that names keys, so that one region is enough of an example.
    region = holder;
    const first = (wanted: ReadonlySet<string>) => {
      for (let at: ElementType | undefined = holder; at; at = at.parent) {
        if (tradeTargets(at, selectors).some((target) => wanted.has(target))) return at;
      }
      return undefined;
    };
    region = first(keyTargets) ?? first(anyKeyTargets) ?? holder;
    if (region.parent === undefined && region !== holder) region = holder;
  }
  region = partsOf(region, selectors) ?? region;
  const targets = tradeTargets(region, selectors).length;
  const pathAt = attribute === undefined ? undefined : placeFrom(region, type, attribute);
  return { region, example, pathAt, score: likeness * (1 + targets) * Math.log2(1 + region.count) };
}

function standsInItself({ name, parent }: ElementType): boolean {
  for (let at = parent; at; at = at.parent) if (at.name === name) return true;
  return false;
}

/** Elements that repeat in one that names a file, each with keys or velocities of its own: they are the regions. */
function partsOf(holder: ElementType, selectors: Selectors): ElementType | undefined {
  if (tradeTargets(holder, selectors).some((target) => keyTargets.has(target) || target === 'key'))
    return undefined;
  const visit = (type: ElementType, depth: number): ElementType | undefined => {
    for (const child of type.children.values()) {
      if (selectors.has(child)) continue;
      const isZone =
        child.mostInParent > 1 &&
        child.count > holder.count * 1.5 &&
        tradeTargets(child, selectors).some((target) => zoneTargets.has(target));
      const found = isZone ? child : depth < 2 ? visit(child, depth + 1) : undefined;
      if (found) return found;
    }
    return undefined;
  };
  return visit(holder, 0);
}

/** The path from a region to an attribute of an element in it, or to the element's text for an empty name. */
function placeFrom(region: ElementType, type: ElementType, attribute: string): string {
  const names: string[] = [];
  for (let at: ElementType | undefined = type; at && at !== region; at = at.parent) names.unshift(at.name);
  if (attribute !== '') names.push(`@${attribute}`);
  return names.length === 0 ? '.' : names.join('/');
}

/** Elements of the same name elsewhere in the nesting are regions too. */
function withTwins(best: Candidate, survey: Survey, candidates: readonly Candidate[]): RegionElement {
  const types = new Set<ElementType>([best.region]);
  for (const { region } of candidates) if (region.name === best.region.name) types.add(region);
  let chain = namesAround(best.region);
  let count = best.region.count;
  for (const type of types) {
    if (type === best.region) continue;
    const merged = merge(chain, namesAround(type));
    if (!merged) {
      types.delete(type);
      continue;
    }
    chain = merged;
    count += type.count;
  }
  for (const type of survey.types) {
    if (type.name === best.region.name && !types.has(type) && isWithin(type, chain)) {
      types.add(type);
      count += type.count;
    }
  }
  const repeats = chain.map(() => false);
  const nested = chain.map(() => 1);
  for (const type of types) {
    const depths = new Map<string, number>();
    for (let at: ElementType | undefined = type; at; at = at.parent) {
      const position = chain.indexOf(at.name);
      const depth = (depths.get(at.name) ?? 0) + 1;
      depths.set(at.name, depth);
      if (at.mostInParent > 1) repeats[position] = true;
      nested[position] = Math.min(mostNested, Math.max(depth, nested[position]));
    }
  }
  return { chain, types, also: [], count, example: best.example, pathAt: best.pathAt, repeats, nested };
}

/** Elements of another name that stand around or beside the regions, name files in the same place, and keys as they do. */
function withOthers(region: RegionElement, survey: Survey, selectors: Selectors): RegionElement {
  const [first] = region.types;
  const chain = region.chain.slice(0, -1);
  const targets = new Set(tradeTargets(first, selectors));
  const files = filePlaces(first);
  const found = survey.types.filter((type) => {
    if (region.types.has(type) || region.chain.includes(type.name) || isWithinForeign(type)) return false;
    if (
      !namesAround(type)
        .slice(0, -1)
        .every((name) => chain.includes(name))
    )
      return false;
    const own = tradeTargets(type, selectors);
    const isZone = own.some((one) => anyKeyTargets.has(one)) && own.every((one) => targets.has(one));
    return isZone && files.length > 0 && files.some((place) => filePlaces(type).includes(place));
  });
  if (found.length === 0) return region;
  return {
    ...region,
    types: new Set([...region.types, ...found]),
    also: [...new Set(found.map(({ name }) => name))],
    count: region.count + found.reduce((sum, { count }) => sum + count, 0),
  };
}

/** Where an element names audio files, in itself or in children. */
function filePlaces(type: ElementType, before = '', depth = 0): string[] {
  const own = [...sitesOf(type)].flatMap(([name, site]) =>
    audioPath(site, false) ? [`${before}${name === '' ? '.' : `@${name}`}`] : [],
  );
  if (depth > 2) return own;
  const inner = [...type.children.values()].flatMap((child) =>
    filePlaces(child, `${before}${child.name}/`, depth + 1),
  );
  return [...own, ...inner];
}

function isWithin(type: ElementType, chain: readonly string[]): boolean {
  return namesAround(type).every((name) => chain.includes(name));
}

/** The names from the outermost element to this one; one that stands in itself counts once. */
function namesAround(type: ElementType): string[] {
  const names: string[] = [];
  for (let at: ElementType | undefined = type; at; at = at.parent)
    if (!names.includes(at.name)) names.push(at.name);
  return names.reverse();
}

/** One order that holds both, or `undefined`. */
function merge(one: readonly string[], other: readonly string[]): string[] | undefined {
  const merged: string[] = [];
  let at = 0;
  for (const name of one) {
    const found = other.indexOf(name, at);
    if (found >= 0) {
      merged.push(...other.slice(at, found));
      at = found + 1;
    }
    merged.push(name);
  }
  merged.push(...other.slice(at));
  return new Set(merged).size === merged.length ? merged : undefined;
}
