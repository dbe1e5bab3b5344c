import type { Severity } from '../../model/finding';
import { withHeldListings } from '../../workspace/files/heldListings';
import { CommandError } from '../commandError';
import { findInstruments } from '../input/findInstruments';
import { reportFor } from '../output/checkOutput';
import type { Terminal } from '../terminal';
import { readWords } from '../words';
import { checkFiles } from './checkFiles';

/** `zonewright check`: faults in instruments, and audio files that none of them uses. */
export async function check(args: readonly string[], ownTerminal: Terminal): Promise<number> {
  // Folders are listed for the search and for the samples.
  const terminal = { ...ownTerminal, files: withHeldListings(ownTerminal.files) };
  const { paths, options, switches } = readWords(args, {
    format: ['text', 'json', 'sarif'],
    'fail-on': ['error', 'warning', 'none'],
    'no-cache': 'switch',
  });
  if (paths.length === 0) throw new CommandError('check takes at least one file or folder');
  const found = await findInstruments(terminal, paths);
  const report = reportFor(options.format ?? 'text', terminal);
  await checkFiles(terminal, found, !switches.has('no-cache'), (files) => report.add(files));
  const { files, totals } = await report.end();
  if (files === 0) terminal.error('zonewright: no instruments found there\n');
  return failed(totals, options['fail-on'] ?? 'error') ? 1 : 0;
}

function failed(totals: Record<Severity, number>, failOn: string): boolean {
  if (failOn === 'none') return false;
  return totals.error > 0 || (failOn === 'warning' && totals.warning > 0);
}
