import type { Files } from '../../model/files';
import { joinPath, nameOf } from '../../model/paths';
import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';
import type { PackOrder } from '../pack/packBuilt';
import { recordPath } from './buildLibraryInstrument';
import type { BuildOutcome } from './buildOutcome';
import { readState, stateFolderOf, statePath } from './buildState';
import type { BuildJob } from './buildThread';
import type { FileWriter } from './fileWriter';
import { removeOutdated } from './placeFiles';

/** Who builds instruments: threads of the host, or the same thread. */
export interface BuildCrew {
  /** How many instruments are under way at one time. */
  readonly width: number;
  /** Builds one instrument, or packs what was built of it; never rejects. */
  run(job: BuildJob): Promise<BuildOutcome>;
}

/** A share of the instruments of a library, for one of several machines. */
export interface LibraryPart {
  /** From 1. */
  part: number;
  of: number;
}

export interface BuildOptions {
  part?: LibraryPart | undefined;
  /** Told of each instrument as it is done; some are done before others that stand before them. */
  onBuilt?: (outcome: BuildOutcome, done: number, all: number) => void;
  /** Ends the work early: what is under way is finished, the rest is not begun. */
  signal?: AbortSignal | undefined;
}

/** The instruments that are in a part: every so manieth, so that parts take about the same time. */
function instrumentsIn<T>(all: readonly T[], part: LibraryPart | undefined): T[] {
  return part ? all.filter((_, at) => at % part.of === part.part - 1) : [...all];
}

/** Builds the instruments of a library, several at one time. Answers what became of each, in the order of the library. */
export function buildLibrary(
  library: ResolvedLibrary,
  crew: BuildCrew,
  packs: boolean,
  options: BuildOptions = {},
): Promise<BuildOutcome[]> {
  return inOrder(library, crew, options, (one) => built(crew, one, packs));
}

/** Packs what was built of the instruments of a library, several at one time, where their packs are not current. */
export function packLibrary(
  library: ResolvedLibrary,
  crew: BuildCrew,
  pack: PackOrder,
  options: BuildOptions = {},
): Promise<BuildOutcome[]> {
  return inOrder(library, crew, options, (one) => crew.run({ one, pack }));
}

/** Builds one instrument, and packs it where that is asked for. */
async function built(crew: BuildCrew, one: LibraryInstrument, packs: boolean): Promise<BuildOutcome> {
  const outcome = await crew.run({ one });
  if (!packs || outcome.state === 'failed') return outcome;
  const pack = await crew.run({ one, pack: { settings: {}, facts: {} } });
  const reasons = [outcome.message, pack.message && `Not packed: ${pack.message}`].filter((text) => text);
  return {
    ...outcome,
    state: pack.state === 'built' ? 'built' : outcome.state,
    message: reasons.length > 0 ? reasons.join(' ') : null,
    outputs: [...outcome.outputs, ...pack.outputs],
    ...(pack.notFlac !== undefined && { notFlac: pack.notFlac }),
  };
}

/** Does something with each instrument of a part, several at one time; answers what came of it in their order. */
async function inOrder(
  library: ResolvedLibrary,
  crew: BuildCrew,
  { part, onBuilt, signal }: BuildOptions,
  task: (one: LibraryInstrument) => Promise<BuildOutcome>,
): Promise<BuildOutcome[]> {
  const all = instrumentsIn(library.instruments, part);
  const outcomes: BuildOutcome[] = [];
  let next = 0;
  let done = 0;
  const work = async () => {
    while (next < all.length && !signal?.aborted) {
      const at = next++;
      const outcome = await task(all[at]);
      outcomes[at] = outcome;
      onBuilt?.(outcome, ++done, all.length);
    }
  };
  await Promise.all(Array.from({ length: Math.min(crew.width, all.length) }, work));
  return outcomes.filter((outcome) => outcome !== undefined);
}

/**
 * Takes away what earlier builds wrote of instruments that are no longer in the library, as long as it is as it was written.
 * Answers their names.
 */
export async function removeLeftOut(
  files: Files,
  writer: FileWriter,
  library: ResolvedLibrary,
): Promise<string[]> {
  const kept = new Set(library.instruments.map(({ fileName }) => `${fileName}.json`));
  const removed: string[] = [];
  for (const { name, kind } of (await files.list(stateFolderOf(library))) ?? []) {
    if (kind !== 'file' || kept.has(name) || !name.endsWith('.json')) continue;
    const fileName = name.slice(0, -'.json'.length);
    const state = await readState(files, library, fileName);
    const before = [...(state?.written ?? []), ...(state?.planned ?? [])];
    const placing = { files, writer, folder: library.folder, before, force: false, plan: async () => {} };
    await removeOutdated(placing, []);
    await writer.remove(statePath(library, fileName));
    removed.push(nameOf(joinPath('', fileName)));
    // A record of a failure is no file of a build that was done.
    await writer.remove(recordPath(library, fileName));
  }
  return removed.sort();
}
