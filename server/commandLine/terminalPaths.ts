import { isAbsolutePath, joinPath, relativePath } from '../model/paths';
import type { Terminal } from './terminal';

/** An absolute path with `/` for one written on the command line. */
export function absolutePath(terminal: Terminal, path: string): string {
  return isAbsolutePath(path) ? joinPath('', path) : joinPath(terminal.folder, path);
}

/** A path as output shows it: relative to the folder that the command runs in. */
export function shownPath(terminal: Terminal, path: string): string {
  return relativePath(terminal.folder, path);
}
