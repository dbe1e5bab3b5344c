import type { Severity } from '../../model/finding';
import { severities } from '../../model/finding';
import type { LineColumn } from '../../model/text/source';
import { jsonText, visibleText } from '../../model/text/visibleText';
import type { Terminal } from '../terminal';
import { shownPath } from '../terminalPaths';

/** A finding with its place in lines and columns, counted from 1. */
export interface PlacedFinding {
  code: string;
  severity: Severity;
  message: string;
  start: LineColumn;
  end: LineColumn;
}

/** A file with what was found in it, in the order of its text. */
export interface CheckedFile {
  /** Absolute path. */
  path: string;
  findings: PlacedFinding[];
}

/** How many findings there are of each severity. */
export function totalsOf(files: readonly CheckedFile[]): Record<Severity, number> {
  const totals = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const { findings } of files) for (const { severity } of findings) totals[severity]++;
  return totals;
}

/** Findings as the JSON that scripts read. */
export function jsonOutput(files: readonly CheckedFile[], terminal: Terminal): string {
  const listed = files.map(({ path, findings }) => ({ path: shownPath(terminal, path), findings }));
  return jsonText({ files: listed, totals: totalsOf(files) });
}

const colours: Readonly<Record<Severity, string>> = {
  error: '31',
  warning: '33',
  information: '36',
  hint: '2',
};

/** Findings for people, a line each, then the totals. */
export function textOutput(files: readonly CheckedFile[], terminal: Terminal): string {
  const paint = (text: string, code: string) => (terminal.colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  const lines: string[] = [];
  for (const { path, findings } of files) {
    for (const { severity, code, message, start } of findings) {
      const place = `${visibleText(shownPath(terminal, path))}:${start.line}:${start.column}`;
      lines.push(`${place}: ${paint(severity, colours[severity])}: ${message} [${code}]\n`);
    }
  }
  const totals = totalsOf(files);
  const counts = severities
    .filter((one) => totals[one] > 0)
    .map((one) => `${totals[one]} ${plural(one, totals[one])}`);
  const checked = `${files.length} ${files.length === 1 ? 'file' : 'files'} checked`;
  lines.push(`${checked}: ${counts.length > 0 ? counts.join(', ') : 'nothing found'}\n`);
  return lines.join('');
}

function plural(severity: Severity, count: number): string {
  return count === 1 || severity === 'information' ? severity : `${severity}s`;
}
