import { audioEndings } from '../../model/fileNames';
import type { TableCells } from '../cells/cells';

const ending = String.raw`\.(?:${[...audioEndings].join('|')})`;
const parting = new RegExp(String.raw`(?<=${ending})\s*[/;|,+&\n]\s*(?=\S)`, 'iu');
const isEnding = new RegExp(`${ending}$`, 'iu');

/** The files that one cell names as takes of the same zone: `a1.wav / a2.wav`; none where it names one. */
export function takesInCell(cells: TableCells, cell: number): string[] {
  if (cell < 0 || cells.ends[cell] - cells.starts[cell] < 11) return [];
  const text = cells.value(cell);
  if (!parting.test(text)) return [];
  const takes = text.split(parting);
  return takes.length > 1 && takes.every((take) => isEnding.test(take)) ? takes : [];
}

/** Whether some cell of a text may name several files. */
export function mayHoldTakes(text: string): boolean {
  return parting.test(text);
}
