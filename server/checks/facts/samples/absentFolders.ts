import { folderOf } from '../../../model/paths';
import type { SampleLookup } from '../../../model/samples';
import type { Steps } from '../../../model/steps';
import { piecesInStep } from '../../../model/steps';
import type { SampleUse } from './sampleUse';

/** A folder that is not there, with the samples that are looked for in it. */
export interface AbsentFolder {
  /** From the folder of the instrument, the outermost one that is not there. */
  path: string;
  /** One use for each sample. */
  uses: SampleUse[];
}

export interface AbsentFolders {
  folders: AbsentFolder[];
  /** Numbers of the paths that lead into them, by the source that names them. */
  told: ReadonlyMap<number, ReadonlySet<number>>;
}

/**
 * The folders that are not there, in the order of the text, among the samples whose files are not; those of a folder in which
 * but one sample is looked for are left out. A place of one source never stands for those of another. Worked out in steps.
 */
export function* absentFolders(
  uses: readonly SampleUse[],
  samples: SampleLookup,
  sourceOf: (use: SampleUse) => number,
): Steps<AbsentFolders> {
  // One file that is not there says nothing of its folder, which then need not be looked at.
  if (uses.length < 2) return { folders: [], told: new Map() };
  const folders = new Map<string, AbsentFolder & { source: number }>();
  const told = new Map<number, Set<number>>();
  const outermost = new Map<string, string | undefined>();
  for (const [at, use] of uses.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / uses.length;
    const inner = folderOf(use.path);
    if (!outermost.has(inner)) outermost.set(inner, outermostAbsent(inner, samples));
    const path = outermost.get(inner);
    if (path === undefined) continue;
    const source = sourceOf(use);
    const name = `${source} ${path}`;
    const folder = folders.get(name) ?? { path, source, uses: [] };
    folders.set(name, folder);
    const paths = told.get(source) ?? new Set();
    told.set(source, paths);
    if (paths.has(use.number)) continue;
    paths.add(use.number);
    folder.uses.push(use);
  }
  for (const [
    name,
    {
      source,
      uses: [first, second],
    },
  ] of folders) {
    if (second) continue;
    folders.delete(name);
    told.get(source)?.delete(first.number);
  }
  return { folders: [...folders.values()], told };
}

function outermostAbsent(inner: string, samples: SampleLookup): string | undefined {
  let absent: string | undefined;
  for (let folder = inner; folder !== '' && !/(?:^|\/)\.\.$/.test(folder); folder = folderOf(folder)) {
    if (samples.state(folder).kind !== 'missing') break;
    absent = folder;
    if (folderOf(folder) === folder) break;
  }
  return absent;
}
