import type { Files } from '../../model/files';
import { withFontSamples } from '../../soundfont/fontFiles';
import type { MeasureFunctions, MeasureOutcome } from './measureFile';
import { measureFile } from './measureFile';
import type { MeasureRequest } from './measureRequest';

/** What a thread that measures is told. */
export type ThreadMessage =
  | { kind: 'measure'; id: number; path: string; requests: readonly MeasureRequest[] }
  | { kind: 'stop'; id: number };

/** What it answers to each order to measure. */
export interface ThreadAnswer {
  id: number;
  outcome: MeasureOutcome;
}

/**
 * The work of a thread that measures, whatever the host: takes messages, answers each order to measure once. Several
 * orders are worked on side by side.
 */
export function measuringThread(
  files: Files,
  answer: (answer: ThreadAnswer) => void,
  measures?: MeasureFunctions,
): (message: ThreadMessage) => void {
  const withFonts = withFontSamples(files);
  const running = new Map<number, AbortController>();
  return (message) => {
    const { id } = message;
    if (message.kind === 'stop') {
      running.get(id)?.abort();
      return;
    }
    const stop = new AbortController();
    running.set(id, stop);
    const done = (outcome: MeasureOutcome) => {
      running.delete(id);
      answer({ id, outcome });
    };
    measureFile(withFonts, message.path, message.requests, stop.signal, measures).then(done, () =>
      done({ kind: 'failed', reason: 'broken' }),
    );
  };
}
