import type { FileMoves } from '../../model/fileMoves';
import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import { folderOf, joinPath, relativePath } from '../../model/paths';
import { SampleStore } from './sampleStore';

/**
 * For one round of moves: answers, for an instrument, how the files that it names are spelt on the disk. Only those are
 * looked up that would move if letter case did not count.
 */
export function actualPaths(
  files: Files,
  moves: FileMoves,
): (instrument: Instrument) => Promise<(path: string) => string> {
  const samples = new SampleStore(files);
  const actual = new Map<string, string>();
  return async (instrument) => {
    const folder = folderOf(instrument.sources[0]?.path ?? '');
    let last = -1;
    for (const region of instrument.regions) {
      const parameter = instrument.sampleParameter[region];
      if (parameter < 0 || parameter === last) continue;
      last = parameter;
      const path = joinPath(folder, instrument.samplePath(region) ?? '');
      if (actual.has(path) || !moves.isNearlyMoved(path)) continue;
      const state = await samples.fetchState(folder, relativePath(folder, path));
      if (state.kind === 'otherCase') actual.set(path, joinPath(folder, state.actual));
    }
    return (path) => actual.get(path) ?? path;
  };
}
