import type { CancellationToken, Connection, WorkDoneProgressParams } from 'vscode-languageserver';
import type { AfterStep } from '../workspace/takeSteps';
import { stopIfCancelled } from './cancellation';

/** Milliseconds between two steps of what is shown. */
const stepTime = 100;

/**
 * Does long work that shows how far it is, where the client gave a token for that, and ends when the request is
 * cancelled.
 */
export async function workShown<Result>(
  connection: Connection,
  { workDoneToken }: WorkDoneProgressParams,
  token: CancellationToken,
  work: (afterStep: AfterStep) => Promise<Result>,
): Promise<Result> {
  const progress = connection.window.attachWorkDoneProgress(workDoneToken);
  let last = performance.now();
  progress.begin('', 0);
  try {
    return await work((share) => {
      stopIfCancelled(token);
      if (performance.now() - last < stepTime) return;
      last = performance.now();
      progress.report(Math.floor(share * 100));
    });
  } finally {
    progress.done();
  }
}
