import type { Finding } from './finding';
import type { ParameterNames } from './parameterNames';
import type { Source } from './text/source';
import type { Span } from './text/span';
import { spanIn } from './text/span';
import type { VariableText } from './variables/variableText';

/** Numbers a parameter takes in {@link ParameterTable.cells}: name, start of the name, start and end of the value. */
export const parameterStride = 4;
/** Numbers a header takes in {@link HeaderTable.cells}: start and end of its tag, first parameter, parent, end of its body. */
export const headerStride = 5;

/** Headers in the order of the text, in flat buffers. */
export interface HeaderTable {
  count: number;
  kinds: Uint8Array;
  cells: Int32Array;
}

/** Parameters in the order of the text, in flat buffers. */
export interface ParameterTable {
  count: number;
  cells: Int32Array;
  /** The value as a number; NaN where the text is no plain decimal number. */
  numbers: Float64Array;
  /** Values that differ from the text at their span, because of variables or character references. */
  values: ReadonlyMap<number, string>;
  /** Ends of names that are written longer or shorter than they read, because of variables. */
  nameEnds: ReadonlyMap<number, number>;
  /** Values before variables were put in, where the text at their span does not tell. */
  withVariables?: ReadonlyMap<number, VariableText>;
  /** Where a notation writes all names and values in its own way: what differs from the text, in place of the two maps. */
  translated?: TranslatedParameters;
}

/** What parameters say in a notation that has names and units of its own, by parameter. */
export interface TranslatedParameters {
  /** Ends of the names in the text. */
  nameEnds: Int32Array;
  /** 1 where the value is the parameter's number and not the text at its span. */
  isNumber: Uint8Array;
  /** What had to be assumed to know a value, as a sentence. */
  assumed: ReadonlyMap<number, string>;
}

/** From `first` on, headers or parameters stand in the file `source`. */
export interface SourceRun {
  first: number;
  source: number;
}

/** A `#define`, an `#include` or a comment of the text, in the place where it stands. */
export interface Directive extends Span {
  kind: 'define' | 'include' | 'comment';
  /** The variable with its `$`, or the path as written with variables put in; empty for a comment. */
  name: string;
  /** Where {@link name} stands. */
  nameStart: number;
  nameEnd: number;
  /** The value of a variable, the path that an include reaches, or the text of a comment without its marks. */
  value: string;
  /** The value of a variable, or the path of an include, before variables were put in, where the text does not tell. */
  withVariables?: VariableText;
  /** The number of headers and parameters that stand before it. */
  headersBefore: number;
  parametersBefore: number;
}

/** Where the name of a directive stands: the variable of a `#define`, the path of an `#include`. */
export function directiveName({ source, nameStart, nameEnd }: Directive): Span {
  return spanIn(source, nameStart, nameEnd);
}

/** What a `<control>` header has set for the regions after it. */
export interface Control {
  header: number;
  defaultPath: string;
  /** Semitones added to every key of a region: `note_offset` and twelve times `octave_offset`. */
  keyOffset: number;
}

/** A parameter that is in force in a region, and the header that it comes from. */
export interface EffectiveParameter {
  /** The number of the canonical name. */
  name: number;
  parameter: number;
  header: number;
}

/** What a reader hands over; see `Instrument`. */
export interface InstrumentParts {
  format: 'sfz' | 'xml' | 'table';
  sources: readonly Source[];
  /** The sources that several includes bring in, so that what stands there once is there several times. */
  readOften: ReadonlySet<number>;
  names: ParameterNames;
  headers: HeaderTable;
  parameters: ParameterTable;
  headerRuns: readonly SourceRun[];
  parameterRuns: readonly SourceRun[];
  directives: readonly Directive[];
  findings: readonly Finding[];
}
