import { encodeFlac } from '../../audio/encode/flacEncoder';
import type { InstrumentFacts, PackSettings } from '../../library/libraryFile';
import type { Pack } from '../../library/pack/packOutput';
import { packInstrument } from '../../library/pack/packOutput';
import type { PackSource } from '../../library/pack/packSource';
import type { Severity } from '../../model/finding';
import { OutputError } from '../../model/output';
import { folderOf, joinPath, relativePath } from '../../model/paths';
import { counted } from '../../model/wording/counted';
import { checkFetching } from '../../workspace/analyse';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { CommandError } from '../commandError';
import type { NoteCounts } from '../input/packInput';
import { systemReason } from '../systemReason';
import type { Terminal } from '../terminal';
import { outputFile } from './overwriting';
import { write } from './writeOutput';

/** What the words of the command say for all packs. */
export interface PackWords {
  /** The library or instrument, as the person wrote it. */
  name: string;
  /** The folder for packs, absolute. */
  output?: string;
  settings: PackSettings;
  facts: InstrumentFacts;
  force: boolean;
}

/** What counts for one pack. Paths are absolute. */
export interface PackAbout {
  name: string;
  source: string;
  /** The folder that the paths of the outcome start from. */
  folder: string;
  output: string;
  settings: PackSettings;
}

/** What became of one instrument, as `library build` tells it. */
export interface PackOutcome {
  name: string;
  source: string;
  state: 'built' | 'failed';
  message: string | null;
  outputs: string[];
  totals: Record<Severity, number>;
  notes: NoteCounts;
}

/** Packs one instrument and writes it; what keeps it from being packed is in the outcome. */
export async function writePack(
  terminal: Terminal,
  { force }: PackWords,
  about: PackAbout,
  sourceOf: () => Promise<PackSource & { noteCounts?: NoteCounts }>,
): Promise<PackOutcome> {
  const outcome: PackOutcome = {
    ...{ name: about.name, source: about.source, state: 'built', message: null, outputs: [] },
    totals: { error: 0, warning: 0, information: 0, hint: 0 },
    notes: { assumed: 0, approximated: 0, dropped: 0 },
  };
  try {
    const { noteCounts, ...source } = await sourceOf();
    if (noteCounts) outcome.notes = noteCounts;
    await countFindings(terminal, source, outcome.totals);
    const { form = 'zip', audio, withoutLicence = false } = about.settings;
    const library = audio === 'flac' ? await terminal.packing?.flacLibrary() : undefined;
    const flac = library && ((reader: Parameters<typeof encodeFlac>[1]) => encodeFlac(library, reader));
    const pack = await packInstrument(source, { form, flac, withoutLicence }, terminal.files);
    const path = await put(terminal, pack, form, about, source, force);
    outcome.outputs = [relativePath(about.folder, path)];
    if (pack.notFlac.length > 0)
      terminal.error(
        `zonewright: ${about.name}: ${counted(pack.notFlac.length, 'sample stays', 'samples stay')} as they are, since FLAC would change them\n`,
      );
  } catch (error) {
    if (!(error instanceof OutputError || error instanceof CommandError)) throw error;
    outcome.state = 'failed';
    outcome.message = error.message;
  }
  return outcome;
}

async function put(
  terminal: Terminal,
  { files }: Pack,
  form: 'zip' | 'folder',
  { output }: PackAbout,
  source: PackSource,
  force: boolean,
): Promise<string> {
  await terminal.makeFolder(output);
  if (form === 'zip') {
    const [[name, content]] = files;
    const path = joinPath(output, name);
    await write(terminal, outputFile(terminal, path, force, []), content);
    return path;
  }
  const path = joinPath(output, source.name);
  const there = await terminal.files.stat(path);
  const isPack = (await terminal.files.stat(joinPath(path, 'CREDITS.txt'))) !== undefined;
  if (there && !isPack && !force)
    throw new CommandError(`${path}: something that is no pack is there; choose another folder, or --force`);
  const inner = new Map([...files].map(([name, content]) => [name.slice(source.name.length + 1), content]));
  try {
    await terminal.packing?.writeFolder(path, inner);
  } catch (error) {
    if (error instanceof OutputError) throw error;
    throw new CommandError(`${path}: cannot be written: ${systemReason(error)}`);
  }
  return path;
}

async function countFindings(
  terminal: Terminal,
  { texts }: PackSource,
  totals: Record<Severity, number>,
): Promise<void> {
  const samples = new SampleStore(terminal.files);
  for (const { instrument, notation } of texts) {
    const folder = folderOf(instrument.sources[0].path);
    const findings = await checkFetching({ instrument, notation, samples: samples.lookup(folder) }, samples);
    for (const { severity } of findings) totals[severity]++;
  }
}
