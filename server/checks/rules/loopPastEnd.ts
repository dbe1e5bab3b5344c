import { reportPastEnd } from '../facts/samples/pastEnd';
import type { Rule } from '../rule';

/** Finds loop points past the last frame of the sample. */
export const loopPastEnd: Rule = {
  code: 'loop-past-end',
  severity: 'error',
  finds:
    'A loop point past the last frame of the file. If it is one frame too far, its source probably counted from 1.',
  check(context, report) {
    reportPastEnd(context, report, ({ loopStart, loopEnd }) => [loopStart, loopEnd]);
  },
};
