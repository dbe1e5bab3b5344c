import { alikeIn, alikeMessage } from '../../checks/alikeFindings';
import type { Severity } from '../../model/finding';
import { severities } from '../../model/finding';
import { jsonText, visibleText } from '../../model/text/visibleText';
import { byCount, counted } from '../../model/wording/counted';
import type { Terminal } from '../terminal';
import { shownPath } from '../terminalPaths';
import type { CheckedFile, PlacedFinding } from './checkedFile';
import { inText } from './checkedFile';
import { sarifOutput } from './sarif';

/** What a report comes to: how many files were checked, and what was found in them. */
export interface CheckTotals {
  files: number;
  totals: Record<Severity, number>;
}

/** Tells of checked files as they are done. A file can come more than once, with more findings. */
export interface CheckReport {
  add(files: readonly CheckedFile[]): Promise<void>;
  end(): Promise<CheckTotals>;
}

/** A report in a format. Text is written as the files come; the others, which are one value, at the end. */
export function reportFor(format: string, terminal: Terminal): CheckReport {
  switch (format) {
    case 'json':
      return wholeReport((files, totals) => terminal.out(jsonOutput(files, totals, terminal)));
    case 'sarif':
      return wholeReport((files) => terminal.out(sarifOutput(files, terminal)));
    default:
      return textReport(terminal);
  }
}

function noTotals(): Record<Severity, number> {
  return { error: 0, warning: 0, information: 0, hint: 0 };
}

/** Gathers all, and writes it in the order of the paths and of the text. */
function wholeReport(
  write: (files: readonly CheckedFile[], totals: Record<Severity, number>) => Promise<void>,
): CheckReport {
  const byPath = new Map<string, PlacedFinding[]>();
  const totals = noTotals();
  return {
    async add(files) {
      for (const { path, findings } of files) {
        const list = byPath.get(path);
        if (list) list.push(...findings);
        else byPath.set(path, [...findings]);
        for (const { severity } of findings) totals[severity]++;
      }
    },
    async end() {
      const files = [...byPath]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([path, findings]) => ({ path, findings: findings.sort(inText) }));
      await write(files, totals);
      return { files: files.length, totals };
    },
  };
}

/** Findings as the JSON that scripts read. */
function jsonOutput(
  files: readonly CheckedFile[],
  totals: Record<Severity, number>,
  terminal: Terminal,
): string {
  const listed = files.map(({ path, findings }) => ({ path: shownPath(terminal, path), findings }));
  return jsonText({ files: listed, totals });
}

/** Lines that are named of findings that are told as one. */
const mostLines = 20;

const colours: Readonly<Record<Severity, string>> = {
  error: '31',
  warning: '33',
  information: '36',
  hint: '2',
};

/** Findings for people, a line each, then the totals. */
function textReport(terminal: Terminal): CheckReport {
  const paint = (text: string, code: string) => (terminal.colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  const paths = new Set<string>();
  const totals = noTotals();
  return {
    async add(files) {
      const lines: string[] = [];
      for (const { path, findings } of files) {
        paths.add(path);
        const file = visibleText(shownPath(terminal, path));
        for (const { severity } of findings) totals[severity]++;
        for (const { first, others } of alikeIn(findings)) {
          const { severity, code, start } = first;
          const what = paint(severity, colours[severity]);
          const message =
            others.length === 0
              ? first.message
              : `${alikeMessage(others.length + 1, first.message)} The others: ${linesText(others)}.`;
          lines.push(`${file}:${start.line}:${start.column}: ${what}: ${message} [${code}]\n`);
        }
      }
      if (lines.length > 0) await terminal.out(lines.join(''));
    },
    async end() {
      const counts = severities
        .filter((one) => totals[one] > 0)
        .map((one) => `${totals[one]} ${plural(one, totals[one])}`);
      const checked = `${counted(paths.size, 'file')} checked`;
      await terminal.out(`${checked}: ${counts.length > 0 ? counts.join(', ') : 'nothing found'}\n`);
      return { files: paths.size, totals };
    },
  };
}

/** The lines of findings, as many as fit into a line of text. */
function linesText(findings: readonly PlacedFinding[]): string {
  const lines = [...new Set(findings.map(({ start }) => start.line))];
  const shown = lines.slice(0, mostLines).join(', ');
  const more = lines.length - mostLines;
  return `${byCount(lines.length, 'line', 'lines')} ${shown}${more > 0 ? ` and ${more} more` : ''}`;
}

function plural(severity: Severity, count: number): string {
  return count === 1 || severity === 'information' ? severity : `${severity}s`;
}
