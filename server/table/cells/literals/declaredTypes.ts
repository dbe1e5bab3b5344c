import { readHeading } from '../../../trade/headings/headings';
import { unitOf } from '../../../trade/languages/cellWords';

const longestBody = 8000;
const mostTypes = 20;
const mostFields = 60;
/** The head of a type with its fields in brackets: `struct zone {`, `record Zone(`, `type Zone struct {`, `class Zone {`. */
const head =
  /(?<![\p{L}\p{N}_])(?:type\s+\w{1,60}\s+struct|type\s+\w{1,60}\s*=|(?:struct|class|record|interface)(?![\p{L}\p{N}_]))[^{}()=;"'\n]{0,80}\n?[ \t]*(?=[{(])/gu;
/** A type whose fields stand in lines below it, further in. */
const indentedHead = /^class\s+\w{1,60}(?:\([\w., ]{0,60}\))?:[ \t]*\n((?:[ \t]+[^\n]*\n|[ \t]*\n)+)/gmu;
const comment = /\/\*([\s\S]{0,400}?)\*\/|(?:\/\/|#)([^\n]{0,400})/gu;
const modifier =
  /^(?:(?:pub|public|private|protected|internal|readonly|final|static|const|mutable|let|var|val|required|volatile)\s+)+/u;
const closers: Readonly<Record<string, string>> = { '{': '}', '(': ')' };

const goType = /^type\s+\w+\s+struct/u;

/** How a type is written: parameters between commas, fields with their types or names first. */
type BodyKind = 'parameters' | 'names first' | 'fields';

/** Fields of a type, as headings in their order, and what remarks behind them say. */
export interface DeclaredType {
  headings: string[];
  sentences: string[];
}

/** The types that source text declares with their fields; none where it declares none. */
export function declaredTypes(text: string): DeclaredType[] {
  const types: DeclaredType[] = [];
  for (const { 0: all, index } of text.matchAll(head)) {
    const open = index + all.length;
    const body = bodyAt(text, open);
    const kind = text[open] === '(' ? 'parameters' : goType.test(all) ? 'names first' : 'fields';
    if (body !== undefined) types.push(fieldsIn(body, kind));
    if (types.length >= mostTypes) return types;
  }
  for (const [, body] of text.matchAll(indentedHead))
    types.push(fieldsIn(body.slice(0, longestBody), 'fields'));
  return types.filter(({ headings }) => headings.length > 1);
}

/** What stands in the brackets at a place; `undefined` where they hold a text in quotation marks, as constants do, or do not close. */
function bodyAt(text: string, open: number): string | undefined {
  const closer = closers[text[open]];
  let depth = 0;
  for (let at = open; at < Math.min(text.length, open + longestBody); at++) {
    if (text[at] === text[open]) depth++;
    else if (text[at] === closer && --depth === 0) return text.slice(open + 1, at);
    else if (text[at] === '"') return undefined;
  }
  return undefined;
}

function fieldsIn(body: string, kind: BodyKind): DeclaredType {
  const headings: string[] = [];
  const sentences: string[] = [];
  for (const { code, remark } of declarationsIn(body, kind)) {
    if (headings.length > mostFields) break;
    const names = namesIn(code, kind);
    for (const name of names) {
      const isUnit = remark !== '' && unitOf(remark.replace(/^in\s+/iu, '')) !== undefined;
      const isMeaning = readHeading(name) === undefined && readHeading(remark) !== undefined;
      headings.push(isUnit ? `${name} (${remark.replace(/^in\s+/iu, '')})` : isMeaning ? remark : name);
    }
    if (remark !== '' && names.length > 0) sentences.push(`${names.join(', ')}: ${remark}`);
  }
  return { headings, sentences };
}

/** The declarations of a body, each with the remark behind it; one that stands alone on its line has all remarks there. */
function declarationsIn(body: string, kind: BodyKind): { code: string; remark: string }[] {
  const found: { code: string; remark: string }[] = [];
  const bare = body.replace(comment, '');
  const sign = bare.includes(';') ? ';' : kind === 'parameters' || bare.includes(':') ? ',' : '\n';
  const partsOf = (line: string) =>
    line
      .replace(comment, '')
      .split(sign)
      .map((part) => part.trim())
      .filter((part) => part !== '');
  for (const line of body.split('\n')) {
    const remarks = Array.from(line.matchAll(comment), ({ 0: all, 1: block, 2: rest, index }) => ({
      text: (block ?? rest ?? '').trim(),
      behind: partsOf(line.slice(0, index + all.length)).length,
    }));
    const own = partsOf(line);
    const isOwn = (behind: number, at: number) => own.length === 1 || behind === at + 1;
    for (const [at, code] of own.entries()) {
      const said = remarks.filter(({ behind }) => isOwn(behind, at)).map(({ text }) => text);
      found.push({ code, remark: said.join(' ') });
    }
  }
  return found;
}

/** The names that a declaration gives: `const char *file`, `int low, high`, `low: u8`, `Low, High int`. */
function namesIn(code: string, kind: BodyKind): string[] {
  const bare = code.replace(modifier, '').replace(/\s*=.*$/u, '');
  if (/[(){}]/.test(bare)) return [];
  const typed = /^([\p{L}_]\w*)\??\s*:\s*[\p{L}&'[(*]/u.exec(bare);
  if (typed) return [typed[1]];
  const parts = bare.replace(/\s*:\s*\d+(?=\s*(?:,|$))/gu, '').split(/\s*,\s*/u);
  const last = parts.at(-1) ?? '';
  const go = /^([\p{L}_]\w*)\s+\[?\]?\*?(?:string|u?int\d*|float(?:32|64)|byte|bool|rune)$/u.exec(last);
  if (kind === 'names first' && go) return [...parts.slice(0, -1), go[1]];
  const first = /^[\p{L}_][\p{L}\p{N}_:<>&*\s[\]?]*?[\s*&\]>?]([\p{L}_]\w*)(?:\[\w*\])*$/u.exec(
    parts[0] ?? '',
  );
  if (!first) return [];
  const others = parts.slice(1).map((part) => part.replace(/^[*&\s]+|\[\w*\]$/gu, ''));
  return [first[1], ...others].every((name) => /^[\p{L}_]\w*$/u.test(name)) ? [first[1], ...others] : [];
}
