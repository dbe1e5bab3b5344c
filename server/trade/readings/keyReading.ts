import { gluedRangeWords, rangeArrows, rangeWords } from '../rangeWords';
import { limitIn } from './limits';
import { readLinedKey } from './linedKeys';
import { withLatinNotes } from './lookalikes';
import type { LetterNaming, LetterNote } from './noteLetters';
import { LetterEvidence, letterNoteAt, withSigns } from './noteLetters';
import { flatWords, letterNote, linedNote, sharpWords, syllables } from './notePatterns';
import { maySpeakOfOctaves, spokenKeyIn } from './spokenOctaves';

/** A key as a cell gives it: as a number, by name, or both as in `60 (C4)`. */
export interface KeyReading {
  number: number | undefined;
  /** The key of the note name with middle C = C4 = 60; other conventions lie twelve keys up or down. */
  named: number | undefined;
}

/** Lowest and highest key of a cell; `single` where the cell holds one key. */
export interface KeyRangeReading {
  low: KeyReading;
  high: KeyReading;
  single: boolean;
  /** The end that the text leaves open; its key is then the last on that side. */
  open?: 'low' | 'high';
}

const longestSyllable = 4;

/**
 * How letters name notes. With marks, letter case, commas and primes alone say the octave, and a letter without a mark is the great
 * or the small octave: `C,`, `C`, `c`, `c'` (Helmholtz). With lines a number counts them: `C`, `c`, `c1` (middle C).
 */
export type NoteNaming = LetterNaming | `${LetterNaming} marks` | `${LetterNaming} lines`;

const longest = 60;
const longestList = 600;
const longestSign = 12;
const rangeSign = new RegExp(
  String.raw`^(?:\.{2,3}|…|${rangeArrows}|${rangeWords}(?=\s)|${gluedRangeWords}|[-\u2212\u2010\u2011\u2013\u2014\u301c~:\u00f7])`,
  'iu',
);
const minusSigns = '-\u2212\u2010\u2011\u2013\u2014';
/** Words for a sharp and a flat behind the name of a note. */
const signWord = new RegExp(String.raw`^[ \u00a0-]?(?:(${sharpWords})|(${flatWords}))(?!\p{L})`, 'iu');

/** The number of a key, with named ones counted by where middle C is; NaN where there is none. */
export function keyNumber(key: KeyReading | undefined, shift: number): number {
  return key?.number ?? (key?.named ?? Number.NaN) + shift;
}

/**
 * Reads a key: a note name or a whole number of up to three digits. Sharps are `#`, `♯` or `s`, flats `b` or `♭`;
 * the octave is −2..10, with any of the usual minus signs. `Cis`, `Des` and `H` are understood too, and `do` to `si`,
 * and octaves as in `c'` (middle C) and `C,`. `undefined` for anything else.
 */
export function readKey(text: string, naming: NoteNaming = 'english'): KeyReading | undefined {
  const range = readKeyRange(text, naming);
  return range?.single ? range.low : undefined;
}

/**
 * Reads a key or a range of keys: `C3-B3`, `C-1–G#2`, `1..63`, `36 to 47`, `60`, `60 (C4)`, `0x3C`; a list of keys that
 * follow one another: `60, 61, 62`; a range that is open at one end: `up to 47`, `C4+`. `undefined` for anything else. A
 * minus sign right behind the letter of a note belongs to its octave.
 */
export function readKeyRange(text: string, naming: NoteNaming = 'english'): KeyRangeReading | undefined {
  if (text.length === 0) return undefined;
  if (text.length > longest) return readList(text, naming);
  // `48..57 @55`: the root behind the keys.
  if (text.startsWith('@')) return readPair(text.slice(1), naming);
  return readPair(text, naming) ?? readList(text, naming) ?? readOpen(text, naming);
}

/** One key, or two with a sign between them. */
function readPair(text: string, naming: NoteNaming): KeyRangeReading | undefined {
  const scan = new KeyScan(text, naming);
  const low = scan.key();
  if (!low) return undefined;
  if (scan.atEnd()) return { low, high: low, single: true };
  if (!scan.rangeSign()) return undefined;
  const high = scan.key();
  if (!high || !scan.atEnd()) return undefined;
  const alike = (low.number !== undefined) === (high.number !== undefined);
  return alike ? { low, high, single: false } : undefined;
}

/** The keys of a list: `60, 61, 62` or `C3 D3 E3`; none for other text. */
export function keysInList(text: string, naming: NoteNaming = 'english'): KeyReading[] {
  if (text.length > longestList || !/\d[\s,;/+&]+\S/.test(text)) return [];
  const keys = text.split(/\s*[,;/+&]\s*|\s+/).map((part) => readPair(part, naming));
  return keys.every((key) => key?.single) ? keys.map((key) => (key as KeyRangeReading).low) : [];
}

/** A list of keys of which each is the next one. */
function readList(text: string, naming: NoteNaming): KeyRangeReading | undefined {
  const keys = keysInList(text, naming);
  const [low, high] = [keys[0], keys.at(-1)];
  if (!low || !high || keys.length < 2) return undefined;
  const isNext = (key: KeyReading, at: number) => {
    const before = keys[at - 1];
    if (!before) return true;
    const [one, other] = key.number === undefined ? [before.named, key.named] : [before.number, key.number];
    return one !== undefined && one + 1 === other;
  };
  return keys.every(isNext) ? { low, high, single: false } : undefined;
}

/** A range with one end, or with a word before the first of two. */
function readOpen(text: string, naming: NoteNaming): KeyRangeReading | undefined {
  const limit = limitIn(text);
  const key = limit && readPair(limit.value, naming);
  if (!limit || !key) return undefined;
  // `from 36 to 40`
  if (!key.single) return limit.end === 'least' && !limit.excluded ? key : undefined;
  const { end, excluded } = limit;
  const step = !excluded ? 0 : end === 'least' ? 1 : -1;
  const moved = (one: number | undefined) => (one === undefined ? undefined : one + step);
  const bound = { number: moved(key.low.number), named: moved(key.low.named) };
  return end === 'least'
    ? { low: bound, high: { number: 127, named: undefined }, single: false, open: 'high' }
    : { low: { number: 0, named: undefined }, high: bound, single: false, open: 'low' };
}

const linedStart = new RegExp(
  String.raw`^${linedNote}(?:[1-7]|['\u2032]{1,5}|,{1,3})?(?![\p{L}\d'\u2032])`,
  'u',
);

class KeyScan {
  #at = 0;
  #isWordy: boolean | undefined;
  readonly text: string;
  readonly #letters: LetterNaming;

  constructor(
    text: string,
    readonly naming: NoteNaming,
  ) {
    this.#letters = lettersOf(naming);
    this.text = withLatinNotes(text);
    this.#spaces();
  }

  atEnd(): boolean {
    this.#spaces();
    return this.#at >= this.text.length;
  }

  /** One key, with the same key in the other form behind it where there is one. */
  key(): KeyReading | undefined {
    this.#spaces();
    const first = this.#lined() ?? this.#spoken() ?? this.#name() ?? this.#number();
    if (!first) return undefined;
    const back = this.#at;
    this.#spaces();
    const sign = this.text[this.#at] ?? '';
    const bracket = sign === '(' || sign === '[';
    if (bracket || sign === '/' || sign === '=') this.#at++;
    this.#spaces();
    const second = first.number === undefined ? this.#number() : this.#name();
    if (second && bracket) {
      this.#spaces();
      if (!')]'.includes(this.text[this.#at] ?? ' ')) {
        this.#at = back;
        return first;
      }
      this.#at++;
    }
    if (!second) {
      this.#at = back;
      return first;
    }
    return { number: first.number ?? second.number, named: first.named ?? second.named };
  }

  rangeSign(): boolean {
    this.#spaces();
    const sign = rangeSign.exec(this.text.slice(this.#at, this.#at + longestSign));
    if (!sign) return false;
    this.#at += sign[0].length;
    return true;
  }

  /** A name whose octave the case of its letter and the number of its lines give. */
  #lined(): KeyReading | undefined {
    if (!this.naming.endsWith('lines')) return undefined;
    const word = linedStart.exec(this.text.slice(this.#at, this.#at + longestSign))?.[0];
    const key = word === undefined ? undefined : readLinedKey(word, this.#letters);
    if (word === undefined || key === undefined) return undefined;
    this.#at += word.length;
    return { number: key, named: undefined };
  }

  /** A name whose octave stands in words. */
  #spoken(): KeyReading | undefined {
    this.#isWordy ??= maySpeakOfOctaves(this.text);
    const found = this.#isWordy ? spokenKeyIn(this.text.slice(this.#at)) : undefined;
    if (!found) return undefined;
    this.#at += found.length;
    return { number: found.key, named: undefined };
  }

  #name(): KeyReading | undefined {
    const { text } = this;
    const lower = text[this.#at]?.toLowerCase() === text[this.#at];
    const semitones = this.#noteName();
    if (!semitones) return undefined;
    let { at } = semitones;
    const signs = /^(?:'{1,5}|\u2032{1,5}|,{1,3})/.exec(text.slice(at, at + 5))?.[0];
    // Only the marks say the octave: primes count up from the small octave, commas down from the great one.
    if (signs && lower !== signs.startsWith(',')) {
      this.#at = at + signs.length;
      const octave = lower ? 3 + signs.length : 2 - signs.length;
      return { number: (octave + 1) * 12 + semitones.key, named: undefined };
    }
    if (this.naming.endsWith('marks') && !isNameSign(text.charCodeAt(at))) {
      this.#at = at;
      return { number: (lower ? 4 : 3) * 12 + semitones.key, named: undefined };
    }
    if (text[at] === ' ') at++;
    const negative = at < text.length && minusSigns.includes(text[at]);
    if (negative) at++;
    const from = at;
    while (isDigit(text.charCodeAt(at))) at++;
    if (at === from || at - from > 2) return undefined;
    const octave = Number(text.slice(from, at)) * (negative ? -1 : 1);
    if (octave < -2 || octave > 10) return undefined;
    this.#at = at;
    return { number: undefined, named: (octave + 1) * 12 + semitones.key };
  }

  /** Semitones above C of the note named here, and where the name ends. */
  #noteName(): LetterNote | undefined {
    const { text } = this;
    const start = text.slice(this.#at, this.#at + longestSyllable).toLowerCase();
    const syllable = syllables.find(([name]) => start.startsWith(name));
    if (syllable) {
      const at = this.#at + syllable[0].length;
      return worded(text, at, syllable[1]) ?? withSigns(text, at, syllable[1]);
    }
    const note = letterNoteAt(text, this.#at, this.#letters);
    if (note?.at !== this.#at + 1) return note;
    // Beside a word for its sign B is the note below C, as in `B flat`.
    const natural = letterNoteAt(text, this.#at, 'english') ?? note;
    return worded(text, note.at, natural.key) ?? note;
  }

  /** Spreadsheets may give a whole number with an empty fraction: `60.0`, `60,00`. */
  #number(): KeyReading | undefined {
    const { text } = this;
    let at = this.#at;
    const hexadecimal = /^(?:0x|\$)([\da-f]{1,2})(?![\da-z])/i.exec(text.slice(at, at + 5));
    if (hexadecimal) {
      this.#at += hexadecimal[0].length;
      return { number: Number.parseInt(hexadecimal[1], 16), named: undefined };
    }
    while (isDigit(text.charCodeAt(at))) at++;
    if (at === this.#at || at - this.#at > 3) return undefined;
    const number = Number(text.slice(this.#at, at));
    const mark = text[at];
    if ((mark === '.' || mark === ',') && text[at + 1] === '0') {
      at++;
      while (text[at] === '0') at++;
      if (isDigit(text.charCodeAt(at))) return undefined;
    }
    this.#at = at;
    return { number, named: undefined };
  }

  #spaces(): void {
    while (this.text[this.#at] === ' ' || this.text[this.#at] === '\u00a0') this.#at++;
  }
}

/** A note with a word for a sharp or a flat behind it. */
function worded(text: string, at: number, natural: number): LetterNote | undefined {
  const said = signWord.exec(text.slice(at, at + longestSign));
  return said ? { key: natural + (said[1] ? 1 : -1), at: at + said[0].length } : undefined;
}

function lettersOf(naming: NoteNaming): LetterNaming {
  if (naming.startsWith('german')) return 'german';
  return naming.startsWith('dutch') ? 'dutch' : 'english';
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** How letters name the notes of some texts. */
export function lettersIn(texts: Iterable<string>): LetterEvidence {
  const evidence = new LetterEvidence();
  for (const text of texts) evidence.look(withLatinNotes(text));
  return evidence;
}

/** Numbers of a file name that count something else: a velocity, a turn, a tempo, bits, kHz. */
const countedBefore = /(?:^|[^a-z])(?:v|vel|velo|velocity|rr|take|tk|bpm|ver|version)[\s_.-]?$/i;
const countedBehind = /^\s?(?:bits?|k|k?hz|bpm|db|ms|s|st|ct|%|rr)(?![a-z])/i;

/** The numbers 0..127 in a file name that stand apart from other digits, of two or three digits: `pad_060.wav`. */
export function keyNumbersInFileName(name: string): number[] {
  const stem = name.slice(Math.max(0, name.length - 200)).replace(/\.\w{1,5}$/, '');
  const keys: number[] = [];
  for (const { 0: digits, index } of stem.matchAll(/(?<!\d)\d{2,3}(?!\d)/g)) {
    const isCounted =
      countedBefore.test(stem.slice(Math.max(0, index - 12), index)) ||
      countedBehind.test(stem.slice(index + digits.length, index + digits.length + 6));
    if (!isCounted && Number(digits) <= 127) keys.push(Number(digits));
  }
  return keys;
}

/** A note in a file name; H is none, as it counts what is hit hard. */
const inFileName = new RegExp(
  String.raw`(?<![A-Za-z0-9#\u266f])(?![Hh])${letterNote}-?\d{1,2}(?![A-Za-z0-9])`,
  'g',
);

/**
 * The note names in a file name, as keys with middle C = C4 = 60: those that stand apart from other letters and
 * digits, as in `Soft_C#3_2.wav`.
 */
export function notesInFileName(name: string): number[] {
  const stem = name.slice(Math.max(0, name.length - 200)).replace(/\.\w{1,5}$/, '');
  const keys: number[] = [];
  for (const match of stem.matchAll(inFileName)) {
    const key = readKey(match[0])?.named;
    if (key !== undefined) keys.push(key);
  }
  return keys;
}

const linedName = new RegExp(`^(?=[a-h])${linedNote}[1-6]$`, 'u');
const markedName = new RegExp(String.raw`^${letterNote}(['\u2032]{1,5}|,{1,3})?$`, 'u');

/** Whether a text is a note in small letters with one digit, which may count its lines: `c1`, `fis2`. */
export function isLinedName(text: string): boolean {
  return linedName.test(withLatinNotes(text));
}

/** Whether a text is the name of a note without an octave: `C`, `fis`; and whether it has a mark for one: `c'`, `C,`. */
export function octaveMarkOf(text: string): 'none' | 'mark' | undefined {
  const match = markedName.exec(withLatinNotes(text));
  return match ? (match[1] ? 'mark' : 'none') : undefined;
}

function isNameSign(code: number): boolean {
  return isDigit(code) || (code > 64 && code !== 93);
}
