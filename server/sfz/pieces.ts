import type { Instrument } from '../model/instrument';
import type { Directive } from '../model/instrumentParts';
import { headerStride, parameterStride } from '../model/instrumentParts';
import type { Stretch } from '../model/text/stretch';
import type { TextPiece } from '../model/text/textLayout';
import { breaksBetween, textStart } from '../model/text/textLayout';

/** What a piece of SFZ text is. */
export const PieceKind = {
  header: 0,
  parameter: 1,
  directive: 2,
  frozen: 3,
  lineComment: 4,
  blockComment: 5,
} as const;
export type PieceKind = (typeof PieceKind)[keyof typeof PieceKind];

export interface SfzPiece extends TextPiece {
  kind: PieceKind;
  /** The header or parameter; −1 for anything else. */
  id: number;
  /** The header that a parameter belongs to. */
  header: number;
  /** Of a parameter: whether it is read right only where no value stands before it; of a comment: whether it goes over lines. */
  needsStart: boolean;
  /** Of a header: whether opcodes of its line are part of the piece, as they stand right already. */
  holdsOpcodes: boolean;
}

/** The pieces of an SFZ text in their order, and the stretches that the reader made no sense of. */
export interface SfzPieces {
  pieces: SfzPiece[];
  odd: Stretch[];
}

/** Headers on either side of a stretch that are looked at with it. */
const context = 100;

/**
 * Cuts the main file of an instrument, or what stands near a stretch of it, into headers, opcodes, directives and comments.
 * `keepsLine` says of which headers a line of opcodes parted by single blanks stays as it is: a piece of 10,000 regions each is
 * cut in a fraction of the time that one of each opcode takes.
 */
export function sfzPieces(
  instrument: Instrument,
  near: Stretch | undefined,
  keepsLine: (header: number) => boolean,
): SfzPieces {
  const cutter = new Cutter(instrument, keepsLine);
  if (near) cutter.cutNear(near);
  else cutter.cut(-1, instrument.headers.count);
  return cutter;
}

class Cutter implements SfzPieces {
  readonly pieces: SfzPiece[] = [];
  readonly odd: Stretch[];
  readonly #instrument: Instrument;
  readonly #text: string;
  /** By number of a name: whether it is read after a blank as well as at the start of a line. */
  readonly #plain: boolean[] = [];
  readonly #keepsLine: (header: number) => boolean;
  #end: number;

  constructor(instrument: Instrument, keepsLine: (header: number) => boolean) {
    this.#instrument = instrument;
    this.#keepsLine = keepsLine;
    this.#text = instrument.sources[0]?.text ?? '';
    this.#end = textStart(this.#text);
    this.odd = instrument.findings
      .filter(({ code, source }) => code === 'syntax-error' && source === 0)
      .map(({ start, end }) => ({ start, end }));
  }

  /** Cuts a stretch with some headers on either side. */
  cutNear({ start, end }: Stretch): void {
    const instrument = this.#instrument;
    let first = instrument.headerAt(0, start);
    for (let step = 0; step < context && first > 0 && instrument.headerSource(first - 1) === 0; step++)
      first--;
    let last = instrument.headerAt(0, end) + 1;
    for (
      let step = 0;
      step < context && last < instrument.headers.count && instrument.headerSource(last) === 0;
      step++
    )
      last++;
    this.cut(first, last);
  }

  /** Cuts from one header, −1 being the start of the text, up to another. */
  cut(first: number, behind: number): void {
    const instrument = this.#instrument;
    const { headers, parameters, directives } = instrument;
    const from = first < 0 ? this.#end : instrument.headerSpan(first).start;
    const to = behind < headers.count ? instrument.headerSpan(behind).start : this.#text.length;
    this.#end = from;
    const own = directives.filter(({ source, start }) => source === 0 && start >= from && start < to);
    let parameter = first < 0 ? 0 : instrument.firstParameter(first);
    let directive = 0;
    for (let header = first; header < behind; header++) {
      if (header >= 0 && this.#instrument.headerSource(header) === 0) {
        const start = headers.cells[header * headerStride];
        const end = headers.cells[header * headerStride + 1];
        for (; directive < own.length && own[directive].start < start; directive++)
          this.#directive(own[directive]);
        if (end > start) {
          const piece = this.#add(start, end, PieceKind.header, header, header, false);
          if (this.#keepsLine(header)) parameter = this.#join(piece, header, parameter);
        }
      }
      const last = header < 0 ? 0 : this.#instrument.endParameter(header);
      for (; parameter < last; parameter++) {
        if (this.#instrument.parameterSource(parameter) !== 0) continue;
        const start = parameters.cells[parameter * parameterStride + 1];
        for (; directive < own.length && own[directive].start < start; directive++)
          this.#directive(own[directive]);
        this.#parameter(header, parameter);
      }
    }
    for (; directive < own.length; directive++) this.#directive(own[directive]);
    this.#gap(to);
  }

  #gap(start: number): number {
    const breaks = breaksBetween(this.#text, this.#end, start);
    if (breaks >= 0) return breaks;
    const gap = this.#text.slice(this.#end, start);
    const before = gap.search(/[^\0- ]/);
    this.odd.push({ start: this.#end + before, end: this.#end + gap.replace(/[\0- ]+$/, '').length });
    return 0;
  }

  #add(
    start: number,
    end: number,
    kind: PieceKind,
    id: number,
    header: number,
    needsStart: boolean,
  ): SfzPiece {
    const breaks = this.#gap(start);
    const order = this.pieces.length;
    const piece: SfzPiece = {
      order,
      start,
      end,
      text: undefined,
      breaks,
      lead: '',
      kind,
      id,
      header,
      needsStart,
      holdsOpcodes: false,
    };
    this.pieces.push(piece);
    this.#end = end;
    return piece;
  }

  /** Takes the opcodes behind a header into its piece as far as they stand right; answers the one behind them. */
  #join(piece: SfzPiece, header: number, first: number): number {
    const instrument = this.#instrument;
    const { cells } = instrument.parameters;
    const last = instrument.endParameter(header);
    let parameter = first;
    for (; parameter < last && instrument.parameterSource(parameter) === 0; parameter++) {
      const at = parameter * parameterStride;
      const start = cells[at + 1];
      if (start !== piece.end + 1 || this.#text.charCodeAt(piece.end) !== 32) break;
      const nameEnd = this.#nameEnd(parameter, start);
      if (cells[at + 2] !== nameEnd + 1) break;
      if (!this.#isPlain(cells[at], start, nameEnd)) break;
      piece.end = cells[at + 3];
      piece.holdsOpcodes = true;
    }
    this.#end = piece.end;
    return parameter;
  }

  #nameEnd(parameter: number, start: number): number {
    const instrument = this.#instrument;
    return instrument.parameters.nameEnds.size > 0
      ? instrument.nameSpan(parameter).end
      : start + instrument.names.text(instrument.name(parameter)).length;
  }

  #parameter(header: number, parameter: number): void {
    const { cells } = this.#instrument.parameters;
    const at = parameter * parameterStride;
    const start = cells[at + 1];
    const valueStart = cells[at + 2];
    const end = cells[at + 3];
    // A variable that stands for a whole opcode has no value of its own.
    const whole = valueStart === start;
    const nameEnd = whole ? end : this.#nameEnd(parameter, start);
    const needsStart = whole || !this.#isPlain(cells[at], start, nameEnd);
    const piece = this.#add(start, end, PieceKind.parameter, parameter, header, needsStart);
    if (!whole && valueStart !== nameEnd + 1)
      (piece as TextPiece).text = `${this.#text.slice(start, nameEnd)}=${this.#text.slice(valueStart, end)}`;
  }

  #isPlain(name: number, start: number, end: number): boolean {
    const known = this.#plain[name];
    if (known !== undefined) return known;
    const written = this.#text.slice(start, end);
    const plain = /^[\w$]+$/.test(written);
    // A name with variables can be written in several ways.
    if (!written.includes('$')) this.#plain[name] = plain;
    return plain;
  }

  #directive({ kind, start, end, nameStart, nameEnd, value }: Directive): void {
    const text = this.#text;
    if (kind !== 'comment') {
      const piece = this.#add(start, end, PieceKind.directive, -1, -1, false);
      if (kind === 'define') (piece as TextPiece).text = `#define ${text.slice(nameStart, nameEnd)} ${value}`;
      else if (text[nameEnd] === '"')
        (piece as TextPiece).text = `#include "${text.slice(nameStart, nameEnd)}"`;
      return;
    }
    if (text[start + 1] === '*') {
      const several = /[\r\n]/.test(text.slice(start, end));
      this.#add(start, end, PieceKind.blockComment, -1, -1, several);
    } else {
      let last = end;
      while (last > start && text.charCodeAt(last - 1) <= 32) last--;
      this.#add(start, last, PieceKind.lineComment, -1, -1, false);
    }
  }
}
