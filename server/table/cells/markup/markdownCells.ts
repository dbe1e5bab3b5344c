import type { TableCells } from '../cells';
import { withoutInlineMarks } from './inlineMarks';
import { StruckCells } from './struckOut';

const star = 42;
const marks = /^(`{1,2}|\*{1,3}|_{1,3}|'{2,5})\s*(\S.*?)\s*\1$/;

/** Takes the marks of Markdown off the cells of a table: emphasis and code around a cell, and escapes. What is struck out does not count. */
export function readMarkdown(cells: TableCells): void {
  const struck = new StruckCells(cells);
  for (let row = 0; row < cells.rowCount; row++) {
    for (let cell = cells.rowFirst[row]; cell < cells.rowFirst[row + 1]; cell++)
      readCell(cells, cell, struck);
    struck.endRow(row);
  }
}

const bold = /^(\*{2,3})\s*(\S.*?)\s*\1$/;

/** Takes the marks of bold text off whole cells of a table that is not of Markdown. */
export function readBold(cells: TableCells): void {
  for (let cell = 0; cell < cells.cellCount; cell++) {
    const start = cells.starts[cell];
    if (cells.codes[start] !== star || cells.codes[start + 1] !== star) continue;
    const inner = bold.exec(cells.value(cell).trim())?.[2];
    if (inner !== undefined) cells.rewritten.set(cell, inner);
  }
}

function readCell(cells: TableCells, cell: number, struck: StruckCells): void {
  const written = cells.value(cell);
  const text = struck.read(cell, written).trim();
  const first = text.charCodeAt(0);
  // `, *, _ and ' can open a mark, [, <, ! and { a link or a tag.
  const marked = first === 96 || first === 42 || first === 95 || first === 39;
  const isTagged = first === 91 || first === 60 || first === 33 || first === 123 || text.endsWith('</sup>');
  const linked = isTagged ? withoutInlineMarks(text) : text;
  if (!marked && linked === written && !text.includes('\\')) return;
  const inner = marked ? (marks.exec(text)?.[2] ?? linked) : linked;
  const plain = text.startsWith('`') ? inner : inner.replace(/\\([*_`#~|&%])/g, '$1');
  if (plain !== written) cells.rewritten.set(cell, plain);
}
