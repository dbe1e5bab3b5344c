import { measureLoopSeam } from '../audio/measure/loopSeam';
import { measureSamplePitch } from '../audio/measure/measureSample';
import type { FileReader, Files } from '../model/files';
import type { LoopSeam, MeasuredPitch, SampleSurvey } from '../model/samples';
import type { MeasureRequest, MeasureResult } from './measureRequest';

/** The measures of an open sample file. None throws; the caller closes the file. */
export interface MeasureFunctions {
  pitch(reader: FileReader): Promise<MeasuredPitch | null>;
  survey(reader: FileReader): Promise<SampleSurvey | null>;
  loopSeam(reader: FileReader, start: number, end: number): Promise<LoopSeam | null>;
}

const ownMeasures: MeasureFunctions = {
  pitch: measureSamplePitch,
  survey: async () => null,
  loopSeam: measureLoopSeam,
};

/** What came of measuring a file. `failed`: the file could not be opened, or what measured it broke down or was stopped. */
export type MeasureOutcome =
  | { kind: 'measured'; results: MeasureResult[] }
  | { kind: 'failed'; reason: 'unopened' | 'broken' | 'stopped' };

/**
 * Measures what is asked of one file, which is opened once. Results stand in the order of the requests. When the signal
 * says so, reading ends and with it the measure that is under way.
 */
export async function measureFile(
  files: Files,
  path: string,
  requests: readonly MeasureRequest[],
  signal: AbortSignal,
  measures: MeasureFunctions = ownMeasures,
): Promise<MeasureOutcome> {
  const reader = await files.open(path);
  if (!reader) return { kind: 'failed', reason: 'unopened' };
  try {
    const stoppable = stoppedBy(signal, reader);
    const results: MeasureResult[] = [];
    for (const request of requests) {
      if (!signal.aborted) results.push(await measure(stoppable, request, measures));
    }
    return signal.aborted ? { kind: 'failed', reason: 'stopped' } : { kind: 'measured', results };
  } catch {
    return { kind: 'failed', reason: 'broken' };
  } finally {
    await reader.close();
  }
}

function measure(
  reader: FileReader,
  request: MeasureRequest,
  measures: MeasureFunctions,
): Promise<MeasureResult> {
  switch (request.what) {
    case 'pitch':
      return measures.pitch(reader);
    case 'survey':
      return measures.survey(reader);
    case 'loopSeam':
      return measures.loopSeam(reader, request.start, request.end);
  }
}

/** A file that cannot be read any further once a signal says so: measures read as they go, so that ends them all. */
function stoppedBy(signal: AbortSignal, reader: FileReader): FileReader {
  return {
    size: reader.size,
    async read(start, length) {
      if (signal.aborted) throw new Error('Nobody wants this file measured any more.');
      return reader.read(start, length);
    },
    close: () => reader.close(),
  };
}
