import { l10n } from 'vscode';
import type { FileFixes } from '../../server/protocol/requests/fixRequests';

/** So many lines of what was done are listed. */
const mostLines = 500;

/** A page in Markdown that lists what fixes changed and what remains in all files; `skipped` files had changed meanwhile. */
export function fixesPage(fixed: readonly FileFixes[], skipped: number, after: readonly FileFixes[]): string {
  const done = fixed.flatMap(({ name, fixes }) => fixes.map((fix) => ({ name, ...fix })));
  const lines = [
    `# ${l10n.t('Fixes')}`,
    '',
    `## ${l10n.t('What was changed: {0}', done.length)}`,
    '',
    ...table(
      [l10n.t('File'), l10n.t('Line'), l10n.t('Finding'), l10n.t('Fix')],
      done.slice(0, mostLines).map(({ name, line, code, title }) => [name, String(line), code, title]),
    ),
  ];
  if (done.length > mostLines) lines.push('', l10n.t('… and {0} more.', done.length - mostLines));
  if (skipped > 0)
    lines.push('', l10n.t('Files that changed in the meantime and were left alone: {0}.', skipped));
  const left = fixed.reduce((sum, file) => sum + file.left, 0);
  if (left > 0)
    lines.push(
      '',
      l10n.t('Fixes that touch the same text as others and are left for the next time: {0}.', left),
    );
  const rest = after.flatMap(({ name, findings }) => findings.map((one) => ({ name, ...one })));
  const count = rest.reduce((sum, one) => sum + one.count, 0);
  lines.push('', `## ${l10n.t('What remains: {0}', count)}`, '');
  if (count === 0) lines.push(l10n.t('Nothing is found in the instruments of the folder.'));
  else
    lines.push(
      ...table(
        [l10n.t('File'), l10n.t('Finding'), l10n.t('Count'), l10n.t('First in line')],
        rest.map(({ name, code, count: times, line }) => [name, code, String(times), String(line)]),
      ),
    );
  return `${lines.join('\n')}\n`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const row = (cells: readonly string[]) => `| ${cells.map(escaped).join(' | ')} |`;
  return [row(head), `|${head.map(() => '---|').join('')}`, ...rows.map(row)];
}

function escaped(text: string): string {
  return text.replace(/[\\|*_`<>[\]]/g, '\\$&');
}
