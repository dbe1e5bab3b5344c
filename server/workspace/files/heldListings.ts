import type { Files, FolderEntry } from '../../model/files';

/**
 * Files whose folders are listed once and remembered, for one run through many instruments that share folders. The same
 * folder gives the same list each time.
 */
export function withHeldListings(files: Files): Files {
  const held = new Map<string, Promise<FolderEntry[] | undefined>>();
  return {
    ...files,
    list(folder) {
      let entries = held.get(folder);
      if (!entries) {
        entries = files.list(folder);
        held.set(folder, entries);
      }
      return entries;
    },
  };
}
