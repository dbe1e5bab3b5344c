import { namesAudioFileIn } from '../../../model/fileNames';
import { withoutLeaders } from './dotLeaders';
import { withoutLogHeads } from './logHeads';
import { withoutMessageHeads } from './messageHeads';
import { withOtherBars } from './otherBars';
import { withoutLineNumbers } from './terminalCopy';

const looked = 1 << 16;
/** Vertical lines that part cells; a text without them has no drawn boxes. */
const verticals = /[\u2502\u2503\u2551\u2506\u2507\u250a\u250b]/;
const boxes = /[\u2500-\u257f]/g;
const horizontals = /[\u2500\u2501\u2504\u2505\u2508\u2509\u254c\u254d\u2550]/;
const quoted = /^[ \t]*(?:>[ \t]?)+/gm;
const mark = /^[ \t]*\[(\/?)([a-z]{2,10})(?:=[^\]\r\n]{0,40})?\][ \t]*$/gim;

/**
 * A text as it stood before it was put into a mail, a message or a frame: without the `>` before quoted lines, the names and times before messages and lines
 * of logs, without marks such as `[code]` on lines of their own, without dots that lead from names to values, and with drawn boxes and the rows of wikis between single bars. What is taken away becomes blanks,
 * so that all offsets stay.
 */
export function plainLayout(text: string): string {
  return withoutLeaders(
    withPlainBars(
      withoutLineNumbers(
        withoutMessageHeads(
          withoutLogHeads(withoutMarks(withoutQuoting(withOtherBars(withPlainBoxes(withoutComments(text)))))),
        ),
      ),
    ),
  );
}

/** A comment of HTML, as Markdown and wikis take them too. */
const comment = /<!--[\s\S]{0,2000}?-->/g;

/** A text with its comments made blanks; their line breaks stay. */
export function withoutComments(text: string): string {
  return text.includes('<!--') ? text.replace(comment, (all) => all.replace(/[^\r\n]/g, ' ')) : text;
}

/** The comments of a text that name an audio file, line by line. */
export function commentsWithFiles(text: string): { text: string; start: number; end: number }[] {
  if (!text.includes('<!--')) return [];
  return Array.from(text.matchAll(comment)).flatMap(({ 0: all, index }) =>
    Array.from(all.matchAll(/[^\r\n]+/g)).flatMap(({ 0: line, index: at }) => {
      const said = line.replace(/^\s*<!--|-->\s*$/g, '').trim();
      return namesAudioFileIn(said) ? [{ text: said, start: index + at, end: index + at + line.length }] : [];
    }),
  );
}

/** A row of a wiki whose cells are parted by double bars alone, one of headings between `^`, and marks of headings behind bars. */
const doubleBars = /^[ \t]*\|\|(?:[^|\r\n]*\|\|)+[^|\r\n]*$/gm;
const carets = /^[ \t]*\^(?:[^^\r\n]*\^){2,}[ \t]*$/gm;
const headingMarks = /^[ \t]*\|(?:=(?!=)|_\.).*$/gm;
/** A row of a typeset table: cells parted by `&`, with two backslashes at the end. */
const typeset = /^[^&\r\n]{0,200}(?:&[^&\r\n]{0,200})+\\\\[^&\r\n]{0,40}$/gm;
const fewestTypeset = 2;

/** Rows of other markups as rows between single bars. */
function withPlainBars(text: string): string {
  if (!/^[ \t]*(?:\|\||\^|\|=|\|_\.)|\\\\[ \t]*(?:\\hline)?[ \t]*$/m.test(text.slice(0, looked))) return text;
  const barred = text
    .replace(doubleBars, (row) => row.replaceAll('||', ' |'))
    .replace(carets, (row) => row.replaceAll('^', '|'))
    .replace(headingMarks, (row) => row.replace(/\|(?:=|_\.)/g, (sign) => `|${blanks(sign.slice(1))}`));
  if ((barred.match(typeset)?.length ?? 0) < fewestTypeset) return barred;
  return barred.replace(typeset, (row) =>
    row
      .replace(/\\hline/g, blanks)
      .replace(/\\\\/g, blanks)
      .replace(/(?<!\\)&/g, '|'),
  );
}

function withPlainBoxes(text: string): string {
  if (!verticals.test(text)) return text;
  return text.replace(boxes, (sign) => (verticals.test(sign) ? '|' : horizontals.test(sign) ? '-' : '+'));
}

/**
 * Lines count as quoted where all between the first and the last quoted one are so, or where the lines of an answer stand between
 * and all files are named in quoted ones: a sign before some rows of a table alone may mark those.
 */
function withoutQuoting(text: string): string {
  const start = text.slice(0, looked);
  if (!/^[ \t]*>/m.test(start)) return text;
  const lines = start.split(/\r\n?|\n/);
  const marked = lines.map((line) => /^[ \t]*>/.test(line));
  const stretch = lines.slice(marked.indexOf(true), marked.lastIndexOf(true) + 1);
  if (stretch.length < 2) return text;
  const answers = stretch.filter((line) => line.trim() !== '' && !/^[ \t]*>/.test(line));
  if (answers.some(namesAudioFileIn)) return text;
  if (answers.length > 0 && !lines.some((line, at) => marked[at] && namesAudioFileIn(line))) return text;
  return text.replace(quoted, blanks);
}

/** Takes away marks in brackets that open and close. */
function withoutMarks(text: string): string {
  const start = text.slice(0, looked);
  if (!/^[ \t]*\[\//m.test(start)) return text;
  const opened = new Set<string>();
  const closed = new Set<string>();
  for (const [, slash, name = ''] of start.matchAll(mark)) (slash ? closed : opened).add(name.toLowerCase());
  return text.replace(mark, (all: string, _: string, name: string) => {
    const word = name.toLowerCase();
    return opened.has(word) && closed.has(word) ? blanks(all) : all;
  });
}

function blanks(text: string): string {
  return ' '.repeat(text.length);
}
