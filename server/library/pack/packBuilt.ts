import { OutputError } from '../../model/output';
import { joinPath, relativePath } from '../../model/paths';
import { visibleText } from '../../model/text/visibleText';
import { withFontSamples } from '../../soundfont/fontFiles';
import { BuildError } from '../build/buildError';
import type { BuildOutcome } from '../build/buildOutcome';
import { DependencyFiles } from '../build/dependencies';
import { noFindings } from '../build/instrumentRecord';
import type { InstrumentFacts, PackSettings } from '../libraryFile';
import { defaultPacks } from '../libraryFile';
import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';
import { builtSource } from './builtSource';
import { isCurrentPack, keepPackState, packReadingPlace, packSum, readPackState } from './packState';
import type { PackTools } from './putPack';
import { findingsOf, putPack } from './putPack';

/** What the words of a command say for all packs; they count before what the library file says. */
export interface PackOrder {
  /** The absolute folder for packs. */
  output?: string | undefined;
  settings: PackSettings;
  facts: InstrumentFacts;
}

/** With what a library is packed. */
export interface LibraryPackTools extends PackTools {
  /** The program's version. */
  program: string;
}

/** The folder that the pack of an instrument is put into. */
function packFolder({ folder }: ResolvedLibrary, { pack }: LibraryInstrument, { output }: PackOrder): string {
  return output ?? joinPath(folder, pack.output ?? defaultPacks);
}

/**
 * Packs an instrument of a library as it was built, where its pack is not current: what was built, the samples that it uses, what
 * the library file says, or the pack itself is another. Never rejects for a fault of the instrument, which is then `failed`.
 */
export async function packBuilt(
  library: ResolvedLibrary,
  one: LibraryInstrument,
  order: PackOrder,
  tools: LibraryPackTools,
): Promise<BuildOutcome> {
  const output = packFolder(library, one, order);
  const settings = { ...one.pack, ...order.settings };
  const sum = await packSum(library, one, { settings, facts: order.facts, output }, tools.program);
  const before = tools.force ? undefined : await readPackState(tools.files, library, output, one.fileName);
  if (before && (await isCurrentPack(tools.files, library, before, sum, output)))
    return { ...before.outcome, state: 'unchanged' };
  const outcome: BuildOutcome = {
    name: one.name,
    source: relativePath(library.folder, one.source) + (one.preset ? `#${one.preset}` : ''),
    ...{ state: 'built', message: null, outputs: [] },
    totals: noFindings(),
    notes: { assumed: 0, approximated: 0, dropped: 0 },
  };
  const read = new DependencyFiles(tools.files, packReadingPlace(library, output));
  const files = withFontSamples(read);
  try {
    const { noteCounts, ...source } = await builtSource(files, library, one, order.facts);
    if (noteCounts) outcome.notes = noteCounts;
    outcome.totals = await findingsOf(source, files);
    const written = await putPack(source, settings, output, { ...tools, files });
    outcome.outputs = [relativePath(library.folder, written.path)];
    if (written.notFlac > 0) outcome.notFlac = written.notFlac;
    const state = { settings: sum, dependencies: await read.dependencies(), written: written.files, outcome };
    await keepPackState(tools, library, output, one.fileName, state);
  } catch (error) {
    outcome.state = 'failed';
    outcome.message = reasonOf(error);
  }
  return outcome;
}

function reasonOf(error: unknown): string {
  const message = visibleText(error instanceof Error ? error.message : String(error));
  return error instanceof OutputError || error instanceof BuildError
    ? message
    : `the pack cannot be written: ${message}`;
}
