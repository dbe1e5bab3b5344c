import type { Files, FolderEntry } from '../../model/files';

/** Folders within folders that are gone into, where the host cannot tell which of them are the same. */
const mostDepth = 24;

/** A folder with what it holds, hidden things left out. */
export interface FolderBelow {
  path: string;
  entries: readonly FolderEntry[];
}

interface Open {
  path: string;
  /** The same without links on the way, as far as the host tells. */
  real: string;
  depth: number;
}

/**
 * Folders and all below them, as they are found. Each is given once, by its own path where it has one there and else by that
 * of a link, so that links which lead round in a circle, or to the same place many times, add nothing. Hidden folders are passed over.
 */
export async function* foldersBelow(
  files: Files,
  folders: readonly string[],
): AsyncGenerator<FolderBelow, void> {
  const realOf = async (path: string) => (await files.realPath?.(path)) ?? path;
  const open: Open[] = [];
  for (const path of folders) open.push({ path, real: await realOf(path), depth: 0 });
  /** Links to folders, which come when all is gone through that stands there itself. */
  const links: Omit<Open, 'real'>[] = [];
  const seen = new Set<string>();
  for (;;) {
    let next = open.pop();
    if (!next) {
      const link = links.pop();
      if (!link) return;
      next = { ...link, real: await realOf(link.path) };
    }
    if (seen.has(next.real)) continue;
    seen.add(next.real);
    const { path, real, depth } = next;
    const listed = (await files.list(path)) ?? [];
    const entries = listed.filter(({ name }) => !name.startsWith('.') && name !== 'node_modules');
    yield { path, entries };
    if (depth === mostDepth) continue;
    for (const { name, kind, isLink } of entries) {
      if (kind !== 'folder') continue;
      const below = { path: inFolder(path, name), depth: depth + 1 };
      if (isLink) links.push(below);
      else open.push({ ...below, real: inFolder(real, name) });
    }
  }
}

/** The path of something in a folder. */
export function inFolder(folder: string, name: string): string {
  return folder.endsWith('/') ? `${folder}${name}` : `${folder}/${name}`;
}
