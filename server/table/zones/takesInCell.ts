import { audioEndings } from '../../model/fileNames';
import type { TableCells } from '../cells/cells';

const ending = String.raw`\.(?:${[...audioEndings].join('|')})`;
const parting = new RegExp(String.raw`(?<=${ending})\s*[/;|,+&\n]\s*(?=\S)`, 'iu');
const isEnding = new RegExp(`${ending}$`, 'iu');

/** The files that one cell names as takes of the same zone: `a1.wav / a2.wav`; none where it names one. */
export function takesInCell(cells: TableCells, cell: number): string[] {
  if (cell < 0 || !mayBeParted(cells, cell)) return [];
  const text = cells.value(cell);
  if (!parting.test(text)) return [];
  const takes = text.split(parting);
  return takes.length > 1 && takes.every((take) => isEnding.test(take)) ? takes : [];
}

const dot = 46;
/** `&`, `+`, `,`, `/`, `;`, `|` and a line feed. */
const partingCodes: ReadonlySet<number> = new Set([38, 43, 44, 47, 59, 124, 10]);
/** A dot stands so near before a sign that parts files. */
const nearest = 8;

/** Whether a sign that parts files stands behind what may be an ending. */
function mayBeParted(cells: TableCells, cell: number): boolean {
  const { codes } = cells;
  const end = cells.ends[cell];
  let last = Number.NEGATIVE_INFINITY;
  for (let at = cells.starts[cell]; at < end; at++) {
    const code = codes[at];
    if (code === dot) last = at;
    else if (code < 125 && at - last <= nearest && partingCodes.has(code)) return true;
  }
  return false;
}
