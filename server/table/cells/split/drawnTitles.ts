import { namesAudioFileIn } from '../../../model/fileNames';
import type { TableCells } from '../cells';

const mostRows = 200;
const longest = 200;
/** `=== Soft ===`, `## Soft`, `-- Soft --`; a line that has nothing but signs is none. */
const drawn = /^\s*(?:={2,}|#{2,}|\*{2,}|-{2,}|~{2,})\s*[\p{L}\d]/u;

/** Whether a line is drawn as a title, so that it names no columns. */
export function isDrawnTitle(line: string): boolean {
  return line.length <= longest && drawn.test(line) && !namesAudioFileIn(line);
}

/** Whether a title among the first rows was parted into cells. */
export function partsTitles(cells: TableCells): boolean {
  for (let row = 0; row < Math.min(cells.rowCount, mostRows); row++) {
    const { start, end } = cells.rowSpan(row);
    if (cells.filled(row) > 1 && isDrawnTitle(cells.text.slice(start, Math.min(end, start + longest + 1))))
      return true;
  }
  return false;
}
