import { isAudioFileName } from '../../../model/fileNames';
import { joinedBy, joinedNameIn, joiningAt, withNamed } from './joinedTexts';

/** A value, a list or a map of a script's or JSON text, by its offsets. */
export type LiteralNode = LiteralValue | LiteralList | LiteralMap;

export interface LiteralValue {
  kind: 'value';
  /** What it reads: of a quoted text what is between the marks, escapes read. */
  text: string;
  isQuoted: boolean;
  /** The stretch of what it reads, without quotation marks. */
  start: number;
  end: number;
}

export interface LiteralList {
  kind: 'list';
  /** The name before the bracket, as of a function that is called; empty where there is none. */
  name: string;
  items: LiteralNode[];
  start: number;
  end: number;
}

export interface LiteralMap {
  kind: 'map';
  entries: LiteralEntry[];
  /** What stands in it without a key. */
  items: LiteralNode[];
  name: string;
  start: number;
  end: number;
}

export interface LiteralEntry {
  key: LiteralValue;
  value: LiteralNode;
}

/** What a text consists of: its values one after another, and the comments between them. */
export interface LiteralText {
  top: LiteralMap;
  comments: LiteralComment[];
  /** The brackets that are open where the text ends; none where brackets are closed by others. */
  open: readonly number[];
}

/** What a comment says, and where it stands. */
export interface LiteralComment {
  text: string;
  start: number;
  end: number;
}

const deepest = 64;
const mostNodes = 2_000_000;
const escapes: Readonly<Record<string, string>> = { n: '\n', t: '\t', r: '\r', b: '\b', f: '\f', '0': '\0' };
const closers: Readonly<Record<string, string>> = { '[': ']', '{': '}', '(': ')' };
/** Words before a value that only introduce it. */
const leads: ReadonlySet<string> = new Set(
  'const let var local return export default new final my our static public val def'.split(' '),
);
/** A number with the mark of its type, as in `0.5f`, `36u8`, `-1.5_f32`. */
const typedNumber = /^([-+]?\d+(?:\.\d*)?)(?:[fF]|[uU]?[lL]{1,2}|[uU]|_?[iuf](?:8|16|32|64|size))$/;
const wordEnd = /[\s[\]{}(),;:="'`]/;

/**
 * Reads JSON, JSON lines and the literals of scripts: lists in any brackets, maps with `:`, `=` or `=>` behind their keys, calls of
 * functions, quoted or bare words, comments. Takes any text and time linear in its length; brackets that nothing closes end with
 * the text, and what is no literal is passed over. `names` stand for texts, where such are joined: `dir .. "a.wav"`.
 */
export function readLiterals(text: string, names?: ReadonlyMap<string, string>): LiteralText {
  return new LiteralReader(text, 0, names).read();
}

/** Reads the value in the flow style of YAML that stands in a stretch of a text, at the text's offsets. */
export function readFlow(text: string, start: number, end: number): LiteralText {
  return new LiteralReader(text.slice(0, end), start, undefined, true).read();
}

class LiteralReader {
  #at: number;
  #nodes = 0;
  readonly #comments: LiteralComment[] = [];
  readonly #open: number[] = [];
  #isMixed = false;
  #textEnd: number | undefined;

  constructor(
    readonly text: string,
    start = 0,
    readonly names: ReadonlyMap<string, string> = new Map(),
    /** Whether blanks stand in words, up to a sign between values (YAML 1.2, 7.3.3). */
    readonly hasBlanks = false,
  ) {
    this.#at = start;
  }

  read(): LiteralText {
    const top = this.#content('', 0, '', 0);
    return { top, comments: this.#comments, open: this.#isMixed ? [] : this.#open };
  }

  /** What stands up to a closing bracket, or to the end of the text. */
  #content(closer: string, start: number, name: string, depth: number): LiteralMap {
    const { text } = this;
    const map: LiteralMap = { kind: 'map', entries: [], items: [], name, start, end: start };
    for (;;) {
      this.#space();
      if (this.#at >= text.length) {
        if (closer !== '') this.#open.push(start);
        break;
      }
      const sign = text[this.#at];
      if (sign === closer) {
        this.#at++;
        break;
      }
      if (sign === ',' || sign === ';' || sign === ']' || sign === '}' || sign === ')') {
        this.#isMixed ||= sign !== ',' && sign !== ';';
        this.#at++;
        continue;
      }
      const before = this.#at;
      const node = this.#node(depth);
      if (node && !(closer !== '' && this.#isCut(node))) this.#take(map, node, depth);
      if (this.#at === before) this.#at++;
      if (this.#nodes > mostNodes) break;
    }
    map.end = this.#at;
    return map;
  }

  /** Adds a node, or an entry where a sign behind it says that it is a key. */
  #take(map: LiteralMap, node: LiteralNode, depth: number): void {
    // In Lua, keys may stand in brackets: `["low"] = 36`.
    const only = node.kind === 'list' && node.items.length === 1 ? node.items[0] : node;
    this.#space();
    const sign = /^(?:=>|:=|=(?!=)|:(?!:))/.exec(this.text.slice(this.#at, this.#at + 2))?.[0];
    if (sign === undefined || only.kind !== 'value') {
      map.items.push(node);
      return;
    }
    const back = this.#at;
    this.#at += sign.length;
    this.#space();
    const value = this.#at < this.text.length ? this.#node(depth) : undefined;
    if (value && (depth === 0 || !this.#isCut(value))) map.entries.push({ key: only, value });
    else if (this.#at === back) this.#at++;
  }

  /** Whether the text ends with a value, which may go on. */
  #isCut(node: LiteralNode): boolean {
    if (node.kind !== 'value' || (node.isQuoted && node.end < this.text.length)) return false;
    this.#textEnd ??= this.text.trimEnd().length;
    return node.end >= this.#textEnd;
  }

  /** A node, with what is joined to it where it is a text. */
  #node(depth: number): LiteralNode | undefined {
    let node = this.#single(depth);
    for (;;) {
      // The name of a file is whole; what stands behind it is another one.
      if (node?.kind !== 'value' || isAudioFileName(node.text)) return node;
      const isName = !node.isQuoted && /^\$?[\p{L}_][\p{L}\p{N}_]*$/u.test(node.text);
      const joining = node.isQuoted || isName ? joiningAt(this.text, this.#at) : undefined;
      if (!joining) return node;
      const back = this.#at;
      this.#at += joining.length;
      const mark = this.text[this.#at];
      const isText = mark === '"' || mark === "'" || mark === '`';
      const next = isText ? this.#quoted(mark) : this.#word();
      const behind = next && (isText ? next.text : this.names.get(next.text));
      if (!next || behind === undefined) {
        this.#at = back;
        return node;
      }
      const before = node.isQuoted ? node.text : (this.names.get(node.text) ?? '');
      const span = node.isQuoted ? node : next;
      node = { ...span, text: joinedBy(joining.sign, before, behind), isQuoted: true };
    }
  }

  #single(depth: number): LiteralNode | undefined {
    this.#nodes++;
    const { text } = this;
    const start = this.#at;
    const sign = text[start];
    const closer = closers[sign];
    if (closer) {
      this.#at++;
      if (depth >= deepest) return undefined;
      return asNode(this.#content(closer, start, '', depth + 1), sign);
    }
    if (sign === '"' || sign === "'" || sign === '`') return this.#quoted(sign);
    const word = this.hasBlanks ? this.#plainWords() : this.#word();
    if (!word || this.hasBlanks) return word;
    if (leads.has(word.text)) return undefined;
    // A letter before a quotation mark says how the text is written.
    const next = text[this.#at];
    if (/^[rbuf]{1,2}$/i.test(word.text) && (next === '"' || next === "'")) return this.#quoted(next);
    const joined = next === '"' || next === "'" ? joinedNameIn(word.text) : undefined;
    if (joined) {
      const quoted = this.#quoted(next);
      return { ...quoted, text: joinedBy(joined.sign, this.names.get(joined.name) ?? '', quoted.text) };
    }
    const opener = next === '(' ? next : this.#braceBehind(word);
    if (opener === undefined || depth >= deepest) return word;
    this.#at = text.indexOf(opener, this.#at) + 1;
    return asNode(this.#content(closers[opener], start, word.text, depth + 1), opener);
  }

  /** The `{` behind a name with an empty stretch between, as of a record that is named. */
  #braceBehind({ text: name }: LiteralValue): string | undefined {
    if (!/^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name)) return undefined;
    return /^[ \t]?\{/.test(this.text.slice(this.#at, this.#at + 2)) ? '{' : undefined;
  }

  #plainWords(): LiteralValue | undefined {
    const { text } = this;
    const start = this.#at;
    let at = start;
    while (at < text.length && !/[,[\]{}\n]/.test(text[at])) {
      if (text[at] === ':' && /[\s,[\]{}]|^$/.test(text[at + 1] ?? '')) break;
      if (text[at] === '#' && at > start && text[at - 1] === ' ') break;
      at++;
    }
    const read = text.slice(start, at).trimEnd();
    this.#at = at;
    if (read === '') return undefined;
    return { kind: 'value', text: read, isQuoted: false, start, end: start + read.length };
  }

  #word(): LiteralValue | undefined {
    const { text } = this;
    const start = this.#at;
    // Ruby writes keys as `:low`.
    let at = text[start] === ':' ? start + 1 : start;
    const from = at;
    while (at < text.length && !wordEnd.test(text[at])) at++;
    if (at === from) return undefined;
    this.#at = at;
    const read = text.slice(from, at).replace(typedNumber, '$1');
    return { kind: 'value', text: read, isQuoted: false, start: from, end: at };
  }

  #quoted(mark: string): LiteralValue {
    const { text } = this;
    const start = this.#at + 1;
    let at = start;
    let read = '';
    let from = start;
    while (at < text.length && text[at] !== mark) {
      if (text[at] === '\\' && at + 1 < text.length) {
        read += text.slice(from, at);
        const code = /^u([\da-f]{4})|^x([\da-f]{2})/i.exec(text.slice(at + 1, at + 6));
        if (code) read += String.fromCharCode(Number.parseInt(code[1] ?? code[2], 16));
        else read += escapes[text[at + 1]] ?? text[at + 1];
        at += 1 + (code ? code[0].length : 1);
        from = at;
      } else if (text[at] === '\n' && mark !== '`') break;
      else at++;
    }
    read += text.slice(from, at);
    this.#at = Math.min(text.length, at + 1);
    return { kind: 'value', text: withNamed(read, this.names), isQuoted: true, start, end: at };
  }

  /** Passes over white space and comments. */
  #space(): void {
    const { text } = this;
    for (;;) {
      while (this.#at < text.length && /\s|\ufeff/.test(text[this.#at])) this.#at++;
      const two = text.slice(this.#at, this.#at + 2);
      if (two === '/*') {
        const close = text.indexOf('*/', this.#at + 2);
        this.#comment(close < 0 ? text.length : close, 2, 2);
      } else if (two === '//' || two === '--') this.#comment(this.#lineEnd(), 2, 0);
      else if (two[0] === '#' && !/^#\p{L}\w*\s*[([{]/u.test(text.slice(this.#at, this.#at + 30)))
        this.#comment(this.#lineEnd(), 1, 0);
      else return;
    }
  }

  #comment(end: number, opening: number, closing: number): void {
    const text = this.text.slice(this.#at + opening, end).trim();
    this.#comments.push({ text, start: this.#at, end: Math.min(this.text.length, end + closing) });
    this.#at = Math.min(this.text.length, end + closing);
  }

  #lineEnd(): number {
    const end = this.text.indexOf('\n', this.#at);
    return end < 0 ? this.text.length : end;
  }
}

/** Content without keys is a list; of round brackets with both, the keys are those of a call. */
function asNode(map: LiteralMap, opener: string): LiteralNode {
  const { entries, items, name, start, end } = map;
  const isList = entries.length === 0 && (opener !== '{' || items.length > 0);
  return isList ? { kind: 'list', name, items, start, end } : map;
}
