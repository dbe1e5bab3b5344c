import { nameOf } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { sampleFinding, samplesWhere } from '../facts/samples/playedSamples';
import type { Rule } from '../rule';

/** Finds samples of several channels that all hold the same. */
export const falseStereo: Rule = {
  code: 'false-stereo',
  severity: 'information',
  ofSample: true,
  finds: 'A sample whose channels all hold the same sound, so one channel is enough.',
  check(context, report) {
    for (const { sample } of samplesWhere(context, areAlike)) {
      const { channels } = sample.facts;
      const size = channels === 2 ? 'twice' : `${channels} times`;
      const which = channels === 2 ? 'Both channels' : `All ${channels} channels`;
      report(() =>
        sampleFinding(
          context,
          sample,
          `${which} of "${nameOf(sample.use.path)}" hold the same sound, so the file is ${size} as large as it needs to be. Save it as mono.`,
        ),
      );
    }
  },
};

function areAlike({ hasEqualChannels }: SampleSurvey, { channels }: SampleFacts): boolean {
  return channels > 1 && hasEqualChannels;
}
