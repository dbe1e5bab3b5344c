import { TableCells } from '../cells';
import { namedCharacter } from './entities';
import { withRaisedMarks } from './raisedMarks';
import { StruckCells, strikesOut, strikingClasses } from './struckOut';

/** So many cells may stand for others because of `rowspan` and `colspan`; what asks for more is not spread out. */
const mostSpanned = 1_000_000;
const widestSpan = 1000;
const longestTag = 20_000;
/** After so many tags that nothing closes, only short ones are looked for. */
const mostUnclosed = 100;

/** Elements after which text goes on in a new line. */
const blocks: ReadonlySet<string> = new Set(
  'p div br h1 h2 h3 h4 h5 h6 li ul ol section article header footer table caption body html'.split(' '),
);
/** What a row has that a page does not show. */
const notShown = /\bdisplay\s{0,9}:\s{0,9}none\b/i;
const hiddenAttribute = /\shidden(?=[\s>=/])/i;
const quotedValue = /"[^"]*"|'[^']*'/g;
const inputTag = /<input\b[^<>]*>/gi;

/** Elements whose content is no text. */
const hidden: ReadonlySet<string> = new Set(['script', 'style', 'head', 'title', 'template', 'noscript']);

/** Whether a text is HTML with a table in it, as the clipboard carries one. */
export function isHtmlTable(text: string): boolean {
  return (
    /^\ufeff?\s*(?:<|Version:[\d.]+\s)/i.test(text.slice(0, 400)) &&
    /<table[\s>]/i.test(text) &&
    /<t[dh][\s>]/i.test(text)
  );
}

/**
 * The cells of all tables in an HTML text, with a blank row behind each table and text between tables as rows of one
 * cell. A cell that reaches over several rows stands in each of them; one over several columns in the first. Markup in
 * cells is passed over, never acted on. Takes any text, in time linear in its length.
 */
export function htmlCells(text: string): TableCells {
  return new HtmlReader(text).read();
}

class HtmlReader {
  readonly #cells: TableCells;
  readonly #rowSpans: { start: number; end: number }[] = [];
  /** For each column, the cell that reaches down into the rows below, and how many it still reaches. */
  #reaching: { cell: number; rows: number }[] = [];
  #spanned = 0;
  #depth = 0;
  #rowStart = -1;
  #column = 0;
  /** Where the content of the open cell, or of text outside a table, starts; −1 where none is open. */
  #open = -1;
  #span = { rows: 1, columns: 1 };
  readonly #hiddenRows: { start: number; end: number }[] = [];
  #isHidden = false;
  readonly #struck: StruckCells;
  readonly #strikingClasses: ReadonlySet<string>;
  /** Whether the tag of the open row, or of the open cell, strikes out what stands in it. */
  #isRowStruck = false;
  #isCellStruck = false;

  constructor(readonly text: string) {
    this.#cells = new TableCells(text);
    this.#struck = new StruckCells(this.#cells);
    this.#strikingClasses = strikingClasses(text);
  }

  read(): TableCells {
    const { text } = this;
    let at = text.indexOf('<');
    let unclosed = 0;
    while (at >= 0) {
      const start = at;
      if (text.startsWith('<!--', at)) {
        const close = text.indexOf('-->', at + 4);
        at = close < 0 ? -1 : text.indexOf('<', close + 3);
        continue;
      }
      const name = tagName(text, at);
      const close = name === '' ? -1 : tagEnd(text, at, unclosed < mostUnclosed ? longestTag : 100);
      if (close < 0) {
        if (name !== '') unclosed++;
        at = text.indexOf('<', at + 1);
        continue;
      }
      let next = close + 1;
      if (hidden.has(name)) {
        const end = indexOfClosing(text, name, next);
        next = end < 0 ? text.length : end;
      }
      this.#tag(name, start, close);
      at = text.indexOf('<', next);
    }
    this.#endRow(text.length);
    this.#cells.rowSpans = this.#rowSpans;
    this.#cells.hiddenRows = this.#hiddenRows;
    return this.#cells;
  }

  #tag(name: string, start: number, close: number): void {
    const ends = name.startsWith('/');
    const element = ends ? name.slice(1) : name;
    if (element === 'table') {
      if (ends) {
        if (this.#depth === 1) {
          this.#endRow(start);
          this.#addRow(start, start);
        }
        this.#depth = Math.max(0, this.#depth - 1);
      } else {
        if (this.#depth === 0) this.#endRow(start);
        this.#depth++;
      }
      if (this.#depth === 0) this.#open = close + 1;
      return;
    }
    if (this.#depth > 1) return;
    const inTable = this.#depth === 1;
    if (inTable && (element === 'tr' || element === 'thead' || element === 'tbody' || element === 'tfoot')) {
      this.#endRow(start);
      if (element === 'tr' && !ends) {
        const tag = this.text.slice(start, Math.min(close + 1, start + 2000));
        this.#isHidden = isNotShown(tag);
        this.#isRowStruck = strikesOut(tag, this.#strikingClasses);
        this.#rowStart = start;
      }
    } else if (inTable && (element === 'td' || element === 'th')) {
      this.#endCell(start);
      if (ends || this.#isHidden) return;
      if (this.#rowStart < 0) this.#rowStart = start;
      this.#open = close + 1;
      const tag = this.text.slice(start, Math.min(close, start + 2000));
      this.#span = { rows: spanIn(tag, 'rowspan'), columns: spanIn(tag, 'colspan') };
      this.#isCellStruck = this.#isRowStruck || strikesOut(tag, this.#strikingClasses);
    } else if (!inTable || element === 'caption') {
      if (!blocks.has(element) && !hidden.has(element)) return;
      this.#endRow(start);
      if (!inTable || !ends) this.#open = close + 1;
    }
  }

  #endCell(end: number): void {
    if (this.#open < 0) return;
    if (this.#rowStart < 0) this.#rowStart = this.#open;
    this.#reachDown();
    const { rows, columns } = this.#span;
    const cell = this.#add(this.#open, end);
    this.#open = -1;
    this.#span = { rows: 1, columns: 1 };
    for (let column = 0; column < columns; column++) {
      if (column > 0) {
        if (this.#spanned++ >= mostSpanned) break;
        const at = this.#cells.ends[cell];
        this.#cells.put(at, at);
      }
      if (rows > 1) this.#reaching[this.#column] = { cell: column === 0 ? cell : -1, rows: rows - 1 };
      this.#column++;
    }
  }

  /** Adds the cells that reach down from the rows above into the columns from here on. */
  #reachDown(): void {
    for (let above = this.#reaching[this.#column]; above && above.rows > 0; ) {
      if (this.#spanned++ >= mostSpanned) return;
      const { starts, ends, rewritten, cellCount } = this.#cells;
      // The rest of a cell that is several columns wide is empty.
      const start = above.cell >= 0 ? starts[above.cell] : cellCount > 0 ? starts[cellCount - 1] : 0;
      const cell = this.#cells.put(start, above.cell >= 0 ? ends[above.cell] : start);
      const value = rewritten.get(above.cell);
      if (value !== undefined) rewritten.set(cell, value);
      above.rows--;
      this.#column++;
      above = this.#reaching[this.#column];
    }
  }

  #add(start: number, end: number): number {
    const cell = this.#cells.add(start, end);
    const from = this.#cells.starts[cell];
    const written = this.text.slice(from, this.#cells.ends[cell]);
    const value = plainText(this.#struck.read(cell, written, this.#isCellStruck));
    this.#isCellStruck = false;
    if (value === '') this.#cells.ends[cell] = from;
    else if (value !== written) this.#cells.rewritten.set(cell, value);
    return cell;
  }

  #endRow(end: number): void {
    const outside = this.#depth === 0;
    const open = this.#open;
    if (open >= 0 && outside && plainText(this.text.slice(open, Math.min(end, open + 400))) === '')
      this.#open = -1;
    this.#endCell(end);
    if (this.#rowStart < 0) return;
    if (this.#isHidden) {
      this.#hiddenRows.push({ start: this.#rowStart, end });
      this.#isHidden = false;
      this.#rowStart = -1;
      return;
    }
    if (!outside) this.#reachDown();
    this.#addRow(this.#rowStart, end);
    this.#rowStart = -1;
    if (outside) this.#reaching = [];
  }

  #addRow(start: number, end: number): void {
    this.#cells.endRow();
    this.#struck.endRow(this.#cells.rowCount - 1);
    this.#isRowStruck = false;
    this.#rowSpans.push({ start, end });
    this.#column = 0;
    if (start === end) this.#reaching = [];
  }
}

/** The name of the tag at `<`, with `/` before it for a closing tag; empty where no tag starts. */
function tagName(text: string, at: number): string {
  const name = /^<(\/?[a-z][a-z0-9]*)/i.exec(text.slice(at, at + 20))?.[1];
  return name?.toLowerCase() ?? '';
}

/**
 * Where the `>` of a tag stands, outside of quoted attribute values; −1 where the tag is not closed within `longest`
 * characters.
 */
function tagEnd(text: string, at: number, longest: number): number {
  const limit = Math.min(text.length, at + longest);
  let quote = '';
  for (let place = at + 1; place < limit; place++) {
    const character = text[place];
    if (quote !== '') {
      if (character === quote) quote = '';
    } else if (character === '>') return place;
    else if ((character === '"' || character === "'") && text[place - 1] === '=') quote = character;
  }
  return -1;
}

function indexOfClosing(text: string, name: string, from: number): number {
  const closing = new RegExp(`</${name}`, 'gi');
  closing.lastIndex = from;
  return closing.exec(text)?.index ?? -1;
}

function spanIn(tag: string, attribute: string): number {
  const match = new RegExp(`\\s${attribute}\\s*=\\s*["']?\\s*(\\d{1,6})`, 'i').exec(tag);
  return Math.max(1, Math.min(widestSpan, Number(match?.[1] ?? 1)));
}

function isNotShown(tag: string): boolean {
  return notShown.test(tag) || hiddenAttribute.test(tag.replace(quotedValue, ''));
}

/** A box that is ticked or not as a sign; other fields to fill in are no text. */
function tickIn(tag: string): string {
  if (!/type\s{0,9}=\s{0,9}["']?checkbox\b/i.test(tag)) return '';
  return /\schecked(?=[\s>=/])/i.test(tag) ? ' ✓ ' : ' ✗ ';
}

/** The text of an HTML fragment: without tags, character references put in, white space as single spaces. */
function plainText(html: string): string {
  if (!/[<&]|\s\s|[\t\r\n\u00a0]/.test(html)) return html;
  return withRaisedMarks(withoutHidden(html))
    .replace(inputTag, tickIn)
    .replace(/<\/?(?:p|div|br|li)\b[^<>]*>/gi, ' ')
    .replace(/<\/?[a-z][^<>]*>/gi, '')
    .replace(/&(#\d{1,7}|#x[\da-f]{1,6}|[a-z]\w{1,10});/gi, (all, name: string) => entity(name) ?? all)
    .replace(/\s+/g, ' ')
    .trim();
}

/** Leaves out comments, scripts and styles; one that nothing closes reaches to the end. */
function withoutHidden(html: string): string {
  const opening = /<(?:!--|(script|style)\b)/gi;
  let kept = '';
  let from = 0;
  for (let match = opening.exec(html); match; match = opening.exec(html)) {
    kept += html.slice(from, match.index);
    const name = match[1];
    const closing =
      name === undefined ? html.indexOf('-->', match.index + 4) : indexOfClosing(html, name, match.index);
    const end = closing < 0 ? -1 : html.indexOf('>', closing);
    from = end < 0 ? html.length : end + 1;
    opening.lastIndex = from;
  }
  return from === 0 ? html : kept + html.slice(from);
}

function entity(name: string): string | undefined {
  if (!name.startsWith('#')) return namedCharacter(name);
  const code = /^#x/i.test(name) ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
  return code > 0 && code <= 0x10ffff && !(code >= 0xd800 && code < 0xe000)
    ? String.fromCodePoint(code)
    : undefined;
}
