import { csvTable } from '../../features/sampleReport/csv';
import { libraryNote } from '../../library/report/libraryNote';
import type { LibraryReport } from '../../library/report/libraryReport';
import { mergedReport, libraryReport as reportOf } from '../../library/report/libraryReport';
import { reportPage } from '../../library/report/reportPage';
import { rowCells, rowHeadings, stateWords } from '../../library/report/rowCells';
import { nameOf } from '../../model/paths';
import { jsonText, visibleText } from '../../model/text/visibleText';
import { CommandError } from '../commandError';
import { outputFile } from '../output/overwriting';
import { textTable } from '../output/textTable';
import { write } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { readWords } from '../words';
import { libraryInput } from './libraryInput';

/** `zonewright library report`: an overview of a library, or of the parts of one that several machines have built. */
export async function libraryReportCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    format: ['text', 'json', 'csv', 'html', 'markdown'],
    output: 'text',
    merge: 'switch',
    title: 'text',
    force: 'switch',
  });
  const report = switches.has('merge')
    ? await merged(terminal, paths, options.title)
    : await reportOf(terminal.files, (await libraryInput(terminal, paths)).library);
  const text = reportText(report, options.format ?? formatOf(options.output));
  if (options.output === undefined) await terminal.out(text);
  else await write(terminal, outputFile(terminal, options.output, switches.has('force'), []), text);
  return 0;
}

async function merged(
  terminal: Terminal,
  paths: readonly string[],
  title = 'Library',
): Promise<LibraryReport> {
  if (paths.length === 0) throw new CommandError('--merge takes the output folders of the parts');
  const folders = paths.map((path) => absolutePath(terminal, path));
  for (const [at, folder] of folders.entries())
    if ((await terminal.files.stat(folder))?.kind !== 'folder')
      throw new CommandError(`${paths[at]}: there is no such folder`);
  const report = await mergedReport(terminal.files, title, folders);
  for (const problem of report.problems) terminal.error(`zonewright: ${problem}\n`);
  return { title: report.title, instruments: report.instruments };
}

/** What the name of the output says; text where it says nothing. */
function formatOf(output: string | undefined): string {
  const ending = /\.(\w+)$/.exec(nameOf(output ?? ''))?.[1]?.toLowerCase();
  const formats: Readonly<Record<string, string>> = {
    json: 'json',
    csv: 'csv',
    html: 'html',
    md: 'markdown',
  };
  return (ending !== undefined && Object.hasOwn(formats, ending) ? formats[ending] : undefined) ?? 'text';
}

function reportText(report: LibraryReport, format: string): string {
  const rows = report.instruments.map(({ row }) => row);
  switch (format) {
    case 'json':
      return jsonText({
        title: report.title,
        instruments: report.instruments.map(({ row, record }) => ({
          ...row,
          findings: record?.findings ?? [],
          notes: record?.notes ?? [],
          outputs: record?.outputs ?? [],
        })),
      });
    case 'csv':
      return csvTable(rowHeadings, rows.map(rowCells));
    case 'html':
      return reportPage(report);
    case 'markdown':
      return libraryNote(report);
    default:
      return plainText(report);
  }
}

function plainText({ instruments }: LibraryReport): string {
  const headings = ['Instrument', 'State', 'Regions', 'Missing', 'Errors', 'Warnings', 'Left out', 'Licence'];
  const cells = instruments.map(({ row }) => [
    row.name,
    stateWords[row.state],
    String(row.regions ?? ''),
    String(row.missing ?? ''),
    String(row.errors),
    String(row.warnings),
    String(row.dropped),
    row.licence ?? 'not stated',
  ]);
  const failed = instruments.flatMap(({ row }) =>
    row.message === undefined ? [] : [`${row.name}: ${row.message}`],
  );
  const table = textTable(headings, cells);
  return failed.length === 0 ? table : `${table}\n${failed.map(visibleText).join('\n')}\n`;
}
