import { namesAudioFileIn } from '../../../model/fileNames';

/** Signs that part cells where blanks stand on both sides of them, in the order in which they are tried; the last ones stand elsewhere too. */
const partingSigns = ['/', '//', '\\', '·', '•', '::', '»', '¦'] as const;
const otherSigns = ['>', '~', '*', '+', '—', '–', '-'] as const;
const mostLooks = 300;
const longestLine = 1000;
/** So many signs part a file from two values at least. */
const fewest = 2;
/** What numbers a line of a list. */
const lead = /^[ \t]*\(?\d{1,4}[.)](?=[ \t])/u;
/** What parts cells by itself. */
const others = /[\t;|]/;

/** A line of a text, its end left out. */
interface Line {
  start: number;
  text: string;
}

/**
 * A text whose lines with files are parted by a sign with blanks around it, as `1) harp.wav / 36 to 43 / 40`, with tabs in place of the
 * signs and at the same offsets; so is the line above, where it has as many. A number before the lines is a cell of its own where the
 * heading has one more, else it is left out. `undefined` for any other text; with `isElse`, signs that stand elsewhere too are tried.
 */
export function withSlashesAsTabs(text: string, isElse = false): string | undefined {
  const lines = linesOf(text);
  const files = lines.slice(0, mostLooks).filter((line) => namesAudioFileIn(line.text));
  if (files.length < 2 || files.some((line) => others.test(line.text))) return undefined;
  for (const sign of isElse ? otherSigns : partingSigns) {
    const counts = new Set(files.map((line) => partsOf(line.text, sign).length));
    const [count = 0] = counts;
    if (counts.size === 1 && count > fewest) return rewritten(text, lines, sign, count);
  }
  return undefined;
}

function rewritten(text: string, lines: readonly Line[], sign: string, count: number): string {
  const first = lines.findIndex((line) => namesAudioFileIn(line.text));
  const isLed = lines.every((line) => !namesAudioFileIn(line.text) || lead.test(line.text));
  const above = lines.slice(0, first).findLast((line) => line.text.trim() !== '');
  const headings = above ? partsOf(above.text, sign).length : 0;
  let written = '';
  let at = 0;
  for (const line of lines) {
    const isRow = partsOf(line.text, sign).length === count && namesAudioFileIn(line.text);
    const isHeading = line === above && headings >= count;
    if (!isRow && !isHeading) continue;
    const parted = line.text.replaceAll(` ${sign} `, ` ${'\t'.padEnd(sign.length)} `);
    const number = isRow && isLed ? (lead.exec(line.text)?.[0].length ?? 0) : 0;
    const start = headings === count + 1 ? `${parted.slice(0, number)}\t` : ' '.repeat(number + 1);
    written += text.slice(at, line.start) + (number > 0 ? start + parted.slice(number + 1) : parted);
    at = line.start + line.text.length;
  }
  return written + text.slice(at);
}

function partsOf(line: string, sign: string): string[] {
  return line.split(` ${sign} `);
}

function linesOf(text: string): Line[] {
  return Array.from(text.matchAll(/[^\r\n]+/g), ({ 0: line, index }) => ({
    start: index,
    text: line.length > longestLine ? '' : line,
  })).filter((line) => line.text !== '');
}
