import { nameOf } from '../../model/paths';
import type { SampleSurvey } from '../../model/samples';
import { byCount, counted } from '../../model/wording/counted';
import { sampleFinding, samplesWhere } from '../facts/samples/playedSamples';
import type { Rule } from '../rule';

/** So many stretches at full scale, or frames in all of them, are reported (common practice). */
const leastRuns = 3;
const leastFrames = 10;
/**
 * A waveform that spends this part of its time or more at full scale is a pulse or square wave that is meant so (our
 * choice).
 */
const leastOfPulse = 0.2;

/** Finds samples whose peaks are cut off at full scale. */
export const clipped: Rule = {
  code: 'clipped',
  severity: 'information',
  ofSample: true,
  finds: 'A sample whose peaks are cut off at full scale, in three places or more or for ten frames at once.',
  check(context, report) {
    for (const { sample, survey } of samplesWhere(context, isClipped)) {
      const { runs = 0, frames = 0, firstFrame = 0 } = survey.clipping ?? {};
      const seconds = (firstFrame / sample.facts.sampleRate).toFixed(3);
      const first = byCount(runs, 'at', 'first at');
      report(() =>
        sampleFinding(
          context,
          sample,
          `"${nameOf(sample.use.path)}" is clipped: it stays at full scale for ${counted(frames, 'frame')} in ${counted(runs, 'place')}, ${first} frame ${firstFrame} (${seconds} s). Record it again at a lower level, or use a copy from before it was made louder.`,
        ),
      );
    }
  },
};

function isClipped({ clipping, frames, dcOffset }: SampleSurvey): boolean {
  if (!clipping || (clipping.runs < leastRuns && clipping.frames < leastFrames)) return false;
  return clipping.frames < leastOfPulse * frames * dcOffset.length;
}
