import { isSampleFileName } from '../../model/fileNames';
import type { Files } from '../../model/files';
import { foldersBelow, inFolder } from '../files/foldersBelow';

/** Files that are remembered at the most. */
const mostFiles = 200_000;
/** Folders that are looked through: a link may lead to all of a disk. */
const mostFolders = 100_000;

/** The absolute paths of the audio files in a folder and all below it, sorted. Hidden folders are passed over. */
export async function audioFilesBelow(files: Files, folder: string): Promise<string[]> {
  const found: string[] = [];
  let seen = 0;
  for await (const { path, entries } of foldersBelow(files, [folder])) {
    for (const { name, kind } of entries)
      if (kind === 'file' && isSampleFileName(name)) found.push(inFolder(path, name));
    if (++seen >= mostFolders || found.length >= mostFiles) break;
  }
  return found.sort();
}
