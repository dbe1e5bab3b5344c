import { readHeading } from './headings';

/** A label and its value on a line of a text, by their offsets. */
export interface Labelled {
  label: string;
  labelStart: number;
  valueStart: number;
  valueEnd: number;
  /** The sign between the two. */
  sign: string;
}

/** Lines with more characters are no records. */
const longestLine = 4000;
const mostLabels = 100;

const field = /^[\s*\u2022>-]*(\p{L}[^:=\t]{0,40}?)[ \u00a0]{0,8}(:|=|\t)(?!\/\/)\s*(\S[^\t]*)?$/u;
const inLine = /(?:^|[\s,;|])(?:(\p{L}[\p{L}\p{N}_#]*) )?(\p{L}[\p{L}\p{N}_#]*) ?([:=]) ?/gu;
const parting = ' \t\u00a0,;|';

/** The label and value that a line consists of: `Root key: C3`; `undefined` for any other line. */
export function fieldOf(text: string, start: number, end: number): Labelled | undefined {
  if (end - start > longestLine) return undefined;
  const line = text.slice(start, end);
  const match = field.exec(line);
  if (!match) return undefined;
  const [, label = '', sign = '', value = ''] = match;
  const labelStart = start + line.indexOf(label);
  const valueStart = value === '' ? end : end - value.length;
  return { label, labelStart, valueStart, valueEnd: valueStart + value.trimEnd().length, sign };
}

/**
 * The labels and values that stand on a line one after another: `file=a.wav, root=C3` or `file: a.wav root: C3`; none
 * where the line starts with anything else. Before `=` any word is a label, before `:` only a known heading.
 */
export function fieldsIn(text: string, start: number, end: number): Labelled[] {
  if (end - start > longestLine) return [];
  const line = text.slice(start, end);
  const found: Labelled[] = [];
  for (const match of line.matchAll(inLine)) {
    const [whole, first, last = '', sign = ''] = match;
    const both = first === undefined ? undefined : `${first} ${last}`;
    const label = both !== undefined && (found.length === 0 || readHeading(both)) ? both : last;
    if (sign === ':' && !readHeading(label)) continue;
    const labelStart = start + match.index + whole.lastIndexOf(label);
    const before = found.at(-1);
    if (before) before.valueEnd = endOfValue(text, before.valueStart, labelStart);
    else if (line.slice(0, labelStart - start).trim() !== '') return [];
    found.push({ label, labelStart, valueStart: start + match.index + whole.length, valueEnd: end, sign });
    if (found.length > mostLabels) return [];
  }
  const last = found.at(-1);
  if (last) last.valueEnd = endOfValue(text, last.valueStart, end);
  return found;
}

/** Where a value ends before the next label: without the signs that part the two. */
function endOfValue(text: string, start: number, end: number): number {
  let at = end;
  while (at > start && parting.includes(text[at - 1])) at--;
  return at;
}
