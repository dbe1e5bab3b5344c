import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import { libraryBuild } from './libraryBuild';
import { libraryNew } from './libraryNew';
import { libraryPack } from './libraryPack';
import { libraryReportCommand } from './libraryReport';

const tasks: Readonly<Record<string, (args: readonly string[], terminal: Terminal) => Promise<number>>> = {
  new: libraryNew,
  build: libraryBuild,
  report: libraryReportCommand,
  pack: libraryPack,
};

/** `zonewright library`: many sources at once, by a library file. */
export async function library(args: readonly string[], terminal: Terminal): Promise<number> {
  const [task, ...rest] = args;
  const run = task !== undefined && Object.hasOwn(tasks, task) ? tasks[task] : undefined;
  if (!run) throw new CommandError(`library takes ${Object.keys(tasks).join(', ')}`);
  return run(rest, terminal);
}
