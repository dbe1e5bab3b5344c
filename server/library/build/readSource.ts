import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { folderOf, nameOf } from '../../model/paths';
import { sfzNotation } from '../../sfz/notation';
import { FontFiles } from '../../soundfont/fontFiles';
import type { FontView } from '../../soundfont/regions/fontView';
import { presetAt } from '../../soundfont/regions/fontView';
import type { SampleFile } from '../../soundfont/regions/sampleFiles';
import { lackOfZoneTable } from '../../table/looksLikeZoneTable';
import type { Vocabulary } from '../../vocabulary/vocabulary';
import { readInstrument } from '../../workspace/analyse';
import type { IncludeStore } from '../../workspace/files/includeStore';
import { readWholeText } from '../../workspace/files/readWhole';
import { detect } from '../../workspace/notations/detect';
import { NotationFinder } from '../../workspace/notations/notationFinder';
import { readRecordingsFolder } from '../../workspace/readRecordingsFolder';
import { readTableWithSamples } from '../../workspace/readTableWithSamples';
import type { SampleStore } from '../../workspace/samples/sampleStore';
import type { LibraryInstrument } from '../libraryInstrument';
import { BuildError } from './buildError';
import type { HeldFinders } from './heldFinders';

/** What a source was. */
export type SourceKind = 'sfz' | 'xml' | 'vocabulary' | 'table' | 'soundfont' | 'recordings';

/** A source as an instrument. */
export interface ReadSource {
  kind: SourceKind;
  instrument: Instrument;
  /** What was said on reading beside the instrument itself. */
  notes: readonly ConversionNote[];
  /** The vocabulary that it was read by, where it was. */
  vocabulary?: Vocabulary;
  /** The folder that its sample paths start from. */
  folder: string;
  /** Samples inside a SoundFont that are to be written beside the text, by their path from the text. */
  fontSamples: Map<string, string>;
}

/** What reading needs. */
export interface ReadingTools {
  files: Files;
  samples: SampleStore;
  includes: IncludeStore;
  /** What finds the samples of tables, kept over instruments. */
  finders: HeldFinders;
}

/**
 * Reads the source of an instrument, whatever kind it is. The sample paths of a table, and those of a SoundFont, are made to
 * start from `outputFolder`. Fails with a {@link BuildError}.
 */
export async function readSource(
  one: LibraryInstrument,
  outputFolder: string,
  tools: ReadingTools,
): Promise<ReadSource> {
  const { files, samples, includes } = tools;
  const path = one.source;
  const stat = await files.stat(path);
  if (!stat) throw new BuildError(`There is no ${nameOf(path)}, or it cannot be read. Correct "source".`);
  if (stat.kind === 'folder') return readFolder(path, outputFolder, files);
  const font = await new FontFiles(files).at(path);
  if (font.kind === 'unreadable') throw new BuildError(font.reason);
  if (font.kind === 'font') return readPreset(one, font.view, outputFolder, tools);
  const text = await textOf(files, path);
  const warned: string[] = [];
  const finder = new NotationFinder(files, samples, (message) => warned.push(message));
  const found = await finder.find({ path, text });
  if (!found) return readTable(one, text, outputFolder, tools);
  const source = { path, text, notation: found.notation, ...finder.readingOf(found) };
  const instrument = await readInstrument(source, includes);
  if (instrument.regions.length === 0)
    throw new BuildError(`${nameOf(path)} has no region. Correct "source", or leave the instrument out.`);
  const vocabulary = found.vocabulary?.vocabulary;
  return {
    kind: vocabulary ? 'vocabulary' : found.notation.format,
    instrument,
    notes: [],
    ...(vocabulary && { vocabulary }),
    folder: folderOf(path),
    fontSamples: new Map(),
  };
}

async function readFolder(path: string, outputFolder: string, files: Files): Promise<ReadSource> {
  const reading = await readRecordingsFolder(files, path, outputFolder);
  if (!reading || reading.instrument.regions.length === 0)
    throw new BuildError(
      `No audio file in ${nameOf(path)} says which note it is, by its name or its sound. Correct "source".`,
    );
  const { instrument, notes } = reading;
  return { kind: 'recordings', instrument, notes, folder: outputFolder, fontSamples: new Map() };
}

async function textOf(files: Files, path: string): Promise<string> {
  const whole = await readWholeText(files, path);
  if (whole.kind !== 'text')
    throw new BuildError(`${nameOf(path)} is no text that can be read. Correct "source".`);
  if (whole.text.trim() === '') throw new BuildError(`${nameOf(path)} is empty.`);
  return whole.text;
}

async function readTable(
  { source: path, samples, middleC }: LibraryInstrument,
  text: string,
  outputFolder: string,
  { files, finders }: ReadingTools,
): Promise<ReadSource> {
  if (detect(path, text).kind !== 'table') {
    const lack = lackOfZoneTable(text) ?? 'it may be a table that was cut short';
    throw new BuildError(`${nameOf(path)} is neither SFZ, instrument XML nor a zone table: ${lack}.`);
  }
  if (samples !== undefined && (await files.stat(samples))?.kind !== 'folder')
    throw new BuildError(`There is no folder ${nameOf(samples)} for its samples. Correct "samples".`);
  const samplesFolder = samples ?? folderOf(path);
  const reading = await readTableWithSamples(files, text, {
    path,
    ...(middleC && { middleC }),
    samplesFolder,
    outputFolder,
    finder: await finders.finder(files, samplesFolder, outputFolder),
  });
  if (reading.problem !== undefined) throw new BuildError(`${nameOf(path)}: ${reading.problem}`);
  const { instrument, notes } = reading;
  return { kind: 'table', instrument, notes, folder: outputFolder, fontSamples: new Map() };
}

async function readPreset(
  { source: path, preset: place, fileName }: LibraryInstrument,
  view: FontView,
  outputFolder: string,
  { includes }: ReadingTools,
): Promise<ReadSource> {
  const [bank, program] = (place ?? '').split(':').map(Number);
  const preset = place === undefined ? view.presets[0] : presetAt(view, bank, program);
  if (!preset) throw new BuildError(`${nameOf(path)} has no preset ${place ?? ''}. Correct "source".`);
  const fontSamples = new Map<string, string>();
  const samplePath = ({ name }: SampleFile) => {
    const written = `${fileName} Samples/${name}`;
    fontSamples.set(written, `${path}/${name}`);
    return written;
  };
  const { text, notes } = view.text(preset, nameOf(path), { samplePath, attenuation: 1 });
  const textPath = `${outputFolder}/${nameOf(path)}#${preset.bank}:${preset.program}`;
  const instrument = await readInstrument({ path: textPath, text, notation: sfzNotation }, includes);
  return { kind: 'soundfont', instrument, notes, folder: outputFolder, fontSamples };
}
