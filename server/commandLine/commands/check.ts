import { CommandError } from '../commandError';
import { findInstruments } from '../input/findInstruments';
import type { CheckedFile } from '../output/checkOutput';
import { jsonOutput, textOutput, totalsOf } from '../output/checkOutput';
import { sarifOutput } from '../output/sarif';
import type { Terminal } from '../terminal';
import { readWords } from '../words';
import { checkFiles } from './checkFiles';

/** `zonewright check`: faults in instruments, and audio files that none of them uses. */
export async function check(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    format: ['text', 'json', 'sarif'],
    'fail-on': ['error', 'warning', 'none'],
    'no-cache': 'switch',
  });
  if (paths.length === 0) throw new CommandError('check takes at least one file or folder');
  const found = await findInstruments(terminal, paths);
  const files = await checkFiles(terminal, found, !switches.has('no-cache'));
  if (files.length === 0) terminal.error('zonewright: no instruments found there\n');
  const outputs = { text: textOutput, json: jsonOutput, sarif: sarifOutput };
  await terminal.out(outputs[(options.format ?? 'text') as keyof typeof outputs](files, terminal));
  return failed(files, options['fail-on'] ?? 'error') ? 1 : 0;
}

function failed(files: readonly CheckedFile[], failOn: string): boolean {
  const totals = totalsOf(files);
  if (failOn === 'none') return false;
  return totals.error > 0 || (failOn === 'warning' && totals.warning > 0);
}
