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
    throw new CommandError(`${name}: cannot be written: ${reasonOf(error)}`);
  }
}

/** Makes a folder where it is not there, or says in one line why it cannot be made. */
export async function makeFolder(terminal: Terminal, name: string, path: string): Promise<void> {
  try {
    await terminal.makeFolder(path);
  } catch (error) {
    throw new CommandError(`${name}: this folder cannot be made: ${reasonOf(error)}`);
  }
}

function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return 'unknown reason';
  const code = 'code' in error ? String(error.code) : error.message;
  if (code === 'ENOENT') return 'its folder does not exist';
  if (code === 'EEXIST' || code === 'ENOTDIR') return 'a file of that name is there';
  return code === 'EACCES' ? 'writing there is not allowed' : code;
}
