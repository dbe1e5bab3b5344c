import { isAudioFileName } from '../../../model/fileNames';
import { readHeading } from '../../../trade/headings/headings';
import type { Unit } from '../../../trade/meaning';
import { readNumber } from '../../../trade/readings/numberReading';

/** A label and its value on a line of a text, by their offsets. */
export interface Labelled {
  label: string;
  labelStart: number;
  valueStart: number;
  valueEnd: number;
  /** The sign between the two. */
  sign: string;
  /** Whether the label does not stand in the text, but follows from the unit of the value. */
  isOwed?: boolean;
}

/** What values with a unit are, where nothing names them. */
const byUnit: Readonly<Partial<Record<Unit, string>>> = {
  dB: 'volume',
  cents: 'tune',
  semitones: 'transpose',
};

/** Lines with more characters are no records. */
const longestLine = 4000;
const mostLabels = 100;

const field = /^[\s*\u2022>-]*(\p{L}[^:=\t]{0,40}?)[ \u00a0]{0,8}(:|=|\t)(?!\/\/)\s*(\S[^\t]*)?$/u;
const inLine = /(?:^|[\s,;|])(?:(\p{L}[\p{L}\p{N}_#]*) )?(\p{L}[\p{L}\p{N}_#]*) ?([:=]) ?/gu;
/** What only numbers a zone before its fields: `zone 3`, `#3`. */
const numbersZone = /^(?:\p{L}{1,12} ?)?#?\d{1,5}[.)]?$/u;
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
 * where the line starts with anything else but a file, whose label is then empty. Before `=` any word is a label, before `:` only a known heading.
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
    else {
      const lead = /^\s*(\S.*?)\s*[:,\u2013\u2014-]?\s*$/u.exec(line.slice(0, labelStart - start))?.[1] ?? '';
      const isNumber = numbersZone.test(lead);
      if (lead !== '' && !isNumber && !isAudioFileName(lead)) return [];
      const at = start + line.indexOf(lead);
      if (lead !== '' && !isNumber) found.push(fileAt(at, at + lead.length));
    }
    found.push({ label, labelStart, valueStart: start + match.index + whole.length, valueEnd: end, sign });
    if (found.length > mostLabels) return [];
  }
  const last = found.at(-1);
  if (last) last.valueEnd = endOfValue(text, last.valueStart, end);
  return found;
}

const label = /^(\p{L}[\p{L}.]*(?:[ \u00a0]\p{L}[\p{L}.]*)?)[ \u00a0]+(\S.*)$/u;
const listed = /^[ \t\u00a0]*(?:[*\u2022\u2023\u25e6\u2013\u2014-][ \t\u00a0]+)?/;
const bareNumber = /^[-+]?\d+(?:[.,]\d+)?$/;
const partings = /[ \t\u00a0]{2,}|\t|[ \u00a0]*[,;|](?=[ \t\u00a0])[ \t\u00a0]*/g;

/**
 * The parts of a line that says of an audio file what it is, without signs between labels and values: `a.wav: root 60,
 * low 58` or `KEY 36-47  ROOT 40  FILE A.WAV`. Each part starts with a known heading or is the file, whose label is then
 * empty; none for any other line.
 */
export function labelledParts(text: string, start: number, end: number): Labelled[] {
  if (end - start > longestLine) return [];
  const line = text.slice(start, end);
  if (!line.includes('.')) return [];
  const found: Labelled[] = [];
  let at = listed.exec(line)?.[0].length ?? 0;
  const named = /^(.{1,200}?\.\w{2,5})[ \u00a0]*(?::|[-\u2013\u2014])[ \t\u00a0]+/u.exec(line.slice(at));
  if (named && isAudioFileName(named[1])) {
    found.push(fileAt(start + at, start + at + named[1].length));
    at += named[0].length;
  }
  const parts = [...partsFrom(line, at)];
  // Asked before all headings of all languages are.
  if (parts.some((part) => bareNumber.test(line.slice(part.start, part.end)))) return [];
  for (const part of parts) {
    if (found.length > mostLabels) return [];
    const field = partField(line.slice(part.start, part.end), start + part.start);
    if (!field) return [];
    found.push(field);
  }
  return found.length > 2 && found.some((one) => isFile(text, one)) ? found : [];
}

function* partsFrom(line: string, from: number): Generator<{ start: number; end: number }> {
  let at = from;
  for (const match of line.matchAll(partings)) {
    if (match.index < at) continue;
    yield { start: at, end: match.index };
    at = match.index + match[0].length;
  }
  if (line.slice(at).trim() !== '') yield { start: at, end: line.trimEnd().length };
}

/** A known heading of one or two words and what stands behind it, or a file. */
function partField(part: string, start: number): Labelled | undefined {
  const match = label.exec(part);
  const [one = '', rest = ''] = part.split(/[ \u00a0]+(.*)/su);
  const choices = match ? [[match[1], match[2]] as const, [one, rest] as const] : [];
  for (const [words = '', value = ''] of choices) {
    if (value === '' || !readHeading(words)) continue;
    const valueStart = start + part.length - value.length;
    return { label: words, labelStart: start, valueStart, valueEnd: start + part.length, sign: ' ' };
  }
  if (isAudioFileName(part)) return fileAt(start, start + part.length);
  const unit = readNumber(part)?.unit;
  const owed = unit && byUnit[unit];
  if (!owed) return undefined;
  return {
    label: owed,
    labelStart: start,
    valueStart: start,
    valueEnd: start + part.length,
    sign: ' ',
    isOwed: true,
  };
}

function fileAt(start: number, end: number): Labelled {
  return { label: '', labelStart: start, valueStart: start, valueEnd: end, sign: ' ' };
}

function isFile(text: string, { valueStart, valueEnd }: Labelled): boolean {
  return isAudioFileName(text.slice(valueStart, valueEnd));
}

/** Where a value ends before the next label: without the signs that part the two. */
function endOfValue(text: string, start: number, end: number): number {
  let at = end;
  while (at > start && parting.includes(text[at - 1])) at--;
  return at;
}
