import { isSampleFileName } from '../../model/fileNames';
import type { Files } from '../../model/files';

/** Folders within folders; links that lead round in a circle end here too. */
const mostDepth = 24;
/** Files that are remembered at the most. */
const mostFiles = 200_000;

/** The absolute paths of the audio files in a folder and all below it, sorted. Hidden folders are passed over. */
export async function audioFilesBelow(files: Files, folder: string): Promise<string[]> {
  const found: string[] = [];
  const open: { path: string; depth: number }[] = [{ path: folder, depth: 0 }];
  for (let next = open.pop(); next && found.length < mostFiles; next = open.pop()) {
    for (const entry of (await files.list(next.path)) ?? []) {
      const path = `${next.path}/${entry.name}`;
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      if (entry.kind === 'file') {
        if (isSampleFileName(entry.name)) found.push(path);
      } else if (entry.kind === 'folder' && next.depth < mostDepth)
        open.push({ path, depth: next.depth + 1 });
    }
  }
  return found.sort();
}
