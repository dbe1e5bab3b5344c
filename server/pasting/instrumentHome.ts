import { folderOf } from '../model/paths';

/** Names of folders that hold nothing but the samples of what stands beside them (common practice). */
const ofSamplesAlone = /^(?:samples?|wavs?|waves?|flacs?|aiffs?|audio|recordings?|sounds?)$/i;

/**
 * The folder in which an instrument is at home, by the paths of its samples: the innermost that holds them all, outside of those for
 * samples alone. Relative as the paths are; `undefined` where that is the folder they are relative to, or one around it.
 */
export function instrumentHome(samplePaths: readonly string[]): string | undefined {
  const [first, ...others] = samplePaths;
  if (first === undefined) return undefined;
  let common = folderOf(first).split('/');
  for (const path of others) {
    const parts = folderOf(path).split('/');
    let same = 0;
    while (same < common.length && common[same] === parts[same]) same++;
    common = common.slice(0, same);
  }
  const samples = common.findIndex((name) => ofSamplesAlone.test(name));
  const home = (samples < 0 ? common : common.slice(0, samples)).join('/');
  return home === '' || home.startsWith('/') || /^\.\.?(?:\/|$)/.test(home) ? undefined : home;
}
