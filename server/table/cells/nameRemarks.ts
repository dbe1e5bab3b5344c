import { isAudioFileName } from '../../model/fileNames';
import { nameMark } from '../../trade/statements/nameMarks';
import type { TableCells } from './cells';

const closing: ReadonlySet<number> = new Set(Array.from(')]}*^+!?~#', (sign) => sign.charCodeAt(0)));
const parted = /^(\S.{0,300}?\.\w{2,4})\s*[([{]\s*([^()[\]{}]{1,80}?)\s*[)\]}]$/u;
const marked = new RegExp(String.raw`^([^\s*].{0,300}?\.\w{2,4})\s*(${nameMark})$`, 'u');
/** The name of a file in marks of code or emphasis, or quotation marks, with a remark or a mark behind them. */
const enclosed = new RegExp(
  String.raw`^(\x60{1,2}|\*{1,3}|_{1,3}|'{1,5}|["\u201c\u201e\u00ab])\s*([^\s\x60*'"][^\x60*'"\u201c\u201d\u00bb]{0,300}\.\w{2,4})\s*(?:\1|[\u201d\u201c\u00bb])\s*(?:(${nameMark})|[([{]\s*([^()[\]{}]{1,80}?)\s*[)\]}])$`,
  'u',
);
/** A sentence may end with the name of a file. */
const endsSentence = /\s.*[!?]$/u;

/** Parts what stands in brackets behind the name of a file, or a mark, from the name: `bell.wav (-3 dB)`, `bell.wav *`; see {@link TableCells.nameRemarks}. */
export function partNames(cells: TableCells): void {
  const { codes, starts, ends } = cells;
  for (let cell = 0; cell < cells.cellCount; cell++) {
    if (ends[cell] - starts[cell] < 6) continue;
    const last = codes[ends[cell] - 1];
    if (!closing.has(last) && last < 128 && !cells.isRewritten(cell)) continue;
    const text = cells.value(cell);
    const [, name = '', remark = ''] = behindMarks(text) ?? parted.exec(text) ?? markedIn(text) ?? [];
    if (name === '' || !isAudioFileName(name)) continue;
    cells.rewritten.set(cell, name);
    cells.nameRemarks.set(cell, remark);
  }
}

function markedIn(text: string): RegExpExecArray | null {
  return endsSentence.test(text) ? null : marked.exec(text);
}

/** As the other patterns give it, of a name that stands in marks of its own. */
function behindMarks(text: string): readonly [string, string, string] | undefined {
  const [whole, , name = '', mark, remark = ''] = enclosed.exec(text) ?? [];
  return whole === undefined ? undefined : [whole, name, mark ?? remark];
}
