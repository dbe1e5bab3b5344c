import { reportPastEnd } from '../facts/samples/pastEnd';
import type { Rule } from '../rule';

/** Finds an `end` past the last frame of the sample. */
export const endPastEnd: Rule = {
  code: 'end-past-end',
  severity: 'error',
  finds:
    'An end past the last frame of the file. If it is one frame too far, its source probably counted from 1.',
  check(context, report) {
    reportPastEnd(context, report, ({ end }) => [end]);
  },
};
