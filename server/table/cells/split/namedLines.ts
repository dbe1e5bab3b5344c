import { isAudioFileName } from '../../../model/fileNames';
import { lookAt } from '../../columns/cellKinds';
import type { Word } from './lineWords';
import { longestLine, wordsIn } from './lineWords';

/** A name, which may hold blanks and end in a number, and the values behind it. */
export interface NameAndValues {
  /** Where the line starts. */
  line: number;
  name: Word;
  values: readonly Word[];
}

/** A line whose name may end in its first number. */
interface OpenLine extends NameAndValues {
  words: readonly Word[];
  /** How many words the name has at least. */
  least: number;
  isOpen: boolean;
}

/** Whether some values may stand under the headings from the first on, as their keys lie in order. */
export type InOrder = (values: readonly Word[]) => boolean;

/**
 * Parts lines into a name and at most `count` values. A file ends with its ending, and a name where a wider gap stands; else its last word may
 * be a number: it is so where a value would be left over, where the same name with another number stands so on another line, or where only so
 * the keys lie in order. `undefined` in place of a line that has no such values.
 */
export function namedLines(
  text: string,
  lines: readonly Word[],
  count: number,
  inOrder: InOrder,
): (NameAndValues | undefined)[] {
  const read = lines.map((line) => openLine(text, line));
  const isOver = (one: OpenLine) => one.isOpen && one.values.length === count + 1;
  const numbered = new Set(read.flatMap((one) => (one && isOver(one) ? [stem(text, one)] : [])));
  return read.map((one) => {
    if (!one) return undefined;
    const rest = one.values.slice(1);
    const isNumbered =
      one.isOpen && (isOver(one) || numbered.has(stem(text, one)) || (!inOrder(one.values) && inOrder(rest)));
    const values = isNumbered ? rest : one.values;
    if (values.length > count || values.length === 0) return undefined;
    const end = isNumbered ? one.values[0].end : one.name.end;
    return { line: one.line, name: { start: one.name.start, end }, values };
  });
}

function stem(text: string, { name }: NameAndValues): string {
  return text.slice(name.start, name.end);
}

function openLine(text: string, line: Word): OpenLine | undefined {
  const words = wordsIn(text, line.start, Math.min(line.end, line.start + longestLine));
  const [first] = words;
  if (!first || words.length < 2) return undefined;
  const file = words.findIndex(({ end }) => isAudioFileName(text.slice(first.start, end)));
  const number = words.findIndex(({ start, end }, at) => at > 0 && /\d/.test(text.slice(start, end)));
  const wide = words.findIndex(({ start }, at) => at > 0 && start - words[at - 1].end > 1);
  const isGap = file < 0 && wide > 0 && (wide === number || wide === number + 1);
  const least = file >= 0 ? file + 1 : isGap ? wide : number;
  const values = least < 1 ? [] : words.slice(least);
  if (values.length === 0 || !values.every((one) => isValue(text, one))) return undefined;
  const isOpen =
    file < 0 && !isGap && values.length > 1 && /^\d{1,3}$/.test(text.slice(values[0].start, values[0].end));
  const name = { start: first.start, end: words[least - 1].end };
  return { line: line.start, name, values, words, least, isOpen };
}

function isValue(text: string, { start, end }: Word): boolean {
  const { kind } = lookAt(text.slice(start, end));
  return (kind !== 'text' && kind !== 'file') || /^[-\u2013\u2014.?]$/u.test(text.slice(start, end));
}
