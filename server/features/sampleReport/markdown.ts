import { visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import type { ReportCell } from './reportCells';
import { sampleCells, sampleHeadings, tuningCells, tuningHeadings } from './reportCells';
import type { SampleReport } from './sampleReport';

/** A report as a Markdown page: how many samples there are, the tuning over the keys, then each sample. */
export function markdownReport(title: string, { samples, tuning }: SampleReport): string {
  const parts = [
    // Number signs at the end of a heading close it.
    `# ${escaped(title).replaceAll('#', '\\#')}`,
    `${counted(samples.length, 'sample')}.`,
    '## Tuning',
    tuning.length === 0
      ? 'There is no measured pitch to compare with root keys.'
      : markdownTable(tuningHeadings, tuning.map(tuningCells)),
    '## Samples',
    samples.length === 0
      ? 'No region plays a file.'
      : markdownTable(sampleHeadings, samples.map(sampleCells)),
  ];
  return `${parts.join('\n\n')}\n`;
}

/** A table (GitHub Flavored Markdown 0.29, tables): columns that hold numbers alone are set to the right. */
export function markdownTable(headings: readonly string[], rows: readonly (readonly ReportCell[])[]): string {
  const isNumeric = headings.map((_, column) => {
    const cells = rows.map((row) => row[column]).filter((cell) => cell !== undefined);
    return cells.length > 0 && cells.every((cell) => typeof cell === 'number');
  });
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    line(headings.map(escaped)),
    line(isNumeric.map((numeric) => (numeric ? '---:' : '---'))),
    ...rows.map((row) => line(headings.map((_, column) => escaped(String(row[column] ?? ''))))),
  ].join('\n');
}

/** Text that Markdown shows as it stands, in one line. Underscores within words mean nothing there (CommonMark 0.31, 6.2). */
export function escaped(text: string): string {
  return visibleText(text.replace(/\s+/g, ' ')).replace(
    /[\\`*[\]<>|&~]|(?<![a-z\d])_|_(?![a-z\d])/gi,
    '\\$&',
  );
}
