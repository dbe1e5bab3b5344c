import { visibleText } from '../../model/text/visibleText';

const numeric = /^-?[\d.]*$/;

/** Lays rows out in columns for a person to read: cells padded to the widest, two spaces between, numbers to the right. */
export function textTable(headings: readonly string[], cells: readonly (readonly string[])[]): string {
  const rows = cells.map((row) => row.map(visibleText));
  const columns = headings.map((heading, column) => {
    let width = heading.length;
    let isNumeric = true;
    for (const row of rows) {
      const cell = row[column] ?? '';
      width = Math.max(width, cell.length);
      isNumeric &&= numeric.test(cell);
    }
    return (cell: string) => (isNumeric ? cell.padStart(width) : cell.padEnd(width));
  });
  const line = (row: readonly string[]) => columns.map((pad, column) => pad(row[column] ?? '')).join('  ');
  return [headings, ...rows].map((row) => `${line(row).trimEnd()}\n`).join('');
}
