import { dynamicIn } from '../../../trade/dynamics';
import { panWord } from '../../../trade/languages/cellWords';
import { nameWords } from '../words/nameWords';
import { isReleaseName } from '../words/words';
import { audioPath, sitesOf } from './pathPlaces';
import type { ElementType } from './survey';

/** Two elements beside one another that name an audio file each, one for each side. */
export interface SidedFiles {
  left: ElementType;
  right: ElementType;
}

/** The files of two sides that an element is one of, by the names of both; `undefined` for one of another kind. */
export function sidedFiles(one: ElementType): SidedFiles | undefined {
  if (!one.parent || sideOf(one) === undefined) return undefined;
  const beside = [...one.parent.children.values()].filter(isSide);
  const [left, right] = ['left', 'right'].map((side) => beside.filter((type) => sideOf(type) === side));
  if (left?.length !== 1 || right?.length !== 1 || !beside.includes(one)) return undefined;
  return left[0] && right[0] && { left: left[0], right: right[0] };
}

/** Words for microphones and for where they stand (common practice). */
const microphoneWords: ReadonlySet<string> = new Set(
  'close near far distant room hall ambient ambience overhead overheads spot mid side direct rear front back surround outrigger balcony audience contact pickup di condenser ribbon mic mike nah fern raum saal proche loin salle ambiance cerca lejos sala vicino lontano ambiente dichtbij ver zaal perto longe'.split(
    ' ',
  ),
);

/**
 * The elements beside one, itself included, that name a file each in the same place and are called after microphones, so that each is
 * a region; empty where there are no two.
 */
export function microphoneFiles(one: ElementType): ElementType[] {
  const isMicrophone = (type: ElementType) => isSide(type) && isMicrophoneName(type.name);
  if (!one.parent || !isMicrophone(one)) return [];
  const place = filePlace(one);
  const beside = [...one.parent.children.values()].filter(
    (type) => isMicrophone(type) && filePlace(type) === place,
  );
  return beside.length > 1 ? beside : [];
}

/** The position among dynamics of an element that is called after one, as `soft` and `very-loud`; −1 for others. */
export function dynamicOfName(name: string): number {
  const words = nameWords(name);
  const whole = dynamicIn(words.join(' '));
  if (whole >= 0) return whole;
  const said = words.map(dynamicIn).filter((one) => one >= 0);
  return said.length === 1 ? (said[0] ?? -1) : -1;
}

/** The elements beside one, itself included, that name a file each in the same place and are called after dynamics; empty where there are no two. */
export function layerFiles(one: ElementType): ElementType[] {
  const isLayer = (type: ElementType) => isSide(type) && dynamicOfName(type.name) >= 0;
  if (!one.parent || !isLayer(one)) return [];
  const place = filePlace(one);
  const beside = [...one.parent.children.values()].filter(
    (type) => isLayer(type) && filePlace(type) === place,
  );
  const dynamics = new Set(beside.map(({ name }) => dynamicOfName(name)));
  return beside.length > 1 && dynamics.size === beside.length ? beside : [];
}

/**
 * The elements beside one, itself included, that name a file each in the same place, one for the key and others that are called after
 * letting it go: `<attack>` and `<release>`; empty where there are not both.
 */
export function releaseFiles(one: ElementType): ElementType[] {
  const place = filePlace(one);
  if (!one.parent || place === undefined) return [];
  const beside = [...one.parent.children.values()].filter((type) => filePlace(type) === place);
  const pressed = beside.filter((type) => !isReleaseName(nameWords(type.name)));
  const [first] = pressed;
  const areBoth = first && pressed.length === 1 && isSide(first) && beside.length > 1;
  // What sounds when the key is pressed goes before.
  return areBoth ? [first, ...beside.filter((type) => type !== first)] : [];
}

/** Whether an element is called after a microphone or where it stands. */
export function isMicrophoneName(name: string): boolean {
  return nameWords(name).some((word) => microphoneWords.has(word));
}

/** The attribute of an element that names an audio file; empty for its text. */
function filePlace(type: ElementType): string | undefined {
  return [...sitesOf(type)].find(([, site]) => audioPath(site, false) !== undefined)?.[0];
}

/** Whether an element stands once in the one around it and names an audio file, in its text or an attribute. */
function isSide(type: ElementType): boolean {
  if (type.mostInParent !== 1) return false;
  return filePlace(type) !== undefined;
}

function sideOf({ name }: ElementType): 'left' | 'right' | undefined {
  const sides = nameWords(name).map((word) => panWord(word));
  const side = sides.find((one) => one === 'left' || one === 'right');
  return side === 'left' || side === 'right' ? side : undefined;
}
