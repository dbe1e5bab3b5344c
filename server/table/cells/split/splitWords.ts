import { isAudioFileName } from '../../../model/fileNames';
import { textStart } from '../../../model/text/textLayout';
import { readHeading } from '../../../trade/headings/headings';
import { isDitto } from '../../../trade/languages/cellWords';
import { rangeWords } from '../../../trade/rangeWords';
import { letterNote } from '../../../trade/readings/notePatterns';
import { lookAt } from '../../columns/cellKinds';
import { TableCells } from '../cells';
import { isKey } from '../records/listedKey';
import { isDrawnTitle } from './drawnTitles';
import { HeadingLine } from './headingLine';
import type { Word } from './lineWords';
import { isBlankLine, longestLine, wordsIn } from './lineWords';

/** So many lines tell whether a text is of this kind. */
const mostLooks = 200;
const mostColumns = 40;
const mostLacking = 2;
const longestHeading = 200;
/** A number or a note before a name. */
const leading = new RegExp(String.raw`^[ \t\u00a0]*(?:(\d{1,5}|${letterNote}-?\d)[.)]?[ \t\u00a0]+)?`, 'u');
const ending = /\.[a-z\d]{2,5}(?=[ \t\u00a0]|$)/gi;
/** A sign between a name and its values: `a.wav = 48..57`. */
const assigning = /^[ \t\u00a0]*(?:=>?|->|\u2192|:)(?=[ \t\u00a0])/u;

/** A line with the name of an audio file, which may hold blanks, and the words behind it. */
interface NamedLine {
  name: Word;
  /** A number before the name, as of a counted list. */
  number: Word | undefined;
  values: Word[];
}

/**
 * Splits a text whose lines name an audio file and give as many values behind it, parted by blanks: `soft one.wav 60
 * 58-62`. The names may hold blanks, and nothing has to stand below one another. The line above is parted into as many
 * headings. `undefined` for any other text.
 */
export function splitWords(text: string): TableCells | undefined {
  const first = linesOf(text, mostLooks);
  const whole = first.map((line) => namedLine(text, line));
  const joined = whole.map((line) => line && { ...line, values: joinedRanges(text, line.values) });
  // A dash is the middle of a range where it is so on all lines; else it stands for an empty cell.
  const isJoined = areAlike(joined);
  const looked = isJoined ? joined : whole;
  const named = looked.filter((line) => line !== undefined);
  const count = usualCount(named);
  const isKeyed = areKeyed(text, named);
  const isPitched = count === 1 && arePitched(text, named);
  if (named.length < 2 || count < (isKeyed || isPitched ? 1 : 2)) return undefined;
  // A cell of its own stands before the name where more than one blank parts the two.
  if (named.some(({ name }) => /[ \t\u00a0]{2}/.test(text.slice(name.start, name.end)))) return undefined;
  const isValue = ({ start, end }: Word) => {
    const word = text.slice(start, end);
    return lookAt(word).kind !== 'text' || isDitto(word);
  };
  if (!named.every(({ values }) => values.every(isValue))) return undefined;
  const counted = isKeyed || areCounted(text, named);
  const width = count + (counted ? 2 : 1);
  const lines = linesOf(text, Number.POSITIVE_INFINITY);
  let above = looked.findIndex((line) => line !== undefined) - 1;
  while (above >= 0 && isBlankLine(text, lines[above])) above--;
  // A title has as many words as a short list has columns.
  if (
    (isKeyed || isPitched) &&
    above >= 0 &&
    !namesColumns(new HeadingLine(text, lines[above]).into(width), text)
  )
    above = -1;
  // What is drawn as a title names no columns.
  if (above >= 0 && isDrawnTitle(text.slice(lines[above].start, lines[above].end))) above = -1;
  // A line of units alone stands below the headings that they belong to.
  const units = above > 0 && isUnits(text, lines[above]) ? lines[above] : undefined;
  if (units) above--;
  const headings = headingsAt(text, lines, above, width);
  const cells = new TableCells(text);
  // Keys before all names tell by themselves that values follow.
  cells.bySpaces = !isKeyed;
  for (const [at, line] of lines.entries()) {
    if (units === line) {
      cells.endRow();
      continue;
    }
    const parts =
      at === above
        ? headings
        : at === above - 1 && headings[0]?.start < lines[above].start
          ? []
          : partsOf(text, line, counted, isJoined);
    const added = parts.map(({ start, end }) => cells.add(start, end));
    if (at === above && units) addUnits(cells, added, line, units);
    cells.endRow();
  }
  return cells;
}

/** The headings of a line, or of that and the one above where a heading was broken between the two and more are known so. */
function headingsAt(text: string, lines: readonly Word[], at: number, width: number): readonly Word[] {
  const line = lines[at];
  if (!line) return [];
  const one = new HeadingLine(text, line).into(width);
  const above = lines[at - 1];
  if (one.length >= width && known(text, one) === width) return one;
  if (!above || isBlankLine(text, above) || above.end - above.start > longestHeading) return one;
  const both = new HeadingLine(text, { start: above.start, end: line.end }).into(width);
  return known(text, both) > Math.max(1, known(text, one)) && both.length === width ? both : one;
}

function known(text: string, headings: readonly Word[]): number {
  return headings.filter(({ start, end }) => readHeading(text.slice(start, end))).length;
}

/** Whether some of the headings that a line would be parted into are known. */
function namesColumns(parts: readonly Word[], text: string): boolean {
  const known = parts.filter(({ start, end }) => {
    const said = readHeading(text.slice(start, end));
    return said !== undefined && !said.likeness;
  });
  return known.length * 2 > parts.length;
}

/** How many values the lines have; some may lack one or two where most have as many and their names hold blanks. 0 where they differ more. */
function usualCount(named: readonly NamedLine[]): number {
  const counts = new Map<number, number>();
  for (const { values } of named) counts.set(values.length, (counts.get(values.length) ?? 0) + 1);
  const [[count, times] = [0, 0]] = [...counts].sort((a, b) => b[1] - a[1]);
  const lacks = named.every(({ values }) => values.length <= count && values.length >= count - mostLacking);
  return counts.size === 1 || (lacks && times * 2 > named.length) ? count : 0;
}

/** A sign or word between the two ends of a range. */
const between = new RegExp(
  String.raw`^(?:[-\u2010-\u2015\u2212~\u2192]|\.{2,3}|\u2026|${rangeWords})$`,
  'iu',
);

/** The values of a line, those of a range around a sign for it put together: `1 – 20`. */
function joinedRanges(text: string, values: readonly Word[]): Word[] {
  const joined: Word[] = [];
  for (let at = 0; at < values.length; at++) {
    const [first, sign, last] = [values[at], values[at + 1], values[at + 2]];
    const isRange =
      sign !== undefined &&
      last !== undefined &&
      between.test(text.slice(sign.start, sign.end)) &&
      /^(?:note|number)-range$/.test(lookAt(text.slice(first.start, last.end)).kind);
    joined.push(isRange ? { start: first.start, end: last.end } : first);
    if (isRange) at += 2;
  }
  return joined;
}

/** Whether all lines with a name have as many values. */
function areAlike(lines: readonly (NamedLine | undefined)[]): boolean {
  const counts = new Set(lines.flatMap((line) => (line ? [line.values.length] : [])));
  return counts.size === 1;
}

const bracketed = /[([][^()[\]]{1,40}[)\]]/g;

/** Whether a line holds nothing but words in brackets. */
function isUnits(text: string, { start, end }: Word): boolean {
  const line = text.slice(start, Math.min(end, start + longestLine));
  return line.replace(bracketed, '').trim() === '' && line.trim() !== '';
}

/** Puts units behind the headings that they stand below. */
function addUnits(cells: TableCells, headings: readonly number[], line: Word, units: Word): void {
  const { text } = cells;
  for (const match of text.slice(units.start, units.end).matchAll(bracketed)) {
    const [from, to] = [match.index, match.index + match[0].length];
    const places = headings.map((cell) => ({
      cell,
      gap: Math.max(cells.starts[cell] - line.start - to, from - (cells.ends[cell] - line.start), 0),
    }));
    const nearest = places.sort((a, b) => a.gap - b.gap)[0];
    if (nearest && !cells.isRewritten(nearest.cell))
      cells.rewritten.set(nearest.cell, `${cells.value(nearest.cell)} ${match[0]}`);
  }
}

/** How many cells most rows of a table with names of audio files have. */
export function usualWidth(cells: TableCells): number {
  const widths = new Map<number, number>();
  for (let row = 0; row < Math.min(cells.rowCount, mostLooks); row++) {
    if (cells.filled(row) < 2) continue;
    let files = 0;
    for (let column = 0; column < Math.min(cells.width(row), mostColumns); column++)
      if (isAudioFileName(cells.value(cells.cell(row, column)))) files++;
    if (files > 0) widths.set(cells.filled(row), (widths.get(cells.filled(row)) ?? 0) + 1);
  }
  return [...widths].sort(([, a], [, b]) => b - a)[0]?.[0] ?? 0;
}

/** The lines of a text, at most `most`. */
export function linesOf(text: string, most: number): Word[] {
  const lines: Word[] = [];
  let start = textStart(text);
  while (start <= text.length && lines.length < most) {
    let end = start;
    while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
    lines.push({ start, end });
    start = end + (text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? 2 : 1);
  }
  return lines;
}

function namedLine(text: string, { start, end }: Word): NamedLine | undefined {
  if (end - start > longestLine) return undefined;
  const line = text.slice(start, end);
  for (const match of line.matchAll(ending)) {
    const stop = match.index + match[0].length;
    if (!isAudioFileName(line.slice(0, stop))) continue;
    const lead = leading.exec(line.slice(0, match.index));
    const from = start + (lead?.[0].length ?? 0);
    const digits = lead?.[1];
    const at = digits === undefined ? 0 : start + line.indexOf(digits);
    return {
      name: { start: from, end: start + stop },
      number: digits === undefined ? undefined : { start: at, end: at + digits.length },
      values: withUnits(
        text,
        wordsIn(text, start + stop + (assigning.exec(line.slice(stop))?.[0].length ?? 0), end),
      ),
    };
  }
  return undefined;
}

const isNumber = /^[-+\u2212]?\d+(?:[.,]\d+)?$/u;
const isUnit = /^(?:\p{L}{1,5}|%)\.?$/u;

/** The values of a line, each number with the unit that stands behind it: `-3 dB`. */
function withUnits(text: string, words: readonly Word[]): Word[] {
  const joined: Word[] = [];
  for (const word of words) {
    const last = joined.at(-1);
    const isOne =
      last !== undefined &&
      isUnit.test(text.slice(word.start, word.end)) &&
      isNumber.test(text.slice(last.start, last.end)) &&
      lookAt(text.slice(last.start, word.end)).unit !== undefined;
    if (isOne) last.end = word.end;
    else joined.push({ ...word });
  }
  return joined;
}

/** Whether the one value behind each name is a frequency. */
function arePitched(text: string, named: readonly NamedLine[]): boolean {
  return named.every(({ values: [value] }) => {
    const unit = value && lookAt(text.slice(value.start, value.end)).unit;
    return unit === 'Hz' || unit === 'kHz';
  });
}

/** Whether keys stand before all names, and what stands behind them is something else: `36 kick.wav -2`, `C1 kick.wav 0.5`. */
function areKeyed(text: string, named: readonly NamedLine[]): boolean {
  const leads = named.flatMap(({ number }) => (number ? [text.slice(number.start, number.end)] : []));
  if (leads.length < named.length || new Set(leads).size < 2 || !leads.every(isKey)) return false;
  if (areCounted(text, named)) return false;
  const columns = Array.from({ length: Math.max(...named.map(({ values }) => values.length)) }, (_, at) =>
    named.flatMap(({ values }) => (values[at] ? [text.slice(values[at].start, values[at].end)] : [])),
  );
  // Behind a number that is part of the name, some values are keys.
  return columns.every((cells) => cells.some((cell) => !/^\+?\d+$/.test(cell) && !isKey(cell)));
}

/** Whether numbers before all names count the rows, some of which may be missing, or stand in a column of their own. */
function areCounted(text: string, named: readonly NamedLine[]): boolean {
  const numbers = named.flatMap(({ number }) => (number ? [numberAt(text, number)] : []));
  if (numbers.length < named.length) return false;
  if (!numbers.every((number) => number >= 0)) return false;
  const isApart = named.every(({ name, number }) => number && name.start - number.end > 2);
  return isApart || numbers.every((number, at) => (at === 0 ? number <= 1 : number > numbers[at - 1]));
}

function numberAt(text: string, { start, end }: Word): number {
  return Number(text.slice(start, end));
}

function partsOf(text: string, line: Word, counted: boolean, isJoined: boolean): Word[] {
  const named = namedLine(text, line);
  if (!named) return line.end > line.start && !isBlankLine(text, line) ? [line] : [];
  const { name, number } = named;
  const values = isJoined ? joinedRanges(text, named.values) : named.values;
  if (!number) return [name, ...values];
  return counted ? [number, name, ...values] : [{ start: number.start, end: name.end }, ...values];
}
