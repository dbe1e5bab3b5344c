import { audioEndingInText, namesAudioFileIn } from '../../../model/fileNames';
import type { LiteralComment, LiteralEntry, LiteralMap, LiteralNode, LiteralText } from './literalTree';
import { readFlow } from './literalTree';

/** So much of a text tells whether it is of this kind. */
const looked = 1 << 14;
const listLine = new RegExp(
  String.raw`^[ ]*-[ ]+(?:[[{][ ]*["'\p{L}_]|[\p{L}_][\p{L}\p{N}_ ]{0,40}:(?:[ ]|$)|["']?\S[^:\n]*${audioEndingInText}["']?:?[ ]*$)|^[ ]+["']?[^\s:#][^:#\n]*${audioEndingInText}["']?:[ ]*(?:[[{]|$)`,
  'gimu',
);
const entry = /^("[^"]{1,200}"|'[^']{1,200}'|[^\s:#[\]{},"'-][^:#\n]{0,200}?)[ ]*:(?=\s|$)/u;
const deepest = 64;
const longestFlow = 4000;

/** A dash, or a key with what stands behind it, at its column. */
interface Token {
  column: number;
  kind: 'dash' | 'entry' | 'value';
  /** Where the key stands, and what is behind its colon; of a value, the value. */
  keyStart: number;
  keyEnd: number;
  start: number;
  end: number;
}

/**
 * Reads lists and maps that are told by dashes, colons and indentation alone: the block style of YAML 1.2 (chapter 8), as far as
 * lists of zones use it. `undefined` for any other text.
 */
export function readIndented(text: string): LiteralText | undefined {
  const start = text.slice(0, looked);
  if ((start.match(listLine)?.length ?? 0) < 2 || !namesAudioFileIn(start)) return undefined;
  const comments: LiteralComment[] = [];
  const tokens = tokensOf(text, comments);
  const reader = new IndentedReader(text, tokens);
  const node = reader.block(-1, 0);
  const top: LiteralMap = { kind: 'map', name: '', entries: [], items: [], start: 0, end: text.length };
  const open = reader.open ?? keyAtEnd(tokens);
  if (node?.kind === 'map') return { top: node, comments, open };
  if (node) top.items.push(node);
  return { top, comments, open };
}

/** The key above, where the text ends with a word in a line of its own: the start of a key. */
function keyAtEnd(tokens: readonly Token[]): number[] {
  const [before, last] = tokens.slice(-2);
  return last?.kind === 'value' && before?.kind === 'entry' && last.column >= before.column && last.column > 0
    ? [before.keyStart]
    : [];
}

function tokensOf(text: string, comments: LiteralComment[]): Token[] {
  const tokens: Token[] = [];
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (at < text.length) {
    const next = text.indexOf('\n', at);
    const lineEnd = next < 0 ? text.length : next;
    addLine(text, at, lineEnd, tokens, comments);
    const last = tokens.at(-1);
    const end = last && last.end > at ? flowEnd(text, last) : -1;
    if (last && end > lineEnd) last.end = end;
    at = (end > lineEnd ? Math.max(text.indexOf('\n', end), end) : lineEnd) + 1;
  }
  return tokens;
}

/** Where the brackets close that a value starts with, which may be some lines further down (YAML 1.2, chapter 7.4); −1 for other values. */
function flowEnd(text: string, { start }: Token): number {
  if (text[start] !== '[' && text[start] !== '{') return -1;
  let depth = 0;
  for (let at = start; at < Math.min(text.length, start + longestFlow); at++) {
    if (text[at] === '[' || text[at] === '{') depth++;
    else if ((text[at] === ']' || text[at] === '}') && --depth === 0) return at + 1;
  }
  return -1;
}

function addLine(
  text: string,
  lineStart: number,
  lineEnd: number,
  tokens: Token[],
  comments: LiteralComment[],
): void {
  let at = lineStart;
  const end = lineStart + text.slice(lineStart, lineEnd).trimEnd().length;
  const blanks = () => {
    while (at < end && text[at] === ' ') at++;
  };
  blanks();
  while (at < end && text[at] === '-' && (at + 1 === end || text[at + 1] === ' ')) {
    tokens.push({ column: at - lineStart, kind: 'dash', keyStart: at, keyEnd: at, start: at, end: at });
    at++;
    blanks();
  }
  if (at >= end) return;
  if (text[at] === '#') {
    comments.push({ text: text.slice(at + 1, end).trim(), start: at, end });
    return;
  }
  if (/^(?:---|\.\.\.)/.test(text.slice(at, at + 3))) return;
  const column = at - lineStart;
  const key = entry.exec(text.slice(at, end));
  if (!key) {
    tokens.push({ column, kind: 'value', keyStart: at, keyEnd: at, start: at, end });
    return;
  }
  const quoted = /^["']/.test(key[1]) ? 1 : 0;
  const start = at + key[0].length;
  // Behind a key may stand a mark that other places refer to, or a comment (YAML 1.2, 6.6 and 6.9.2).
  const lead = /^\s*(?:&\S+\s*)?(?:#.*)?/.exec(text.slice(start, end))?.[0].length ?? 0;
  tokens.push({
    column,
    kind: 'entry',
    keyStart: at + quoted,
    keyEnd: at + key[1].length - quoted,
    start: start + lead,
    end,
  });
}

class IndentedReader {
  #at = 0;
  readonly #end: number;
  /** Places that are open where the text ends, as in {@link LiteralText.open}; `undefined` where its last value is no list or map in brackets. */
  open: readonly number[] | undefined;

  constructor(
    readonly text: string,
    readonly tokens: readonly Token[],
  ) {
    this.#end = text.trimEnd().length;
  }

  /** The node of the tokens that stand further right than a column. */
  block(parent: number, depth: number): LiteralNode | undefined {
    const first = this.tokens[this.#at];
    if (!first || first.column <= parent || depth > deepest) return undefined;
    if (first.kind === 'value') {
      this.#at++;
      return this.#scalar(first);
    }
    return first.kind === 'dash' ? this.#list(first.column, depth) : this.#map(first.column, depth);
  }

  #list(column: number, depth: number): LiteralNode {
    const items: LiteralNode[] = [];
    const start = this.tokens[this.#at].start;
    for (;;) {
      const token = this.tokens[this.#at];
      if (token?.kind !== 'dash' || token.column !== column) break;
      this.#at++;
      const item = this.block(column, depth + 1);
      if (item) items.push(item);
      this.#skip(column);
    }
    return { kind: 'list', name: '', items, start, end: items.at(-1)?.end ?? start };
  }

  #map(column: number, depth: number): LiteralNode {
    const entries: LiteralEntry[] = [];
    const { text } = this;
    const start = this.tokens[this.#at].keyStart;
    for (;;) {
      const token = this.tokens[this.#at];
      if (token?.kind !== 'entry' || token.column !== column) break;
      this.#at++;
      const { keyStart, keyEnd } = token;
      const key = text.slice(keyStart, keyEnd);
      const next = this.tokens[this.#at];
      // A list may stand as far left as its key.
      const parent = next?.kind === 'dash' ? column - 1 : column;
      const value = token.start < token.end ? this.#scalar(token) : this.block(parent, depth + 1);
      if (value)
        entries.push({
          key: { kind: 'value', text: key, isQuoted: false, start: keyStart, end: keyEnd },
          value,
        });
      this.#skip(column);
    }
    return { kind: 'map', name: '', entries, items: [], start, end: entries.at(-1)?.value.end ?? start };
  }

  /** Passes over what stands further right and belongs to nothing. */
  #skip(column: number): void {
    while (this.#at < this.tokens.length && this.tokens[this.#at].column > column) this.#at++;
  }

  #scalar({ start, end }: Token): LiteralNode {
    const { text } = this;
    const written = text.slice(start, end);
    if (/^[[{"']/.test(written)) {
      const { top, open } = readFlow(text, start, end);
      const [node] = top.items;
      if (end >= this.#end) this.open = open;
      if (node) return node;
    }
    const comment = /\s#\s.*$/.exec(written);
    const stop = comment ? start + comment.index : end;
    const plain = text.slice(start, stop).trimEnd();
    return {
      kind: 'value',
      text: plain === '~' ? '' : plain,
      isQuoted: false,
      start,
      end: start + plain.length,
    };
  }
}
