import type { Finding } from './finding';
import { HeaderKind, headerKindOf, headerNames } from './headerKinds';
import { HeaderRanges, keysOff, shiftKey } from './inForce/headerRanges';
import { LongHeaders } from './inForce/longHeaders';
import { lastAt, sourceAt } from './inForce/sourceRuns';
import type {
  Control,
  Directive,
  EffectiveParameter,
  HeaderTable,
  InstrumentParts,
  ParameterTable,
  SourceRun,
} from './instrumentParts';
import { headerStride, parameterStride } from './instrumentParts';
import { keyOfNoteName } from './keys';
import type { ParameterNames } from './parameterNames';
import { Parameter } from './parameterNames';
import { decimalText } from './text/decimalText';
import type { Source } from './text/source';
import type { Span } from './text/span';
import { spanIn } from './text/span';

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
  readonly #controlOfHeader: Int32Array | undefined;
  readonly #long = new LongHeaders(this);
  #regionNumbers: Int32Array | undefined;
  #sourceByPath: ReadonlyMap<string, Source> | undefined;

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

    const ranges = new HeaderRanges(this);
    this.regions = ranges.regions;
    this.lowKey = ranges.lowKey;
    this.highKey = ranges.highKey;
    this.lowVelocity = ranges.lowVelocity;
    this.highVelocity = ranges.highVelocity;
    this.sampleParameter = ranges.sampleParameter;
    this.controls = ranges.controls;
    this.#controlOfHeader = ranges.controlOf;
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
    const index = this.#long.indexOf(header);
    if (index) return index.get(name) ?? -1;
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
      const index = this.#long.indexOf(at);
      if (index) {
        const found = Math.max(index.get(name) ?? -1, byKey ? (index.get(Parameter.key) ?? -1) : -1);
        if (found >= 0) return found;
        continue;
      }
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

  /** The file of a path among those that were read; `undefined` where it was not. */
  sourceOf(path: string): Source | undefined {
    this.#sourceByPath ??= new Map(this.sources.map((source) => [source.path, source]));
    return this.#sourceByPath.get(path);
  }

  /** The name of a header as written; empty for opcodes that stand before any header. */
  headerName(header: number): string {
    const kind = this.kind(header);
    if (kind !== HeaderKind.unknown) return headerNames[kind] as string;
    const { source, start, end } = this.headerSpan(header);
    const tag = this.sources[source].text.slice(start, end);
    const name = /[^\s<>/]+/.exec(tag)?.[0] ?? '';
    // What only starts like a header of the format, such as `<region/>` in SFZ, is none, and must not become one.
    return headerKindOf(name) === HeaderKind.unknown ? name : tag.replace(/^<|>$/g, '');
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
    return this.controls[this.#controlOfHeader?.[header] ?? 0];
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
