import type { ReportCell } from './reportCells';

/**
 * A table as comma-separated values: rows end with CR LF, fields with commas, quotes or line ends stand in quotes and
 * quotes in them are doubled (RFC 4180). Text that a spreadsheet would take for a formula gets an apostrophe in front
 * (OWASP, CSV Injection); numbers stay as they are.
 */
export function csvTable(headings: readonly string[], rows: readonly (readonly ReportCell[])[]): string {
  return [headings, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(cell: ReportCell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
