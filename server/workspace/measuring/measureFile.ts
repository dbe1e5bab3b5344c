import { measureLoopSeam } from '../../audio/measure/loops/loopSeam';
import { measureSamplePitch } from '../../audio/measure/measureSample';
import type { SurveyOptions } from '../../audio/measure/survey';
import { surveySample } from '../../audio/measure/survey';
import type { FileReader, Files } from '../../model/files';
import type { LoopSeam, MeasuredPitch, SampleSurvey } from '../../model/samples';
import type { MeasureRequest, MeasureResult } from './measureRequest';

/** The measures of an open sample file. None throws; the caller closes the file. */
export interface MeasureFunctions {
  pitch(reader: FileReader): Promise<MeasuredPitch | null>;
  survey(reader: FileReader, options: SurveyOptions): Promise<SampleSurvey | null>;
  loopSeam(reader: FileReader, start: number, end: number): Promise<LoopSeam | null>;
}

const ownMeasures: MeasureFunctions = {
  pitch: measureSamplePitch,
  survey: surveySample,
  loopSeam: measureLoopSeam,
};

/**
 * What came of measuring a file. `failed`: the disk did not give the file or a part of it, what measured it broke down,
 * or it was stopped.
 */
export type MeasureOutcome =
  | { kind: 'measured'; results: MeasureResult[] }
  | { kind: 'failed'; reason: 'unreadable' | 'broken' | 'stopped' };

/**
 * Measures what is asked of one file, which is opened once. Results stand in the order of the requests. When the signal
 * says so, reading and decoding end and with them the measure that is under way.
 */
export async function measureFile(
  files: Files,
  path: string,
  requests: readonly MeasureRequest[],
  signal: AbortSignal,
  measures: MeasureFunctions = ownMeasures,
): Promise<MeasureOutcome> {
  const reader = await files.open(path);
  if (!reader) return { kind: 'failed', reason: 'unreadable' };
  try {
    return await measureReader(reader, requests, signal, measures);
  } finally {
    await reader.close();
  }
}

/** As {@link measureFile} for a file that is open already and stays so. */
export async function measureReader(
  reader: FileReader,
  requests: readonly MeasureRequest[],
  signal: AbortSignal,
  measures: MeasureFunctions = ownMeasures,
): Promise<MeasureOutcome> {
  const watched = new WatchedReader(reader, signal);
  try {
    const results: MeasureResult[] = [];
    for (const request of requests) {
      if (!signal.aborted) results.push(await measure(watched, request, signal, measures));
    }
    if (signal.aborted) return { kind: 'failed', reason: 'stopped' };
    return watched.hasFailed ? { kind: 'failed', reason: 'unreadable' } : { kind: 'measured', results };
  } catch {
    return { kind: 'failed', reason: 'broken' };
  }
}

function measure(
  reader: FileReader,
  request: MeasureRequest,
  signal: AbortSignal,
  measures: MeasureFunctions,
): Promise<MeasureResult> {
  switch (request.what) {
    case 'pitch':
      return measures.pitch(reader);
    case 'survey':
      return measures.survey(reader, { signal });
    case 'loopSeam':
      return measures.loopSeam(reader, request.start, request.end);
  }
}

/**
 * A file that cannot be read any further once a signal says so: measures read as they go, so that ends them all. Keeps in
 * mind whether a read failed, which measures take for the end of the audio.
 */
class WatchedReader implements FileReader {
  readonly size: number;
  hasFailed = false;
  readonly #reader: FileReader;
  readonly #signal: AbortSignal;

  constructor(reader: FileReader, signal: AbortSignal) {
    this.size = reader.size;
    this.#reader = reader;
    this.#signal = signal;
  }

  async read(start: number, length: number): Promise<Uint8Array> {
    if (this.#signal.aborted) throw new Error('The measuring of this file was stopped.');
    try {
      return await this.#reader.read(start, length);
    } catch (error) {
      this.hasFailed = true;
      throw error;
    }
  }

  async close(): Promise<void> {
    await this.#reader.close();
  }
}
