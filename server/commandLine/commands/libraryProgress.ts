import type { BuildOutcome } from '../../library/build/buildOutcome';

/** Milliseconds between two lines that say how far the work is. */
const progressEvery = 5000;

/** Tells every few seconds how many instruments are done and about how long the others take, as far as those so far tell. */
export function buildProgress(
  tell: (line: string) => void,
  now: () => number = Date.now,
): (outcome: BuildOutcome, done: number, all: number) => void {
  const started = now();
  let told = started;
  return ({ name, state, message }, done, all) => {
    if (message !== null) tell(state === 'failed' ? `${name} failed: ${message}` : `${name}: ${message}`);
    if (now() - told < progressEvery || done === all) return;
    told = now();
    const left = ((told - started) / done) * (all - done);
    tell(`${done} of ${all} instruments done, ${timeWords(left)} left`);
  };
}

function timeWords(milliseconds: number): string {
  const seconds = Math.round(milliseconds / 1000);
  if (seconds < 90) return `about ${Math.max(1, seconds)} s`;
  const minutes = Math.round(seconds / 60);
  return minutes < 90 ? `about ${minutes} min` : `about ${Math.round(minutes / 60)} h`;
}
