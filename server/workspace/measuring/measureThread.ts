import type { Files } from '../../model/files';
import { withFontSamples } from '../../soundfont/fontFiles';
import type { MeasureFunctions, MeasureOutcome } from './measureFile';
import { measureFile } from './measureFile';
import type { MeasureRequest } from './measureRequest';
import type { FileOrder, FileVisit } from './visitFile';
import { visitFile } from './visitFile';

/** What a thread that measures is told. */
export type ThreadMessage =
  | { kind: 'measure'; id: number; path: string; requests: readonly MeasureRequest[] }
  | { kind: 'visit'; id: number; orders: readonly FileOrder[] }
  | { kind: 'stop'; id: number };

/** What it answers to each order to measure, or to visit files. */
export type ThreadAnswer = { id: number; outcome: MeasureOutcome } | { id: number; visits: FileVisit[] };

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
  const visitAll = async (orders: readonly FileOrder[], signal: AbortSignal) => {
    const visits: FileVisit[] = [];
    for (const order of orders) visits.push(await visitFile(withFonts, order, signal, measures));
    return visits;
  };
  return (message) => {
    const { id } = message;
    if (message.kind === 'stop') {
      running.get(id)?.abort();
      return;
    }
    const stop = new AbortController();
    running.set(id, stop);
    if (message.kind === 'visit') {
      void visitAll(message.orders, stop.signal).then((visits) => {
        running.delete(id);
        answer({ id, visits });
      });
      return;
    }
    const done = (outcome: MeasureOutcome) => {
      running.delete(id);
      answer({ id, outcome });
    };
    measureFile(withFonts, message.path, message.requests, stop.signal, measures).then(done, () =>
      done({ kind: 'failed', reason: 'broken' }),
    );
  };
}
