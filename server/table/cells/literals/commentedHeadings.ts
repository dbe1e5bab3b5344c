import { readHeading } from '../../../trade/headings/headings';
import type { LiteralField } from './literalField';
import type { NestedHeading } from './nestedHeadings';
import { nestedHeadings } from './nestedHeadings';

const looked = 4096;
/** So many places of a comment may begin a remark. */
const mostRemarks = 12;

/** How many values fields hold, those of lists counted. */
export function valuesIn(fields: readonly LiteralField[]): number {
  return fields.reduce((sum, { items }) => sum + Math.max(1, items?.length ?? 1), 0);
}

/** Whether names are headings of so many places. */
export function areHeadings(names: readonly string[], places: number): boolean {
  if (names.length !== places || names.length < 3) return false;
  const known = names.filter((name) => readHeading(name) !== undefined).length;
  return known * 3 >= names.length * 2;
}

/** What a comment may list: all of it, what stands in its outer brackets, and what stands before a remark. */
export function listsIn(comment: string): NestedHeading[][] {
  const all = withoutOuter(comment.replace(/^[^([{]*[:=]\s*/u, ''));
  const texts = [...inOuterBrackets(comment), all, ...textsBefore(comment)];
  // Where no sign parts them, they stand over their values, or are single words.
  return [/\s*[,;|\t]\s*/, /\s{2,}/, /\s+/].flatMap((sign) =>
    texts.map((text) => nestedHeadings(text.trim(), sign)),
  );
}

/** A text without signs around it, and without brackets that close no other of its own. */
function withoutOuter(text: string): string {
  const bare = text.trim().replace(/[.;,]+$/u, '');
  return /^[([{<][^()[\]{}<>]*[)\]}>]?$|^[^([{<]*[)\]}>]$/u.test(bare)
    ? bare.replace(/^[\s([{<]+|[\s)\]}>.;]+$/gu, '')
    : bare;
}

function inOuterBrackets(text: string): string[] {
  const found: string[] = [];
  let depth = 0;
  let start = 0;
  for (let at = 0; at < text.length; at++) {
    if ('([{<'.includes(text[at]) && depth++ === 0) start = at + 1;
    else if (')]}>'.includes(text[at]) && depth > 0 && --depth === 0) found.push(text.slice(start, at));
  }
  return found;
}

/** A comment up to each sign that may begin a remark, as in `file, low, root  (gain is linear)`, without words before a colon. */
function textsBefore(comment: string): string[] {
  const ends = [...comment.slice(0, looked).matchAll(/\s{2,}|\s[-\u2013\u2014(]|[.;]\s/gu)];
  return ends.slice(0, mostRemarks).map(({ index }) => comment.slice(0, index).replace(/^[^,]*:\s*/u, ''));
}
