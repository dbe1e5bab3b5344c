import { isAudioFileName } from '../../model/fileNames';
import { textStart } from '../../model/text/textLayout';
import { readHeading } from '../../trade/headings/headings';
import { keyMeanings } from '../../trade/meaning';
import { readKeyRange } from '../../trade/readings/keyReading';
import type { TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';
import type { TableRows } from './tableRows';

/** A number or letters at the start of a line, and the name of a file behind it. */
const numbered =
  /^[|>*\u2022"'([#-]{0,4}(?:(?:sample|smp|no\.?|nr\.?) ?)?#?(\d{1,4}|\p{L}{1,3}\d{0,3})(?![\p{L}\p{N}])/iu;
const partings = /^["')\]\s.:=|;,\u2013\u2014>-]+/u;
const named = /^(\S.{0,200}?\.\w{2,5})(?=$|["'|;,\t(]|\s{2})/u;
const inline =
  /(?:^|[\s,;:(])(\p{L}{1,3}\d{0,3}|\d{1,4})\s?[=:]\s?["']?([^,;=:"']{1,120}\.\w{2,5})(?=["'\s,;.)]|$)/gu;
const mostLooks = 30;
const mostListed = 10_000;
const longestLine = 400;

interface Listed {
  name: string;
  start: number;
  end: number;
}

/** A list of samples by numbers or letters that zones refer to. */
export interface NumberedSamples {
  /** What of it was used, for a note: the column, one of its numbers and the name. */
  heading: string;
  number: string;
  name: string;
  span: { start: number; end: number };
}

/**
 * Puts the names of samples in place of their numbers or letters, where a column of zones refers to a list of samples that stands
 * elsewhere in the text; the list is then no table of zones. Answers what was used; `undefined` where nothing is.
 */
export function useSampleList(cells: TableCells, tables: readonly TableRows[]): NumberedSamples | undefined {
  // Most tables name files in all rows.
  const lacksFiles = ({ data }: TableRows) =>
    data.length > 0 && !data.slice(0, mostLooks).every((row) => holdsFile(cells, row));
  const list = cells.rowSpans === undefined && tables.some(lacksFiles) ? listIn(cells.text) : undefined;
  if (!list || list.size < 2) return undefined;
  const lines = [...list.values()];
  const isListed = (row: number) => {
    const { start, end } = cells.rowSpan(row);
    return lines.some((line) => start < line.end && line.start < end);
  };
  let used: NumberedSamples | undefined;
  for (const { headings, data, width } of tables) {
    const zones = data.filter((row) => !isListed(row));
    if (zones.length === 0 || zones.some((row) => holdsFile(cells, row))) continue;
    if (areZones(cells, headings, data.filter(isListed))) continue;
    const column = Array.from({ length: width }, (_, index) => index).find((index) => {
      const meaning = readHeading(headings[index]?.text ?? '')?.meaning;
      if (meaning !== undefined && meaning !== 'sample' && meaning !== 'row_number') return false;
      return zones.every((row) => list.has(keyOf(cells.value(cells.cell(row, index)))));
    });
    if (column === undefined) continue;
    for (const row of zones) {
      const cell = cells.cell(row, column);
      const found = list.get(keyOf(cells.value(cell)));
      if (!found) continue;
      used ??= {
        heading: headings[column]?.text ?? '',
        number: cells.value(cell),
        name: found.name,
        span: { start: cells.starts[cell], end: cells.ends[cell] },
      };
      cells.rewritten.set(cell, found.name);
    }
  }
  if (used)
    for (const table of tables) {
      const listedRows = table.data.filter(isListed);
      table.data = table.data.filter((row) => !listedRows.includes(row));
      for (const row of listedRows) table.others.push({ row, why: 'lists a sample that zones refer to' });
    }
  return used;
}

/** Whether lines with a number and a file are zones by themselves, as they give keys under the headings of their table. */
function areZones(cells: TableCells, headings: TableRows['headings'], listed: readonly number[]): boolean {
  const keys = headings.flatMap(({ text }, index) => {
    const meaning = text === '' ? undefined : readHeading(text)?.meaning;
    return meaning !== undefined && keyMeanings.includes(meaning) ? [index] : [];
  });
  const holdsKey = (row: number) =>
    keys.some((index) => readKeyRange(cells.plain(cells.cell(row, index))) !== undefined);
  return listed.filter(holdsKey).length * 2 > listed.length;
}

function listIn(text: string): Map<string, Listed> | undefined {
  const list = new Map<string, Listed>();
  let start = textStart(text);
  while (start < text.length && list.size < mostListed) {
    const next = text.indexOf('\n', start);
    const end = next < 0 ? text.length : next;
    if (end - start <= longestLine) {
      if (!addInline(list, text.slice(start, end), start)) return undefined;
      const line = text.slice(start, end).trim();
      const [lead = '', number] = numbered.exec(line) ?? [];
      const name =
        number === undefined ? undefined : named.exec(line.slice(lead.length).replace(partings, ''))?.[1];
      if (number !== undefined && name !== undefined && isAudioFileName(name)) {
        const key = keyOf(number);
        // One that names two files is none.
        if (list.has(key) && list.get(key)?.name !== name) return undefined;
        list.set(key, { name, start, end });
      }
    }
    start = end + 1;
  }
  return list;
}

/** Adds what a line lists one after another: `A = low.wav, B = high.wav`; `false` where one stands for two files. */
function addInline(list: Map<string, Listed>, line: string, start: number): boolean {
  const found = Array.from(line.matchAll(inline), ([, number = '', name = '']) => ({ number, name }));
  if (found.length < 2) return true;
  for (const { number, name } of found) {
    const key = keyOf(number);
    if (!isAudioFileName(name) || list.has(key)) return isAudioFileName(name) === false;
    list.set(key, { name, start, end: start + line.length });
  }
  return true;
}

function keyOf(text: string): string {
  const bare = text.replace(/^[\s#(["']+|[\s)\]"'.]+$/g, '').toLowerCase();
  return /^\d+$/.test(bare) ? String(Number(bare)) : bare;
}

function holdsFile(cells: TableCells, row: number): boolean {
  for (let column = 0; column < Math.min(cells.width(row), 50); column++)
    if (namesAudioFile(cells, cells.cell(row, column))) return true;
  return false;
}
