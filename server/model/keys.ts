/** The note name of key 60, which makers do not agree on. */
export type MiddleC = 'C3' | 'C4' | 'C5';

/** Semitones above C of the seven natural notes, by letter code a..g. */
const naturals = [9, 11, 0, 2, 4, 5, 7] as const;

const sharpNames = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'] as const;

const letterA = 97;

/**
 * The MIDI key number of a note name such as `c4`, `C#4`, `Db4` or `c-1`, middle C being C4 = 60 as in SFZ.
 * Sharps are `#` or `♯`, flats `b` or `♭`; letter case is free.
 * Answers `undefined` for anything else and for keys outside 0..127.
 */
export function keyOfNoteName(name: string): number | undefined {
  const natural = naturals[(name.charCodeAt(0) | 32) - letterA];
  // Stryker disable next-line ConditionalExpression: only sooner; what counts from nothing is no number, and so no key
  if (natural === undefined) return undefined;
  let semitone: number = natural;
  let at = 1;
  for (; ; at++) {
    const sign = name[at];
    if (sign === '#' || sign === '♯') semitone++;
    else if (sign === 'b' || sign === 'B' || sign === '♭') semitone--;
    else break;
  }
  if (at > 3) return undefined;
  const octave = name.slice(at);
  if (!/^-?\d$/.test(octave)) return undefined;
  const key = (Number(octave) + 1) * 12 + semitone;
  return key >= 0 && key <= 127 ? key : undefined;
}

/** The note name of a MIDI key number with middle C = C4 = 60, written with sharps: 61 is `C#4`, 0 is `C-1`. */
export function noteNameOf(key: number): string {
  return noteNames[key] ?? makeNoteName(key);
}

// Stryker disable next-line ObjectLiteral,ArrowFunction: kept to be quick; what is not kept is made when asked for
const noteNames = Array.from({ length: 128 }, (_, key) => makeNoteName(key));

function makeNoteName(key: number): string {
  const octave = Math.floor(key / 12) - 1;
  return `${sharpNames[((key % 12) + 12) % 12]}${octave}`;
}

/** Whether a key is one of the raised (black) keys of a keyboard. */
export function isRaisedKey(key: number): boolean {
  return ((1 << (((key % 12) + 12) % 12)) & 0b010101001010) !== 0;
}

/**
 * The frequency in hertz of a MIDI key number in equal temperament with A4 (key 69) = 440 Hz:
 * 440 · 2^((key − 69) / 12) (ISO 16:1975; MIDI 1.0). Fractions of a key are cents / 100.
 */
export function frequencyOfKey(key: number): number {
  return 440 * 2 ** ((key - 69) / 12);
}

/** The key of a frequency in Hz, with a fraction where it lies between keys; the inverse of {@link frequencyOfKey}. NaN below 0. */
export function keyOfFrequency(hertz: number): number {
  return 69 + 12 * Math.log2(hertz / 440);
}

/** The one key of a range that stands for it where there is a place for no more: the root key, or the one nearest to it. */
export function keyNearRoot(from: number, to: number, root: number): number {
  return Number.isNaN(root) ? from : Math.min(to, Math.max(from, root));
}
