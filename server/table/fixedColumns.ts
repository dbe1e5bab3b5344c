import { TableCells, textStart } from './cells';

/** Lines beyond this length are not looked at when columns are found; what stands behind goes to the last column. */
const longestLine = 4096;
/** Columns are found from so many lines. */
const mostLines = 2000;

interface Line {
  start: number;
  end: number;
}

/** A stretch of character positions that a column takes. */
interface Stretch {
  start: number;
  end: number;
}

/**
 * Splits a text whose cells stand below one another, or are kept apart by two or more spaces. Columns are the
 * stretches between positions that are blank on all lines; where those are too few, runs of spaces part the cells.
 */
export function splitColumns(text: string): TableCells {
  const lines = linesOf(text);
  const withRuns = lines.filter((line) => runsIn(text, line) > 0);
  const stretches = stretchesOf(text, withRuns.slice(0, mostLines));
  const cells = new TableCells(text);
  const counts = withRuns.slice(0, mostLines).map((line) => runsIn(text, line) + 1);
  const swallowed = withRuns.slice(0, mostLines).filter((line) => holdsRun(text, line, stretches)).length;
  const byPosition = stretches.length >= mostFrequent(counts) && swallowed * 5 <= withRuns.length;
  for (const line of lines) {
    if (line.end > line.start) {
      if (runsIn(text, line) === 0) cells.add(line.start, line.end);
      else if (byPosition) addByPosition(cells, line, stretches);
      else addByRuns(cells, line);
    }
    cells.endRow();
  }
  return cells;
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
  return code === 32 || code === 9 || code === 0xa0;
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
  /** Positions where at least one line has a second blank beside this one. */
  const wide = new Uint8Array(width + 1);
  for (const line of lines) {
    const end = Math.min(line.end - line.start, width);
    for (let at = 0; at < width; at++) {
      if (at >= end) break;
      if (!isBlankAt(text, line.start + at)) taken[at] = 1;
      else if (isBlankAt(text, line.start + at + 1)) wide[at] = 1;
      else if (at > 0 && isBlankAt(text, line.start + at - 1)) wide[at] = 1;
    }
  }
  const stretches: Stretch[] = [];
  let at = 0;
  while (at < width) {
    while (at < width && taken[at] === 0) at++;
    if (at >= width) break;
    const start = at;
    let end = at;
    while (at < width) {
      if (taken[at] === 1) end = ++at;
      else if (taken[at + 1] === 1 && wide[at] === 0) at++;
      else break;
    }
    stretches.push({ start, end });
  }
  return joinHeadingWords(text, lines, stretches);
}

/** A heading of two words over short values looks like two columns; nothing but the heading stands in one of them. */
function joinHeadingWords(text: string, lines: readonly Line[], stretches: readonly Stretch[]): Stretch[] {
  const [first, ...others] = lines;
  if (!first) return [...stretches];
  const bare = stretches.map((stretch) => others.every((line) => isBlankIn(text, line, stretch)));
  const joined: Stretch[] = [];
  let lastBare = false;
  for (let index = 0; index < stretches.length; index++) {
    const stretch = stretches[index] as Stretch;
    const last = joined.at(-1);
    const oneSpace =
      last !== undefined &&
      stretch.start - last.end === 1 &&
      !isBlankIn(text, first, { start: last.end - 1, end: last.end }) &&
      !isBlankIn(text, first, { start: stretch.start, end: stretch.start + 1 });
    if (last && oneSpace && (bare[index] || lastBare)) {
      last.end = stretch.end;
      lastBare = lastBare && bare[index] === true;
    } else {
      joined.push({ ...stretch });
      lastBare = bare[index] === true;
    }
  }
  return joined;
}

/** Whether two or more spaces stand between words inside one stretch: then it is not one column on that line. */
function holdsRun(text: string, line: Line, stretches: readonly Stretch[]): boolean {
  return stretches.some(({ start, end }) => {
    const part = { start: Math.min(line.start + start, line.end), end: Math.min(line.start + end, line.end) };
    return runsIn(text, part) > 0;
  });
}

function isBlankIn(text: string, line: Line, stretch: Stretch): boolean {
  const end = Math.min(line.end, line.start + stretch.end);
  for (let at = line.start + stretch.start; at < end; at++) if (!isBlankAt(text, at)) return false;
  return true;
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
  const { text } = cells;
  let from = line.start;
  while (from < line.end && isBlankAt(text, from)) from++;
  for (let at = from; at < line.end; ) {
    if (isBlankAt(text, at) && isBlankAt(text, at + 1)) {
      cells.add(from, at);
      while (at < line.end && isBlankAt(text, at)) at++;
      from = at;
    } else at++;
  }
  cells.add(from, line.end);
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
