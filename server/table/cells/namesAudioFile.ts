import { audioEndings, isAudioFileName } from '../../model/fileNames';
import type { TableCells } from './cells';

const dot = 46;
const longestEnding = 5;
const endingCodes: ReadonlySet<number> = new Set(
  Array.from(audioEndings, (ending) =>
    endingCode(
      Array.from(ending, (letter) => letter.charCodeAt(0)),
      0,
      ending.length,
    ),
  ),
);

/** Whether a cell ends like the name of an audio file; see {@link isAudioFileName}. */
export function namesAudioFile(cells: TableCells, cell: number): boolean {
  if (cell < 0) return false;
  if (cells.isRewritten(cell)) return isAudioFileName(cells.value(cell));
  const { codes } = cells;
  const end = cells.ends[cell];
  const first = Math.max(cells.starts[cell] + 1, end - longestEnding);
  // Names end in four or five characters with a dot as their first.
  for (let at = end - 1; at >= first; at--) {
    if (codes[at] === dot) return endingCodes.has(endingCode(codes, at + 1, end));
  }
  return false;
}

/** Three or four ASCII characters as one number, letters small. */
function endingCode(codes: ArrayLike<number>, from: number, end: number): number {
  let code = 0;
  for (let at = from; at < end; at++)
    code = (code << 8) | (codes[at] >= 65 && codes[at] <= 90 ? codes[at] + 32 : codes[at]);
  return code;
}
