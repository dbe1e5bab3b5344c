import { readHeading } from '../../../trade/headings/headings';

const looked = 4096;
/** So many places of a comment may begin a remark. */
const mostRemarks = 12;

/** Whether names are headings of so many places. */
export function areHeadings(names: readonly string[], places: number): boolean {
  if (names.length !== places || names.length < 3) return false;
  const known = names.filter((name) => readHeading(name) !== undefined).length;
  return known * 3 >= names.length * 2;
}

/** What a comment may list: all of it, what stands in its outer brackets, and what stands before a remark. */
export function listsIn(comment: string): string[][] {
  const all = comment.replace(/^[^([{]*[:=]\s*/u, '').replace(/^[\s([{<]+|[\s)\]}>.;]+$/gu, '');
  const texts = [...inOuterBrackets(comment), all, ...textsBefore(comment)];
  // Where no sign parts them, they stand over their values, or are single words.
  return [/\s*[,;|\t]\s*/, /\s{2,}/, /\s+/].flatMap((sign) =>
    texts.map((text) =>
      text
        .trim()
        .split(sign)
        .map((name) => name.trim().replace(/^["'`]|["'`]$/g, '')),
    ),
  );
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
