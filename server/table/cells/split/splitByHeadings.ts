import { namesAudioFileIn } from '../../../model/fileNames';
import type { CellKind } from '../../columns/cellKinds';
import { lookAt } from '../../columns/cellKinds';
import { TableCells } from '../cells';
import { knownHeadings } from './headingLine';
import type { Word } from './lineWords';
import { isBlankLine, wordsIn } from './lineWords';
import { linesOf } from './splitWords';

const mostLooks = 200;
const longestLine = 4096;
const mostBefore = 25;
const noValues: ReadonlySet<CellKind> = new Set(['text', 'file']);

/**
 * Splits a text whose first line names its columns, parted by single blanks, while names of several words stand before the values
 * of the lines below: from the right, as many values as there are headings behind the first. `undefined` for any other text.
 */
export function splitByHeadings(text: string): TableCells | undefined {
  const lines = linesOf(text, mostLooks);
  for (const [at, line] of lines.slice(0, mostBefore).entries()) {
    // Below the first file stand its values, and words between two tables.
    if (namesAudioFileIn(text.slice(line.start, Math.min(line.end, line.start + longestLine)))) break;
    const headings = knownHeadings(text, line);
    if (!headings) continue;
    const below = lines.slice(at + 1).filter((one) => !isBlankLine(text, one));
    const rows = below.filter((one) => valuesIn(text, one, headings.length - 1) !== undefined);
    if (rows.length < 2 || rows.length * 3 < below.length * 2) continue;
    return cellsOf(text, line, headings);
  }
  return undefined;
}

/** A name and so many values behind it; `undefined` for a line that has fewer. */
function valuesIn(text: string, line: Word, count: number): Word[] | undefined {
  const words = wordsIn(text, line.start, Math.min(line.end, line.start + longestLine));
  const values = words.slice(-count);
  const [first] = words;
  const last = words.at(-count - 1);
  if (words.length <= count || !first || !last) return undefined;
  // What stands apart behind a file is a cell of its own.
  if (standsBehindFile(text.slice(first.start, last.end))) return undefined;
  // The name of a file among them is the last word of the name, on a line that lacks a value.
  const isValue = ({ start, end }: Word) => !noValues.has(lookAt(text.slice(start, end)).kind);
  return values.every(isValue) ? [{ start: first.start, end: last.end }, ...values] : undefined;
}

function standsBehindFile(name: string): boolean {
  const gap = name.search(/[ \t]{2}/);
  return gap > 0 && namesAudioFileIn(name.slice(0, gap));
}

function cellsOf(text: string, heading: Word, headings: readonly Word[]): TableCells {
  const cells = new TableCells(text);
  cells.bySpaces = true;
  for (const line of linesOf(text, Number.POSITIVE_INFINITY)) {
    const isHeading = line.start === heading.start;
    const parts = isHeading
      ? headings
      : line.start > heading.end
        ? valuesIn(text, line, headings.length - 1)
        : undefined;
    for (const { start, end } of parts ?? (line.end > line.start ? [line] : [])) cells.add(start, end);
    cells.endRow();
  }
  return cells;
}
