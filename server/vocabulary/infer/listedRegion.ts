import { isAudioFileName } from '../../model/fileNames';
import { readSampleList } from '../read/sampleList';
import type { SampleListPlace } from '../vocabulary';
import type { RegionElement } from './regionElement';
import { namesZones, regionOf } from './regionElement';
import type { Selectors } from './selectors';
import type { Cell, ElementType, Site, Survey } from './survey';
import { meaningsOf } from './words/meanings';
import { nameWords } from './words/nameWords';

const mostLists = 8;

/** A list of samples that regions refer to. */
export interface SampleList {
  place: SampleListPlace;
  /** The path of each sample by what refers to it. */
  paths: ReadonlyMap<string, string>;
}

/** Regions that name no file but an entry of a list of files; `undefined` where there are none. */
export function findListedRegion(
  text: string,
  survey: Survey,
  selectors: Selectors,
): { region: RegionElement; list: SampleList } | undefined {
  let looked = 0;
  let zones: ElementType[] | undefined;
  for (const type of survey.types) {
    const files = type.count < 2 || selectors.has(type) ? undefined : fileSite(type);
    if (!files || namesZones(type, selectors)) continue;
    for (const [key, site] of type.attributes) {
      if (`@${key}` === files.place || site.count !== type.count || !areKeys(site)) continue;
      if (looked++ >= mostLists) return undefined;
      const place = { element: type.name, key: `@${key}`, path: files.place };
      const paths = readSampleList(text, place);
      zones ??= survey.types.filter((one) => namesZones(one, selectors));
      for (const other of zones) {
        const at = isAround(other, type) ? undefined : referenceIn(other, type, paths);
        if (at === undefined) continue;
        return { region: regionOf(other, survey, files.example, at), list: { place, paths } };
      }
    }
  }
  return undefined;
}

/** Whether a type is another one or stands around it. */
function isAround(type: ElementType, inner: ElementType): boolean {
  for (let at: ElementType | undefined = inner; at; at = at.parent) if (at === type) return true;
  return false;
}

function fileSite(type: ElementType): { place: string; example: Cell } | undefined {
  const sites: [string, Site][] = [...type.attributes].map(([name, site]) => [`@${name}`, site]);
  if (type.text) sites.push(['.', type.text]);
  for (const [place, { values }] of sites) {
    const [example] = values;
    if (example && values.every(({ text }) => isAudioFileName(text))) return { place, example };
  }
  return undefined;
}

/** Whether no value occurs twice. */
function areKeys({ values }: Site): boolean {
  return (
    new Set(values.map(({ text }) => text)).size === values.length && values.every(({ text }) => text !== '')
  );
}

/** The place in an element, or in a child that it has once, whose values are all keys of a list and that is named after samples. */
function referenceIn(
  type: ElementType,
  list: ElementType,
  paths: ReadonlyMap<string, string>,
): string | undefined {
  const sites: [place: string, words: string[], site: Site][] = [];
  const add = (holder: ElementType, before: string, around: string[]): void => {
    for (const [name, site] of holder.attributes)
      sites.push([`${before}@${name}`, [...around, ...nameWords(name)], site]);
    if (holder !== type && holder.text) sites.push([before.slice(0, -1), around, holder.text]);
  };
  add(type, '', []);
  for (const child of type.children.values())
    if (child.mostInParent === 1) add(child, `${child.name}/`, nameWords(child.name));
  const listed = new Set(nameWords(list.name));
  for (const [place, words, { values }] of sites) {
    const isNamed =
      words.some((word) => listed.has(word) || listed.has(`${word}s`)) ||
      words.some((word) => meaningsOf([word], [], [])[0]?.target === 'sample');
    if (isNamed && values.length > 0 && values.every(({ text }) => paths.has(text.trim()))) return place;
  }
  return undefined;
}
