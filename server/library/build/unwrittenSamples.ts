import type { Files, FolderEntry } from '../../model/files';
import { folderOf, isWithin, nameOf } from '../../model/paths';

/**
 * Files among which samples are in their places already that a build is still to write there: each by its absolute path, with
 * that of the sample in a SoundFont which holds the audio. What is added to the map later is there from then on.
 */
export function withUnwrittenSamples(files: Files, samples: ReadonlyMap<string, string>): Files {
  const namesIn = (folder: string): FolderEntry[] => {
    const names = new Map<string, FolderEntry['kind']>();
    for (const path of samples.keys()) {
      if (folderOf(path) === folder) names.set(nameOf(path), 'file');
      else if (isWithin(folder, path)) names.set(path.slice(folder.length + 1).split('/')[0], 'folder');
    }
    return [...names].map(([name, kind]) => ({ name, kind }));
  };
  return {
    admits: (path) => files.admits?.(path) ?? true,
    realPath: async (path) => files.realPath?.(path),
    refusal: async (path) => files.refusal?.(path),
    async stat(path) {
      const inFont = samples.get(path);
      if (inFont !== undefined) return files.stat(inFont);
      const there = await files.stat(path);
      return there ?? (namesIn(path).length > 0 ? { kind: 'folder', size: 0, modified: 0 } : undefined);
    },
    async list(folder) {
      const there = await files.list(folder);
      const added = namesIn(folder);
      if (added.length === 0) return there;
      const names = new Set(added.map(({ name }) => name));
      return [...(there ?? []).filter(({ name }) => !names.has(name)), ...added];
    },
    open: (path) => files.open(samples.get(path) ?? path),
  };
}
