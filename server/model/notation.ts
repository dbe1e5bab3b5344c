import type { TextEdit } from './finding';
import type { FormatStyle } from './formatStyle';
import type { HeaderKind, HeaderName } from './headerKinds';
import type { Instrument } from './instrument';
import type { Directive } from './instrumentParts';
import type { ConversionNote } from './notes';
import type { SampleFacts } from './samples';
import type { Steps } from './steps';
import type { Span } from './text/span';

/**
 * What came of looking for an included file: its text, that there is none, that it is not read, with the reason as the rest
 * of a sentence about it and what to do, or that it has not been looked at yet.
 */
export type Included =
  | { kind: 'text'; text: string }
  | { kind: 'missing' }
  | { kind: 'refused'; reason: string }
  | { kind: 'pending' };

/** What a notation that counts in seconds needs to know of a sample, by the path that `Instrument.samplePath` gives. */
export type SampleFactsLookup = (path: string) => SampleFacts | undefined;

export interface ReadOptions {
  /** The path of the text, with `/`; includes are found from its folder. */
  path: string;
  /** Gives the text of an included file by its path; without it every include is `pending`. */
  include?: (path: string) => Included;
  /** What the header of a sample file says, by its path relative to the folder of the text; `undefined` while it is not known. */
  sampleFacts?: SampleFactsLookup;
  /** What an earlier version of the text gave; a reader may go by it where the two differ in little. */
  previous?: Instrument | undefined;
}

/** What the cursor is on. Offsets are in the main file. */
export type Place =
  /** A header's tag; `header` is −1 while it is being typed. */
  | { kind: 'header'; start: number; end: number; header: number }
  /** A parameter's name, or the empty place where one could start; `parameter` is −1 while it is being typed. */
  | { kind: 'name'; start: number; end: number; header: number; parameter: number }
  /** A parameter's value. */
  | { kind: 'value'; start: number; end: number; header: number; parameter: number; name: string }
  /** The path of an include. */
  | { kind: 'include'; start: number; end: number }
  /** A variable, with its `$`, where it is defined or used. */
  | { kind: 'variable'; start: number; end: number; name: string }
  /** A comment or another place where nothing can be offered. */
  | { kind: 'other' };

/** A change to a document's text in terms of the instrument. */
export type Change =
  /** Gives a header a value of its own: replaces the one it has or adds it. */
  | { kind: 'set'; header: number; name: string; value: string }
  /** Takes a parameter out. */
  | { kind: 'remove'; parameter: number }
  /** Writes a parameter under another name. */
  | { kind: 'rename'; parameter: number; name: string }
  /** Takes a header with all its own parameters out. */
  | { kind: 'removeHeader'; header: number }
  /** Writes the headers of another instrument where `offset` stands, in the document's own style. */
  | { kind: 'insert'; offset: number; instrument: Instrument }
  /** Takes parameters out of a header and adds others behind those that stay. */
  | { kind: 'revise'; header: number; remove: readonly number[]; add: readonly NewParameter[] }
  /** Defines a variable, named with its `$`, before all that could use it. */
  | { kind: 'define'; name: string; value: string }
  /** Puts regions of one scope, from the first to the last header, into a group of their own with what theirs sets. */
  | { kind: 'group'; first: number; last: number; sets: readonly NewParameter[] }
  /** Puts an include of `path` in the place of regions of one group; their text is the new file of the result. */
  | { kind: 'moveOut'; first: number; last: number; path: string }
  /** Puts what an included file holds in the place of its include; no edits where that cannot be done exactly. */
  | { kind: 'inline'; directive: Directive };

/** A parameter to be written; the value is written as it is, so that `$` starts a variable. */
export interface NewParameter {
  name: string;
  value: string;
}

export interface WriteOptions {
  /** Line end of the text; LF where nothing is said. */
  lineEnd?: '\n' | '\r\n';
  /** The folder of the instrument and that of the text to be written, absolute with `/`, so that sample paths still lead to the files. */
  move?: { from: string; to: string };
  /** What the header of a sample file says, by its path in the instrument. */
  sampleFacts?: SampleFactsLookup;
  /**
   * Whether variables and includes are kept as such, where the notation has them and the regions stay the same by it, or
   * written out, as where nothing is said.
   */
  directives?: 'keep' | 'inline';
  /** Regions that are not written, in a notation with places for some values alone. */
  leaveOut?: ReadonlySet<number>;
  /** Notes on parameters that were taken on reading; where these are written is put into the notes. */
  readingNotes?: ReadonlyMap<number, readonly ConversionNote[]>;
}

/** Text made from an instrument, and what could not be carried over exactly. */
export interface Written {
  text: string;
  /** The text in pieces, from which it is made when it is asked for; missing where it was made at once. */
  pieces?: readonly string[];
  notes: ConversionNote[];
  /** How many values were carried over exactly, those of included files that are kept among them. */
  kept?: number;
}

/** A change as text edits, with notes where the change could not be made exactly. */
export interface Edited {
  edits: TextEdit[];
  notes: ConversionNote[];
  /** The text of a file that the change needs. */
  newFile?: string;
}

/** How a notation spells what a person starts to type; where there are two texts, the cursor belongs between them. */
export interface Spelling {
  /** A parameter without its value; `at` is where it is to stand. */
  parameter(name: string, at?: { text: string; start: number }): [before: string, after: string];
  /** A value as it is written; where it takes the place of another, `at` is where that one starts in which text. */
  value(text: string, at?: { text: string; start: number }): string;
  /**
   * A value of a parameter in the form that the notation gives it, where that is one of its own; `typed` is what stands
   * there already. `undefined` where the form has no such value.
   */
  inForm?(name: string, value: string, typed: string): string | undefined;
  /**
   * A header from its name on; `rest` is some of what stands behind it, of which it takes the place of the first `taken`
   * characters, such as a bracket that an editor has put there by itself.
   */
  header(name: string, rest: string): [before: string, after: string, taken?: number];
  /** A whole header where a parameter could start, if one can stand there. */
  headerAmongNames?(name: string): string;
}

/** Places beside regions that say something of their samples: folders at what is around them, and lists that they refer to. */
export interface SamplePlaces {
  /** The folder that a header's own element names, the outermost element for −1, as it is written; `undefined` where it names none. */
  folderAt(instrument: Instrument, header: number): string | undefined;
  /** The edits that make a header name another folder, given as {@link Notation.read} would join it, in the way in which it names one. */
  setFolder(instrument: Instrument, header: number, folder: string): TextEdit[];
  /**
   * The edits after which the list that regions refer to has an entry for each sample, in the place of the entries that only the
   * `examples` among the regions refer to; none where there is no list.
   */
  relist(instrument: Instrument, examples: ReadonlySet<number>, samples: readonly EntrySample[]): Edited;
}

/** A sample of a list, with the values by canonical name that all regions which play it have in common. */
export interface EntrySample {
  path: string;
  values: ReadonlyMap<string, string>;
}

/**
 * A way of writing an instrument as text. What works on instruments asks a notation for these and never
 * looks into its syntax, so that a feature written once works in every notation.
 */
export interface Notation {
  readonly format: 'sfz' | 'xml';
  /** Reads text; never throws. What makes no sense is among the instrument's findings and reading goes on. */
  read(text: string, options: ReadOptions): Instrument;
  /** As {@link read}, in steps. */
  readInSteps(text: string, options: ReadOptions): Steps<Instrument>;
  /** What stands at an offset of the main file. */
  placeAt(instrument: Instrument, offset: number): Place;
  /** The text edits, in the main file, that make a change. */
  edit(instrument: Instrument, change: Change): Edited;
  /** As {@link edit} with an `insert`, in steps. */
  insertInSteps(instrument: Instrument, offset: number, inserted: Instrument): Steps<Edited>;
  /** The whole instrument as one text of this notation. */
  write(instrument: Instrument, options?: WriteOptions): Written;
  /** As {@link write}, in steps. */
  writeInSteps(instrument: Instrument, options?: WriteOptions): Steps<Written>;
  /**
   * The text edits, in the main file, that lay it out in a style. What the text means stays the same, as it does when only
   * some of the edits are made. Lines with syntax errors are left as they are. With `near`, only edits in and around that
   * stretch are answered, quicker; columns are then aligned within what is around.
   */
  layOut(instrument: Instrument, style: FormatStyle, near?: { start: number; end: number }): TextEdit[];
  readonly spelling: Spelling;
  /** The folder that samples are written from, relative to that of the text and without a slash at its end, where it is another. */
  readonly sampleFolder?: string;
  /** How samples are named beside the regions that play them, in a notation that does so. */
  readonly samplePlaces?: SamplePlaces;
  /** The edits of the second text that keep numbers true by which the first says how many elements stand in one. */
  countEdits?(before: Instrument, after: Instrument): TextEdit[];
  /**
   * What stands in a text and is not read, in a notation that does not know all of what may stand there; without the values that
   * start where `except` says.
   */
  unread?(instrument: Instrument, except?: ReadonlySet<number>): ConversionNote[];
  /** The values in some stretches of a text that are not read and in which elements of one name differ. */
  differing?(instrument: Instrument, stretches: readonly Span[]): DifferingValues;
  /** The headers that can be written, in a notation that has a place only for some. */
  readonly headers?: readonly HeaderName[];
  /**
   * The parameters, by canonical name, that a kind of header can be given, in a notation that has a place only for some;
   * `unknown` stands for any header. With `at`, those that can be written there.
   */
  parameters?(kind: HeaderKind, at?: { text: string; start: number }): readonly string[];
  /** Where the scale that a parameter is written in ends, in a notation whose scales do. */
  scaleEnd?(parameter: string): ScaleEnd | undefined;
}

/** Values that are not read and in which elements of one name differ, so that none of them holds for a further element. */
export interface DifferingValues {
  /** Where they start. */
  starts: ReadonlySet<number>;
  /** What becomes of them, place by place. */
  told: readonly Pick<ConversionNote, 'kind' | 'message'>[];
  /** Whether one of them says which keyswitch counts before any is pressed. */
  saysFirst: boolean;
  /** The edits that leave them out of copies in a text, or put what means nothing in their place. */
  edits(instrument: Instrument, copies: readonly CopiedStretch[]): TextEdit[];
}

/** A stretch of a text that is a copy. */
export interface CopiedStretch {
  span: Span;
  /** Whether it sounds before a keyswitch is pressed; `undefined` where it has none. */
  isFirst: boolean | undefined;
}

/** The greatest value that can be written, and the number that stands for it. */
export interface ScaleEnd {
  value: number;
  written: string;
}
