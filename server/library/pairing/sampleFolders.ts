import { folderOf, isWithin } from '../../model/paths';
import type { AudioIndex } from './audioIndex';

/** A folder in which samples of a table are. */
export interface FolderMatch {
  folder: string;
  /** How many names of the table lead to a file in it or below it. */
  found: number;
}

/** The folders that hold samples of a table, as far as the names tell. */
export interface FolderMatches {
  /** Different sample names of the table. */
  names: number;
  /** The innermost folders that hold as many of them as any folder does; several where nothing tells them apart. */
  best: FolderMatch[];
}

/** Finds the innermost folders, within a folder, in which the most of some sample names lead to files. */
export function sampleFolders(index: AudioIndex, names: ReadonlySet<string>, within: string): FolderMatches {
  const counts = new Map<string, number>();
  for (const name of names) {
    const folders = new Set<string>();
    for (const path of index.find(name))
      for (let at = folderOf(path); isWithin(within, at) && !folders.has(at); at = folderOf(at)) {
        folders.add(at);
        if (at === within) break;
      }
    for (const folder of folders) counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  const most = Math.max(0, ...counts.values());
  const full = [...counts].filter(([, found]) => found === most && most > 0).map(([folder]) => folder);
  const best = full.filter((folder) => !full.some((other) => other !== folder && isWithin(folder, other)));
  return { names: names.size, best: best.sort().map((folder) => ({ folder, found: most })) };
}
