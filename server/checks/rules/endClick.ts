import { nameOf } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { FileEnds } from '../facts/samples/fileEnds';
import { sampleFinding, samplesWhere } from '../facts/samples/playedSamples';
import type { Rule } from '../rule';
import { hasOffset } from './dcOffset';
import { isCut } from './tailCut';

/** How much the step to silence has to exceed the greatest between frames just before it (our choice). */
const leastTimes = 4;
/** Steps below these are not heard: of the sample's peak, −40 dB, and of full scale, −60 dB (common practice). */
const leastOfPeak = 0.01;
const leastOfFullScale = 0.001;

/** Finds samples that end with a step to silence, where regions play them to the end. */
export const endClick: Rule = {
  code: 'end-click',
  severity: 'information',
  ofSample: true,
  finds:
    'A sample that clicks at its end: it drops to silence at once, at least four times as far as the sound moves nearby.',
  check(context, report) {
    const found = samplesWhere(context, clicks);
    if (found.length === 0) return;
    const ends = new FileEnds(context.instrument);
    for (const { sample, survey } of found) {
      if (!ends.areHeard(sample)) continue;
      const { endStep, greatestEndStep } = survey;
      const times = endStep / greatestEndStep;
      const ratio = times < 1000 ? `, ${times.toFixed(0)} times as far as the sound itself moves there` : '';
      report(() =>
        sampleFinding(
          context,
          sample,
          `"${nameOf(sample.use.path)}" clicks at its end. It drops from ${(100 * endStep).toFixed(1)} % of full scale to silence at once${ratio}. Fade out its last milliseconds.`,
        ),
      );
    }
  },
};

/** Whether the end clicks; a cut tail and a DC offset step to silence too and have findings of their own. */
function clicks(survey: SampleSurvey, facts: SampleFacts): boolean {
  const { endStep, greatestEndStep, peak } = survey;
  if (!(endStep >= leastTimes * greatestEndStep)) return false;
  if (endStep < leastOfPeak * peak || endStep < leastOfFullScale) return false;
  return !isCut(survey, facts) && !hasOffset(survey, facts.sampleRate);
}
