import { FileMoves } from '../../model/fileMoves';
import type { Files } from '../../model/files';
import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { OutputError } from '../../model/output';
import { Parameter } from '../../model/parameterNames';
import { commonFolder, folderOf, isWithin, joinPath, nameOf, relativePath, titleOf } from '../../model/paths';
import { counted } from '../../model/wording/counted';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { isPicture } from './isPicture';
import { PackPaths } from './packPaths';
import type { PackSource } from './packSource';

/** The folder that stands for the pack while paths are worked out. */
export const packRoot = '/pack';

/** Where everything goes. */
export interface PackPlan {
  moves: FileMoves;
  /** The files that are packed as they are or as FLAC, by their paths in the pack. */
  files: ReadonlyMap<string, { from: string; isFlac: boolean }>;
  /** How a file that is named in another letter case is spelt on the disk. */
  actual: (path: string) => string;
}

/** Whether a sample, by its path, is to be written as FLAC. */
export type FlacChoice = (path: string) => Promise<boolean>;

/**
 * Decides where the texts, the samples that they use and other files that they name go in a pack. Fails with an
 * {@link OutputError} where a sample is missing.
 */
export async function planPack(source: PackSource, files: Files, isFlac: FlacChoice): Promise<PackPlan> {
  const paths = new PackPaths(source.name);
  // The names that texts and papers of the pack have are no sample's.
  for (const name of ['LICENCE.txt', 'CREDITS.txt', 'NOTES.md']) paths.take(name);
  const moves = new Map<string, string>();
  const packed = new Map<string, { from: string; isFlac: boolean }>();
  const spelt = new Map<string, string>();
  const folders = source.texts.map(({ instrument }) => folderOf(instrument.sources[0].path));
  const used = await usedFiles(source, files, spelt);
  const outside = commonFolder(used.filter((path) => !folders.some((folder) => isWithin(folder, path))));
  const placeOf = (path: string) => {
    const folder = folders.find((one) => isWithin(one, path));
    return folder === undefined
      ? joinPath('Samples', relativePath(outside, path))
      : relativePath(folder, path);
  };
  for (const { instrument } of source.texts) {
    instrument.sources.forEach(({ path }, at) => {
      if (moves.has(path)) return;
      const place = at === 0 ? source.name + nameOf(path).slice(titleOf(path).length) : placeOf(path);
      moves.set(path, joinPath(packRoot, paths.take(place)));
    });
  }
  for (const path of used) {
    const flac = await isFlac(path);
    const place = paths.take(placeOf(path), flac ? '.flac' : undefined);
    moves.set(path, joinPath(packRoot, place));
    packed.set(place, { from: path, isFlac: flac });
  }
  for (const path of [...(source.files ?? []), ...(source.picture === undefined ? [] : [source.picture])])
    if (!moves.has(path)) packed.set(paths.take(nameOf(path)), { from: path, isFlac: false });
  return {
    moves: new FileMoves([...moves].map(([from, to]) => ({ from, to }))),
    files: packed,
    actual: (path) => spelt.get(path) ?? path,
  };
}

/**
 * The samples and pictures that texts name and that are there, sorted. A sample that is not there ends it, and so does one that is no
 * audio: a text may name any file of whoever packs it, and a pack is made to be given away.
 */
async function usedFiles(source: PackSource, files: Files, spelt: Map<string, string>): Promise<string[]> {
  const found = new Set<string>();
  const missing = new Set<string>();
  const notAudio = new Set<string>();
  for (const { instrument } of source.texts) {
    const store = new SampleStore(files);
    const folder = folderOf(instrument.sources[0].path);
    for (const sample of samplePaths(instrument)) {
      const path = joinPath(folder, sample);
      const state = await store.fetchState(folder, sample);
      if ('reading' in state && state.reading?.kind === 'unreadable') notAudio.add(sample);
      if (state.kind === 'file') found.add(path);
      else if (state.kind === 'otherCase') {
        const actual = joinPath(folder, state.actual);
        spelt.set(path, actual);
        found.add(actual);
      } else missing.add(sample);
    }
    for (const path of picturePaths(instrument, folder)) {
      if ((await files.stat(path))?.kind !== 'file') continue;
      if (!(await isPicture(files, path)))
        throw new OutputError(
          `${source.name}: the text names "${nameOf(path)}" as a picture, but it is none; remove it from the text`,
        );
      found.add(path);
    }
  }
  if (missing.size > 0) {
    const [first] = missing;
    throw new OutputError(
      `${source.name}: ${counted(missing.size, 'sample is', 'samples are')} missing, the first is "${first}"; a pack would be silent there`,
    );
  }
  if (notAudio.size > 0) {
    const [first] = notAudio;
    throw new OutputError(
      `${source.name}: ${counted(notAudio.size, 'sample is', 'samples are')} no audio that can be read, the first is "${first}"; replace it, or remove it from the text`,
    );
  }
  return [...found].sort();
}

/** The paths of samples in files that an instrument uses, from its folder. */
function samplePaths(instrument: Instrument): Set<string> {
  const paths = new Set<string>();
  const embedded = embeddedNames(instrument);
  for (const region of instrument.regions) {
    const path = instrument.samplePath(region);
    if (path !== undefined && path !== '' && !path.startsWith('*') && !embedded.has(path)) paths.add(path);
  }
  return paths;
}

/** The names of samples whose audio stands in the text. */
function embeddedNames(instrument: Instrument): Set<string> {
  const name = instrument.names.canonical(instrument.names.idOf('name'));
  const names = new Set<string>();
  for (let header = 0; header < instrument.headers.count; header++) {
    const own = instrument.kind(header) === HeaderKind.sample ? instrument.own(header, name) : -1;
    if (own >= 0) names.add(instrument.valueText(own));
  }
  return names;
}

/** Pictures that an instrument names. */
function* picturePaths(instrument: Instrument, folder: string): Generator<string> {
  for (let one = 0; one < instrument.parameters.count; one++) {
    const name = instrument.canonicalName(one);
    if (name === Parameter.sample || name === Parameter.default_path) continue;
    const value = instrument.valueText(one);
    if (value !== '' && instrument.names.opcode(name)?.facts.kind === 'path') yield joinPath(folder, value);
  }
}
