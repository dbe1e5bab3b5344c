import { unlikeSamplesFinding } from '../facts/samples/unlikeSamples';
import type { Rule } from '../rule';

/** From here on a depth holds more than any recording does (144 dB), so that deeper ones make no difference. */
const fullDepth = 24;

/** Finds samples of different bit depths in one instrument; encodings without a fixed depth do not count. */
export const mixedDepths: Rule = {
  code: 'mixed-depths',
  severity: 'information',
  finds:
    'Samples of different bit depths in one instrument, 24 bits and more taken for the same; stands at the first that differs from most.',
  check(context, report) {
    const finding = unlikeSamplesFinding(
      context,
      ({ bitsPerSample }) => Math.min(bitsPerSample, fullDepth),
      (bits) => (bits === fullDepth ? '24 bits or more' : `${bits} bits`),
      'Export all from their sources at one depth if that was not meant.',
    );
    if (finding) report(finding);
  },
};
