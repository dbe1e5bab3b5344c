import type { OutputContent } from '../../model/output';
import { CommandError } from '../commandError';
import { systemReason } from '../systemReason';
import type { Terminal } from '../terminal';
import type { OutputFile } from './overwriting';
import { firstBytes, refuseOverwriting } from './overwriting';

/** Writes a file whole or says in one line why it cannot be written, or is not to be; see {@link refuseOverwriting}. */
export async function write(terminal: Terminal, file: OutputFile, content: OutputContent): Promise<void> {
  await refuseOverwriting(terminal, file, await firstBytes(content));
  try {
    await terminal.writeFile(file.path, content);
  } catch (error) {
    throw new CommandError(`${file.name}: cannot be written: ${systemReason(error)}`);
  }
}

/** Makes a folder where it is not there, or says in one line why it cannot be made. */
export async function makeFolder(terminal: Terminal, name: string, path: string): Promise<void> {
  try {
    await terminal.makeFolder(path);
  } catch (error) {
    throw new CommandError(`${name}: this folder cannot be made: ${systemReason(error)}`);
  }
}
