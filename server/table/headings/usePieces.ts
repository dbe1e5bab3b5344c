import { readHeading, unitInHeading } from '../../trade/headings/headings';
import type { TableCells } from '../cells/cells';
import { recordingHeading } from '../cells/oneRecording';
import type { TableRows } from '../cells/tableRows';
import type { Glossary } from './glossary';
import { pieceColumns, piecesOf } from './pieceHeadings';

/**
 * Takes a column of lengths for those of pieces where rows name the same recording again, with other lengths, or start behind so many
 * frames as they say: then it cannot tell how long files are. Beside a recording that the text names, names in rows are those of pieces.
 */
export function usePieces(
  cells: TableCells,
  tables: readonly TableRows[],
  hasRecording: boolean,
  glossary: Glossary,
): void {
  for (const rows of tables) {
    const { headings, data, width } = rows;
    const columns = pieceColumns(rows);
    if (!columns) continue;
    const texts = headings.map(({ text }) => text);
    if (hasRecording && texts.at(-1) === recordingHeading)
      for (const text of texts.slice(0, -1))
        if (readHeading(text)?.meaning === 'sample') glossary.settle(text, 'comment', text);
    if (columns.secondIs !== 'length') continue;
    const sample = texts.findLastIndex((text) => {
      const found = readHeading(text);
      return found?.meaning === 'sample' && !found.likeness;
    });
    const pieces = piecesOf(cells, data, columns);
    const bySample = new Map<string, { start: number; length: number }[]>();
    for (const [row, { start, end }] of pieces) {
      const name = sample < 0 || sample >= width ? '' : cells.value(cells.cell(row, sample));
      if (name === '') continue;
      bySample.set(name, [...(bySample.get(name) ?? []), { start, length: end - start }]);
    }
    const arePieces = [...bySample.values()].some(
      (all) =>
        new Set(all.map(({ start }) => start)).size > 1 &&
        (new Set(all.map(({ length }) => length)).size > 1 ||
          all.some(({ start, length }) => start >= length)),
    );
    const heading = texts[columns.second] ?? '';
    if (arePieces) glossary.settle(heading, 'length', heading, unitInHeading(heading));
  }
}
