import type { TableCells } from '../cells';
import { withoutInlineMarks } from './inlineMarks';

const marks = /^(`{1,2}|\*{1,3}|_{1,3}|~~|'{2,5})\s*(\S.*?)\s*\1$/;

const struck = /^~~.*[\p{L}\p{N}].*~~$/u;

/** Takes the marks of Markdown off the cells of a table: emphasis and code around a cell, and escapes. Rows with a cell that is struck out are kept as such. */
export function readMarkdown(cells: TableCells): void {
  let row = 0;
  for (let cell = 0; cell < cells.cellCount; cell++) {
    while (cells.rowFirst[row + 1] <= cell) row++;
    const text = cells.value(cell);
    const first = text.charCodeAt(0);
    // `, *, _, ~ and ' can open a mark, [, < and ! a link or a tag.
    const marked = first === 96 || first === 42 || first === 95 || first === 126 || first === 39;
    const linked =
      first === 91 || first === 60 || first === 33 || first === 123 ? withoutInlineMarks(text) : text;
    if (!marked && linked === text && !text.includes('\\')) continue;
    if (struck.test(text)) cells.struckRows.add(row);
    const inner = marked ? (marks.exec(text)?.[2] ?? text) : linked;
    const plain = text.startsWith('`') ? inner : inner.replace(/\\([*_`#~|&%])/g, '$1');
    if (plain !== text) cells.rewritten.set(cell, plain);
  }
}
