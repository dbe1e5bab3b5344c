import { isAudioFileName } from '../../model/fileNames';
import type { TableCells } from './cells';

const closing: ReadonlySet<number> = new Set([')', ']', '}'].map((sign) => sign.charCodeAt(0)));
const parted = /^(\S.{0,300}?\.\w{2,4})\s*[([{]\s*([^()[\]{}]{1,80}?)\s*[)\]}]$/u;

/** Parts what stands in brackets behind the name of a file from the name: `bell.wav (-3 dB)`; see {@link TableCells.nameRemarks}. */
export function partNames(cells: TableCells): void {
  const { codes, starts, ends } = cells;
  for (let cell = 0; cell < cells.cellCount; cell++) {
    if (ends[cell] - starts[cell] < 8) continue;
    const last = codes[ends[cell] - 1];
    if (!closing.has(last) && last < 128 && !cells.isRewritten(cell)) continue;
    const [, name = '', remark = ''] = parted.exec(cells.value(cell)) ?? [];
    if (name === '' || !isAudioFileName(name)) continue;
    cells.rewritten.set(cell, name);
    cells.nameRemarks.set(cell, remark);
  }
}
