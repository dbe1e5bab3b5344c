import { noteEndings } from './notePatterns';

/** Capitals and small letters of Cyrillic and Greek that look as a Latin letter that names a note. */
const latin: Readonly<Record<string, string>> = {
  А: 'A',
  В: 'B',
  С: 'C',
  Е: 'E',
  Н: 'H',
  а: 'a',
  с: 'c',
  е: 'e',
  Α: 'A',
  Β: 'B',
  Ε: 'E',
  Η: 'H',
};
const mayHold = /[\u0391\u0392\u0395\u0397\u0410\u0412\u0415\u041d\u0421\u0430\u0435\u0441]/;
/** One letter that stands for itself, before what follows the letter of a note: a sharp, a flat or its octave. */
const lone = new RegExp(
  String.raw`(?<![\p{L}\p{M}\d])[АВСЕНасеΑΒΕΗ](?=(?:${noteEndings}|[#\u266f\u266d]|b(?=\s?[-\u2212\u2013]?\d))?(?:\s?[-\u2212\u2013]?\d|['\u2032,]))`,
  'gu',
);

/**
 * A text with the names of notes that were typed in Cyrillic or Greek letters in the Latin ones that they look like: `С#4`, whose C is
 * Cyrillic. Each letter stays one, so that places in the text stay as they are.
 */
export function withLatinNotes(text: string): string {
  return mayHold.test(text) ? text.replace(lone, (letter) => latin[letter] ?? letter) : text;
}
