import { audioEndings } from '../../../model/fileNames';
import { readHeading } from '../../../trade/headings/headings';
import { areHeadings, listsIn } from './commentedHeadings';
import { namedTexts } from './joinedTexts';
import type { LiteralRecord } from './literalRecords';
import type { LiteralComment, LiteralNode, LiteralValue } from './literalTree';
import { flatHeadings } from './nestedHeadings';

/** So much of a text is looked at for a comment that lists columns. */
const looked = 4096;
const fewestRows = 2;
const fewestPlaces = 3;
const deepest = 12;
const commentLine = /^\s*(?:\/\/|#|--|\/?\*)[^\S\n]*([^\n]{5,300})$/gmu;
/** A line that starts a list with a text. */
const rowLine = /^\s*[[{(]\s*["'`][^"'`\n]{1,200}["'`]\s*,/gmu;

/** Zones by the places of their values, whose names of samples have no endings of audio files. */
export interface UnendedRecords {
  records: LiteralRecord[];
  /** What was put behind the names. */
  told: { text: string; start: number; end: number } | undefined;
}

/** Whether a comment lists what values of a script are by their places, a sample among them: `# (name, low, high, root)`. */
export function listsColumns(text: string): boolean {
  const start = text.slice(0, looked);
  if ((start.match(rowLine)?.length ?? 0) < fewestRows) return false;
  return Array.from(start.matchAll(commentLine)).some(
    ([, comment = '']) => headingsIn(comment) !== undefined,
  );
}

/**
 * The zones of a literal in which no text ends as an audio file does: lists of as many values as a comment gives headings for. An ending
 * that a name of the script stands for, as `EXT = ".ogg"`, is put behind the samples, which is told. `undefined` where there are none.
 */
export function unendedRecords(
  text: string,
  top: LiteralNode,
  comments: readonly LiteralComment[],
): UnendedRecords | undefined {
  for (const comment of comments) {
    const headings = headingsIn(comment.text);
    const lists = headings ? listsOf(top, headings) : [];
    if (!headings || lists.length < fewestRows) continue;
    const ending = endingIn(text);
    const sample = headings.findIndex(isSample);
    const records = lists.map(({ values, start, end }) => ({
      fields: values.map((value, at) => ({
        heading: headings[at] ?? '',
        key: undefined,
        text: at === sample && ending && value.text !== '' ? `${value.text}${ending.is}` : value.text,
        start: value.start,
        end: value.end,
      })),
      start,
      end,
    }));
    return { records, told: ending?.told };
  }
  return undefined;
}

/** The headings that a comment lists, with what brackets and `without` say of one of them left out. */
function headingsIn(comment: string): string[] | undefined {
  for (const nested of listsIn(comment)) {
    const names = flatHeadings(nested);
    const bare = names.map((name) => (readHeading(name) ? name : plainName(name)));
    if (bare.length < fewestPlaces || !areHeadings(bare, bare.length)) continue;
    const meanings = bare.flatMap((name) => readHeading(name)?.meaning ?? []);
    if (meanings.filter((one) => one === 'sample').length === 1 && new Set(meanings).size === meanings.length)
      return bare;
  }
  return undefined;
}

function plainName(name: string): string {
  return name
    .replace(
      /\s*(?:\([^)]*\)|\s(?:without|with|w\/o|no|ohne|mit|sans|avec|sin|con|senza|sem|zonder|met|utan|uden|bez|без)\s.*)$/iu,
      '',
    )
    .trim();
}

function isSample(heading: string): boolean {
  return readHeading(heading)?.meaning === 'sample';
}

interface ValueList {
  values: LiteralValue[];
  start: number;
  end: number;
}

/** The lists of values alone, as many as there are headings, with a text where the sample stands. */
function listsOf(node: LiteralNode, headings: readonly string[], depth = 0): ValueList[] {
  if (node.kind === 'value' || depth > deepest) return [];
  const values = node.items.filter((item) => item.kind === 'value');
  const isFull = values.length === node.items.length && values.length === headings.length;
  const sample = values[headings.findIndex(isSample)];
  if (isFull && sample?.isQuoted && /\p{L}|\d/u.test(sample.text))
    return [{ values, start: node.start, end: node.end }];
  const inner = node.kind === 'map' ? [...node.items, ...node.entries.map(({ value }) => value)] : node.items;
  return inner.flatMap((item) => listsOf(item, headings, depth + 1));
}

/** The one ending of audio files that a name of the script stands for. */
function endingIn(
  text: string,
): { is: string; told: { text: string; start: number; end: number } } | undefined {
  const found = [...namedTexts(text)].filter(([, value]) =>
    audioEndings.has(value.replace(/^\./, '').toLowerCase()),
  );
  const [name, value] = found[0] ?? [];
  if (found.length !== 1 || name === undefined || value === undefined) return undefined;
  const is = value.startsWith('.') ? value : `.${value}`;
  const start = Math.max(0, text.indexOf(name));
  const told = `The ending ${is} is put behind the sample names, as "${name}" stands for it.`;
  return { is, told: { text: told, start, end: start + name.length } };
}
