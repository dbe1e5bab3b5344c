import { isInstrumentFileName } from '../../model/fileNames';
import type { Files } from '../../model/files';
import { foldersBelow, inFolder } from './foldersBelow';

/** Folders and files that are looked through. */
const mostFolders = 20_000;
const mostFiles = 5000;

/**
 * The files in folders and all below them that are named like instruments, 5000 at the most. Hidden folders are passed
 * over.
 */
export function instrumentFilesBelow(files: Files, folders: readonly string[]): Promise<string[]> {
  return filesBelow(files, folders, isInstrumentFileName);
}

/** The same for files of other names. */
export async function filesBelow(
  files: Files,
  folders: readonly string[],
  isWanted: (name: string) => boolean,
): Promise<string[]> {
  const paths = new Set<string>();
  let seen = 0;
  for await (const { path, entries } of foldersBelow(files, folders)) {
    for (const { name, kind } of entries)
      if (kind === 'file' && isWanted(name)) paths.add(inFolder(path, name));
    if (++seen >= mostFolders || paths.size >= mostFiles) break;
  }
  return [...paths];
}
