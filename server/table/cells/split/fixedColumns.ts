import { namesAudioFileIn } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import { TableCells } from '../cells';
import type { Line } from './lineRuns';
import { isBlankAt, partsByRuns, runsIn, trimmedLines } from './lineRuns';
import { placedParts } from './placedParts';

/** Lines beyond this length are not looked at when columns are found; what stands behind goes to the last column. */
const longestLine = 4096;
/** Columns are found from so many lines. */
const mostLines = 2000;
/** A drawn line stands at most so many lines above the first file. */
const mostBetween = 4;

/** A key with its name or its number in brackets is one cell, however far apart the two stand so that brackets are below one another. */
const keyInBrackets =
  /(?<![\p{L}\d])([A-H](?:[#b\u266f\u266d]|is|es)?-?\d)([ \t]{2,4})(?=[([]\d{1,3}[)\]])|(?<![\p{L}\d.,-])(\d{1,3})([ \t]{2,4})(?=[([][A-H](?:[#b\u266f\u266d]|is|es)?-?\d[)\]])/giu;
/** Lines drawn under headings, a stretch for each column. */
const drawnStretches = /^\s*[-=_\u2500\u2550]{2,}(?:[ \t]+[-=_\u2500\u2550]+)+$/u;

/**
 * Splits a text whose cells stand below one another, or are kept apart by two or more spaces. Columns are the
 * stretches between positions that are blank on all lines; where those are too few, runs of spaces part the cells.
 */
export function splitColumns(written: string): TableCells {
  // What belongs together stands together.
  const text = written.replace(keyInBrackets, (all) => all.replace(/[ \t]/g, '\u00b7'));
  const lines = trimmedLines(text);
  const all = lines.filter((line) => runsIn(text, line) > 0).slice(0, mostLines);
  const hasFiles = lines.some((line) => isFileLine(text, line));
  const files = hasFiles ? bodyColumns(text, lines, isFileLine) : undefined;
  const whole = files ? undefined : columnsOf(text, all);
  const body = files ?? (whole || hasFiles ? undefined : bodyColumns(text, lines, hasNumbers));
  const columns = body ?? whole;
  const cells = new TableCells(written);
  cells.bySpaces = true;
  for (const line of lines) {
    if (line.end > line.start) {
      if (runsIn(text, line) === 0) cells.add(line.start, line.end);
      else if (!columns) addParts(cells, partsByRuns(text, line));
      else if (whole || isCutBetween(text, line, columns)) addByPosition(cells, line, columns);
      else addParts(cells, placedParts(text, line, columns) ?? partsByRuns(text, line));
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

/** Whether a line is taken for a row of values. */
type RowTest = (text: string, line: Line) => boolean;

function isFileLine(text: string, line: Line): boolean {
  return namesAudioFileIn(text.slice(line.start, Math.min(line.end, line.start + longestLine)));
}

/** Whether a line has at least two numbers behind its first word. */
function hasNumbers(text: string, line: Line): boolean {
  const numbers = text
    .slice(line.start, Math.min(line.end, line.start + longestLine))
    .match(/\s[-+]?\d+(?:[.,]\d+)?(?!\S)/g);
  return numbers !== null && numbers.length > 1;
}

/**
 * The columns of the rows and of the heading right above, without titles, legends and sums around, which keep to no columns; those of the
 * rows alone where the heading stands over several of them: `from to`. `undefined` where the rows stand in none.
 */
function bodyColumns(text: string, lines: readonly Line[], isRow: RowTest): Stretch[] | undefined {
  const first = lines.findIndex((line) => isRow(text, line));
  if (first < 0) return undefined;
  let above = first - 1;
  while (above >= 0 && !/[\p{L}\p{N}]/u.test(text.slice(lines[above].start, lines[above].end))) above--;
  const rows = lines
    .slice(first)
    .filter((line) => isRow(text, line) && runsIn(text, line) > 0)
    .slice(0, mostLines);
  const isHeading = above >= 0 && runsIn(text, lines[above]) > 0;
  const drawn = drawnColumns(text, lines.slice(Math.max(0, first - mostBetween), first), rows);
  if (drawn) return drawn;
  const headed = columnsOf(text, isHeading ? [lines[above], ...rows] : rows);
  const own = headed || !isHeading || rows.length < 2 ? undefined : columnsOf(text, rows);
  // Where a remark reaches from one column into the next, runs of spaces tell more.
  return headed ?? (own && !rows.some((line) => holdsRun(text, line, own)) ? own : undefined);
}

/** Whether a line has no word that stands in two columns. */
function isCutBetween(text: string, line: Line, columns: readonly Stretch[]): boolean {
  return columns.slice(1).every(({ start }) => {
    const at = line.start + start;
    return at >= line.end || at <= line.start || isBlankAt(text, at - 1);
  });
}

/** The columns of a line that is drawn below headings, where it has a stretch for each and all rows keep to them; `undefined` for none. */
function drawnColumns(text: string, above: readonly Line[], rows: readonly Line[]): Stretch[] | undefined {
  const drawn = above.findLast((line) =>
    drawnStretches.test(text.slice(line.start, Math.min(line.end, line.start + longestLine))),
  );
  if (!drawn) return undefined;
  const columns = Array.from(text.slice(drawn.start, drawn.end).matchAll(/\S+/g), ({ 0: dashes, index }) => ({
    start: index,
    end: index + dashes.length,
  }));
  return rows.every((line) => isCutBetween(text, line, columns)) ? columns : undefined;
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

function addParts(cells: TableCells, parts: readonly Line[]): void {
  for (const { start, end } of parts) cells.add(start, end);
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
