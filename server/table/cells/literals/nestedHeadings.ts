import type { LiteralField } from './literalField';
import { fieldFrom } from './literalRecords';

const openers = '([{<';
const closers = ')]}>';
const deepest = 4;

/** A heading of a value, or those of the values of a list within: `root`, `(lo, hi)`. */
export type NestedHeading = string | readonly NestedHeading[];

/** The headings that a text lists with a sign between, those in brackets as a list of their own: `file, root, (lo, hi)`. */
export function nestedHeadings(text: string, sign: RegExp, depth = 0): NestedHeading[] {
  return partsOutside(text, sign).map((part) => {
    const inner = bracketed(part);
    if (inner === undefined || depth >= deepest) return bare(part);
    const found = nestedHeadings(inner, sign, depth + 1);
    return found.length > 1 ? found : bare(inner);
  });
}

/** All headings in their order, without lists. */
export function flatHeadings(headings: readonly NestedHeading[]): string[] {
  return headings.flatMap((one) => (typeof one === 'string' ? [one] : flatHeadings(one)));
}

/**
 * Values by their places under headings that are nested as they are, where there are as many as `places`, or that name all of them in
 * their order; `undefined` where neither fits.
 */
export function underHeadings(
  fields: readonly LiteralField[],
  headings: readonly NestedHeading[],
  places: number,
): LiteralField[] | undefined {
  const isAlike = headings.length === places;
  return (isAlike ? nested(fields, headings) : undefined) ?? inOrder(fields, flatHeadings(headings));
}

function nested(
  fields: readonly LiteralField[],
  headings: readonly NestedHeading[],
): LiteralField[] | undefined {
  if (fields.length > headings.length) return undefined;
  const found: LiteralField[] = [];
  for (const [at, field] of fields.entries()) {
    const heading = headings[at];
    if (typeof heading === 'string') found.push({ ...field, heading });
    else {
      const inner = field.items && nested(partsOf(field), heading);
      if (inner) found.push(...inner);
      // No value at all in place of a list: `None`.
      else if (field.text !== '') return undefined;
    }
  }
  return found;
}

/** Values without their lists, under headings in the same order; those of the last ones may be left out. */
function inOrder(fields: readonly LiteralField[], headings: readonly string[]): LiteralField[] | undefined {
  const flat = fields.flatMap((field) => (field.items && field.items.length > 1 ? partsOf(field) : [field]));
  return flat.length > headings.length
    ? undefined
    : flat.map((field, at) => ({ ...field, heading: headings[at] }));
}

function partsOf({ items }: LiteralField): LiteralField[] {
  return (items ?? []).map((item) => fieldFrom('', undefined, item));
}

/** The parts of a text between signs that stand in no brackets. */
function partsOutside(text: string, sign: RegExp): string[] {
  const signs = [...text.matchAll(new RegExp(sign.source, 'gu'))];
  const parts: string[] = [];
  let start = 0;
  let depth = 0;
  let at = 0;
  for (const { 0: all, index } of signs) {
    for (; at < index; at++) {
      if (openers.includes(text[at])) depth++;
      else if (closers.includes(text[at]) && depth > 0) depth--;
    }
    if (depth > 0) continue;
    parts.push(text.slice(start, index));
    start = index + all.length;
  }
  parts.push(text.slice(start));
  return parts.map((part) => part.trim());
}

/** What stands in the brackets that a text consists of; `undefined` where a name stands before them, which it explains. */
function bracketed(part: string): string | undefined {
  return /^[([{<]([\s\S]*)[)\]}>]$/u.exec(part)?.[1];
}

function bare(part: string): string {
  return part.trim().replace(/^["'`]|["'`]$/g, '');
}
