import { MeasureCache } from '../../workspace/measuring/measureCache';
import { Measurements } from '../../workspace/measuring/measurements';
import { SampleStore } from '../../workspace/samples/sampleStore';
import type { Terminal } from '../terminal';

/** Milliseconds between two lines that say how far the measuring is. */
export const progressEvery = 5000;

/** Samples that are measured as the program's surroundings allow. */
export interface OpenSamples {
  samples: SampleStore;
  measurements: Measurements;
  /** Ends what measures, and keeps what was found out. */
  close(): Promise<void>;
}

/**
 * Opens the samples of a command: measured in threads and remembered over runs where the terminal offers that, and
 * where `keeps` does not forbid it. Says on standard error how far a long measuring is.
 */
export function openSamples(terminal: Terminal, keeps: boolean): OpenSamples {
  const { files, measuring } = terminal;
  const measurer = measuring?.measurer(files);
  const measurements = new Measurements(files, { ...(measurer && { measurer }), oldestFirst: true });
  const samples = new SampleStore(files, { measures: measurements, readsInThreads: true });
  samples.useCache(new MeasureCache(keeps ? measuring?.storage() : undefined));
  let told = Date.now();
  measurements.onProgress = () => {
    if (Date.now() - told < progressEvery) return;
    const { done, total } = measurements.progress;
    if (total === 0) return;
    told = Date.now();
    terminal.error(`zonewright: ${done} of ${total} samples measured\n`);
  };
  return { samples, measurements, close: () => measurements.close() };
}
