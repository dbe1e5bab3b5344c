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
  /** Whether the use at a position is told of with a folder. */
  isTold(at: number): boolean;
}

/**
 * The folders that are not there, in the order of the text, among the samples whose files are not; those of a folder in which
 * but one sample is looked for are left out. A place of one source never stands for those of another. `paths` is the number of
 * paths that all uses have. Worked out in steps.
 */
export function* absentFolders(
  uses: readonly SampleUse[],
  paths: number,
  samples: SampleLookup,
  sourceOf: (use: SampleUse) => number,
): Steps<AbsentFolders> {
  // One file that is not there says nothing of its folder, which then need not be looked at.
  if (uses.length < 2) return { folders: [], isTold: () => false };
  const folders: AbsentFolder[] = [];
  const numbers = new Map<string, number>();
  const folderOfUse = new Int32Array(uses.length).fill(-1);
  const outermost = new Map<string, string | undefined>();
  const seen = new SeenPairs(paths);
  let inner: string | undefined;
  let path: string | undefined;
  let source = -1;
  let number = -1;
  for (let at = 0; at < uses.length; at++) {
    if (at % piecesInStep === piecesInStep - 1) yield at / uses.length;
    const use = uses[at];
    const before = path;
    // Most are looked for in the folder of the one before.
    if (inner === undefined || use.path.lastIndexOf('/') !== inner.length || !use.path.startsWith(inner)) {
      inner = folderOf(use.path);
      if (!outermost.has(inner)) outermost.set(inner, outermostAbsent(inner, samples));
      path = outermost.get(inner);
    }
    if (path === undefined) continue;
    if (path !== before || sourceOf(use) !== source) {
      source = sourceOf(use);
      const name = `${source} ${path}`;
      number = numbers.get(name) ?? folders.push({ path, uses: [] }) - 1;
      numbers.set(name, number);
    }
    folderOfUse[at] = number;
    if (seen.isNew(use.number, number)) folders[number].uses.push(use);
  }
  const isTold = (at: number) => folderOfUse[at] >= 0 && folders[folderOfUse[at]].uses.length > 1;
  return { folders: folders.filter((folder) => folder.uses.length > 1), isTold };
}

/** Pairs of numbers that were asked about, of which the first mostly comes with one other alone. */
class SeenPairs {
  readonly #firstOthers: Int32Array;
  readonly #others = new Map<number, Set<number>>();

  /** `size`: the first number of a pair is below it. */
  constructor(size: number) {
    this.#firstOthers = new Int32Array(size).fill(-1);
  }

  /** Whether a pair is asked about for the first time. */
  isNew(one: number, other: number): boolean {
    const first = this.#firstOthers[one];
    if (first < 0) {
      this.#firstOthers[one] = other;
      return true;
    }
    if (first === other) return false;
    const others = this.#others.get(one) ?? new Set();
    this.#others.set(one, others);
    if (others.has(other)) return false;
    others.add(other);
    return true;
  }
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
