import type { OutputContent } from '../model/output';
import { CommandError } from './commandError';
import type { Terminal } from './terminal';

/** Writes a file whole or says in one line why it cannot be written. */
export async function write(
  terminal: Terminal,
  name: string,
  path: string,
  content: OutputContent,
): Promise<void> {
  try {
    await terminal.writeFile(path, content);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
    const reason =
      code === 'ENOENT'
        ? 'its folder does not exist'
        : code === 'EACCES'
          ? 'writing there is not allowed'
          : code;
    throw new CommandError(`${name}: cannot be written: ${reason}`);
  }
}
