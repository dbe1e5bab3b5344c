import { audioEndingInText } from '../../../model/fileNames';

const looked = 1 << 16;
const closers: Readonly<Record<string, string>> = { '[': ']', '{': '}', '(': ')' };
const file = new RegExp(`["'\`][^"'\`\n]{1,300}${audioEndingInText}["'\`]`, 'iu');
const longestHead = 200;
/** Places in a list that count from 0, and so are no keys: `[0] = {`. */
const firstIndex = /\[\s{0,4}0\s{0,4}\]\s{0,4}=(?!=)/;
const indexed = /\[\s{0,4}\d{1,4}\s{0,4}\]\s{0,4}=(?!=)/g;
/** An array that is given values: `release[] = {`. */
const namedList = /([\p{L}_]\w{0,60})((?:\s{0,4}\[\s{0,4}\w{0,60}\s{0,4}\]){1,2})(\s{0,40}=\s{0,40})(?=\{)/gu;
/** Text in quotation marks, a comment or one sign; a remark for the compiler such as `#include` is no comment. */
const token =
  /"(?:\\.|[^"\\\n]){0,600}"?|'(?:\\.|[^'\\\n]){0,600}'|\/\/[^\n]*|\/\*[\s\S]*?(?:\*\/|$)|^[ \t]*#(?!\s*(?:include|define|pragma|if|ifdef|ifndef|endif|else|undef|region)\b)[^\n]*|[[\]{}()]/gmu;

/**
 * A text in a programming language from the bracket of its first constant that holds audio files on, with blanks in place of all but
 * comments before it, so that all offsets stay: what stands behind `static const zone_t zones[] =`, `= new Zone[]`, `= vec!`.
 * `undefined` where no value that is given to a name holds a file.
 */
export function constantsOf(text: string): string | undefined {
  const start = text.slice(0, looked);
  const first = file.exec(start);
  if (!first) return undefined;
  const open: number[] = [];
  const comments: { start: number; end: number }[] = [];
  for (const { 0: sign, index } of start.slice(0, first.index).matchAll(token)) {
    if (sign in closers) open.push(index);
    else if (sign.length === 1) open.pop();
    else if (!/^["']/.test(sign)) comments.push({ start: index, end: index + sign.length });
  }
  const list = open.find((place) => isGiven(start, place));
  if (list === undefined) return undefined;
  // Several lists have names to be told apart by.
  const names = Array.from(start.matchAll(namedList));
  const own = names.length > 1 ? names.find(({ 0: all, index }) => index + all.length === list) : undefined;
  if (own) comments.push({ start: own.index, end: own.index + own[1].length });
  let body = '';
  let at = 0;
  for (const one of comments) {
    if (one.end > list) break;
    body += blanks(text.slice(at, one.start)) + text.slice(one.start, one.end);
    at = one.end;
  }
  const rest = text.slice(list).replace(namedList, (_, name, size, sign) => name + blanks(size) + sign);
  const listed = firstIndex.test(rest) ? rest.replace(indexed, blanks) : rest;
  return `${body}${blanks(text.slice(at, own ? list - 1 : list))}${own ? '=' : ''}${listed}`;
}

/** Whether what opens at a place is given to a name. */
function isGiven(text: string, place: number): boolean {
  const before = text.slice(Math.max(0, place - longestHead), place);
  const head = before.slice(
    Math.max(before.lastIndexOf(';'), before.lastIndexOf('}'), before.lastIndexOf('{')) + 1,
  );
  return /(?<![=!<>])=(?![=>])[^=,"']*$/u.test(head);
}

function blanks(text: string): string {
  return text.replace(/[^\n]/g, ' ');
}
