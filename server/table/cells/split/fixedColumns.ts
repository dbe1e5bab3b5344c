import { namesAudioFileIn } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import { textStart } from '../../../model/text/textLayout';
import { isUnseen, TableCells } from '../cells';

/** Lines beyond this length are not looked at when columns are found; what stands behind goes to the last column. */
const longestLine = 4096;
/** Columns are found from so many lines. */
const mostLines = 2000;

interface Line {
  start: number;
  end: number;
}

/**
 * Splits a text whose cells stand below one another, or are kept apart by two or more spaces. Columns are the
 * stretches between positions that are blank on all lines; where those are too few, runs of spaces part the cells.
 */
export function splitColumns(text: string): TableCells {
  const lines = linesOf(text);
  const all = lines.filter((line) => runsIn(text, line) > 0).slice(0, mostLines);
  const body = columnsOf(text, bodyOf(text, lines));
  const whole = body ? undefined : columnsOf(text, all);
  const columns = body ?? whole;
  const cells = new TableCells(text);
  cells.bySpaces = true;
  for (const line of lines) {
    if (line.end > line.start) {
      if (runsIn(text, line) === 0) cells.add(line.start, line.end);
      else if (!columns) addByRuns(cells, line);
      else if (whole || isCutBetween(text, line, columns)) addByPosition(cells, line, columns);
      else addPlaced(cells, line, columns);
    }
    cells.endRow();
  }
  return cells;
}

/** The stretches of the columns that some lines stand in; `undefined` where they stand in none. */
function columnsOf(text: string, lines: readonly Line[]): Stretch[] | undefined {
  if (lines.length === 0) return undefined;
  const stretches = stretchesOf(text, lines);
  const counts = lines.map((line) => runsIn(text, line) + 1);
  const swallowed = lines.filter((line) => holdsRun(text, line, stretches)).length;
  return stretches.length >= mostFrequent(counts) && swallowed * 5 <= lines.length ? stretches : undefined;
}

/** The lines that name audio files and the one above them, without titles, legends and sums around, which keep to no columns. */
function bodyOf(text: string, lines: readonly Line[]): Line[] {
  const isFile = (line: Line) =>
    namesAudioFileIn(text.slice(line.start, Math.min(line.end, line.start + longestLine)));
  const first = lines.findIndex(isFile);
  if (first < 0) return [];
  let above = first - 1;
  while (above >= 0 && !/[\p{L}\p{N}]/u.test(text.slice(lines[above].start, lines[above].end))) above--;
  const heading = above >= 0 ? [lines[above]] : [];
  return [...heading, ...lines.slice(first).filter(isFile)]
    .filter((line) => runsIn(text, line) > 0)
    .slice(0, mostLines);
}

/** Whether a line has no word that stands in two columns. */
function isCutBetween(text: string, line: Line, columns: readonly Stretch[]): boolean {
  return columns.slice(1).every(({ start }) => {
    const at = line.start + start;
    return at >= line.end || at <= line.start || isBlankAt(text, at - 1);
  });
}

/** Adds the parts of a line that keeps to no columns, each in the one that it starts in; where two do, one after another. */
function addPlaced(cells: TableCells, line: Line, columns: readonly Stretch[]): void {
  const parts = partsByRuns(cells.text, line);
  const places = parts.map(({ start }) => {
    const next = columns.findIndex((column) => column.start > start - line.start);
    return next < 0 ? columns.length - 1 : Math.max(0, next - 1);
  });
  const isApart = places.every((place, at) => at === 0 || place > places[at - 1]);
  if (!isApart) {
    addByRuns(cells, line);
    return;
  }
  let column = 0;
  for (const [at, { start, end }] of parts.entries()) {
    for (; column < places[at]; column++) cells.add(start, start);
    cells.add(start, end);
    column++;
  }
}

/** All lines without the white space at their ends; blank ones are empty. */
function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  let start = textStart(text);
  for (let at = start; at <= text.length; at++) {
    const code = at < text.length ? text.charCodeAt(at) : 10;
    if (code !== 10 && code !== 13) continue;
    let end = at;
    while (end > start && isBlankAt(text, end - 1)) end--;
    lines.push({ start, end });
    if (code === 13 && text.charCodeAt(at + 1) === 10) at++;
    start = at + 1;
  }
  return lines;
}

function isBlankAt(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code === 32 || code === 9 || (code > 127 && isUnseen(code));
}

/** The number of runs of two or more spaces inside a line; those before its first character do not count. */
function runsIn(text: string, line: Line): number {
  let at = line.start;
  while (at < line.end && isBlankAt(text, at)) at++;
  let runs = 0;
  let run = 0;
  for (; at < line.end; at++) {
    if (isBlankAt(text, at)) run++;
    else {
      if (run > 1) runs++;
      run = 0;
    }
  }
  return runs;
}

function stretchesOf(text: string, lines: readonly Line[]): Stretch[] {
  const width = Math.min(
    longestLine,
    lines.reduce((most, line) => Math.max(most, line.end - line.start), 0),
  );
  const taken = new Uint8Array(width + 1);
  for (const line of lines) {
    const end = Math.min(line.end - line.start, width);
    for (let at = 0; at < end; at++) if (!isBlankAt(text, line.start + at)) taken[at] = 1;
  }
  const stretches: Stretch[] = [];
  for (let at = 0; at < width; at++) {
    if (taken[at] === 0) continue;
    const start = at;
    while (taken[at] === 1) at++;
    const last = stretches.at(-1);
    const stretch = { start, end: at };
    const isParted =
      last &&
      (lines.some((line) => standsApart(text, line, last, stretch)) ||
        (stretches.length === 1 && isCounted(text, lines, last)));
    if (last && start - last.end === 1 && !isParted) last.end = at;
    else stretches.push(stretch);
  }
  return stretches;
}

/**
 * Whether a line holds something in both of two stretches with two or more spaces between. Where a single blank
 * position parts stretches and no line does, they are words of one cell: a name, or a heading over shorter values.
 */
function standsApart(text: string, line: Line, left: Stretch, right: Stretch): boolean {
  const lineEnd = line.end - line.start;
  if (lineEnd <= right.start) return false;
  let end = left.end;
  while (end > left.start && isBlankAt(text, line.start + end - 1)) end--;
  if (end === left.start) return false;
  let start = right.start;
  const stop = Math.min(right.end, lineEnd);
  while (start < stop && isBlankAt(text, line.start + start)) start++;
  return start < stop && start - end > 1;
}

/** Whether a stretch holds nothing but the numbers of the rows: `1.`, `2.`, `3.` */
function isCounted(text: string, lines: readonly Line[], { start, end }: Stretch): boolean {
  let before = 0;
  for (const line of lines) {
    const part = text
      .slice(Math.min(line.start + start, line.end), Math.min(line.start + end, line.end))
      .trim();
    if (before === 0 && !/\d/.test(part) && part.length <= 3) continue;
    const number = Number(/^(\d{1,5})[.)]?$/.exec(part)?.[1] ?? Number.NaN);
    if (number !== before + 1) return false;
    before = number;
  }
  return before > 1;
}

/** Whether two or more spaces stand between words inside one stretch: then it is not one column on that line. */
function holdsRun(text: string, line: Line, stretches: readonly Stretch[]): boolean {
  return stretches.some(({ start, end }) => {
    const part = { start: Math.min(line.start + start, line.end), end: Math.min(line.start + end, line.end) };
    return runsIn(text, part) > 0;
  });
}

function addByPosition(cells: TableCells, line: Line, stretches: readonly Stretch[]): void {
  let from = line.start;
  for (let index = 0; index < stretches.length; index++) {
    const next = stretches[index + 1];
    const to = next ? Math.min(line.end, line.start + next.start) : line.end;
    cells.add(Math.min(from, line.end), Math.max(to, Math.min(from, line.end)));
    from = to;
  }
}

function addByRuns(cells: TableCells, line: Line): void {
  for (const { start, end } of partsByRuns(cells.text, line)) cells.add(start, end);
}

/** The parts of a line between runs of spaces. */
function partsByRuns(text: string, line: Line): Line[] {
  const parts: Line[] = [];
  let from = line.start;
  while (from < line.end && isBlankAt(text, from)) from++;
  for (let at = from; at < line.end; ) {
    if (isBlankAt(text, at) && isBlankAt(text, at + 1)) {
      parts.push({ start: from, end: at });
      while (at < line.end && isBlankAt(text, at)) at++;
      from = at;
    } else at++;
  }
  parts.push({ start: from, end: line.end });
  return parts;
}

function mostFrequent(counts: readonly number[]): number {
  const seen = new Map<number, number>();
  let best = 0;
  let most = 0;
  for (const count of counts) {
    const times = (seen.get(count) ?? 0) + 1;
    seen.set(count, times);
    if (times > most) {
      most = times;
      best = count;
    }
  }
  return best;
}
