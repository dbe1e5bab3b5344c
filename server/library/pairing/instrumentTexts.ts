import { isWholeInstrumentFileName } from '../../model/fileNames';
import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import { folderOf, joinPath, nameOf, relativePath } from '../../model/paths';
import { byCount, counted } from '../../model/wording/counted';
import { readInstrument } from '../../workspace/analyse';
import { IncludeStore } from '../../workspace/files/includeStore';
import { Reach } from '../../workspace/files/reach';
import { NotationFinder } from '../../workspace/notations/notationFinder';
import { SampleStore } from '../../workspace/samples/sampleStore';
import type { InstrumentEntry, LeftOut } from '../libraryFile';
import { instrumentName } from './instrumentNames';
import type { LibraryTree } from './libraryTree';
import { folderName } from './namesOfTables';

/** Texts that are instruments, and what they use. */
export interface FoundTexts {
  entries: InstrumentEntry[];
  leftOut: LeftOut[];
  /** Absolute paths of texts that hold or belong to an instrument, so that nothing else is looked for in them. */
  read: Set<string>;
  /** Absolute paths of the samples that they name. */
  samples: Set<string>;
}

/** Rounds of asking for samples. */
const mostRounds = 70;

/** Finds the texts of a folder that are instruments in a notation; parts that others include are none of their own. */
export async function instrumentTexts(files: Files, tree: LibraryTree): Promise<FoundTexts> {
  const { folder } = tree;
  const samples = new SampleStore(files);
  const finder = new NotationFinder(files, samples, () => {});
  const includes = new IncludeStore(files, undefined, new Reach(files, [folder]));
  const found: FoundTexts = { entries: [], leftOut: [], read: new Set(), samples: new Set() };
  const instruments: { path: string; instrument: Instrument }[] = [];
  const partOf = new Map<string, string>();
  for (const { path, text } of tree.texts) {
    const notation = await finder.find({ path, text });
    if (!notation) continue;
    const source = { path, text, notation: notation.notation, ...finder.readingOf(notation) };
    const instrument = await readInstrument(source, includes);
    if (instrument.regions.length > 0) instruments.push({ path, instrument });
    else if (isWholeInstrumentFileName(path))
      found.leftOut.push({ path, because: 'It is an instrument text without regions.' });
    for (const { path: included } of instrument.sources.slice(1))
      if (included !== path) partOf.set(included, path);
  }
  for (const { path, instrument } of instruments) {
    found.read.add(path);
    if (partOf.has(path)) continue;
    found.entries.push(await entryOf(folder, path, instrument, samples, found.samples));
  }
  found.leftOut = found.leftOut.filter(({ path }) => !partOf.has(path));
  for (const [part, whole] of partOf) {
    found.read.add(part);
    found.leftOut.push({ path: part, because: `It is a part of ${relativePath(folder, whole)}.` });
  }
  found.leftOut = found.leftOut.map(({ path, because }) => ({ path: relativePath(folder, path), because }));
  return found;
}

async function entryOf(
  folder: string,
  path: string,
  instrument: Instrument,
  samples: SampleStore,
  used: Set<string>,
): Promise<InstrumentEntry> {
  const lookup = samples.lookup(folderOf(path));
  const paths = new Set<string>();
  for (const region of instrument.regions) {
    const sample = instrument.samplePath(region);
    if (sample !== undefined && sample !== '' && !sample.startsWith('*')) paths.add(sample);
  }
  for (const sample of paths) lookup.state(sample);
  for (let round = 0; samples.wants && round < mostRounds; round++) {
    await samples.loadWanted();
    for (const sample of paths) lookup.state(sample);
  }
  let missing = 0;
  for (const sample of paths) {
    const state = lookup.state(sample);
    if (state.kind === 'missing' || state.kind === 'folder') missing++;
    else used.add(joinPath(folderOf(path), state.kind === 'otherCase' ? state.actual : sample));
  }
  const name = instrumentName(nameOf(path), true) || folderName(folderOf(path)) || nameOf(path);
  const doubts =
    missing === 0
      ? []
      : [`${missing} of its ${counted(paths.size, 'sample')} ${byCount(missing, 'is', 'are')} not there.`];
  const because = ['It is the text of an instrument, which names its samples.'];
  const confidence = paths.size === 0 ? 1 : Math.round((1 - missing / paths.size) * 100) / 100;
  return { name, source: relativePath(folder, path), pairing: { confidence, because, doubts } };
}
