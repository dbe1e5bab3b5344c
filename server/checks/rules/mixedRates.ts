import { unlikeSamplesFinding } from '../facts/samples/unlikeSamples';
import type { Rule } from '../rule';

/** Finds samples of different sample rates in one instrument. */
export const mixedRates: Rule = {
  code: 'mixed-rates',
  severity: 'information',
  finds: 'Samples of different sample rates in one instrument. Shown at the first that differs from most.',
  check(context, report) {
    const finding = unlikeSamplesFinding(
      context,
      ({ sampleRate }) => sampleRate,
      (rate) => `at ${rate} Hz`,
      'Convert all to one rate, unless this is meant.',
    );
    if (finding) report(finding);
  },
};
