import { nameOf } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { sampleFinding, samplesWhere } from '../facts/samples/playedSamples';
import type { Rule } from '../rule';

/**
 * Wide recordings with spaced microphones come down to about −0.85, a channel with its polarity reversed to −1 (our
 * choice).
 */
const mostCorrelation = -0.95;

/** Finds stereo samples whose channels cancel one another out. */
export const oppositePhase: Rule = {
  code: 'opposite-phase',
  severity: 'information',
  ofSample: true,
  finds:
    'A stereo sample whose channels are in opposite phase (correlation −0.95 or less), so it is silent in mono.',
  check(context, report) {
    for (const { sample, survey } of samplesWhere(context, areOpposite)) {
      const correlation = (survey.channelCorrelation ?? 0).toFixed(2).replace('-', '−');
      report(() =>
        sampleFinding(
          context,
          sample,
          `The two channels of "${nameOf(sample.use.path)}" are in opposite phase (correlation ${correlation}), so they cancel each other in mono. Reverse the polarity of one channel in the file, unless it is the side of a mid-side recording.`,
        ),
      );
    }
  },
};

function areOpposite({ channelCorrelation }: SampleSurvey, { channels }: SampleFacts): boolean {
  return channels === 2 && channelCorrelation !== null && channelCorrelation <= mostCorrelation;
}
