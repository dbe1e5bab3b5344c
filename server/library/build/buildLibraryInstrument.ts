import { drawMapSvg } from '../../map/svg';
import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { joinPath, relativePath } from '../../model/paths';
import { visibleText } from '../../model/text/visibleText';
import { foldNotes, lineNotes } from '../../model/writing/lineNotes';
import { withFontSamples } from '../../soundfont/fontFiles';
import { measureMemory } from '../../workspace/comparing/measureMemory';
import { IncludeStore } from '../../workspace/files/includeStore';
import { Reach } from '../../workspace/files/reach';
import type { CacheStorage } from '../../workspace/measuring/measureCache';
import { MeasureCache } from '../../workspace/measuring/measureCache';
import { ProjectSettingsStore } from '../../workspace/projectSettings';
import { SampleStore } from '../../workspace/samples/sampleStore';
import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';
import { BuildError, reasonOf } from './buildError';
import type { BuildOutcome } from './buildOutcome';
import { outcomeOf } from './buildOutcome';
import type { BuildState } from './buildState';
import { isCurrent, readingPlace, readState, relative, settingsSum, statePath } from './buildState';
import type { BuildSteps } from './buildSteps';
import { checkBuilt } from './checkBuilt';
import { contentSum, sizeOf } from './contentSum';
import { conversionNote } from './conversionNote';
import { DependencyFiles } from './dependencies';
import type { FileWriter } from './fileWriter';
import type { HeldFinders } from './heldFinders';
import type { InstrumentProof, InstrumentRecord } from './instrumentRecord';
import { noFindings, noNotes, recordText, recordVersion } from './instrumentRecord';
import type { PlacedContent, Placing } from './placeFiles';
import { placeFiles, removeOutdated } from './placeFiles';
import { proveTargets } from './proveTargets';
import type { ReadingTools, ReadSource } from './readSource';
import { readSource } from './readSource';
import { withUnwrittenSamples } from './unwrittenSamples';
import type { WrittenText } from './writeTargets';
import { failedText, writeTargets } from './writeTargets';

/** How and with what a build is done. */
export interface BuildTools {
  files: Files;
  writer: FileWriter;
  /** The program's version. */
  program: string;
  /** What is done beside converting and checking. */
  steps: BuildSteps;
  /** Whether files that no build wrote may be replaced, and what is current is built again. */
  force: boolean;
  /** What is kept over instruments. */
  finders: HeldFinders;
  /** Where what was measured and rendered is remembered. */
  cache?: CacheStorage | undefined;
  /** A sum that tells texts apart. */
  sumOf: (text: string) => string;
}

/**
 * Builds one instrument of a library where anything of it has changed: converts, checks, measures, and puts its files, its
 * record and at last its state in place. Never rejects for a fault of the instrument, which is then `failed`.
 */
export async function buildLibraryInstrument(
  library: ResolvedLibrary,
  one: LibraryInstrument,
  tools: BuildTools,
): Promise<BuildOutcome> {
  const { files, program, force, writer } = tools;
  const settings = await settingsSum(library, one, tools.steps);
  const before = await readState(files, library, one.fileName);
  const isKnown = before !== undefined && !force && before.program === program;
  if (isKnown && (await isCurrent(files, library, before, settings)))
    return { ...before.outcome, state: 'unchanged' };
  const placing: Placing = {
    files,
    writer,
    folder: library.folder,
    before: [...(before?.written ?? []), ...(before?.planned ?? [])],
    force,
    plan: (planned) =>
      keepState(library, one, tools, { ...(before ?? nothingBuilt(one, program)), planned: [...planned] }),
  };
  try {
    return await buildAnew(library, one, tools, placing, settings);
  } catch (error) {
    return fail(library, one, tools, reasonOf(error), placing);
  }
}

function keepState(
  library: ResolvedLibrary,
  { fileName }: LibraryInstrument,
  { writer }: BuildTools,
  state: BuildState,
): Promise<void> {
  return writer.write(statePath(library, fileName), `${JSON.stringify(state)}\n`);
}

function nothingBuilt({ name }: LibraryInstrument, program: string): BuildState {
  const notes = { assumed: 0, approximated: 0, dropped: 0 };
  const outcome = { name, source: '', message: null, outputs: [], totals: noFindings(), notes };
  return {
    version: recordVersion,
    program,
    steps: { measures: false, proves: false, packs: false },
    settings: '',
    dependencies: {},
    written: [],
    outcome: { ...outcome, state: 'failed' },
  };
}

async function buildAnew(
  library: ResolvedLibrary,
  one: LibraryInstrument,
  tools: BuildTools,
  placing: Placing,
  settings: string,
): Promise<BuildOutcome> {
  const read = new DependencyFiles(tools.files, readingPlace(library));
  const { record, contents } = await made(library, one, tools, withFontSamples(read));
  const written = await placeFiles(placing, contents);
  await removeOutdated(placing, written);
  const outcome = outcomeOf(record, relativePath(library.folder, library.output));
  const state: BuildState = {
    version: recordVersion,
    program: tools.program,
    steps: tools.steps,
    settings,
    dependencies: relative(library.folder, await read.dependencies()),
    written,
    outcome,
  };
  await keepState(library, one, tools, state);
  return outcome;
}

/** Everything of an instrument as it is to stand on the disk, its record last. */
async function made(
  library: ResolvedLibrary,
  one: LibraryInstrument,
  tools: BuildTools,
  files: Files,
): Promise<{ record: InstrumentRecord; contents: PlacedContent[] }> {
  const { output, folder } = library;
  const [first] = one.targets;
  if (!first) throw new BuildError('It has no target. Correct "targets".');
  const outputFolder = joinPath(output, first.folder);
  const unwritten = new Map<string, string>();
  const reading = toolsFor(withUnwrittenSamples(files, unwritten), tools, library);
  const source = await readSource(one, outputFolder, reading);
  for (const [path, inFont] of source.fontSamples) unwritten.set(joinPath(outputFolder, path), inFont);
  const targets = await writeTargets(one, source, output, reading);
  const { severity } = await new ProjectSettingsStore(files, () => {}).settingsFor(folder);
  const checked = await checkBuilt(targets.text, output, severity, reading);
  const proofs = tools.steps.proves
    ? await provedWith(one, source, targets.texts, reading, tools)
    : undefined;
  await reading.samples.measurements?.close();
  const totals = noFindings();
  for (const finding of checked.findings) totals[finding.severity]++;
  const outputs = [];
  for (const { path, target, content } of targets.files)
    outputs.push({ path, target, size: await sizeOf(content), sum: await contentSum(content) });
  const record: InstrumentRecord = {
    ...emptyRecord(library, one, tools.program),
    sourceKind: source.kind,
    outputs,
    figures: checked.figures,
    ...(checked.measures && { measures: checked.measures }),
    ...(proofs && { proofs }),
    ...(targets.failed.length > 0 && { message: `Not written: ${failedText(targets.failed)}` }),
    totals,
    findings: checked.kept,
    kept: targets.kept,
    ...notesIn(source.instrument, targets.notes),
  };
  const contents: PlacedContent[] = [
    ...targets.files.map(({ path, content }) => [joinPath(output, path), content] as const),
    [joinPath(output, `maps/${one.fileName}.svg`), drawMapSvg(checked.scene)],
    [joinPath(output, `notes/${one.fileName}.md`), conversionNote(record)],
    [recordPath(library, one.fileName), recordText(record)],
  ];
  return { record, contents };
}

function toolsFor(
  files: Files,
  { steps: { measures }, cache, finders }: BuildTools,
  library: ResolvedLibrary,
): ReadingTools {
  const samples = new SampleStore(files, { measures });
  if (measures) samples.useCache(new MeasureCache(cache));
  const includes = new IncludeStore(files, undefined, new Reach(files, [library.folder]));
  return { files, samples, includes, finders };
}

/** Proves what was written, with what is remembered of earlier times. */
async function provedWith(
  { source: path, preset = '' }: LibraryInstrument,
  source: ReadSource,
  texts: readonly WrittenText[],
  reading: ReadingTools,
  { cache, sumOf }: BuildTools,
): Promise<InstrumentProof[]> {
  const memory = cache && (await measureMemory(cache, `proved ${path}#${preset}`, reading.files, sumOf));
  const proofs = await proveTargets(source, texts, reading, memory);
  await memory?.keep();
  return proofs;
}

/** Where the record of an instrument stands. */
export function recordPath({ output }: ResolvedLibrary, fileName: string): string {
  return joinPath(output, `records/${fileName}.json`);
}

function emptyRecord(
  { folder }: ResolvedLibrary,
  { name, fileName, source, preset, facts, pairing }: LibraryInstrument,
  program: string,
): InstrumentRecord {
  return {
    version: recordVersion,
    program,
    name,
    fileName,
    source: relativePath(folder, source) + (preset === undefined ? '' : `#${preset}`),
    state: 'built',
    message: null,
    facts,
    outputs: [],
    totals: noFindings(),
    findings: [],
    kept: 0,
    noteCounts: noNotes(),
    notes: [],
    doubts: pairing?.doubts ?? [],
  };
}

function notesIn(
  instrument: Instrument,
  notes: readonly ConversionNote[],
): Pick<InstrumentRecord, 'noteCounts' | 'notes'> {
  const noteCounts = noNotes();
  for (const { kind } of notes) noteCounts[kind]++;
  const folded = foldNotes(lineNotes(instrument, notes));
  return {
    noteCounts,
    notes: folded.map(({ note: { kind, message }, count, lines }) => ({
      kind,
      message: visibleText(message),
      count,
      lines,
    })),
  };
}

/** Says of an instrument that it failed; what an earlier build made of it stays. */
async function fail(
  library: ResolvedLibrary,
  one: LibraryInstrument,
  { program }: BuildTools,
  message: string,
  placing: Placing,
): Promise<BuildOutcome> {
  const record: InstrumentRecord = { ...emptyRecord(library, one, program), state: 'failed', message };
  const path = recordPath(library, one.fileName);
  // Where not even that can be written, the outcome still tells.
  await placeFiles(placing, [[path, recordText(record)]]).catch(() => {});
  return outcomeOf(record, relativePath(library.folder, library.output));
}
