import type { Assigned } from './assign';
import type { RegionElement } from './elements/regionElement';
import type { ElementType, Survey } from './elements/survey';
import { lackOfSense } from './musicalSense';
import { rowKeyNumber } from './ranges/rowKeys';
import { doShareKeys } from './ranges/sharedKeys';
import type { SampleFiles } from './samples/sampleFiles';
import { keyTargets, positionTargets, timeTargets, velocityTargets } from './values/plausible';
import { isBare } from './words/meanings';

/** Outermost elements of open formats that name audio files and are no instruments: feeds, pages, pictures, builds. */
const foreignRoots: ReadonlySet<string> = new Set(
  'rss feed html svg plist smil opml math wsdl schema xsd stylesheet'.split(' '),
);
/** Outermost elements of such formats whose names are usual words, so that an instrument may have them too. */
const usualRoots: ReadonlySet<string> = new Set(['project', 'package', 'manifest']);
const foreignNamespace =
  /^https?:\/\/(?:www\.)?(?:w3\.org|purl\.org|xspf\.org|maven\.apache\.org|schemas\.)/i;

/** Whether the outermost element belongs to an open format that is no instrument. */
export function isForeignRoot(root: ElementType): boolean {
  if (foreignRoots.has(localName(root))) return true;
  const prefix = root.name.includes(':') ? `xmlns:${root.name.slice(0, root.name.indexOf(':'))}` : 'xmlns';
  return root.attributes.get(prefix)?.values.some(({ text }) => foreignNamespace.test(text)) ?? false;
}

/** Whether the outermost element may belong to another format by its name, and regions do not tell enough of keys to be those of an instrument. */
export function isOtherFormat(root: ElementType, assigned: readonly Assigned[]): boolean {
  const has = (wanted: string) => assigned.some(({ target }) => target === wanted);
  const isKeyed = has('key') || (has('lokey') && has('hikey'));
  return usualRoots.has(localName(root)) && !(isKeyed && tellingPlaces(assigned).zone > 1);
}

function localName({ name }: ElementType): string {
  return name.slice(name.indexOf(':') + 1).toLowerCase();
}

const sounding: ReadonlySet<string> = new Set([
  'volume',
  'attenuation',
  'pan',
  'tune',
  'transpose',
  'loop',
  'loop_on',
  'seq_position',
  'seq_length',
]);

/**
 * Whether names that may be those of files are: where none ends like an audio file and no file is found, keys, velocities
 * and sound have to be told by several places, and none of the names leads into a document or the net.
 */
export function namesFiles(
  assigned: readonly Assigned[],
  { form, facts, names }: SampleFiles,
  stated: string | undefined,
): boolean {
  if (form.ending === undefined || facts.some((one) => one !== undefined)) return true;
  if (names.some((name) => name !== undefined && /^#|^\w+:\/\//.test(name))) return false;
  const { zone, sound } = tellingPlaces(assigned);
  if (stated !== undefined && zone > 0) return true;
  // One element alone may be any text.
  return names.length > 1 && zone >= 2 && zone + sound >= 3;
}

/** How many different things about keys and velocities, and about the sound, places tell. */
function tellingPlaces(assigned: readonly Assigned[]): { zone: number; sound: number } {
  const targets = new Set(assigned.map(({ target }) => target));
  const zone = [...targets].filter((one) => keyTargets.has(one) || velocityTargets.has(one)).length;
  const sound = [...targets].filter(
    (one) => sounding.has(one) || positionTargets.has(one) || timeTargets.has(one),
  ).length;
  return { zone, sound };
}

/** 0..1: how sure it is that regions like these make an instrument; `undefined` where they do not. */
export function instrumentConfidence(
  assigned: readonly Assigned[],
  region: RegionElement,
  survey: Survey,
): number | undefined {
  if (lackOfSense(assigned, survey) !== undefined) return undefined;
  const targets = new Set(assigned.map(({ target }) => target));
  if (!targets.has('sample')) return undefined;
  const { zone, sound } = tellingPlaces(assigned);
  const isTold =
    assigned.some(speaksOfZones) ||
    isOfLetters(assigned) ||
    haveRootsWithin(assigned) ||
    assigned.some(areSteps) ||
    (zone > 2 && areShared(assigned));
  if (zone > 0 && !isTold) return undefined;
  if (zone > 0) return Math.min(0.99, 0.7 + 0.08 * zone + 0.03 * sound + (region.count > 1 ? 0.05 : 0));
  // Playlists give lengths and levels too, but not all of this.
  const telling = [...targets].filter((one) => sounding.has(one) || one.startsWith('loop_')).length;
  return telling >= 3 ? Math.min(0.85, 0.4 + 0.08 * telling) : undefined;
}

/** Whether a place is a key or velocity by more than a bare name such as `min` or a single letter. */
function speaksOfZones({ target, column, facts, part, base }: Assigned): boolean {
  if (base !== undefined) return true;
  if (!keyTargets.has(target) && !velocityTargets.has(target)) return false;
  const isLetter = isSingleLetter(column.own.join(''));
  if (facts.notes > 0 || target === 'pitch_keycenter') return !isLetter || facts.notes > 0;
  if (column.around.length > 0) return true;
  if (isLetter) return false;
  // Key 12 is C0 (16 Hz, ISO 16 taken on), below what is recorded.
  return part !== undefined || !isBare(column.own) || (target === 'lokey' && facts.least >= 12);
}

/** Whether a name is one letter, which says little; one sign of Chinese or Japanese is a word. */
function isSingleLetter(name: string): boolean {
  return name.length === 1 && !/\p{Script=Han}/u.test(name);
}

/** Whether a place holds the upper ends of ranges that follow each other, of which no other place gives the lower ones. */
function areSteps({ target, facts }: Assigned, _: number, all: readonly Assigned[]): boolean {
  if (target !== 'hikey' || all.some((one) => one.target === 'lokey' || one.target === 'lovel')) return false;
  return facts.tally.size > 1 && facts.least >= 12 && facts.greatest <= 127;
}

/** Keys whatever they are called, where ranges share them out. */
function areShared(assigned: readonly Assigned[]): boolean {
  const keysOf = (target: string) => assigned.find((one) => one.target === target)?.texts.map(rowKeyNumber);
  const [lows, highs] = [keysOf('lokey'), keysOf('hikey')];
  return lows !== undefined && highs !== undefined && doShareKeys(lows, highs);
}

/** Keys whatever they are called, where several regions have ranges in one text each with a root key of their own within. */
function haveRootsWithin(assigned: readonly Assigned[]): boolean {
  const find = (wanted: string) => assigned.find(({ target }) => target === wanted);
  const [low, high, root] = [find('lokey'), find('hikey'), find('pitch_keycenter')];
  if (!low || !high || !root || low.part === undefined || low.facts.least < 12) return false;
  const count = low.texts.length;
  const isWithin = (row: number) => {
    const [from, at, to] = [low, root, high].map(({ texts }) => rowKeyNumber(texts[row]));
    return from !== undefined && at !== undefined && to !== undefined && from <= at && at <= to && from < to;
  };
  return count > 1 && root.facts.tally.size === count && [...low.texts.keys()].every(isWithin);
}

/** Keys by single letters, where units speak of sound. */
function isOfLetters(assigned: readonly Assigned[]): boolean {
  return assigned.some(
    ({ target, facts }) => sounding.has(target) && facts.unit !== undefined && facts.unit !== 'percent',
  );
}
