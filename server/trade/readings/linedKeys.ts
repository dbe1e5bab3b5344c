import type { LetterNaming } from './noteLetters';
import { letterNoteAt } from './noteLetters';
import { linedNote } from './notePatterns';

const lined = new RegExp(String.raw`^(${linedNote})(?:([1-7])|(['\u2032]{1,6})|(,{1,3}))?$`);
/** The key that the octave of small letters without a number starts with. */
const smallOctave = 48;
const greatOctave = 36;
const germanNames = ['c', 'cis', 'd', 'dis', 'e', 'f', 'fis', 'g', 'gis', 'a', 'b', 'h'] as const;
const plainNames = ['c', 'c#', 'd', 'd#', 'e', 'f', 'f#', 'g', 'g#', 'a', 'a#', 'b'] as const;

/**
 * The key of a note name whose octave the case of its letter and the number of its lines give (H. von Helmholtz, Die Lehre von
 * den Tonempfindungen, 1863; Riemann Musiklexikon, "Oktavbezeichnung", from memory): `C` and `c` are the great and the small
 * octave, `c1` is middle C, `C1` lies below `C`. In German use H is the note above B. `undefined` for other texts.
 */
export function readLinedKey(text: string, naming: LetterNaming): number | undefined {
  const found = lined.exec(text.trim());
  if (!found) return undefined;
  const [, name, digits = '', primes = '', commas = ''] = found;
  const isSmall = /^[a-h]/.test(name);
  if (/^h/i.test(name) && naming !== 'german') return undefined;
  const note = letterNoteAt(name, 0, naming);
  // Only A and E leave out the vowel of the ending, and no `s` is a sharp here.
  if (note?.at !== name.length || (/^.s$/.test(name) && (naming === 'english' || !/^[ae]/i.test(name))))
    return undefined;
  if (isSmall ? commas !== '' : primes !== '') return undefined;
  const lines = digits === '' ? primes.length + commas.length : Number(digits);
  const key = note.key + (isSmall ? smallOctave + 12 * lines : greatOctave - 12 * lines);
  return key >= 0 && key <= 127 ? key : undefined;
}

/** Whether a text is the name of a note without the number of an octave, as the great and the small octave have it. */
export function lacksLines(text: string): boolean {
  return !/[\d'\u2032,]/.test(text) && readLinedKey(text, 'german') !== undefined;
}

/** A key as {@link readLinedKey} reads it. */
export function writeLinedKey(key: number, isGerman: boolean): string {
  const name = (isGerman ? germanNames : plainNames)[key % 12];
  const octave = Math.floor(key / 12) - smallOctave / 12;
  if (octave >= 0) return octave === 0 ? name : `${name}${octave}`;
  const great = (name[0].toUpperCase() + name.slice(1)) as string;
  return octave === -1 ? great : `${great}${-1 - octave}`;
}
