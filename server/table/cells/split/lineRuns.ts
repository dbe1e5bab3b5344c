import { textStart } from '../../../model/text/textLayout';
import { isUnseen } from '../cells';

/** A stretch of a text within one line. */
export interface Line {
  start: number;
  end: number;
}

/** All lines without the white space at their ends; blank ones are empty. */
export function trimmedLines(text: string): Line[] {
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

/** Whether a blank stands at an offset of a text. */
export function isBlankAt(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code === 32 || code === 9 || (code > 127 && isUnseen(code));
}

/** The number of runs of two or more spaces inside a line; those before its first character do not count. */
export function runsIn(text: string, line: Line): number {
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

/** The parts of a line between runs of spaces. */
export function partsByRuns(text: string, line: Line): Line[] {
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
