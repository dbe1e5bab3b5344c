import { isLinedName, readKey } from '../trade/readings/keyReading';
import { readLinedKey } from '../trade/readings/linedKeys';
import { flatWords, letterNote, linedNote, noteSyllable, sharpWords } from '../trade/readings/notePatterns';

/** One way in which the paths of a folder may tell notes; a key for each path that tells one. */
export interface NoteReading {
  /** `lines`: letter case and the number of lines say the octave, as in `C`, `c`, `c1`, so that a letter alone is a note. */
  kind: 'names' | 'lines' | 'numbers';
  /** MIDI keys with middle C = C4 = 60, by position. */
  keys: (number | undefined)[];
  /** Where each path tells its key. */
  places: (NotePlace | undefined)[];
}

/** The text of a path that tells a note, and where it stands. */
export interface NotePlace {
  text: string;
  start: number;
}

/** Words for flats and sharps, which may stand apart. */
const signWord = `(?:[ _-]?(?:${sharpWords}|${flatWords}))?`;
const letters = `${letterNote}${signWord}`;
const syllables = `(?:${noteSyllable}|ra|so|shi|도|레|미|파|솔|라|시)[#♯♭bs]?${signWord}`;
const edge = String.raw`(?<![\p{L}\p{N}#♯♭])`;
/** What may follow a note without a sign in between: the number of a layer or a turn, a letter that counts, or a dynamic, as in `A#3v10` or `C4mf`. */
const mark = String.raw`(?:(?:v|vl|vel|layer|rr|take|tk)\d{1,3}|[a-d]|p{1,3}|m[pf]|f{1,3})(?![\p{L}\p{N}])`;
const behind = String.raw`(?:(?![\p{L}\p{N}#♯♭])|(?=${mark}))`;

/** A note with its octave right behind it, or with one sign or space in between. */
const glued = new RegExp(`${edge}(${letters}|${syllables})(-?\\d{1,2})${behind}`, 'giu');
const parted = new RegExp(`${edge}(${letters}|${syllables})[ _-](\\d{1,2})${behind}`, 'giu');
/** A note with the number of its lines, or none; the letter case counts. */
const lined = new RegExp(`${edge}(${linedNote})([0-6]?)${behind}`, 'gu');

/** Note syllables of Japanese and Korean use as those of the languages that {@link readKey} knows. */
const otherSyllables: readonly (readonly [string, string])[] = Object.entries({
  ...{ ra: 'la', shi: 'si', ti: 'si', so: 'sol' },
  ...{ 도: 'do', 레: 're', 미: 'mi', 파: 'fa', 솔: 'sol', 라: 'la', 시: 'si' },
});

interface Way {
  /** How letters name notes; in Dutch use B is as in English, and As and Es are flats. */
  naming: 'english' | 'german' | 'dutch';
  /** How a note is told from what stands around it. */
  pattern: RegExp;
  /** Whether a sign before the octave parts words instead of making it negative. */
  parts: boolean;
}

const ways: readonly Way[] = (['english', 'german', 'dutch'] as const).flatMap((naming) => [
  { naming, pattern: glued, parts: false },
  { naming, pattern: glued, parts: true },
  { naming, pattern: parted, parts: true },
  { naming, pattern: lined, parts: true },
]);

/** A part of a path: the name of the file, or those of the folders around it. */
type Scope = (path: string) => { text: string; start: number };

const scopes: readonly Scope[] = [
  (path) => ({ text: nameStem(path), start: path.lastIndexOf('/') + 1 }),
  (path) => ({ text: path.slice(0, Math.max(0, path.lastIndexOf('/'))), start: 0 }),
];

/** All ways in which paths may tell notes, those that tell none left out; those by the names of files before those by folders. */
export function noteReadings(paths: readonly string[]): NoteReading[] {
  return scopes
    .flatMap((scope) => {
      const parts = paths.map(scope);
      const named = ways.flatMap((way) => ([0, -1] as const).map((at) => namedReading(parts, way, at)));
      return [...named, ...numberReadings(parts)];
    })
    .filter(({ keys }) => keys.some((key) => key !== undefined));
}

/** Reads the first note of each text, or with `at` −1 the last one. */
function namedReading(parts: readonly ReturnType<Scope>[], way: Way, at: 0 | -1): NoteReading {
  const reading: NoteReading = { kind: way.pattern === lined ? 'lines' : 'names', keys: [], places: [] };
  for (const { text, start } of parts) {
    const match = [...text.matchAll(way.pattern)].at(at);
    const key = match && keyOf(match[1], match[2], way);
    reading.keys.push(key);
    reading.places.push(
      match && key !== undefined ? { text: match[0], start: start + match.index } : undefined,
    );
  }
  return reading;
}

function keyOf(note: string, octave: string, { naming, parts, pattern }: Way): number | undefined {
  if (pattern === lined) {
    // Builders of organs count the small octave as 0.
    const lines = octave === '0' && /^[a-h]/.test(note) ? '' : octave;
    return lines === '' || isLinedName(note + lines) || /^[A-H]/.test(note)
      ? readLinedKey(note + lines, naming)
      : undefined;
  }
  const plain = note.toLowerCase();
  const other = otherSyllables.find(([name]) => plain.startsWith(name) && !/^sol/.test(plain));
  const latin = other === undefined ? plain : `${other[1]}${plain.slice(other[0].length)}`;
  const text = latin.replace('♯', '#').replace('♭', 'b').replace('_', ' ');
  const number = parts ? octave.replace('-', '') : octave;
  return readKey(`${text.charAt(0).toUpperCase()}${text.slice(1)}${number}`, naming)?.named;
}

/** Numbers that stand alone, and those behind a word for a key. */
const numberPatterns = [
  /(?<![\p{L}\p{N}#.])\d{2,3}(?![\p{L}\p{N}]|\.\d)/giu,
  /(?<![\p{L}\p{N}])(?:n|k|key|note|nota|midi|taste|ton|tecla|touche)(\d{2,3})(?![\p{L}\p{N}])/giu,
];

/** Numbers as keys: those that stand at one place, counted from the start or the end. */
function numberReadings(parts: readonly ReturnType<Scope>[]): NoteReading[] {
  return numberPatterns.flatMap((pattern) => {
    const numbers = parts.map(({ text }) => [...text.matchAll(pattern)]);
    return [0, 1, -1].map((at): NoteReading => {
      const found = numbers.map((list) => list.at(at));
      const keys = found.map((match) => (match ? Number(match[1] ?? match[0]) : undefined));
      const inRange = keys.map((key) => (key !== undefined && key <= 127 ? key : undefined));
      const places = found.map((match, one) =>
        match && inRange[one] !== undefined
          ? { text: match[0], start: parts[one].start + match.index }
          : undefined,
      );
      return { kind: 'numbers', keys: inRange, places };
    });
  });
}

/** A file's name without its ending. */
function nameStem(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1).replace(/\.\w{1,5}$/, '');
}
