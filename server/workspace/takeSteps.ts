import type { Steps } from '../model/steps';

/** So long is worked at a stretch before other work is let run, in milliseconds. */
const longestStretch = 15;

/** Told after each step of long work how much of it is done, 0..1; what it throws ends the work. */
export type AfterStep = (share: number) => void;

/** Does work in steps and lets other work, such as requests that have come in, run between them. */
export async function takeSteps<Result>(
  steps: Steps<Result>,
  afterStep: AfterStep = () => {},
): Promise<Result> {
  let since = performance.now();
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    if (performance.now() - since >= longestStretch) {
      await new Promise((resolve) => setTimeout(resolve, 0));
      since = performance.now();
    }
    afterStep(value);
  }
}
