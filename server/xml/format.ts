import type { TextEdit } from '../model/finding';
import type { FormatStyle } from '../model/formatStyle';
import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { inUsualOrder } from '../model/opcodeOrder';
import type { ParameterNames } from '../model/parameterNames';
import type { Stretch } from '../model/text/stretch';
import type { Row, TextPiece } from '../model/text/textLayout';
import { alignRows, freezeLines, layoutEdits, lineEndAmong, textStart } from '../model/text/textLayout';
import { isHeaderKind } from './elements';
import type { XmlPiece } from './pieces';
import { cutXml, XmlPieceKind } from './pieces';

/** The edits that lay instrument XML out in a style; lines with faults stay as they are. See `Notation.layOut`. */
export function formatXml(instrument: Instrument, style: FormatStyle, near?: Stretch): TextEdit[] {
  const text = instrument.sources[0]?.text ?? '';
  const { pieces, odd } = cutXml(text, instrument.names, near);
  const frozen = (start: number, end: number, breaks: number): TextPiece =>
    ({
      order: 0,
      start,
      end,
      text: undefined,
      breaks,
      lead: '',
      kind: XmlPieceKind.frozen,
      depth: 0,
      element: HeaderKind.unknown,
      name: -1,
    }) as XmlPiece;
  const whole = freezeLines(text, pieces, odd, frozen) as XmlPiece[];
  const last = whole[whole.length - 1];
  if (!last) return [];
  if (style.opcodeOrder === 'canonical') sortAttributes(whole, instrument.names);
  const lineEnd = lineEndAmong(text, whole);
  new Layout(style, lineEnd).place(whole);
  const start = near ? (whole[0] as TextPiece).start : textStart(text);
  const tail = near || last.kind === XmlPieceKind.frozen ? undefined : lineEnd;
  return layoutEdits(text, whole, start, tail);
}

function sortAttributes(pieces: XmlPiece[], names: ParameterNames): void {
  for (let start = 0; start < pieces.length; start++) {
    const { kind, element } = pieces[start];
    if (kind !== XmlPieceKind.attribute || element < HeaderKind.global || element > HeaderKind.region)
      continue;
    let end = start;
    while (pieces[end]?.kind === XmlPieceKind.attribute) end++;
    inUsualOrder(pieces.slice(start, end), names, (piece) => piece.name).forEach((piece, place) => {
      pieces[start + place] = piece;
    });
    start = end;
  }
}

/** Further in, lines stand no further in: no instrument is so deep, and their indentation alone would fill the memory. */
const deepest = 200;

/** Says what stands before each piece. */
class Layout {
  readonly #style: FormatStyle;
  readonly #lineEnd: string;
  #rows: Row[] = [];
  #rowDepth = 0;
  #row: Row | undefined;

  constructor(style: FormatStyle, lineEnd: string) {
    this.#style = style;
    this.#lineEnd = lineEnd;
  }

  place(pieces: readonly XmlPiece[]): void {
    pieces.forEach((piece, at) => {
      this.#place(piece, pieces[at - 1]);
    });
    this.#endRows();
    const [first] = pieces;
    if (first) first.lead = '';
  }

  #place(piece: XmlPiece, before: XmlPiece | undefined): void {
    switch (piece.kind) {
      case XmlPieceKind.open:
        this.#newLine(piece);
        this.#startRow(piece);
        return;
      case XmlPieceKind.attribute:
        this.#attribute(piece);
        return;
      case XmlPieceKind.openEnd:
        piece.lead = '';
        this.#row = undefined;
        return;
      case XmlPieceKind.close:
        if (before?.kind === XmlPieceKind.openEnd && piece.breaks === 0 && before.depth === piece.depth)
          piece.lead = '';
        else this.#newLine(piece);
        this.#endRows();
        return;
      case XmlPieceKind.comment:
        if (before && before.kind !== XmlPieceKind.frozen && piece.breaks === 0) piece.lead = ' ';
        else {
          this.#newLine(piece);
          this.#endRows();
        }
        return;
      case XmlPieceKind.frozen:
        // The indentation of lines that are left alone belongs to them.
        piece.lead = piece.breaks > 1 ? this.#lineEnd + this.#lineEnd : this.#lineEnd;
        this.#endRows();
        return;
      default:
        this.#newLine(piece);
        this.#endRows();
    }
  }

  #newLine(piece: XmlPiece): void {
    const breaks = piece.breaks > 1 ? this.#lineEnd + this.#lineEnd : this.#lineEnd;
    piece.lead = breaks + this.#indentation(piece.depth);
  }

  #indentation(depth: number): string {
    return this.#style.indentation.repeat(Math.min(depth, deepest));
  }

  #startRow(piece: XmlPiece): void {
    if (!this.#style.alignColumns || this.#style.headers === 'ownLine') return;
    if (piece.element !== HeaderKind.region || piece.breaks > 1 || piece.depth !== this.#rowDepth)
      this.#endRows();
    if (piece.element !== HeaderKind.region) return;
    this.#rowDepth = piece.depth;
    this.#row = { pieces: [piece], names: [-1] };
    this.#rows.push(this.#row);
  }

  #attribute(piece: XmlPiece): void {
    if (this.#style.headers === 'ownLine' && isHeaderKind(piece.element)) {
      piece.lead = this.#lineEnd + this.#indentation(piece.depth + 1);
      return;
    }
    piece.lead = ' ';
    this.#row?.pieces.push(piece);
    this.#row?.names.push(piece.name);
  }

  #endRows(): void {
    if (this.#rows.length > 1) alignRows(this.#rows);
    this.#rows = [];
    this.#row = undefined;
  }
}
