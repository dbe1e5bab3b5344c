import { readHeading } from '../../../trade/headings/headings';
import type { Labelled } from './recordLines';
import { fieldOf, fieldsIn } from './recordLines';

const longestLine = 4000;
/** The name of a chunk or of a block before its fields: `inst: LowNote=60 HighNote=69`. */
const chunk = /^\s*\p{L}[\p{L}\d ]{0,15}?\s*:\s+(?=[\p{L}_]\w*=)/u;
/** A loop that is counted, and its ends in brackets: `loops=1 (type 0 forward, start 31022, end 61999)`. */
const loopInBrackets = /^\d{1,2}\s*\(([^()]{1,120})\)$/u;
const loopEnd = /(?:^|[\s,;])(start|end)[\s:=]{1,3}(?=(\d+)(?:$|[\s,;]))/giu;
const spaced = /^\s*(\p{L}\w*(?: \w+){0,2})( {2,})(\S.*)$/u;

/**
 * The labels and values on a line of what a program shows of the chunks of a file: those behind the name of a chunk, or the only one of
 * the line. The ends of a loop that stand in brackets behind the number of loops are values of their own.
 */
export function chunkFields(text: string, start: number, end: number): Labelled[] {
  if (end - start > longestLine) return [];
  const named = chunk.exec(text.slice(start, end));
  if (!named) {
    const only = fieldOf(text, start, end);
    return only ? [only] : [];
  }
  return fieldsIn(text, start + named[0].length, end).flatMap((field) => withLoopEnds(text, field));
}

/** The label and value that a line consists of, with blanks between them that line the values up: `keyRange    48-57`. */
export function spacedField(text: string, start: number, end: number): Labelled | undefined {
  if (end - start > longestLine) return undefined;
  const match = spaced.exec(text.slice(start, end));
  if (!match) return undefined;
  const [whole, label, sign, value] = match;
  const labelStart = start + whole.indexOf(label);
  const valueStart = end - value.length;
  return { label, labelStart, valueStart, valueEnd: valueStart + value.trimEnd().length, sign };
}

function withLoopEnds(text: string, field: Labelled): Labelled[] {
  const value = text.slice(field.valueStart, field.valueEnd);
  const inside = loopInBrackets.exec(value)?.[1];
  if (inside === undefined || readHeading(field.label)?.meaning !== 'loop') return [field];
  const opened = field.valueStart + value.indexOf('(') + 1;
  const ends = Array.from(inside.matchAll(loopEnd), ({ 0: sign, 1: side, 2: number, index }) => {
    const valueStart = opened + index + sign.length;
    const label = `loop ${side.toLowerCase()}`;
    const valueEnd = valueStart + number.length;
    return { label, labelStart: opened + index, valueStart, valueEnd, sign: ' ', isOwed: true };
  });
  return [{ ...field, valueEnd: field.valueStart + value.search(/\D|$/) }, ...ends];
}
