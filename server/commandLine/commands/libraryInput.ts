import { libraryFileName } from '../../library/libraryFile';
import type { ResolvedLibrary } from '../../library/libraryInstrument';
import { openLibrary } from '../../library/openLibrary';
import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';

/** A library that a command works on, with the path of its file. */
export interface LibraryInput {
  path: string;
  library: ResolvedLibrary;
}

/**
 * The library that a command names by its file or folder; that of the folder which the command runs in where it names none.
 * What makes no sense in it is told on standard error. Fails with a {@link CommandError}.
 */
export async function libraryInput(terminal: Terminal, paths: readonly string[]): Promise<LibraryInput> {
  const [name = libraryFileName, ...more] = paths;
  if (more.length > 0) throw new CommandError('name one library file');
  const opened = await openLibrary(terminal.files, absolutePath(terminal, name));
  if (opened.kind === 'refused') throw new CommandError(`${name}: ${opened.reason}`);
  for (const problem of opened.library.problems) terminal.error(`zonewright: ${problem}\n`);
  return opened;
}
