import { audioEndingInText } from '../../../model/fileNames';

const looked = 1 << 16;
const fewestLines = 2;
const longestLine = 4096;
/** Dots in a row or with blanks between; three alone may be the middle of a range. */
const leader = /\.{4,}|\u2026{2,}|[\u00b7\u2024]{3,}|\.(?: \.){2,}/gu;
const afterFile = new RegExp(
  String.raw`(${audioEndingInText}[ \t]*)(\.{3}|\u2026|_{3,}|-{3,})(?=[ \t])`,
  'iu',
);
const anyLeader = /\.{3}|\u2026|[\u00b7\u2024]{3}|\. \. \.|_{3}|-{3}/u;

/** A stretch of a line. */
interface Run {
  start: number;
  end: number;
}

/**
 * A text with blanks in the place of the dots that lead the eye from a name to its values, as printed lists have them:
 * `reed1.wav ........ C2`. Where some lines have more of them than others only the first are such: those further on may stand for empty cells.
 */
export function withoutLeaders(text: string): string {
  if (!anyLeader.test(text.slice(0, looked))) return text;
  const lines = text.split(/(\r\n?|\n)/);
  const runs = lines.map((line) => leadersIn(line));
  const led = runs.filter(({ length }) => length > 0);
  if (led.length < fewestLines) return text;
  const isEven = led.every(({ length }) => length === led[0].length);
  return lines.map((line, at) => blanked(line, isEven ? runs[at] : runs[at].slice(0, 1))).join('');
}

/** The leaders of a line between words; none where a bar or a tab parts its cells. */
function leadersIn(line: string): Run[] {
  if (line.length > longestLine || /[|\t;]/.test(line)) return [];
  const found = Array.from(line.matchAll(leader), ({ 0: dots, index }) => ({
    start: index,
    end: index + dots.length,
  }));
  const named = afterFile.exec(line);
  const start = named ? named.index + named[1].length : -1;
  if (named && !found.some((run) => run.start <= start))
    found.unshift({ start, end: start + named[2].length });
  const isBetween = (run: Run) => /\S/.test(line.slice(0, run.start)) && /\S/.test(line.slice(run.end));
  return found.filter(isBetween);
}

function blanked(line: string, runs: readonly Run[]): string {
  let text = line;
  for (const { start, end } of runs) text = text.slice(0, start) + ' '.repeat(end - start) + text.slice(end);
  return text;
}
