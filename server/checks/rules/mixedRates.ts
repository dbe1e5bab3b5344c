import { unlikeSamplesFinding } from '../facts/samples/unlikeSamples';
import type { Rule } from '../rule';

/** Finds samples of different sample rates in one instrument. */
export const mixedRates: Rule = {
  code: 'mixed-rates',
  severity: 'information',
  finds: 'Samples of different sample rates in one instrument; stands at the first that differs from most.',
  check(context, report) {
    const finding = unlikeSamplesFinding(
      context,
      ({ sampleRate }) => sampleRate,
      (rate) => `${rate} Hz`,
      'Frames count differently in them, and players have to resample some: bring all to one rate if that was not meant.',
    );
    if (finding) report(finding);
  },
};
