import { isAudioFileName, sampleEndings } from '../../../model/fileNames';
import { isNoteName } from '../values/columnFacts';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { isForeignElement } from './foreignElement';
import { namesKeys } from './namedTargets';
import type { Selectors } from './selectors';
import type { Cell, ElementType, Site, Survey } from './survey';

const mostCandidates = 60;

/** The places of paths to audio files, or where `withEnding` is not asked for of what looks like one, in the order of the text. */
export function pathPlaces(survey: Survey, selectors: Selectors, withEnding: boolean): FilePathPlace[] {
  const places: FilePathPlace[] = [];
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
      const isNamed = endingNames.has(nameWords(place).join(''));
      // A point before it tells that it is the ending of names.
      const isPointed = /^\s*\*?\.\w+\s*$/.test(values[0]?.text ?? '');
      if ((isNamed || isPointed) && (sampleEndings as readonly string[]).includes(said)) return `.${said}`;
    }
  }
  return undefined;
}

/** Names of elements that name keys, where the ending of all files is stated elsewhere. */
export function namePlaces(survey: Survey, selectors: Selectors): FilePathPlace[] {
  return survey.types.flatMap((type): FilePathPlace[] => {
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
export function isWithinForeign(type: ElementType): boolean {
  // The outermost element holds everything, whatever it is called.
  for (let at = type; at.parent; at = at.parent) if (isForeignElement(at, false)) return true;
  return false;
}

/** The element that a path belongs to, one such path, and the attribute that it stands in, or the element's text. */
export interface FilePathPlace {
  holder: ElementType;
  example: Cell;
  type: ElementType;
  attribute: string | undefined;
  /** How much it looks like a path: 1 for an ending of audio files. */
  likeness: number;
}

function pathPlace(type: ElementType, selectors: Selectors, withEnding: boolean): FilePathPlace | undefined {
  const naming = selectors.get(type);
  let best: FilePathPlace | undefined;
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

/** The places of an element by the names of their attributes; that of its text has none. */
export function* sitesOf(type: ElementType): Iterable<[string, Site]> {
  yield* type.attributes;
  if (type.text) yield ['', type.text];
}

/** A path to an audio file in a place that holds them mostly, or at all where `some` are enough. */
export function audioPath(site: Site, some: boolean): Cell | undefined {
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
