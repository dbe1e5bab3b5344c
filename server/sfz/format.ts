import type { TextEdit } from '../model/finding';
import type { FormatStyle } from '../model/formatStyle';
import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { inUsualOrder } from '../model/opcodeOrder';
import type { Stretch } from '../model/text/stretch';
import type { Row, TextPiece } from '../model/text/textLayout';
import { alignRows, freezeLines, layoutEdits, lineEndAmong, textStart } from '../model/text/textLayout';
import type { SfzPiece } from './pieces';
import { PieceKind, sfzPieces } from './pieces';

/** A reader lists no more findings than this, so that not all faults are known. */
const mostFindings = 1000;

/** The edits that lay SFZ text out in a style; lines with syntax errors stay as they are. See `Notation.layOut`. */
export function formatSfz(instrument: Instrument, style: FormatStyle, near?: Stretch): TextEdit[] {
  const text = instrument.sources[0]?.text ?? '';
  if (instrument.findings.length >= mostFindings) return [];
  const isAsWritten = style.opcodeOrder === 'keep' && !style.alignColumns;
  const { pieces, odd } = sfzPieces(
    instrument,
    near,
    (header) => isAsWritten && modeOf(instrument, header, style) === 'inline',
  );
  const frozen = (from: number, to: number, breaks: number): TextPiece =>
    ({
      order: 0,
      start: from,
      end: to,
      text: undefined,
      breaks,
      lead: '',
      kind: PieceKind.frozen,
      id: -1,
      header: -1,
      needsStart: true,
      holdsOpcodes: false,
    }) as SfzPiece;
  const whole = freezeLines(text, pieces, odd, frozen) as SfzPiece[];
  const last = whole[whole.length - 1];
  if (!last) return [];
  const ordered = new Ordering(instrument, style).order(whole);
  const lineEnd = lineEndAmong(text, whole);
  new Layout(instrument, style, lineEnd).place(ordered);
  const first = (whole[0] as TextPiece).start;
  // A byte order mark further down, as of texts put behind one another, is a sign like others; at the start of the text it would be none.
  const start = near || text[first] === '\ufeff' ? first : textStart(text);
  const tail = near || last.kind === PieceKind.frozen ? undefined : lineEnd;
  return layoutEdits(text, ordered, start, tail);
}

/** How the opcodes of a header stand: in its line, one a line, or as they are where there is no header. */
type Mode = 'inline' | 'ownLine' | 'keep';

function modeOf(instrument: Instrument, header: number, { headers }: FormatStyle): Mode {
  if (header < 0) return 'keep';
  const kind = instrument.kind(header);
  const { start, end } = instrument.headerSpan(header);
  if (start === end) return 'keep';
  if (headers === 'inline') return 'inline';
  return headers === 'regionsInline' && kind === HeaderKind.region ? 'inline' : 'ownLine';
}

const orderedKinds: ReadonlySet<HeaderKind> = new Set([
  HeaderKind.global,
  HeaderKind.master,
  HeaderKind.group,
  HeaderKind.region,
]);

/** Brings pieces into the order in which they are to be written. */
class Ordering {
  readonly #instrument: Instrument;
  readonly #text: string;
  readonly #style: FormatStyle;

  constructor(instrument: Instrument, style: FormatStyle) {
    this.#instrument = instrument;
    this.#text = instrument.sources[0]?.text ?? '';
    this.#style = style;
  }

  order(pieces: readonly SfzPiece[]): SfzPiece[] {
    const ordered: SfzPiece[] = [];
    for (let at = 0; at < pieces.length; ) {
      const piece = pieces[at];
      const hoisted = piece.kind === PieceKind.header ? this.#remarkOf(pieces, at) : -1;
      ordered.push(piece);
      if (hoisted > 0) {
        ordered.push(pieces[hoisted]);
        ordered.push(...pieces.slice(at + 1, hoisted));
        at = hoisted;
      }
      at++;
    }
    if (this.#style.opcodeOrder === 'canonical') this.#sortOpcodes(ordered);
    return ordered;
  }

  /** The remark at the end of a header's line, where the opcodes of that line get lines of their own; −1 where there is none. */
  #remarkOf(pieces: readonly SfzPiece[], at: number): number {
    if (modeOf(this.#instrument, pieces[at].id, this.#style) !== 'ownLine') return -1;
    let next = at + 1;
    while (pieces[next]?.kind === PieceKind.parameter && pieces[next]?.breaks === 0) next++;
    const remark = pieces[next];
    return next > at + 1 && remark?.kind === PieceKind.lineComment && remark.breaks === 0 ? next : -1;
  }

  #sortOpcodes(pieces: SfzPiece[]): void {
    for (let start = 0; start < pieces.length; start++) {
      const header = pieces[start].header;
      if (!this.#canMove(pieces, start) || !orderedKinds.has(this.#instrument.kind(header))) continue;
      const ownLine = modeOf(this.#instrument, header, this.#style) === 'ownLine';
      let end = start + 1;
      while (
        end < pieces.length &&
        this.#canMove(pieces, end) &&
        pieces[end].header === header &&
        !(ownLine && pieces[end].breaks > 1)
      )
        end++;
      const run = pieces.slice(start, end);
      const breaks = run.map((piece) => piece.breaks);
      inUsualOrder(run, this.#instrument.names, (piece) => this.#instrument.name(piece.id)).forEach(
        (piece, place) => {
          piece.breaks = breaks[place];
          pieces[start + place] = piece;
        },
      );
      start = end - 1;
    }
  }

  /** Whether an opcode can change places: one that has a line of its own goes with its remark, and so stays. */
  #canMove(pieces: readonly SfzPiece[], at: number): boolean {
    const piece = pieces[at];
    if (piece.kind !== PieceKind.parameter || piece.needsStart || piece.header < 0) return false;
    // Behind an empty value a directive in the same line would be read as the value.
    if (this.#text[piece.end - 1] === '=') return false;
    if (modeOf(this.#instrument, piece.header, this.#style) !== 'ownLine') return true;
    const next = pieces[at + 1];
    return !(next && next.kind >= PieceKind.lineComment && next.breaks === 0);
  }
}

/** Says what stands before each piece. */
class Layout {
  readonly #instrument: Instrument;
  readonly #style: FormatStyle;
  readonly #lineEnd: string;
  /** What may be written behind the line so far: any opcode, only what stood there, or nothing. */
  #open: 'any' | 'sameLine' | 'no' = 'no';
  #behindValue = false;
  #rows: Row[] = [];
  /** The line of a region that is being written. */
  #row: Row | undefined;

  constructor(instrument: Instrument, style: FormatStyle, lineEnd: string) {
    this.#instrument = instrument;
    this.#style = style;
    this.#lineEnd = lineEnd;
  }

  place(pieces: readonly SfzPiece[]): void {
    for (const piece of pieces) {
      if (piece.kind === PieceKind.header) this.#header(piece);
      else if (piece.kind === PieceKind.parameter) this.#parameter(piece);
      else if (piece.kind === PieceKind.lineComment || piece.kind === PieceKind.blockComment)
        this.#comment(piece, piece === pieces[0]);
      else this.#ownLine(piece);
    }
    this.#endRows();
    const [first] = pieces;
    if (first) first.lead = '';
  }

  #newLine(piece: SfzPiece): void {
    piece.lead = piece.breaks > 1 ? this.#lineEnd + this.#lineEnd : this.#lineEnd;
    this.#row = undefined;
  }

  #ownLine(piece: SfzPiece): void {
    this.#newLine(piece);
    this.#endRows();
    this.#open = 'no';
    this.#behindValue = false;
  }

  #header(piece: SfzPiece): void {
    this.#newLine(piece);
    const mode = modeOf(this.#instrument, piece.id, this.#style);
    if (piece.breaks > 1 || mode !== 'inline' || this.#instrument.kind(piece.id) !== HeaderKind.region)
      this.#endRows();
    if (this.#style.alignColumns && mode === 'inline') {
      this.#row = { pieces: [piece], names: [-1 - this.#instrument.kind(piece.id)] };
      this.#rows.push(this.#row);
    }
    this.#open = 'any';
    this.#behindValue = piece.holdsOpcodes;
  }

  #parameter(piece: SfzPiece): void {
    const mode = modeOf(this.#instrument, piece.header, this.#style);
    const beside =
      this.#open === 'any'
        ? mode === 'inline' || (mode === 'keep' && piece.breaks === 0)
        : this.#open === 'sameLine' && piece.breaks === 0;
    if (beside && !(piece.needsStart && this.#behindValue)) {
      piece.lead = ' ';
      if (this.#row) {
        this.#row.pieces.push(piece);
        this.#row.names.push(this.#instrument.name(piece.id));
      }
    } else {
      this.#newLine(piece);
      this.#endRows();
    }
    this.#open = 'any';
    this.#behindValue = true;
  }

  #comment(piece: SfzPiece, isFirst: boolean): void {
    if (piece.breaks === 0 && !isFirst) {
      piece.lead = ' ';
      this.#row = undefined;
      if (piece.kind === PieceKind.lineComment) this.#open = 'no';
      else if (piece.needsStart && this.#open === 'any') this.#open = 'sameLine';
    } else {
      this.#newLine(piece);
      this.#endRows();
      this.#open = piece.kind === PieceKind.lineComment ? 'no' : 'sameLine';
    }
    this.#behindValue = false;
  }

  #endRows(): void {
    if (this.#rows.length > 1) alignRows(this.#rows);
    this.#rows = [];
  }
}
