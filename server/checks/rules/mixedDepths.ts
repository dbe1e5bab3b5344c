import { counted } from '../../model/wording/counted';
import { unlikeSamplesFinding } from '../facts/samples/unlikeSamples';
import type { Rule } from '../rule';

/**
 * From here on a depth holds more than any recording does (144 dB), so that deeper ones make no difference (6.02 dB a bit;
 * common practice).
 */
const fullDepth = 24;

/** Finds samples of different bit depths in one instrument; encodings without a fixed depth do not count. */
export const mixedDepths: Rule = {
  code: 'mixed-depths',
  severity: 'information',
  finds:
    'Samples of different bit depths in one instrument; 24 bits and more count as the same. Shown at the first that differs from most.',
  check(context, report) {
    const finding = unlikeSamplesFinding(
      context,
      ({ bitsPerSample }) => Math.min(bitsPerSample, fullDepth),
      (bits) => (bits === fullDepth ? 'at 24 bits or more' : `at ${counted(bits, 'bit')}`),
      'Export all of them again at one depth, unless this is meant.',
    );
    if (finding) report(finding);
  },
};
