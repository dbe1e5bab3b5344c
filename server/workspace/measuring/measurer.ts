import type { Files } from '../../model/files';
import type { MeasureFunctions, MeasureOutcome } from './measureFile';
import type { MeasureRequest } from './measureRequest';
import type { FileOrder, FileVisit } from './visitFile';

/** Measures sample files, wherever the work is done. */
export interface Measurer {
  /** How many files it measures at one time. */
  readonly width: number;
  /** Measures what is asked of one file; never rejects. Ends early when the signal says so. */
  measure(path: string, requests: readonly MeasureRequest[], signal: AbortSignal): Promise<MeasureOutcome>;
  /**
   * Looks at files one after the other: reads their headers and measures in one visit, in their order. Missing where the
   * host gains nothing by that. Never rejects; what was not done when the signal came is missing from the answer.
   */
  visit?(orders: readonly FileOrder[], signal: AbortSignal): Promise<FileVisit[]>;
  /** Ends what is under way and gives back what it holds. */
  close(): Promise<void>;
}

/** Measures in the thread that asks, one file at a time. */
export function sameThreadMeasurer(files: Files, measures?: MeasureFunctions): Measurer {
  return {
    width: 1,
    measure: async (path, requests, signal) => {
      const { measureFile } = await import('./measureFile');
      return measureFile(files, path, requests, signal, measures);
    },
    close: async () => {},
  };
}
