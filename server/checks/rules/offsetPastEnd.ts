import { reportPastEnd } from '../facts/samples/pastEnd';
import type { Rule } from '../rule';

/** Finds an `offset` past the last frame of the sample. */
export const offsetPastEnd: Rule = {
  code: 'offset-past-end',
  severity: 'error',
  finds: 'An offset past the last frame of the file, so nothing sounds.',
  check(context, report) {
    reportPastEnd(context, report, ({ offset }) => [offset]);
  },
};
