import type { Finding } from './finding';
import { HeaderKind } from './headerKinds';
import { Instrument } from './instrument';
import type { Directive, InstrumentParts, SourceRun, TranslatedParameters } from './instrumentParts';
import { headerStride, parameterStride } from './instrumentParts';
import type { ParameterNames } from './parameterNames';
import { sharedParameterNames } from './parameterNames';
import { Source } from './text/source';
import type { InSomeFile } from './text/span';
import { standingIn } from './text/span';
import type { VariableText } from './variables/variableText';
import { counted } from './wording/counted';

/** The headers that a region would inherit from at some point of the text; −1 where there is none. */
export interface Scope {
  global: number;
  master: number;
  group: number;
}

/**
 * The header that one of a kind inherits from where `scope` is in force, or −1. A header that passes values on is in
 * force from then on: `scope` is changed.
 */
export function parentOf(kind: HeaderKind, header: number, scope: Scope): number {
  switch (kind) {
    case HeaderKind.region:
      return scope.group >= 0 ? scope.group : scope.master >= 0 ? scope.master : scope.global;
    case HeaderKind.group:
      scope.group = header;
      return scope.master >= 0 ? scope.master : scope.global;
    case HeaderKind.master:
      scope.master = header;
      scope.group = -1;
      return scope.global;
    case HeaderKind.global:
      scope.global = header;
      scope.master = -1;
      scope.group = -1;
      return -1;
    default:
      return -1;
  }
}

/**
 * Few texts have a parameter in fewer characters. Room that is not used takes no memory, while growing takes that of the old table and
 * the new one.
 */
const perParameter = 12;

/** A reader reports at most this many findings of its own; a text that is no instrument would give millions. */
export const mostFindings = 1000;

/**
 * Collects what a reader finds, in the order of the text, into an {@link Instrument}. The reader opens a source, opens
 * headers and adds parameters; each parameter belongs to the header opened last. Inheritance follows from the order:
 * a region inherits from the group, master and global that are in force when it opens.
 */
export class InstrumentBuilder {
  readonly names: ParameterNames = sharedParameterNames();
  readonly #format: InstrumentParts['format'];
  readonly #sources: Source[] = [];
  readonly #sourceOfPath = new Map<string, number>();
  readonly #headerRuns: SourceRun[] = [];
  readonly #parameterRuns: SourceRun[] = [];
  readonly #directives: Directive[] = [];
  readonly #findings: Finding[] = [];
  readonly #values = new Map<number, string>();
  readonly #nameEnds = new Map<number, number>();
  readonly #withVariables = new Map<number, VariableText>();
  #findingsLeftOut = 0;
  #kinds: Uint8Array;
  #headerCells: Int32Array;
  #headerCount = 0;
  #cells: Int32Array;
  #numbers: Float64Array;
  #count = 0;
  #source = -1;
  /** Counts up with each file that is entered: offsets of one reading go on, those of another have nothing to do with them. */
  #reading = 0;
  #readings = 0;
  readonly #around: { source: number; reading: number }[] = [];
  readonly #readOften = new Set<number>();
  #headerReadings: Int32Array;
  #translated: TranslatedParameters | undefined;
  readonly #assumed = new Map<number, string>();
  #scope: Scope = { global: -1, master: -1, group: -1 };

  /** `textLength` is the length of the text about to be read, from which the first size of the buffers is guessed. */
  constructor(format: InstrumentParts['format'], textLength: number) {
    this.#format = format;
    const parameters = Math.ceil(textLength / perParameter) + 64;
    const headers = (textLength >> 6) + 16;
    this.#kinds = new Uint8Array(headers);
    this.#headerCells = new Int32Array(headers * headerStride);
    this.#headerReadings = new Int32Array(headers);
    this.#cells = new Int32Array(parameters * parameterStride);
    this.#numbers = new Float64Array(parameters);
  }

  get headerCount(): number {
    return this.#headerCount;
  }

  get parameterCount(): number {
    return this.#count;
  }

  /** The file that is being read, as a position in `Instrument.sources`. */
  get source(): number {
    return this.#source;
  }

  /** Goes on in a file: all that follows stands in it, up to {@link leaveSource}. Answers its position, the same for the same path. */
  enterSource(path: string, text: string): number {
    let source = this.#sourceOfPath.get(path);
    if (source === undefined) {
      source = this.#sources.length;
      this.#sources.push(new Source(path, text));
      this.#sourceOfPath.set(path, source);
    } else this.#readOften.add(source);
    if (this.#source >= 0) this.#around.push({ source: this.#source, reading: this.#reading });
    this.#goOn(source, ++this.#readings);
    return source;
  }

  /** Goes on in the file that was left for the one that is being read. */
  leaveSource(): void {
    const { source, reading } = this.#around.pop() ?? { source: 0, reading: 0 };
    this.#goOn(source, reading);
  }

  #goOn(source: number, reading: number): void {
    this.#source = source;
    this.#reading = reading;
    this.#headerRuns.push({ first: this.#headerCount, source });
    this.#parameterRuns.push({ first: this.#count, source });
  }

  /** Opens a header whose tag stands at `start`..`end`; answers its position. */
  openHeader(kind: HeaderKind, start: number, end: number): number {
    const header = this.#headerCount++;
    if (header >= this.#kinds.length) this.#growHeaders();
    this.#kinds[header] = kind;
    this.#headerReadings[header] = this.#reading;
    const parent = parentOf(kind, header, this.#scope);
    const at = header * headerStride;
    const cells = this.#headerCells;
    cells[at] = start;
    cells[at + 1] = end;
    cells[at + 2] = this.#count;
    cells[at + 3] = parent;
    cells[at + 4] = end;
    return header;
  }

  /**
   * Says that what has been read up to `end` belongs to a header. Where the header stands in another file, or was opened when
   * the same file was read for another include, its own part has ended before, and `end` is no offset that it could take.
   */
  closeHeader(header: number, end: number): void {
    if (this.#headerReadings[header] === this.#reading) this.#headerCells[header * headerStride + 4] = end;
  }

  /** What a region would inherit from here; a reader of nested text keeps it and puts it back with {@link restore}. */
  scope(): Scope {
    return { ...this.#scope };
  }

  restore(scope: Scope): void {
    this.#scope = { ...scope };
  }

  /**
   * Adds a parameter to the header opened last and answers its position. `name` is its number in {@link names};
   * `number` is the value where it is a plain decimal number, else NaN.
   */
  addParameter(
    name: number,
    nameStart: number,
    valueStart: number,
    valueEnd: number,
    number: number,
  ): number {
    const parameter = this.#count++;
    if (parameter >= this.#numbers.length) this.#growParameters();
    const at = parameter * parameterStride;
    const cells = this.#cells;
    cells[at] = name;
    cells[at + 1] = nameStart;
    cells[at + 2] = valueStart;
    cells[at + 3] = valueEnd;
    this.#numbers[parameter] = number;
    return parameter;
  }

  /** Makes {@link addTranslated} possible: all parameters are added with it. */
  translate(): void {
    const length = this.#numbers.length;
    this.#translated = {
      nameEnds: new Int32Array(length),
      isNumber: new Uint8Array(length),
      assumed: this.#assumed,
    };
  }

  /**
   * As {@link addParameter}, for a notation with names and units of its own: the name stands at `nameStart`..`nameEnd`.
   * `isNumber` says that the value is `number` and not the text at its span.
   */
  addTranslated(
    name: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    isNumber: boolean,
  ): number {
    const parameter = this.addParameter(name, nameStart, valueStart, valueEnd, number);
    const translated = this.#translated as TranslatedParameters;
    translated.nameEnds[parameter] = nameEnd;
    if (isNumber) translated.isNumber[parameter] = 1;
    return parameter;
  }

  /**
   * Makes a parameter's value a number that differs from the text at its span; `assumed` says what had to be assumed for it.
   * It may still be done after {@link finish} for what is known only then, keys and velocities aside.
   */
  setNumber(parameter: number, number: number, assumed?: string): void {
    this.#numbers[parameter] = number;
    (this.#translated as TranslatedParameters).isNumber[parameter] = 1;
    if (assumed !== undefined) this.#assumed.set(parameter, assumed);
  }

  /** Gives a parameter a value that differs from the text at its span; `number` is the value as in {@link addParameter}. */
  setValue(parameter: number, value: string, number: number = plainNumber(value)): void {
    this.#values.set(parameter, value);
    this.#numbers[parameter] = number;
  }

  /** Says what a parameter's value was before variables were put in, where the text at its span does not tell. */
  setWithVariables(parameter: number, text: VariableText): void {
    this.#withVariables.set(parameter, text);
  }

  /** Says where a parameter's name ends in the text, where that is not its start plus the name's length. */
  setNameEnd(parameter: number, end: number): void {
    this.#nameEnds.set(parameter, end);
  }

  /** Notes a directive or comment in the place where it stands. */
  addDirective(directive: Omit<InSomeFile<Directive>, 'headersBefore' | 'parametersBefore'>): void {
    this.#directives.push(
      standingIn<Directive>(this.#source, {
        ...directive,
        headersBefore: this.#headerCount,
        parametersBefore: this.#count,
      }),
    );
  }

  /** Notes what the reader could not make sense of, in the file that is being read. */
  addFinding(finding: InSomeFile<Finding>): void {
    if (this.#findings.length < mostFindings) this.#findings.push(standingIn<Finding>(this.#source, finding));
    else this.#findingsLeftOut++;
  }

  /** The instrument; nothing is added after that. */
  finish(): Instrument {
    const last = this.#findings.at(-1);
    if (last && this.#findingsLeftOut > 0) {
      last.message += ` (${counted(this.#findingsLeftOut, 'more finding like this is', 'more findings like this are')} not listed.)`;
    }
    return new Instrument({
      format: this.#format,
      sources: this.#sources,
      readOften: this.#readOften,
      names: this.names,
      headers: { count: this.#headerCount, kinds: this.#kinds, cells: this.#headerCells },
      parameters: {
        count: this.#count,
        cells: this.#cells,
        numbers: this.#numbers,
        values: this.#values,
        nameEnds: this.#nameEnds,
        withVariables: this.#withVariables,
        ...(this.#translated && { translated: this.#translated }),
      },
      headerRuns: this.#headerRuns,
      parameterRuns: this.#parameterRuns,
      directives: this.#directives,
      findings: this.#findings,
    });
  }

  #growHeaders(): void {
    const kinds = new Uint8Array(this.#kinds.length * 2);
    kinds.set(this.#kinds);
    this.#kinds = kinds;
    const cells = new Int32Array(this.#headerCells.length * 2);
    cells.set(this.#headerCells);
    this.#headerCells = cells;
    const readings = new Int32Array(this.#headerReadings.length * 2);
    readings.set(this.#headerReadings);
    this.#headerReadings = readings;
  }

  #growParameters(): void {
    const cells = new Int32Array(this.#cells.length * 2);
    cells.set(this.#cells);
    this.#cells = cells;
    const numbers = new Float64Array(this.#numbers.length * 2);
    numbers.set(this.#numbers);
    this.#numbers = numbers;
    const translated = this.#translated;
    if (!translated) return;
    this.translate();
    this.#translated?.nameEnds.set(translated.nameEnds);
    this.#translated?.isNumber.set(translated.isNumber);
  }
}

const decimal = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/** The number that a text is, in plain decimal notation with an optional sign; NaN for anything else. */
export function plainNumber(text: string): number {
  return decimal.test(text) ? Number(text) : Number.NaN;
}
