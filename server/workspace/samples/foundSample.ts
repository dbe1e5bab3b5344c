import { joinPath } from '../../model/paths';
import type { SampleLookup } from '../../model/samples';

/** The file that a sample path of an instrument in `folder` leads to, as far as is known; `undefined` where there is none. */
export function foundSample(samples: SampleLookup, folder: string, path: string): string | undefined {
  const state = samples.state(path);
  if (state.kind === 'otherCase') return joinPath(folder, state.actual);
  return state.kind === 'file' ? joinPath(folder, path) : undefined;
}
