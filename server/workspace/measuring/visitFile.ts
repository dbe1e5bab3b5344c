import type { FileReader, FileStat, Files } from '../../model/files';
import type { SampleReading } from '../../model/samples';
import type { MeasureFunctions, MeasureOutcome } from './measureFile';
import { measureReader } from './measureFile';
import type { MeasureRequest } from './measureRequest';
import { readingOf } from './readingOf';
import { isSameState } from './sameState';

/** What is wanted of one file, which is opened once for all of it. */
export interface FileOrder {
  path: string;
  /** The state in which the facts are known; in that state they are not read again. */
  known?: { size: number; modified: number } | undefined;
  /** What is to be measured, whatever the state. */
  requests: readonly MeasureRequest[];
}

/** What came of an order. */
export interface FileVisit {
  /** The state that all else is about; missing for a file that cannot be opened. */
  stat?: FileStat;
  /** Missing where the file is in the state that was known. */
  reading?: SampleReading;
  /** Missing where nothing was to be measured. */
  outcome?: MeasureOutcome;
}

/** Looks at a file, reads its header unless its state is known, and measures what is asked. Never rejects. */
export async function visitFile(
  files: Files,
  { path, known, requests }: FileOrder,
  signal: AbortSignal,
  measures?: MeasureFunctions,
): Promise<FileVisit> {
  try {
    const reader = await files.open(path);
    if (!reader) return {};
    try {
      return await visitOpen(files, path, reader, known, requests, signal, measures);
    } finally {
      await reader.close();
    }
  } catch {
    return {};
  }
}

async function visitOpen(
  files: Files,
  path: string,
  reader: FileReader,
  known: FileOrder['known'],
  requests: readonly MeasureRequest[],
  signal: AbortSignal,
  measures: MeasureFunctions | undefined,
): Promise<FileVisit> {
  const { size, modified } = reader;
  const stat: FileStat | undefined =
    modified === undefined ? await files.stat(path) : { kind: 'file', size, modified };
  const visit: FileVisit = stat ? { stat } : {};
  if (!known || !stat || !isSameState(stat, known)) visit.reading = await readingOf(reader);
  if (requests.length > 0) visit.outcome = await measureReader(reader, requests, signal, measures);
  return visit;
}
