import type { Finding } from './finding';
import { HeaderKind, headerNames } from './headerKinds';
import { keyOfNoteName } from './keys';
import type { ParameterNames } from './parameterNames';
import { Parameter } from './parameterNames';
import { decimalText } from './text/decimalText';
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

/** What a reader hands over; see {@link Instrument}. */
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

const notSet = -32768;
/** Low or high key that says that keys do not trigger the region. */
export const keysOff = -1;

/**
 * An instrument as a reader found it: its headers and parameters with the spans of text that they came from, and
 * for each region the values in force after inheritance. A header is known by its position in the text; regions are
 * headers of that kind. Parameters carry the names and units of the open SFZ format.
 */
export class Instrument {
  readonly format: InstrumentParts['format'];
  readonly sources: readonly Source[];
  readonly readOften: InstrumentParts['readOften'];
  readonly names: ParameterNames;
  readonly headers: HeaderTable;
  readonly parameters: ParameterTable;
  readonly directives: readonly Directive[];
  /** What the reader could not make sense of. */
  readonly findings: readonly Finding[];
  /** The headers that are regions, in the order of the text. */
  readonly regions: Int32Array;
  /** Lowest and highest key of each header, 0..127, or {@link keysOff}; note and octave offset added. */
  readonly lowKey: Int16Array;
  readonly highKey: Int16Array;
  /** Lowest and highest velocity of each header. */
  readonly lowVelocity: Int16Array;
  readonly highVelocity: Int16Array;
  /** The parameter that names each header's sample, or −1. */
  readonly sampleParameter: Int32Array;
  readonly controls: readonly Control[];

  readonly #headerRuns: readonly SourceRun[];
  readonly #parameterRuns: readonly SourceRun[];
  readonly #controlOfRegion: Int32Array | undefined;
  #regionNumbers: Int32Array | undefined;

  constructor(parts: InstrumentParts) {
    this.format = parts.format;
    this.sources = parts.sources;
    this.readOften = parts.readOften;
    this.names = parts.names;
    this.headers = parts.headers;
    this.parameters = parts.parameters;
    this.directives = parts.directives;
    this.findings = parts.findings;
    this.#headerRuns = parts.headerRuns;
    this.#parameterRuns = parts.parameterRuns;

    const { count, kinds } = parts.headers;
    this.lowKey = new Int16Array(count);
    this.highKey = new Int16Array(count);
    this.lowVelocity = new Int16Array(count);
    this.highVelocity = new Int16Array(count);
    this.sampleParameter = new Int32Array(count);
    let regionCount = 0;
    for (let header = 0; header < count; header++) if (kinds[header] === HeaderKind.region) regionCount++;
    this.regions = new Int32Array(regionCount);
    const controls: Control[] = [{ header: -1, defaultPath: '', keyOffset: 0 }];
    this.controls = controls;
    this.#controlOfRegion = this.#resolve(controls);
  }

  /** One pass over headers and parameters: ranges, samples and control states of all headers. */
  #resolve(controls: Control[]): Int32Array | undefined {
    const { count, kinds, cells: headerCells } = this.headers;
    const { cells, numbers } = this.parameters;
    const { names, lowKey, highKey, lowVelocity, highVelocity, sampleParameter, regions } = this;
    const controlOf = new Int32Array(count);
    let control = 0;
    let region = 0;
    for (let header = 0; header < count; header++) {
      const kind = kinds[header];
      const at = header * headerStride;
      const parent = headerCells[at + 3];
      const first = headerCells[at + 2];
      const end = header + 1 < count ? headerCells[at + headerStride + 2] : this.parameters.count;
      let low: number = notSet;
      let high: number = notSet;
      let lowVel = 1;
      let highVel = 127;
      let sample = -1;
      if (parent >= 0) {
        low = lowKey[parent];
        high = highKey[parent];
        lowVel = lowVelocity[parent];
        highVel = highVelocity[parent];
        sample = sampleParameter[parent];
      }
      for (let parameter = first; parameter < end; parameter++) {
        const name = names.canonical(cells[parameter * parameterStride]);
        if (name > Parameter.hivel) continue;
        if (name === Parameter.sample) {
          sample = parameter;
          continue;
        }
        if (name === Parameter.pitch_keycenter) continue;
        let value = numbers[parameter];
        if (Number.isNaN(value)) value = keyOfNoteName(this.valueText(parameter)) ?? Number.NaN;
        if (!(value >= -1 && value <= 127)) continue;
        if (name === Parameter.lokey) low = value;
        else if (name === Parameter.hikey) high = value;
        else if (name === Parameter.key) low = high = value;
        else if (name === Parameter.lovel) lowVel = value;
        else highVel = value;
      }
      lowVelocity[header] = lowVel;
      highVelocity[header] = highVel;
      sampleParameter[header] = sample;
      controlOf[header] = control;
      if (kind === HeaderKind.region) {
        regions[region++] = header;
        const offset = controls[control].keyOffset;
        lowKey[header] = low === notSet ? 0 : shiftKey(low, offset);
        highKey[header] = high === notSet ? 127 : shiftKey(high, offset);
      } else {
        lowKey[header] = low;
        highKey[header] = high;
        if (kind === HeaderKind.control) {
          controls.push(this.#controlAfter(header, controls[control]));
          control = controls.length - 1;
        }
      }
    }
    for (let header = 0; header < count; header++) {
      if (lowKey[header] === notSet) lowKey[header] = 0;
      if (highKey[header] === notSet) highKey[header] = 127;
    }
    return controls.length > 1 ? controlOf : undefined;
  }

  /** A later `<control>` resets `default_path`; offsets stay until they are set anew. */
  #controlAfter(header: number, before: Control): Control {
    const path = this.own(header, Parameter.default_path);
    const note = this.own(header, Parameter.note_offset);
    const octave = this.own(header, Parameter.octave_offset);
    let keyOffset = before.keyOffset;
    if (note >= 0 || octave >= 0) {
      keyOffset =
        (note >= 0 ? wholeOr0(this.number(note)) : 0) +
        12 * (octave >= 0 ? wholeOr0(this.number(octave)) : 0);
    }
    return { header, defaultPath: path >= 0 ? this.valueText(path) : '', keyOffset };
  }

  kind(header: number): HeaderKind {
    return this.headers.kinds[header] as HeaderKind;
  }

  /** The header around this one that it inherits from, or −1. */
  parent(header: number): number {
    return this.headers.cells[header * headerStride + 3];
  }

  firstParameter(header: number): number {
    return this.headers.cells[header * headerStride + 2];
  }

  /** One past the header's last own parameter. */
  endParameter(header: number): number {
    return header + 1 < this.headers.count
      ? this.headers.cells[(header + 1) * headerStride + 2]
      : this.parameters.count;
  }

  /** The tag of a header: `<region>`, or the start of an element up to the end of its name. */
  headerSpan(header: number): Span {
    const at = header * headerStride;
    return spanIn(this.headerSource(header), this.headers.cells[at], this.headers.cells[at + 1]);
  }

  /**
   * A header with what belongs to it in its own file: in SFZ up to its last parameter there, in XML the whole element. What an
   * include in that stretch brings in belongs to it too, and an SFZ header of an included file can go on behind the include.
   */
  bodySpan(header: number): Span {
    const at = header * headerStride;
    return spanIn(
      this.headerSource(header),
      this.headers.cells[at],
      Math.max(this.headers.cells[at + 1], this.headers.cells[at + 4]),
    );
  }

  /** Whether a header and all that it sets stand in one file. */
  isInOneFile(header: number): boolean {
    const source = this.headerSource(header);
    const end = this.endParameter(header);
    for (let parameter = this.firstParameter(header); parameter < end; parameter++)
      if (this.parameterSource(parameter) !== source) return false;
    return true;
  }

  headerSource(header: number): number {
    return sourceAt(this.#headerRuns, header);
  }

  parameterSource(parameter: number): number {
    return sourceAt(this.#parameterRuns, parameter);
  }

  /** The number of the parameter's name as written; see {@link ParameterNames}. */
  name(parameter: number): number {
    return this.parameters.cells[parameter * parameterStride];
  }

  /** The number of the parameter's canonical name. */
  canonicalName(parameter: number): number {
    return this.names.canonical(this.name(parameter));
  }

  /** Where the name stands; in a table no name does, and it is the value that stands for both. */
  nameSpan(parameter: number): Span {
    if (this.format === 'table') return this.valueSpan(parameter);
    const at = parameter * parameterStride;
    const start = this.parameters.cells[at + 1];
    const end =
      this.parameters.translated?.nameEnds[parameter] ??
      this.parameters.nameEnds.get(parameter) ??
      start + this.names.text(this.parameters.cells[at]).length;
    return spanIn(this.parameterSource(parameter), start, end);
  }

  valueSpan(parameter: number): Span {
    const at = parameter * parameterStride;
    return spanIn(
      this.parameterSource(parameter),
      this.parameters.cells[at + 2],
      this.parameters.cells[at + 3],
    );
  }

  /** From the start of the name to the end of the value. */
  parameterSpan(parameter: number): Span {
    const at = parameter * parameterStride;
    return spanIn(
      this.parameterSource(parameter),
      this.parameters.cells[at + 1],
      this.parameters.cells[at + 3],
    );
  }

  /** The value with variables and character references put in. */
  valueText(parameter: number): string {
    if (this.parameters.translated?.isNumber[parameter] === 1) return decimalText(this.number(parameter));
    const value = this.parameters.values.get(parameter);
    if (value !== undefined) return value;
    const at = parameter * parameterStride;
    const source = this.sources[this.parameterSource(parameter)];
    return source.text.slice(this.parameters.cells[at + 2], this.parameters.cells[at + 3]);
  }

  /** The value as a plain decimal number, or NaN. Note names are not numbers here; see {@link keyNumber}. */
  number(parameter: number): number {
    return this.parameters.numbers[parameter];
  }

  /** The value as a key: a number as it stands, or the key of a note name; NaN for anything else. */
  keyNumber(parameter: number): number {
    const value = this.number(parameter);
    return Number.isNaN(value) ? (keyOfNoteName(this.valueText(parameter)) ?? Number.NaN) : value;
  }

  /** The header's own parameter of a canonical name (the last one counts), or −1. */
  own(header: number, name: number): number {
    const first = this.firstParameter(header);
    for (let parameter = this.endParameter(header) - 1; parameter >= first; parameter--) {
      if (this.canonicalName(parameter) === name) return parameter;
    }
    return -1;
  }

  /**
   * The parameter of a canonical name that is in force in a header: its own, else the one of the nearest header
   * around it; −1 where none is set. For low key, high key and root key that may be a `key` parameter.
   */
  effective(header: number, name: number): number {
    const byKey = name === Parameter.lokey || name === Parameter.hikey || name === Parameter.pitch_keycenter;
    for (let at = header; at >= 0; at = this.parent(at)) {
      const first = this.firstParameter(at);
      for (let parameter = this.endParameter(at) - 1; parameter >= first; parameter--) {
        const canonical = this.canonicalName(parameter);
        if (canonical === name || (byKey && canonical === Parameter.key)) return parameter;
      }
    }
    return -1;
  }

  /**
   * All parameters in force in a header, one for each canonical name, outermost first. `key` appears as
   * `lokey`, `hikey` and `pitch_keycenter`.
   */
  effectiveParameters(header: number): EffectiveParameter[] {
    const chain: number[] = [];
    for (let at = header; at >= 0; at = this.parent(at)) chain.push(at);
    const found = new Map<number, EffectiveParameter>();
    for (let level = chain.length - 1; level >= 0; level--) {
      const at = chain[level];
      const end = this.endParameter(at);
      for (let parameter = this.firstParameter(at); parameter < end; parameter++) {
        const canonical = this.canonicalName(parameter);
        if (canonical === Parameter.key) {
          for (const name of [Parameter.lokey, Parameter.hikey, Parameter.pitch_keycenter]) {
            found.set(name, { name, parameter, header: at });
          }
        } else found.set(canonical, { name: canonical, parameter, header: at });
      }
    }
    return [...found.values()];
  }

  /** The name of a header as written; empty for opcodes that stand before any header. */
  headerName(header: number): string {
    const kind = this.kind(header);
    if (kind !== HeaderKind.unknown) return headerNames[kind] as string;
    const { source, start, end } = this.headerSpan(header);
    return /[^\s<>/]+/.exec(this.sources[source].text.slice(start, end))?.[0] ?? '';
  }

  /** The header that a parameter stands in. */
  headerOfParameter(parameter: number): number {
    let low = 0;
    let high = this.headers.count;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.firstParameter(middle) <= parameter) low = middle;
      else high = middle;
    }
    return low;
  }

  /** The header of a kind that a region lies in, or −1. */
  enclosing(header: number, kind: HeaderKind): number {
    let at = header;
    while (at >= 0 && this.kind(at) !== kind) at = this.parent(at);
    return at;
  }

  /** The last parameter of a file that starts at or before an offset, or −1. */
  parameterAt(source: number, offset: number): number {
    return lastAt(this.#parameterRuns, this.parameters.count, source, (parameter) => {
      return this.parameters.cells[parameter * parameterStride + 1] <= offset;
    });
  }

  /** The last header of a file that starts at or before an offset, or −1. */
  headerAt(source: number, offset: number): number {
    return lastAt(this.#headerRuns, this.headers.count, source, (header) => {
      return this.headers.cells[header * headerStride] <= offset;
    });
  }

  /** What `<control>` headers have set where a header stands. */
  control(header: number): Control {
    return this.controls[this.#controlOfRegion?.[header] ?? 0];
  }

  /** What `<control>` headers have set for a header that would open at an offset of a file. */
  controlAt(source: number, offset: number): Control {
    const header = this.headerAt(source, offset);
    return this.controls.findLast((control) => control.header <= header) as Control;
  }

  /** The root key of a region, 0..127: note and octave offset added; 60 where nothing is set. */
  rootKey(region: number): number {
    const parameter = this.effective(region, Parameter.pitch_keycenter);
    const value = parameter >= 0 ? this.keyNumber(parameter) : Number.NaN;
    return value >= 0 && value <= 127 ? shiftKey(value, this.control(region).keyOffset) : 60;
  }

  /**
   * The path of a region's sample relative to the folder of the instrument file: `default_path` put before it and
   * every `\` made a `/`. A generator such as `*sine` is answered as it is; `undefined` where no sample is set.
   */
  samplePath(region: number): string | undefined {
    const parameter = this.sampleParameter[region];
    if (parameter < 0) return undefined;
    const value = this.valueText(parameter);
    if (value.startsWith('*')) return value;
    const path = this.control(region).defaultPath + value;
    return path.includes('\\') ? path.replaceAll('\\', '/') : path;
  }

  /** The label of the group that a region came from, else of its master or global; `undefined` where there is none. */
  groupLabel(region: number): string | undefined {
    for (const name of [Parameter.group_label, Parameter.master_label, Parameter.global_label]) {
      const parameter = this.effective(region, name);
      if (parameter >= 0) return this.valueText(parameter);
    }
    return undefined;
  }

  /** The position of a region header among the regions, or −1 for a header that is no region. */
  regionNumber(header: number): number {
    if (!this.#regionNumbers) {
      this.#regionNumbers = new Int32Array(this.headers.count).fill(-1);
      for (let number = 0; number < this.regions.length; number++) {
        this.#regionNumbers[this.regions[number]] = number;
      }
    }
    return this.#regionNumbers[header] ?? -1;
  }
}

function shiftKey(key: number, offset: number): number {
  if (key === keysOff || offset === 0) return key;
  return Math.max(0, Math.min(127, key + offset));
}

function wholeOr0(value: number): number {
  return Number.isNaN(value) ? 0 : Math.trunc(value);
}

function sourceAt(runs: readonly SourceRun[], position: number): number {
  let at = runs.length - 1;
  if (at <= 0) return 0;
  let low = 0;
  while (at > low) {
    const middle = (low + at + 1) >> 1;
    if (runs[middle].first <= position) low = middle;
    else at = middle - 1;
  }
  return runs[low].source;
}

/** The last position in the runs of a source for which `holds`; it holds for none, or up to some position, within a source. */
function lastAt(
  runs: readonly SourceRun[],
  count: number,
  source: number,
  holds: (position: number) => boolean,
): number {
  for (let run = runs.length - 1; run >= 0; run--) {
    const { first, source: file } = runs[run];
    if (file !== source) continue;
    let low = first;
    let high = runs[run + 1]?.first ?? count;
    if (low >= high || !holds(low)) continue;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (holds(middle)) low = middle;
      else high = middle;
    }
    return low;
  }
  return -1;
}
