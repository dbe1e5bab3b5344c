import type { Finding } from '../model/finding';
import { HeaderKind } from '../model/headerKinds';
import { Instrument } from '../model/instrument';
import { mostFindings, parentOf } from '../model/instrumentBuilder';
import type { Directive } from '../model/instrumentParts';
import { headerStride, parameterStride } from '../model/instrumentParts';
import { sharedParameterNames } from '../model/parameterNames';
import type { Steps } from '../model/steps';
import { Source } from '../model/text/source';
import type { ChangedLines } from './changedLines';
import { changedLines } from './changedLines';

/** What makes a line more than headers, opcodes and line comments: it can change how other lines are read. */
const farReaching = /\$|#define|#include|\/\*|\*\/|\0/;

/**
 * Reads a text that differs from one read before in a few lines: only these are read, and what was found elsewhere
 * is moved to its new place. `undefined` where a line can change how others are read (variables, included files,
 * block comments), so that the whole text has to be read. `read` reads a text as a whole. In steps.
 */
export function* readSfzAgain(
  previous: Instrument,
  text: string,
  path: string,
  read: (text: string) => Instrument,
): Steps<Instrument | undefined> {
  const source = previous.sources[0];
  if (
    !source ||
    source.path !== path ||
    previous.sources.length > 1 ||
    previous.names !== sharedParameterNames()
  )
    return undefined;
  if (previous.parameters.values.size > 0 || previous.findings.length >= mostFindings) return undefined;
  if (previous.directives.some(({ kind }) => kind !== 'comment')) return undefined;
  const lines = changedLines(source.text, text);
  const { start, oldEnd, newEnd } = lines;
  const before = source.text.slice(start, oldEnd);
  const after = text.slice(start, newEnd);
  if (farReaching.test(before) || farReaching.test(after)) return undefined;
  // More than half of the text is read as quickly as a whole.
  if (after.length * 2 > text.length || start === 0) return undefined;
  if (previous.directives.some((comment) => spans(comment, start) || spans(comment, oldEnd)))
    return undefined;
  return yield* new Splice(previous, text, lines, read(after)).instrument();
}

function spans(comment: Directive, offset: number): boolean {
  return comment.start < offset && offset < comment.end;
}

/** An old instrument with the part that a run of lines gave taken out and a new part put in. */
class Splice {
  readonly #old: Instrument;
  readonly #text: string;
  readonly #lines: ChangedLines;
  readonly #part: Instrument;
  /** How far what stands behind the lines has moved in the text. */
  readonly #shift: number;
  /** Headers and parameters before the lines; the first ones behind them in the old instrument. */
  readonly #headersBefore: number;
  readonly #headersBehind: number;
  readonly #parametersBefore: number;
  readonly #parametersBehind: number;
  /** 1 where the part starts with opcodes, which belong to the last header before it; that stand-in is left out. */
  readonly #standIn: number;

  constructor(old: Instrument, text: string, lines: ChangedLines, part: Instrument) {
    this.#old = old;
    this.#text = text;
    this.#lines = lines;
    this.#part = part;
    this.#shift = lines.newEnd - lines.oldEnd;
    this.#headersBefore = old.headerAt(0, lines.start - 1) + 1;
    this.#headersBehind = old.headerAt(0, lines.oldEnd - 1) + 1;
    this.#parametersBefore = old.parameterAt(0, lines.start - 1) + 1;
    this.#parametersBehind = old.parameterAt(0, lines.oldEnd - 1) + 1;
    this.#standIn = part.headers.count > 0 && isStandIn(part, 0) ? 1 : 0;
  }

  /** `undefined` where opcodes would stand before any header. */
  *instrument(): Steps<Instrument | undefined> {
    if (this.#headersBefore === 0) return undefined;
    const parameters = this.#parameters();
    yield 0.3;
    const headers = this.#headers(parameters);
    yield 0.6;
    return new Instrument({
      format: 'sfz',
      readOften: new Set(),
      sources: [new Source(this.#old.sources[0].path, this.#text)],
      names: this.#old.names,
      headers,
      parameters,
      headerRuns: [{ first: 0, source: 0 }],
      parameterRuns: [{ first: 0, source: 0 }],
      directives: this.#directives(),
      findings: this.#findings(),
    });
  }

  #parameters(): Instrument['parameters'] {
    const { parameters: old } = this.#old;
    const { parameters: part } = this.#part;
    const before = this.#parametersBefore;
    const middle = before + part.count;
    const count = middle + old.count - this.#parametersBehind;
    const cells = new Int32Array(count * parameterStride);
    cells.set(old.cells.subarray(0, before * parameterStride));
    cells.set(part.cells.subarray(0, part.count * parameterStride), before * parameterStride);
    cells.set(
      old.cells.subarray(this.#parametersBehind * parameterStride, old.count * parameterStride),
      middle * parameterStride,
    );
    moveParameters(cells, before, middle, this.#lines.start);
    moveParameters(cells, middle, count, this.#shift);
    const numbers = new Float64Array(count);
    numbers.set(old.numbers.subarray(0, before));
    numbers.set(part.numbers.subarray(0, part.count), before);
    numbers.set(old.numbers.subarray(this.#parametersBehind, old.count), middle);
    return { count, cells, numbers, values: new Map(), nameEnds: new Map() };
  }

  #headers(parameters: Instrument['parameters']): Instrument['headers'] {
    const { headers: old } = this.#old;
    const { headers: part } = this.#part;
    const standIn = this.#standIn;
    const before = this.#headersBefore;
    const middle = before + part.count - standIn;
    const count = middle + old.count - this.#headersBehind;
    const kinds = new Uint8Array(count);
    kinds.set(old.kinds.subarray(0, before));
    kinds.set(part.kinds.subarray(standIn, part.count), before);
    kinds.set(old.kinds.subarray(this.#headersBehind, old.count), middle);
    const cells = new Int32Array(count * headerStride);
    cells.set(old.cells.subarray(0, before * headerStride));
    cells.set(part.cells.subarray(standIn * headerStride, part.count * headerStride), before * headerStride);
    cells.set(
      old.cells.subarray(this.#headersBehind * headerStride, old.count * headerStride),
      middle * headerStride,
    );
    const parametersMoved = this.#parametersBefore + this.#part.parameters.count - this.#parametersBehind;
    moveHeaders(cells, before, middle, this.#lines.start, this.#parametersBefore);
    moveHeaders(cells, middle, count, this.#shift, parametersMoved);
    setParents(kinds, cells, count);
    // What stands before the lines and in them can have lost or gained opcodes at its end.
    for (const header of [before - 1, middle - 1]) setBodyEnd(cells, header, count, parameters);
    return { count, kinds, cells };
  }

  #directives(): Directive[] {
    const { start, oldEnd } = this.#lines;
    const headers = this.#headersBefore - this.#standIn;
    const headersMoved = headers + this.#part.headers.count - this.#headersBehind;
    const parametersMoved = this.#parametersBefore + this.#part.parameters.count - this.#parametersBehind;
    const old = this.#old.directives;
    return [
      ...old.filter((one) => one.start < start),
      ...this.#part.directives.map((one) =>
        moved(one, start, this.#headersBefore - this.#standInBefore(one), this.#parametersBefore),
      ),
      ...old
        .filter((one) => one.start >= oldEnd)
        .map((one) => moved(one, this.#shift, headersMoved, parametersMoved)),
    ];
  }

  /** A comment that stands before the stand-in does not count it. */
  #standInBefore(directive: Directive): number {
    return directive.headersBefore > 0 ? this.#standIn : 0;
  }

  #findings(): Finding[] {
    const { start, oldEnd } = this.#lines;
    const shifted = (finding: Finding, by: number) => ({
      ...finding,
      start: finding.start + by,
      end: finding.end + by,
    });
    return [
      ...this.#old.findings.filter((one) => one.start < start),
      ...this.#part.findings.map((one) => shifted(one, start)),
      ...this.#old.findings.filter((one) => one.start >= oldEnd).map((one) => shifted(one, this.#shift)),
    ];
  }
}

/** Whether a header only holds the opcodes that stand before the first one. */
function isStandIn(instrument: Instrument, header: number): boolean {
  const { start, end } = instrument.headerSpan(header);
  return instrument.kind(header) === HeaderKind.unknown && start === end;
}

function moved(directive: Directive, by: number, headers: number, parameters: number): Directive {
  return {
    ...directive,
    start: directive.start + by,
    end: directive.end + by,
    nameStart: directive.nameStart + by,
    nameEnd: directive.nameEnd + by,
    headersBefore: directive.headersBefore + headers,
    parametersBefore: directive.parametersBefore + parameters,
  };
}

function moveParameters(cells: Int32Array, from: number, to: number, by: number): void {
  if (by === 0) return;
  for (let at = from * parameterStride; at < to * parameterStride; at += parameterStride) {
    cells[at + 1] = cells[at + 1] + by;
    cells[at + 2] = cells[at + 2] + by;
    cells[at + 3] = cells[at + 3] + by;
  }
}

function moveHeaders(cells: Int32Array, from: number, to: number, by: number, parameters: number): void {
  for (let at = from * headerStride; at < to * headerStride; at += headerStride) {
    cells[at] = cells[at] + by;
    cells[at + 1] = cells[at + 1] + by;
    cells[at + 2] = cells[at + 2] + parameters;
    cells[at + 4] = cells[at + 4] + by;
  }
}

/** Headers inherit from those before them, so one that came or went can change the parents of all behind it. */
function setParents(kinds: Uint8Array, cells: Int32Array, count: number): void {
  const scope = { global: -1, master: -1, group: -1 };
  for (let header = 0; header < count; header++) {
    cells[header * headerStride + 3] = parentOf(kinds[header] as HeaderKind, header, scope);
  }
}

function setBodyEnd(
  cells: Int32Array,
  header: number,
  count: number,
  parameters: Instrument['parameters'],
): void {
  const at = header * headerStride;
  const end = header + 1 < count ? cells[at + headerStride + 2] : parameters.count;
  const hasParameters = end > cells[at + 2];
  cells[at + 4] = hasParameters ? parameters.cells[(end - 1) * parameterStride + 3] : cells[at + 1];
}
