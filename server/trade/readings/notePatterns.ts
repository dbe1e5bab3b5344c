/**
 * How notes are written, as parts of patterns that go by `i` and `u`: what finds a note in a text takes these, and what reads it is
 * `keyReading.ts`.
 */

/** The endings of a sharp and a flat with their vowel: `is`, `es`, `iss`, `isz`, and twice for double ones. */
export const wholeEndings = '(?:is[sz]?){1,2}|(?:es[sz]?){1,2}';
/** The endings of sharps and flats: those with a vowel, and `s`, which leaves it out or stands for a sharp. */
export const noteEndings: string = `${wholeEndings}|s[sz]?(?:[ae]s[sz]?)?`;

/** Words for a sharp behind the name of a note, in the languages of the trade. */
export const sharpWords = 'di[e\u00e8]se|диез|δίεση|sostenido|sustenido|diesis|sharp|kruis';
/** Words for a flat. */
export const flatWords = 'b[e\u00e9]mol(?:le)?|бемоль|ύφεση|bmol|flat|mol';
const signs = String.raw`[#\u266fb\u266d]{1,2}`;
const signWord = String.raw`[ \u00a0-]?(?:${sharpWords}|${flatWords})(?!\p{L})`;

/** Semitones above C of the syllables that name notes in French, Spanish, Italian, Portuguese, Russian, Greek and Japanese. */
export const syllables: readonly (readonly [name: string, semitones: number])[] = [
  ['do', 0],
  ['dó', 0],
  ['ut', 0],
  ['re', 2],
  ['ré', 2],
  ['mi', 4],
  ['fa', 5],
  ['fá', 5],
  ['sol', 7],
  ['la', 9],
  ['lá', 9],
  ['si', 11],
  ['ti', 11],
  ['до', 0],
  ['ре', 2],
  ['ми', 4],
  ['фа', 5],
  ['соль', 7],
  ['ля', 9],
  ['си', 11],
  ['ντο', 0],
  ['ντό', 0],
  ['ρε', 2],
  ['μι', 4],
  ['φα', 5],
  ['σολ', 7],
  ['λα', 9],
  ['σι', 11],
  ['ド', 0],
  ['レ', 2],
  ['ミ', 4],
  ['ファ', 5],
  ['ソ', 7],
  ['ラ', 9],
  ['シ', 11],
];

/** A syllable that names a note; one in Katakana is no end of a longer word. */
export const noteSyllable: string = String.raw`(?<![\u30a1-\u30fa\u30fc](?=[\u30a1-\u30fa]))(?:${syllables.map(([name]) => name).join('|')})`;

/** A note by its letter, without its octave: `C`, `fis`, `Bb`, `Heses`. */
export const letterNote: string = `[A-Ha-h](?:${noteEndings}|${signs})?`;
/** The same where small letters name notes, so that `b` behind one is no flat. */
export const linedNote: string = String.raw`[A-Ha-h](?:${noteEndings}|[#\u266f\u266d])?`;
/** A note without its octave by its letter or its syllable, with a sign or a word for one: `F#`, `do`, `la bémol`. */
export const noteName: string = `(?:${noteSyllable}(?:${signs}|${signWord})?|${letterNote}|[A-Ha-h]${signWord})`;

/** Scripts without blanks between words may stand right before a key. */
const apart = String.raw`(?<![\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Greek}\d])`;
/** A note with its octave in a sentence, apart from words. */
export const noteInText: string = String.raw`${apart}${noteName}[-\u2212]?\d(?!\d)`;
/** A key in a sentence: a note with its octave, or a number of up to three digits that is no part of another. */
export const keyInText: string = String.raw`(?:${noteInText}|${apart}(?<![.,])\d{1,3}(?![\d.,]\d))`;
