import { isInstrumentFileName } from '../../model/fileNames';
import type { Files } from '../../model/files';

/** Folders within folders, and files, that are looked through; links that lead round in a circle end here too. */
const mostDepth = 24;
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
  const open = folders.map((path) => ({ path, depth: 0 }));
  let seen = 0;
  for (let next = open.pop(); next && seen < mostFolders && paths.size < mostFiles; next = open.pop()) {
    seen++;
    for (const { name, kind } of (await files.list(next.path)) ?? []) {
      if (name.startsWith('.') || name === 'node_modules') continue;
      const path = next.path === '/' ? `/${name}` : `${next.path}/${name}`;
      if (kind === 'file' && isWanted(name)) paths.add(path);
      else if (kind === 'folder' && next.depth < mostDepth) open.push({ path, depth: next.depth + 1 });
    }
  }
  return [...paths];
}
