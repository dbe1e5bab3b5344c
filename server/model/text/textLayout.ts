import { replacing } from '../editing/edits';
import type { TextEdit } from '../finding';
import { mainSpan } from './span';
import type { Stretch } from './stretch';
import { lineEndOf } from './textLines';

/** A piece of text that stays whole, with what is to stand before it. */
export interface TextPiece {
  /** Its place among the pieces of the text as it was, from 0. */
  order: number;
  start: number;
  end: number;
  /** What it is to be; `undefined` where it stays as it is. */
  text: string | undefined;
  /** Line breaks before it as the text was; more than two count as two. */
  breaks: number;
  /** What is to stand between it and the piece before. */
  lead: string;
}

/** How many UTF-16 units a piece will take. */
function lengthOf(piece: TextPiece): number {
  return piece.text === undefined ? piece.end - piece.start : piece.text.length;
}

/** The line breaks in a stretch of white space, CRLF counted once and no more than two; −1 where something else stands in it. */
export function breaksBetween(text: string, start: number, end: number): number {
  let breaks = 0;
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code > 32) return -1;
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) breaks++;
  }
  return Math.min(breaks, 2);
}

/**
 * The edits that lay a text out. `pieces` come in their new order. Each edit stands by itself: leaving some out leaves
 * a text that means the same. `start` is where the layout begins, `tail` what is to stand behind the last piece.
 */
export function layoutEdits(
  text: string,
  pieces: readonly TextPiece[],
  start: number,
  tail: string | undefined,
): TextEdit[] {
  const edits: TextEdit[] = [];
  let end = start;
  for (let at = 0; at < pieces.length; ) {
    const first = pieces[at];
    // Pieces that change places are written together, up to where none before stands behind.
    let last = at;
    for (let most = first.order; most > last; ) {
      last++;
      most = Math.max(most, pieces[last].order);
    }
    if (last === at) {
      addEdit(edits, text, end, first.start, first.lead);
      if (first.text !== undefined) addEdit(edits, text, first.start, first.end, first.text);
      end = first.end;
    } else {
      const group = pieces.slice(at, last + 1);
      const groupStart = Math.min(...group.map((piece) => piece.start));
      const groupEnd = Math.max(...group.map((piece) => piece.end));
      addEdit(edits, text, end, groupStart, first.lead);
      const whole = group
        .map(
          (piece, place) =>
            (place > 0 ? piece.lead : '') + (piece.text ?? text.slice(piece.start, piece.end)),
        )
        .join('');
      addEdit(edits, text, groupStart, groupEnd, whole);
      end = groupEnd;
    }
    at = last + 1;
  }
  if (tail !== undefined) addEdit(edits, text, end, text.length, tail);
  return edits;
}

/** Adds an edit cut down to what changes. */
function addEdit(edits: TextEdit[], text: string, start: number, end: number, newText: string): void {
  if (end - start === newText.length && text.startsWith(newText, start)) return;
  let from = start;
  let to = end;
  let first = 0;
  let last = newText.length;
  while (from < to && first < last && text[from] === newText[first]) {
    from++;
    first++;
  }
  while (to > from && last > first && text[to - 1] === newText[last - 1]) {
    to--;
    last--;
  }
  edits.push(replacing(mainSpan(from, to), newText.slice(first, last)));
}

/** The line end that a text uses between its pieces, else inside them. */
export function lineEndAmong(text: string, pieces: readonly TextPiece[]): '\n' | '\r\n' {
  let end = 0;
  for (const piece of pieces) {
    if (piece.breaks > 0) {
      const at = text.indexOf('\n', end);
      if (at >= end && at < piece.start) return text[at - 1] === '\r' ? '\r\n' : '\n';
    }
    end = piece.end;
  }
  const at = text.indexOf('\n', end);
  return at > 0 && text[at - 1] === '\r' ? '\r\n' : at > 0 ? '\n' : lineEndOf(text);
}

/** A line of a table: pieces with what makes them belong in one column. */
export interface Row {
  pieces: TextPiece[];
  names: number[];
}

/** Pads successive lines so that pieces of the same names stand below one another, as far as the names agree. */
export function alignRows(rows: readonly Row[]): void {
  const [model] = rows;
  if (!model || rows.length < 2) return;
  let alike: readonly Row[] = rows;
  for (let column = 0; column < model.names.length && alike.length > 1; column++) {
    alike = alike.filter(({ names }) => names[column] === model.names[column]);
    let width = 0;
    for (const { pieces } of alike) {
      if (pieces[column + 1]) width = Math.max(width, lengthOf(pieces[column]));
    }
    for (const { pieces } of alike) {
      const next = pieces[column + 1];
      if (next) next.lead = ' '.repeat(width - lengthOf(pieces[column]) + 1);
    }
  }
}

/** Where a text starts behind a byte order mark. */
export function textStart(text: string): number {
  return text.charCodeAt(0) === 0xfeff ? 1 : 0;
}

/** Puts each run of lines that are to be left as they are in the place of the pieces that touch it. */
export function freezeLines(
  text: string,
  pieces: readonly TextPiece[],
  touched: readonly Stretch[],
  frozen: (start: number, end: number, breaks: number) => TextPiece,
): TextPiece[] {
  if (touched.length === 0) return [...pieces];
  const runs = widened(text, pieces, touched);
  const kept: TextPiece[] = [];
  let run = 0;
  let end = textStart(text);
  const add = (piece: TextPiece) => {
    piece.order = kept.length;
    piece.breaks = Math.max(0, breaksBetween(text, end, piece.start));
    kept.push(piece);
    end = piece.end;
  };
  for (const piece of pieces) {
    while (run < runs.length && runs[run].end <= piece.start) {
      const { start: from, end: to } = runs[run++];
      add(frozen(from, to, 0));
    }
    const next = runs[run];
    if (!next || piece.end <= next.start) add(piece);
  }
  for (; run < runs.length; run++) {
    const { start: from, end: to } = runs[run];
    add(frozen(from, to, 0));
  }
  return kept;
}

/** Widens spans to whole lines and to whole pieces that go over several. */
function widened(text: string, pieces: readonly TextPiece[], touched: readonly Stretch[]): Stretch[] {
  const sorted = [...touched].sort((a, b) => a.start - b.start);
  const runs: Stretch[] = [];
  let at = 0;
  for (const span of sorted) {
    const last = runs[runs.length - 1];
    if (last && span.end <= last.end) continue;
    let start = lineStartAt(text, span.start);
    let end = lineEndAt(text, span.end);
    while (at > 0 && pieces[at - 1].end > start) at--;
    for (; at < pieces.length && pieces[at].start < end; at++) {
      const piece = pieces[at];
      if (piece.end <= start) continue;
      if (piece.start < start) {
        start = lineStartAt(text, piece.start);
        while (at > 0 && pieces[at - 1].end > start) at--;
        at--;
        continue;
      }
      if (piece.end > end) end = lineEndAt(text, piece.end);
    }
    if (start === end) continue;
    if (last && start <= last.end) {
      last.start = Math.min(last.start, start);
      last.end = Math.max(last.end, end);
    } else runs.push({ start, end });
  }
  return runs;
}

/** Lines of more characters are remembered, one at a time: a text can be one line with thousands of places to ask about. */
const longLine = 500;
const lastLine = { text: '', start: 0, end: 0 };

/** The line of a text that an offset stands in, where it is the long one that was asked about last. */
function rememberedLine(text: string, offset: number): typeof lastLine | undefined {
  const { start, end } = lastLine;
  // A line starts where the one before it has not yet ended.
  return offset >= start && offset <= end && start < end && text === lastLine.text ? lastLine : undefined;
}

/** The start of the line that an offset stands in, behind a byte order mark. */
export function lineStartAt(text: string, offset: number): number {
  const known = rememberedLine(text, offset);
  if (known) return known.start;
  let at = offset;
  while (at > 0 && text[at - 1] !== '\n' && text[at - 1] !== '\r') at--;
  const start = at === 0 && text.charCodeAt(0) === 0xfeff ? 1 : at;
  if (offset - start > longLine) Object.assign(lastLine, { text, start, end: endFrom(text, offset) });
  return start;
}

/** The end of the line that an offset stands in, before its line end. */
export function lineEndAt(text: string, offset: number): number {
  const known = rememberedLine(text, offset);
  if (known) return known.end;
  const end = endFrom(text, offset);
  if (end - offset > longLine) lineStartAt(text, end);
  return end;
}

function endFrom(text: string, offset: number): number {
  let at = offset;
  while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at++;
  return at;
}
