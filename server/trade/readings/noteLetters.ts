import { noteEndings, wholeEndings } from './notePatterns';

/**
 * How letters name notes: in German, Nordic, Polish, Czech and Hungarian use B is the note below H; in Dutch use B is as in English.
 * In both, As and Es are flats, where English use writes `s` for a sharp.
 */
export type LetterNaming = 'english' | 'german' | 'dutch';

/** Semitones above C of the seven natural notes, A to G. */
const naturals = [9, 11, 0, 2, 4, 5, 7] as const;
/** B and H as the note below C. */
const belowC = 11;
const sharps = '#\u266fsS';
const flats = 'bB\u266d';
/** `Cis`, `Ciss` and `Cisz` of Nordic and Hungarian spelling, and twice for a double sharp or flat: `Cisis`, `Deses`. */
const ending = /(?:(is[sz]?(?:is[sz]?)?)|(es[sz]?(?:es[sz]?)?))(?!\p{L})/iuy;
/** `As` and `Es` leave out a vowel, and so do `Ases`, `Asas` and `Eses`. */
const shortEnding = /s[sz]?([ae]s[sz]?)?(?!\p{L})/iuy;

/** A note without its octave: semitones above C, and where its name ends. */
export interface LetterNote {
  key: number;
  at: number;
}

/**
 * The note that a letter with an ending or signs names at a place of a text: `C#`, `Bb`, `Fis`, `Heses`. Bes is B flat, as in Dutch: in
 * German use, where it might be the double flat, that is Heses (Riemann Musiklexikon, "Tonbezeichnung", from memory). `undefined` where
 * no letter of a note stands.
 */
export function letterNoteAt(text: string, start: number, naming: LetterNaming): LetterNote | undefined {
  const letter = text.charCodeAt(start) | 32;
  if (letter < 97 || letter > 104) return undefined;
  const natural = letter === 104 ? belowC : (naturals[letter - 97] as number);
  const at = start + 1;
  ending.lastIndex = at;
  const named = ending.exec(text);
  if (named) {
    const size = (named[1] ?? named[2]).match(/[ie]s/giu)?.length ?? 0;
    return { key: natural + (named[1] === undefined ? -size : size), at: ending.lastIndex };
  }
  shortEnding.lastIndex = at;
  const short = letter === 97 || letter === 101 ? shortEnding.exec(text) : null;
  if (short && (naming !== 'english' || short[1] !== undefined))
    return { key: natural - (short[1] === undefined ? 1 : 2), at: shortEnding.lastIndex };
  const signed = withSigns(text, at, natural);
  // `Bb` is B flat in any use.
  return naming === 'german' && letter === 98 && signed.at === at ? { key: natural - 1, at } : signed;
}

/** A note with up to two sharps or flats behind it. */
export function withSigns(text: string, from: number, natural: number): LetterNote {
  let [key, at] = [natural, from];
  for (; at < from + 2 && at < text.length; at++) {
    if (sharps.includes(text[at])) key++;
    else if (flats.includes(text[at])) key--;
    else break;
  }
  return { key, at };
}

const named = new RegExp(
  String.raw`(?<!\p{L})([a-h])(${noteEndings}|[#\u266fb\u266d])?(?:\s?[-\u2212]?\d|['\u2032,]{1,4}(?!\p{L}))`,
  'giu',
);
const longest = 60;
/** A cell that is H alone, of notes without octaves. */
const onlyH = new RegExp(String.raw`^\s*h(?:${wholeEndings})?\s*$`, 'iu');

/** What texts that hold names of notes show of how letters name them. */
export class LetterEvidence {
  #isH = false;
  #isEnded = false;
  #isDutch = false;
  #isPlainB = false;
  #isShortFlat = false;
  #isSharpS = false;

  look(text: string): void {
    if (text.length > longest) return;
    if (onlyH.test(text)) this.#isH = true;
    for (const [, letter, ending = ''] of text.matchAll(named)) {
      const [note, sign] = [letter.toLowerCase(), ending.toLowerCase()];
      const isEnding = /^[ie]s/.test(sign);
      if (note === 'h') this.#isH = true;
      if (isEnding) this.#isEnded = true;
      else if (/^s./.test(sign)) this.#isEnded = true;
      else if (sign === 's') this.#isShortFlat ||= note === 'e';
      if (note === 'b') {
        if (sign === '') this.#isPlainB = true;
        else this.#isDutch = true;
      }
      if (sign === 's' && /[cdfg]/.test(note)) this.#isSharpS = true;
    }
  }

  /** The use that the names follow; words of Dutch beside them tell that B is the note below C. */
  naming(isDutch = false): LetterNaming {
    if (this.#isH) return 'german';
    if (!this.#isEnded && !(this.#isShortFlat && !this.#isSharpS)) return 'english';
    return this.#isDutch || isDutch ? 'dutch' : 'german';
  }

  /** Whether B is read as the note below H though no H shows that. */
  get isOpen(): boolean {
    return this.#isPlainB && !this.#isH;
  }
}
