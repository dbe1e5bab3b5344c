import { measureSamplePitch } from '../audio/measure/measureSample';
import { surveySample } from '../audio/measure/survey';
import { isSampleFileName } from '../model/fileNames';
import type { FileReader, Files } from '../model/files';
import { commonFolder, joinPath, nameOf, relativePath } from '../model/paths';
import type { RecordedInstrument } from '../recordings/recordedInstrument';
import { recordedInstrument } from '../recordings/recordedInstrument';
import type { Recording } from '../recordings/recording';
import { readingOf } from './measuring/readingOf';
import { audioFilesBelow } from './samples/audioFilesBelow';
import type { AfterStep } from './takeSteps';

/** A pitch measured with less confidence tells nothing. */
const surely = 0.8;
/** Bytes that are compared at one time. */
const blockBytes = 1 << 20;

/** An instrument made of a folder, and the files of it that could not be read. */
export interface FolderReading extends RecordedInstrument {
  unreadable: string[];
}

/**
 * Makes an instrument of the recordings in a folder and all below it: every file is opened, its pitch and loudness measured. The
 * sample paths start from `outputFolder`. `undefined` where there is no audio file that can be read. `afterStep` is told of the
 * share that is done and may throw to end it.
 */
export async function readRecordingsFolder(
  files: Files,
  folder: string,
  outputFolder: string,
  afterStep: AfterStep = () => {},
): Promise<FolderReading | undefined> {
  const { recordings, unreadable } = await recordingsBelow(files, folder, afterStep);
  return recordings.length === 0
    ? undefined
    : { ...instrumentOfRecordings(recordings, folder, outputFolder), unreadable };
}

/** Makes an instrument of some recordings of a folder; the sample paths start from `outputFolder`. */
export function instrumentOfRecordings(
  recordings: readonly Recording[],
  folder: string,
  outputFolder: string,
): RecordedInstrument {
  return recordedInstrument(folder, recordings, (path) => relativePath(outputFolder, joinPath(folder, path)));
}

/** Opens and measures the audio files in a folder and all below it; tells those that cannot be read. */
export async function recordingsBelow(
  files: Files,
  folder: string,
  afterStep: AfterStep = () => {},
): Promise<{ recordings: Recording[]; unreadable: string[] }> {
  const paths = await audioFilesBelow(files, folder);
  return readRecordingFiles(files, folder, paths, afterStep);
}

/**
 * Opens audio files, given by their absolute paths, and measures pitch and loudness. What is answered names them from `folder`;
 * `afterStep` is as in {@link readRecordingsFolder}.
 */
async function readRecordingFiles(
  files: Files,
  folder: string,
  paths: readonly string[],
  afterStep: AfterStep = () => {},
): Promise<{ recordings: Recording[]; unreadable: string[] }> {
  const recordings: (Recording & { size: number })[] = [];
  const unreadable: string[] = [];
  for (const [at, path] of paths.entries()) {
    const shown = relativePath(folder, path);
    const reader = await files.open(path);
    const recording = reader && (await recordingOf(reader, shown).finally(() => reader.close()));
    if (recording) recordings.push(recording);
    else unreadable.push(shown);
    afterStep((at + 1) / paths.length);
  }
  await markCopies(files, folder, recordings);
  return { recordings, unreadable };
}

/**
 * Reads what was dropped: audio files, and folders with all below them, by absolute paths. What is answered names them from
 * `folder`, which all of them are in.
 */
export async function readDropped(
  files: Files,
  dropped: readonly string[],
  afterStep: AfterStep = () => {},
): Promise<{ folder: string; recordings: Recording[]; unreadable: string[] }> {
  const paths: string[] = [];
  for (const path of dropped) {
    const isFolder = (await files.list(path)) !== undefined;
    if (isFolder) paths.push(...(await audioFilesBelow(files, path)));
    else if (isSampleFileName(nameOf(path))) paths.push(path);
  }
  const folder = commonFolder(paths);
  return { folder, ...(await readRecordingFiles(files, folder, [...new Set(paths)], afterStep)) };
}

async function recordingOf(
  reader: FileReader,
  path: string,
): Promise<(Recording & { size: number }) | undefined> {
  const reading = await readingOf(reader);
  if (reading.kind !== 'facts') return undefined;
  const survey = await surveySample(reader);
  if (!survey) return undefined;
  const pitch = survey.peak > 0 ? await measureSamplePitch(reader) : null;
  const { frames, rootKey, loops } = reading.facts;
  return {
    path,
    size: reader.size,
    frames: survey.isWhole ? survey.frames : frames,
    rootKey: rootKey ?? undefined,
    loop: loops[0],
    pitch: pitch && pitch.confidence >= surely ? pitch.key + pitch.cents / 100 : undefined,
    loudness: survey.momentaryLoudness ?? undefined,
    content: [survey.frames, survey.peak, survey.momentaryLoudness, ...survey.dcOffset].join(' '),
  };
}

/** Has files that look alike share their content only where they are the same, byte for byte. */
async function markCopies(
  files: Files,
  folder: string,
  recordings: readonly (Recording & { size: number })[],
): Promise<void> {
  const alike = new Map<string, (Recording & { size: number })[]>();
  for (const one of recordings) {
    const first = (alike.get(one.content) ?? []).filter(({ size }) => size === one.size);
    const looksAs = one.content;
    one.content = `${looksAs} ${one.path}`;
    for (const other of first) {
      if (!(await haveSameBytes(files, joinPath(folder, other.path), joinPath(folder, one.path)))) continue;
      one.content = other.content;
      break;
    }
    alike.set(looksAs, [...(alike.get(looksAs) ?? []), one]);
  }
}

async function haveSameBytes(files: Files, one: string, other: string): Promise<boolean> {
  const readers = [await files.open(one), await files.open(other)];
  try {
    const [a, b] = readers;
    if (!a || !b || a.size !== b.size) return false;
    for (let start = 0; start < a.size; start += blockBytes) {
      const [first, second] = await Promise.all([a.read(start, blockBytes), b.read(start, blockBytes)]);
      if (first.length !== second.length || first.some((byte, at) => byte !== second[at])) return false;
    }
    return true;
  } finally {
    for (const reader of readers) await reader?.close();
  }
}
