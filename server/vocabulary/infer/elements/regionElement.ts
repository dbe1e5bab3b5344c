import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import { isReleaseName } from '../words/words';
import { anyKeyTargets, keyRangeTargets, tradeTargets, zoneTargets } from './namedTargets';
import type { FilePathPlace } from './pathPlaces';
import { audioPath, isWithinForeign, namePlaces, pathPlaces, sitesOf, statedEnding } from './pathPlaces';
import type { Selectors } from './selectors';
import type { SidedFiles } from './sidedFiles';
import { layerFiles, microphoneFiles, releaseFiles, sidedFiles } from './sidedFiles';
import type { Cell, ElementType, Survey } from './survey';

/** The element that is the region, with the elements around it. */
export interface RegionElement {
  /** From the outermost element to the region; no name stands twice. */
  chain: string[];
  /** The types of elements that are such a region, and what stands around them in the nesting. */
  types: Set<ElementType>;
  /** Other names of elements that are such a region. */
  also: readonly string[];
  /** The two elements of a zone that name a file of one side each, where regions are such. */
  sides?: SidedFiles;
  /** Said where regions are the elements of a note that name the file of one microphone each. */
  microphones?: true;
  /** Audio files in elements of the same name that are no regions, as nothing there names keys; missing where there are none. */
  aside?: readonly Cell[];
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
  sides?: SidedFiles;
  /** All elements of a note that name the file of one microphone, one layer or one start each, where regions are such. */
  together?: readonly ElementType[];
  /** Said where their names are those of groups. */
  areNamed?: boolean;
  example: Cell;
  pathAt: string | undefined;
  score: number;
}

const mostNested = 5;

/** The element that repeats and carries a path to an audio file, in itself or in what it holds; `undefined` where there is none. */
export function findRegionElement(survey: Survey, selectors: Selectors): RegionElement | undefined {
  const places = pathPlaces(survey, selectors, true);
  if (places.length === 0) places.push(...pathPlaces(survey, selectors, false));
  // With an ending that is stated once, names may be those of files; others that look like paths may be folders.
  if (places.every(({ likeness }) => likeness < 1) && statedEnding(survey) !== undefined)
    addNames(places, namePlaces(survey, selectors));
  const candidates = places.map((place) => {
    const twins = places.map(({ holder }) => holder).filter(({ name }) => name === place.holder.name);
    return candidateOf(place, selectors, twins);
  });
  let best: Candidate | undefined;
  for (const one of candidates) if (!best || one.score > best.score) best = one;
  const found = best && withTwins(best, survey, candidates);
  return found?.sides ? found : found && withOthers(found, survey, selectors);
}

/** Adds names of elements that may be those of files; what looks like a path around them is a folder then. */
function addNames(places: FilePathPlace[], names: readonly FilePathPlace[]): void {
  const isAround = ({ type }: FilePathPlace) =>
    names.some(({ type: named }) => {
      for (let at = named.parent; at; at = at.parent) if (at === type) return true;
      return false;
    });
  const others = places.filter((place) => !isAround(place));
  places.splice(0, places.length, ...others, ...names);
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

/** From the element with the path outwards to the one that repeats. */
function candidateOf(
  { holder, example, type, attribute, likeness }: FilePathPlace,
  selectors: Selectors,
  twins: readonly ElementType[],
): Candidate {
  const sides = sidedFiles(holder);
  if (sides?.left.parent) {
    const targets = tradeTargets(sides.left.parent, selectors).length;
    const score = likeness * (1 + targets) * Math.log2(1 + sides.left.count);
    return { region: sides.left, sides, example, pathAt: undefined, score };
  }
  const isPlain = type === holder && attribute === undefined;
  const named = [microphoneFiles, layerFiles].map((find) => (isPlain ? find(holder) : []));
  const starts = isPlain ? releaseFiles(holder) : [];
  const together = [...named, starts].find((all) => all.length > 0) ?? [];
  const [first] = together;
  if (first?.parent) {
    const targets = tradeTargets(first.parent, selectors).length;
    const score = likeness * (1 + targets) * Math.log2(1 + first.count * together.length);
    const areNamed = together !== starts;
    return { region: first, together, areNamed, example, pathAt: undefined, score };
  }
  let region: ElementType = holder;
  let alike: readonly (ElementType | undefined)[] = twins;
  const isKeyed = tradeTargets(holder, selectors).some((target) => keyRangeTargets.has(target));
  while (region.mostInParent === 1 && region.parent && region.count === region.parent.count) {
    const around: ElementType = region.parent;
    // What stands in elements of several names, or in ones that stand in themselves, is a region by itself.
    if (alike.some((twin) => twin?.parent?.name !== around.name || standsInItself(twin.parent))) break;
    // A layer or a microphone of one keyed region, as in an example, is no region itself.
    if (isKeyed && isGroupName(around.name)) break;
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
    region = first(keyRangeTargets) ?? first(anyKeyTargets) ?? holder;
    if (region.parent === undefined && region !== holder) region = holder;
  }
  region = partsOf(region, selectors) ?? region;
  const targets = tradeTargets(region, selectors).length;
  const pathAt = attribute === undefined ? undefined : placeFrom(region, type, attribute);
  return { region, example, pathAt, score: likeness * (1 + targets) * Math.log2(1 + region.count) };
}

/** Whether an element is called after what holds regions. */
function isGroupName(name: string): boolean {
  const words = nameWords(name);
  return words.some((word) => /^mi[ck]/.test(word) || conceptsOf(word)?.concepts.includes('group') === true);
}

function standsInItself({ name, parent }: ElementType): boolean {
  for (let at = parent; at; at = at.parent) if (at.name === name) return true;
  return false;
}

/** Elements that repeat in one that names a file, each with keys or velocities of its own: they are the regions. */
function partsOf(holder: ElementType, selectors: Selectors): ElementType | undefined {
  if (tradeTargets(holder, selectors).some((target) => keyRangeTargets.has(target) || target === 'key'))
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
  const isKeyed = areKeyed(best.region);
  const isTwin = (type: ElementType) => type.name === best.region.name && (!isKeyed || areKeyed(type));
  for (const { region } of candidates) if (isTwin(region)) types.add(region);
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
    if (isTwin(type) && !types.has(type) && isWithin(type, chain)) {
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
  const { example, pathAt, sides, together, areNamed } = best;
  if (together) {
    const others = together.filter((type) => type !== best.region);
    return {
      chain,
      types: new Set([...types, ...others]),
      also: others.map(({ name }) => name),
      ...(areNamed && { microphones: true }),
      count: count + others.reduce((sum, type) => sum + type.count, 0),
      example,
      pathAt,
      repeats,
      nested,
    };
  }
  if (sides)
    return {
      chain,
      types: types.add(sides.right),
      also: [sides.right.name],
      sides,
      count: count + sides.right.count,
      example,
      pathAt,
      repeats,
      nested,
    };
  const aside = candidates
    .filter(({ region }) => region.name === best.region.name && !types.has(region) && !isTwin(region))
    .map((one) => one.example);
  return {
    chain,
    types,
    also: [],
    ...(aside.length > 0 && { aside }),
    count,
    example,
    pathAt,
    repeats,
    nested,
  };
}

/**
 * Whether an element or one around it, the outermost apart, names keys or is a section of releases: a file in one of the same name that does
 * not, where others do, is that of a preview or the like.
 */
function areKeyed(type: ElementType): boolean {
  const none: Selectors = new Map();
  for (let at: ElementType | undefined = type; at && (at === type || at.parent); at = at.parent)
    if (isReleaseName(nameWords(at.name)) || tradeTargets(at, none).some((one) => anyKeyTargets.has(one)))
      return true;
  return false;
}

/**
 * Elements of another name that stand around or beside the regions, name files in the same place, and keys as they do; or that stand
 * where others have regions.
 */
function withOthers(region: RegionElement, survey: Survey, selectors: Selectors): RegionElement {
  const [first] = region.types;
  const last = region.chain.slice(-1);
  let chain = region.chain.slice(0, -1);
  const targets = new Set(tradeTargets(first, selectors));
  const files = filePlaces(first);
  const found = survey.types.filter((type) => {
    if (region.types.has(type) || region.chain.includes(type.name) || isWithinForeign(type)) return false;
    const around = namesAround(type).slice(0, -1);
    const beside = around.filter((name) => !chain.includes(name));
    // What sounds on release may stand in a section of its own.
    const merged = beside.length > 0 ? merge(chain, around) : chain;
    if (!merged || merged.includes(last[0] ?? '') || !beside.every((name) => isReleaseName(nameWords(name))))
      return false;
    const own = tradeTargets(type, selectors);
    const isAlike = own.every((one) => targets.has(one));
    const isZone = isAlike && (own.some((one) => anyKeyTargets.has(one)) || standsInstead(type, first));
    const isFound = isZone && files.length > 0 && files.some((place) => filePlaces(type).includes(place));
    if (isFound) chain = merged;
    return isFound;
  });
  if (found.length === 0) return region;
  const of = <T>(all: readonly T[], otherwise: T) =>
    [...chain, ...last].map((name) => all[region.chain.indexOf(name)] ?? otherwise);
  return {
    ...region,
    chain: [...chain, ...last],
    repeats: of(region.repeats, false),
    nested: of(region.nested, 1),
    types: new Set([...region.types, ...found]),
    also: [...new Set(found.map(({ name }) => name))],
    count: region.count + found.reduce((sum, { count }) => sum + count, 0),
  };
}

/**
 * Whether an element of a zone has its file where other zones have an element with regions: `<single>` in the place of `<turns>`. None
 * of them has both by their numbers.
 */
function standsInstead(type: ElementType, region: ElementType): boolean {
  const zone = type.parent;
  if (!zone?.parent || !areKeyed(zone)) return false;
  let branch: ElementType | undefined = region;
  while (branch && branch.parent !== zone) branch = branch.parent;
  return branch !== undefined && branch.parents + type.parents <= zone.count;
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
