import { readKey } from '../trade/readings/keyReading';

/** One way in which the names of a folder may tell notes; a key for each name that tells one. */
export interface NoteReading {
  kind: 'names' | 'numbers';
  /** MIDI keys with middle C = C4 = 60, by position. */
  keys: (number | undefined)[];
  /** The text of each name that tells the key. */
  texts: (string | undefined)[];
}

/** Signs of flats and sharps, and what stands for them in words of a name. */
const sign = `(?:#|♯|♭|is|es|s|b|sharp|flat|x)?`;
const letters = `[A-Ha-h]${sign}`;
const syllables = `(?:do|dó|ut|re|ré|ra|mi|fa|fá|sol|so|la|lá|si|ti|shi)(?:#|♯|♭|b|s|is|es)?`;
const edge = String.raw`(?<![\p{L}\p{N}#♯♭])`;
/** What may follow a note without a sign in between: the number of a layer or a turn, or a dynamic, as in `A#3v10` or `C4mf`. */
const mark = String.raw`(?:(?:v|vl|vel|layer|rr|take|tk)\d{1,2}|p{1,3}|m[pf]|f{1,3})(?![\p{L}\p{N}])`;
const behind = String.raw`(?:(?![\p{L}\p{N}#♯♭])|(?=${mark}))`;

/** A note with its octave right behind it, or with one sign or space in between. */
const glued = new RegExp(`${edge}(${letters}|${syllables})(-?\\d{1,2})${behind}`, 'giu');
const parted = new RegExp(`${edge}(${letters}|${syllables})[ _-](\\d{1,2})${behind}`, 'giu');

/** Note syllables of Japanese use as those of the languages that {@link readKey} knows. */
const japanese: Readonly<Record<string, string>> = { ra: 'la', so: 'sol', shi: 'si', ti: 'si' };

interface Way {
  german: boolean;
  /** How a note is told from what stands around it. */
  pattern: RegExp;
  /** Whether a sign before the octave parts words instead of making it negative. */
  parts: boolean;
}

const ways: readonly Way[] = [false, true].flatMap((german) => [
  { german, pattern: glued, parts: false },
  { german, pattern: glued, parts: true },
  { german, pattern: parted, parts: true },
]);

/** All ways in which names may tell notes, those that tell none left out. */
export function noteReadings(paths: readonly string[]): NoteReading[] {
  const named = ways.flatMap((way) => [0, -1].map((at) => namedReading(paths, way, at)));
  return [...named, ...numberReadings(paths)].filter(({ keys }) => keys.some((key) => key !== undefined));
}

/** Reads the first note of each name, or with `at` −1 the last one. */
function namedReading(paths: readonly string[], way: Way, at: 0 | -1 | number): NoteReading {
  const reading: NoteReading = { kind: 'names', keys: [], texts: [] };
  for (const path of paths) {
    const name = nameStem(path);
    const match = [...name.matchAll(way.pattern)].at(at);
    const key = match && keyOf(match[1] ?? '', match[2] ?? '', way);
    reading.keys.push(key);
    reading.texts.push(key === undefined ? undefined : match?.[0]);
  }
  return reading;
}

function keyOf(note: string, octave: string, { german, parts }: Way): number | undefined {
  const plain = note.toLowerCase();
  const syllable = Object.keys(japanese).find((one) => plain.startsWith(one) && !plain.startsWith('sol'));
  const latin = syllable === undefined ? plain : `${japanese[syllable]}${plain.slice(syllable.length)}`;
  const text = latin.replace('♯', '#').replace('♭', 'b');
  const number = parts ? octave.replace('-', '') : octave;
  return readKey(`${text.charAt(0).toUpperCase()}${text.slice(1)}${number}`, german ? 'german' : 'english')
    ?.named;
}

/** Numbers of names as keys: those that stand at one place, counted from the start or the end. */
function numberReadings(paths: readonly string[]): NoteReading[] {
  const numbers = paths.map((path) =>
    [...nameStem(path).matchAll(/(?<![\p{L}\p{N}#.])\d{2,3}(?![\p{L}\p{N}]|\.\d)/giu)].map(
      ([digits]) => digits,
    ),
  );
  return [0, 1, -1].map((at) => {
    const texts = numbers.map((list) => list.at(at));
    const keys = texts.map((text) => (text !== undefined && Number(text) <= 127 ? Number(text) : undefined));
    return {
      kind: 'numbers',
      keys,
      texts: texts.map((text, one) => (keys[one] === undefined ? undefined : text)),
    };
  });
}

/** A file's name without its ending. */
export function nameStem(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1).replace(/\.\w{1,5}$/, '');
}
