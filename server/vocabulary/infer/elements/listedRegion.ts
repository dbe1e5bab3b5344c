import { isAudioFileName } from '../../../model/fileNames';
import { keyOfNoteName } from '../../../model/keys';
import type { SampleFactsLookup } from '../../../model/notation';
import { joinPath } from '../../../model/paths';
import type { Steps } from '../../../model/steps';
import { readListedInSteps, readSampleListInSteps } from '../../read/sampleList';
import type { SampleListPlace } from '../../vocabulary';
import { folderWords, looksLikeFolder } from '../samples/sampleFiles';
import type { SampleList } from '../samples/sampleList';
import { isRateName } from '../samples/statedRates';
import { listStartIn } from '../stated/listStart';
import { commentsIn } from '../stated/statements';
import { statedUnit } from '../values/besideUnits';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { namesRanges, namesZones } from './namedTargets';
import { isWithinForeign } from './pathPlaces';
import type { RegionElement } from './regionElement';
import { regionOf } from './regionElement';
import type { Selectors } from './selectors';
import type { Cell, ElementType, Site, Survey } from './survey';

const mostLists = 8;

/** Regions that name no file but an entry of a list of files; `undefined` where there are none. Found in steps. */
export function* findListedRegion(
  text: string,
  survey: Survey,
  selectors: Selectors,
  lookup?: SampleFactsLookup,
): Steps<{ region: RegionElement; list: SampleList } | undefined> {
  let looked = 0;
  let zones: ElementType[] | undefined;
  const comments = commentsIn(text);
  for (const type of survey.types) {
    // What an effect plays is no sample of the instrument.
    const files = selectors.has(type) || isWithinForeign(type) ? undefined : fileSite(type);
    if (!files || namesRanges(type, selectors)) continue;
    for (const key of keyPlaces(type, files.place, comments)) {
      if (looked++ >= mostLists) return undefined;
      const place = { element: type.name, key, path: files.place };
      const paths = yield* readSampleListInSteps(text, place);
      zones ??= survey.types.filter((one) => namesZones(one, selectors));
      for (const other of zones) {
        const at =
          isAround(other, type) || other.name === type.name || (!key.startsWith('@') && isAround(type, other))
            ? undefined
            : referenceIn(other, type, paths, key.startsWith('#') ? comments : undefined);
        if (at === undefined) continue;
        const under = folderAround(type, other, [...paths.values()], lookup);
        const inside = elementsAround(type);
        const first = firstNumber(key, paths);
        const found = {
          ...place,
          ...(under !== undefined && { under }),
          ...(inside !== '' && { inside }),
          ...(first !== undefined && { first }),
        };
        return {
          region: regionOf(other, survey, files.example, at),
          list: {
            place: found,
            paths: under === undefined ? paths : yield* readSampleListInSteps(text, found),
            rates: yield* ratesIn(text, type, found),
          },
        };
      }
    }
  }
  return undefined;
}

/** The least of the keys of a list that are all whole numbers; `undefined` where one is none. */
function firstNumber(key: string, paths: ReadonlyMap<string, string>): string | undefined {
  // Each key is there once more with the sign of a fragment.
  const keys = [...paths.keys()].filter((one) => !one.startsWith('#'));
  const areNumbers = keys.length > 0 && keys.every((one) => /^(?:0|[1-9]\d{0,8})$/.test(one));
  return key.startsWith('#') || !areNumbers ? undefined : String(Math.min(...keys.map(Number)));
}

/** The names by which a comment can speak of a list: that of its entries, and of what stands around them. */
function elementNames({ name, parent }: ElementType): string[] {
  return parent?.parent ? [name, parent.name] : [name];
}

/** The names of the elements around a type, without the outermost one. */
function elementsAround({ parent }: ElementType): string {
  const names: string[] = [];
  for (let at = parent; at?.parent; at = at.parent) names.unshift(at.name);
  return names.join('/');
}

/** The attributes of a list that are named like sample rates, with what stands there. */
function* ratesIn(
  text: string,
  { attributes }: ElementType,
  list: SampleListPlace,
): Steps<SampleList['rates']> {
  const names = [...attributes.keys()]
    .filter((name) => isRateName(nameWords(name)))
    .map((name) => `@${name}`);
  const rates = new Map<string, ReadonlyMap<string, string>>();
  for (const name of names) rates.set(name, yield* readListedInSteps(text, list, name));
  return rates;
}

const namesLooked = 8;

/**
 * The attribute of an element around a list, and not around the regions as well, that names a folder: by its name, or by the files
 * that are found there.
 */
function folderAround(
  list: ElementType,
  region: ElementType,
  names: readonly string[],
  lookup: SampleFactsLookup | undefined,
): string | undefined {
  const looked = names.slice(0, namesLooked).map((name) => name.replaceAll('\\', '/'));
  for (let at: ElementType | undefined = list; at && !isAround(at, region); at = at.parent) {
    for (const [name, { values }] of at.attributes) {
      if (values.length === 0 || !values.every(({ text }) => looksLikeFolder(text))) continue;
      const isNamed =
        name === 'in' || (nameWords(name).some((word) => folderWords.has(word)) && !areKeys(values));
      const isFound = () =>
        lookup !== undefined &&
        !looked.some((path) => lookup(path)) &&
        values.some(({ text }) =>
          looked.some((path) => lookup(joinPath(text.trim().replaceAll('\\', '/'), path))),
        );
      if (isNamed || isFound()) return `@${name}`;
      if (at !== list && isFolder(at, nameWords(name), values, looked)) return `${at.name}/@${name}`;
    }
  }
  return undefined;
}

/** Words for folders that speak of other things as well where an element is called so. */
const looseFolderWords = /^(?:root|home|base|location|path)s?$/;

/** Whether an element around a list is a folder by its own name, stands in no other one, and a place in it says how it is called. */
function isFolder(
  { name, parent }: ElementType,
  own: readonly string[],
  values: Site['values'],
  paths: readonly string[],
): boolean {
  const isCalled = nameWords(name).some((word) => folderWords.has(word) && !looseFolderWords.test(word));
  const isName = own.every((word) => /^(?:name|label|title|nom|nombre|nome|naam|n)$/.test(word));
  const isInPaths = values.some(({ text }) => paths.some((path) => path.startsWith(`${text}/`)));
  let isNested = false;
  for (let at = parent; at; at = at.parent) if (at.name === name) isNested = true;
  return parent !== undefined && isCalled && isName && !isInPaths && !isNested;
}

/** Whether all texts are names of notes: a root may be called as a folder is. */
function areKeys(values: Site['values']): boolean {
  return values.every(({ text }) => keyOfNoteName(text.trim()) !== undefined);
}

/** Whether a type is another one or stands around it. */
function isAround(type: ElementType, inner: ElementType): boolean {
  for (let at: ElementType | undefined = inner; at; at = at.parent) if (at === type) return true;
  return false;
}

/** The places of an entry: its attributes, its text, and those of elements that it has once. */
function entrySites(type: ElementType): [place: string, site: Site][] {
  const sites: [string, Site][] = [...type.attributes].map(([name, site]) => [`@${name}`, site]);
  if (type.text) sites.push(['.', type.text]);
  for (const child of type.children.values()) {
    if (child.mostInParent > 1) continue;
    for (const [name, site] of child.attributes) sites.push([`${child.name}/@${name}`, site]);
    if (child.text) sites.push([child.name, child.text]);
  }
  return sites;
}

/** The place of entries that names audio files, among which other files such as pictures may stand. */
function fileSite(type: ElementType): { place: string; example: Cell } | undefined {
  for (const [place, { values }] of entrySites(type)) {
    const audio = values.filter(({ text }) => isAudioFileName(text));
    const areFiles = values.every(({ text }) => isAudioFileName(text) || /\.\w{2,5}$/.test(text.trim()));
    if (audio.length > 0 && audio.length * 2 >= values.length && areFiles)
      return { place, example: audio[0] };
  }
  return undefined;
}

/** What entries can be referred to by: places that tell each apart, then their position. */
function keyPlaces(type: ElementType, files: string, comments: readonly string[]): string[] {
  const keys = entrySites(type).flatMap(([place, site]) =>
    place !== files && place !== '.' && site.count === type.count && tellsApart(site) ? [place] : [],
  );
  if (type.count < 2) return keys;
  const first = listStartIn(comments, elementNames(type));
  return [...keys, ...(first === undefined ? ['#0', '#1'] : [`#${first}`])];
}

/** Whether no value occurs twice, and they are more than units, which stand beside many numbers and refer to nothing. */
function tellsApart({ values }: Site): boolean {
  return (
    new Set(values.map(({ text }) => text)).size === values.length &&
    values.every(({ text }) => text !== '') &&
    !values.every((value) => statedUnit(value) !== undefined)
  );
}

/**
 * The place in an element, or in a child that it has once, whose values are keys of a list: one that is named after samples, else
 * one that says nothing else, so that it is no number of another kind.
 */
function referenceIn(
  type: ElementType,
  list: ElementType,
  paths: ReadonlyMap<string, string>,
  comments: readonly string[] | undefined,
): string | undefined {
  const byPosition = comments !== undefined;
  const sites: [place: string, words: string[], site: Site][] = [];
  const add = (holder: ElementType, before: string, around: string[]): void => {
    for (const [name, site] of holder.attributes)
      sites.push([`${before}@${name}`, [...around, ...nameWords(name)], site]);
    if (holder !== type && holder.text) sites.push([before.slice(0, -1), around, holder.text]);
  };
  add(type, '', []);
  for (const child of type.children.values())
    if (child.mostInParent === 1 && child !== list && (child.name !== list.name || isText(child)))
      add(child, `${child.name}/`, nameWords(child.name));
  const listed = new Set(nameWords(list.name));
  const isNamed = (words: readonly string[]) =>
    words.some((word) => listed.has(word) || listed.has(`${word}s`) || listed.has(word.replace(/s$/, ''))) ||
    words.some((word) => meaningsOf([word], [], [])[0]?.target === 'sample');
  const referring = sites.filter(([, words, { values }]) => {
    const known = values.filter(({ text }) => paths.has(text.trim())).length;
    // Where the name or a sign says that something is referred to, some entries may be missing.
    const isSigned = values.every(({ text }) => text.trim().startsWith('#'));
    const fewest = isNamed(words) || isSigned ? 5 : 8;
    return known > 0 && known * 10 >= values.length * fewest;
  });
  const named = referring.find(([, words]) => isNamed(words));
  if (byPosition) {
    // Counted from 1, no number is 0. Each is that of an entry, or some are of none where nothing else can be meant.
    const isStartTold = listStartIn(comments, elementNames(list)) !== undefined;
    const whole = referring.filter(([, words, { values }]) => {
      const known = values.filter(({ text }) => paths.has(text.trim()));
      const areAllUsed = () => new Set(known.map(({ text }) => text.trim())).size === paths.size;
      return known.length === values.length || (isNamed(words) && (isStartTold || areAllUsed()));
    });
    const isTold = (place: string) =>
      listStartIn(comments, elementNames(list), place.replace(/^.*@/, '')) !== undefined;
    // A number of its own says which entry is meant where it takes up all of them, as the zone names no file otherwise.
    const takesAll = ({ values }: Site) =>
      new Set(values.map(({ text }) => text.trim())).size === new Set(paths.values()).size;
    const found =
      whole.find(([place]) => isTold(place)) ??
      whole.find(([, words, { values }]) => isNamed(words) && values.length > 1) ??
      whole.find(([, words, site]) => isOwnNumber(words) && site.values.length > 1 && takesAll(site));
    return found?.[0];
  }
  // Texts such as `a12` are keys of a list by themselves; numbers could be anything that is named.
  const telling = referring.find(([, words, { values }]) => {
    const isNumeric = values.every(({ text }) => /^\s*\d+\s*$/.test(text));
    const isKnown = meaningsOf(words, [], nameWords(type.name)).length > 0;
    return isNumeric ? !isKnown && list.count > 1 && !isOwnNumber(words) : true;
  });
  return (named ?? telling)?.[0];
}

/** Whether an element holds text and nothing else. */
function isText({ attributes, children, text }: ElementType): boolean {
  return attributes.size === 0 && children.size === 0 && text !== undefined;
}

/** Whether a place is named like the number of the element itself. */
function isOwnNumber(words: readonly string[]): boolean {
  return words.every((word) => /^(?:id|uid|uuid|nr|no|num|number|index|idx|n)$/.test(word));
}
