import type { ColumnMeaning, Unit } from '../meaning';

/** What a word in a cell says: of pan, of a loop, or of what starts a zone. */
export type CellWord =
  | 'left'
  | 'right'
  | 'centre'
  | 'no_loop'
  | 'one_shot'
  | 'loop_continuous'
  | 'loop_sustain'
  | 'alternate'
  | 'backward'
  | 'whole'
  | 'press'
  | 'release'
  | 'first'
  | 'legato';

/** Words at the ends of ranges. */
export interface RangeEndWords {
  /** Before the first of two numbers. */
  opening?: readonly string[];
  /** Before one number that is the least, or the greatest, of those meant. */
  from?: readonly string[];
  upTo?: readonly string[];
  /** The same where the number itself is not meant. */
  above?: readonly string[];
  below?: readonly string[];
  /** In a heading, for one end beside the other: alone they say little. */
  low?: readonly string[];
  high?: readonly string[];
}

/**
 * Words of sentences about a zone, as stems without accents, since sentences inflect them; a stem counts where a word begins with it, in
 * scripts without blanks anywhere.
 */
export interface ToldWords {
  /** What a sample does on its keys, and words for keys: `plays`, `covers`. */
  keys: readonly string[];
  root: readonly string[];
  velocities: readonly string[];
  /** Which way a level goes, and a tuning. */
  quieter: readonly string[];
  louder: readonly string[];
  up: readonly string[];
  down: readonly string[];
  /** How far off a sample is: the tuning that mends it goes the other way. */
  sharp: readonly string[];
  flat: readonly string[];
  /** Before the two ends of a range, as they are written; and what is joined to them behind. */
  first: readonly string[];
  last: readonly string[];
  /** Before the two ends of the keys that a sample is put on: `on`. */
  over?: readonly string[];
  behindFirst?: readonly string[];
  behindLast?: readonly string[];
}

/** Words of sentences that turn round what they say, or bound it. */
export interface TurningWords {
  /** With a verb: `not`, `never`. */
  not: readonly string[];
  /** With a noun: `kein`. `no` stands here, as it is a verb's word in some languages and in Portuguese means `in the`. */
  none: readonly string[];
  without: readonly string[];
  /** Before what is not meant: `except`, `unless`. */
  except: readonly string[];
  only: readonly string[];
  /** The same before one number alone; elsewhere they say little: `just`. */
  just?: readonly string[];
  /** With what has been done. */
  already: readonly string[];
}

/** Words of who puts a value right; `*` is any ending. */
export interface CorrectingWords {
  /** At the head of a correction, with a sign behind: `Correction:`. */
  title: readonly string[];
  /** Before the right value, or that it is right: `should be`, `correct`. */
  right: readonly string[];
  /** That a value is wrong. */
  wrong: readonly string[];
  /** Before or behind the value that does not count: `instead`. */
  instead: readonly string[];
  /** Between a wrong value and the right one, where they say more than elsewhere: `sorry`, `better`. */
  rather: readonly string[];
  /** Behind a value that is taken back, before another: `57 no, 58`. */
  no: readonly string[];
}

/**
 * The words of zone tables in one language. Add a language as a file of this shape and list it in `languages`.
 * Letter case, accents, spaces and punctuation do not count.
 */
export interface LanguageWords {
  /** Words that stand for one another; a phrase names them in braces. */
  parts: Readonly<Record<string, readonly string[]>>;
  /**
   * The headings of each meaning. `{low} {key}` stands for every pair of words of the two parts; two words are
   * understood the other way round too.
   */
  phrases: Readonly<Partial<Record<ColumnMeaning, readonly string[]>>>;
  /** Small words that headings may hold anywhere, such as articles. */
  fillers: readonly string[];
  /** First words of rows that sum up others. */
  totals: readonly string[];
  /** First words of lines that number the pages. */
  pages: readonly string[];
  /** Words before or behind one value that is the least or the most of a range, and words for all values. */
  limits: Readonly<Record<'least' | 'most' | 'all', readonly string[]>>;
  /** Words that say which end of a range is meant; a list may be left out. */
  ends: RangeEndWords;
  /** Words for the two ends of a range that say so only as a pair, in names of places. */
  pairs?: readonly (readonly [low: string, high: string])[];
  /** Words between the two ends of a range. */
  between: readonly string[];
  /** Words between two things that are meant both. */
  and: readonly string[];
  /** Words between a position and how many there are, as in `2 of 4`. */
  outOf: readonly string[];
  /** Words for a file, one and several. */
  files: readonly string[];
  /** What stands in place of a file where there is none, besides the words of `turning`. */
  empty: readonly string[];
  /** Words for the ending of a file's name. */
  endings: readonly string[];
  /** Names of places that hold a folder, without accents. */
  folders: readonly string[];
  /** What a cell says that is the same as the one above it. */
  ditto: readonly string[];
  cells: Readonly<Partial<Record<CellWord, readonly string[]>>>;
  /** Words that make a sentence speak of all zones; `*` is any ending. */
  every: readonly string[];
  /** Words for a loop; `*` is any beginning or ending. */
  loops: readonly string[];
  turning: TurningWords;
  correcting: CorrectingWords;
  /** What tells to leave a row or a file out, as a clause of its own: `ignore`, `not to be used`. */
  leaveOut: readonly string[];
  told: ToldWords;
  units: Readonly<Partial<Record<Unit, readonly string[]>>>;
}
