import { isXmlSpace, nameEndAt, spaceEndAt } from './characters';

/** What an offset stands on within a start tag. */
export type TagPart =
  | { kind: 'element'; start: number; end: number }
  /** White space where an attribute could start. */
  | { kind: 'gap' }
  | { kind: 'attribute'; start: number; end: number }
  /** Between the quotes; `end` is that of the text up to the closing quote, or the offset where there is none. */
  | { kind: 'value'; start: number; end: number; attribute: string }
  | { kind: 'other' };

/** The start tag that an offset stands in. */
export interface TagPlace {
  /** Where its `<` stands. */
  start: number;
  name: string;
  part: TagPart;
}

/** Finds the start tag around an offset, be it finished or not; `undefined` where none is. */
export function tagAt(text: string, offset: number): TagPlace | undefined {
  const start = offset > 0 ? text.lastIndexOf('<', offset - 1) : -1;
  if (start < 0 || /[!?/]/.test(text[start + 1] ?? '')) return undefined;
  const nameEnd = nameEndAt(text, start + 1);
  const name = text.slice(start + 1, nameEnd);
  if (offset <= nameEnd) return { start, name, part: { kind: 'element', start: start + 1, end: nameEnd } };
  const part = partAt(text, nameEnd, offset);
  return part && { start, name, part };
}

function partAt(text: string, from: number, offset: number): TagPart | undefined {
  let at = from;
  let spaced = false;
  while (at < offset) {
    const code = text.charCodeAt(at);
    if (code === 62) return undefined;
    if (isXmlSpace(code)) {
      spaced = true;
      at++;
      continue;
    }
    const nameEnd = nameEndAt(text, at);
    if (nameEnd === at) {
      spaced = false;
      at++;
      continue;
    }
    if (offset <= nameEnd) return { kind: 'attribute', start: at, end: nameEnd };
    const found = valueAt(text, nameEnd, offset, text.slice(at, nameEnd));
    if ('kind' in found) return found;
    at = found.end;
    spaced = false;
  }
  return spaced ? { kind: 'gap' } : { kind: 'other' };
}

/** The part around an offset behind an attribute's name, or where the attribute ends before the offset. */
function valueAt(
  text: string,
  nameEnd: number,
  offset: number,
  attribute: string,
): TagPart | { end: number } {
  const equals = spaceEndAt(text, nameEnd);
  if (text[equals] !== '=') return { end: nameEnd };
  const open = spaceEndAt(text, equals + 1);
  const quote = text[open];
  if (quote !== '"' && quote !== "'") return offset <= open ? { kind: 'other' } : { end: open };
  if (offset <= open) return { kind: 'other' };
  const close = text.indexOf(quote, open + 1);
  if (close >= 0 && close < offset) return { end: close + 1 };
  const end = close < 0 || /[\r\n<]/.test(text.slice(offset, close)) ? offset : close;
  return { kind: 'value', start: open + 1, end, attribute };
}
