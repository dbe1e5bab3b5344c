import { nameOf } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { FileEnds } from '../facts/samples/fileEnds';
import { sampleFinding, samplesWhere } from '../facts/samples/playedSamples';
import type { Rule } from '../rule';
import { hasOffset } from './dcOffset';

/**
 * A sound whose last hundredth of a second is not this far below its loudest is cut off, in dB. A tenth of the loudest
 * amplitude; a sound that is faded out in a straight line over 60 ms or more ends lower (common practice).
 */
const leastFallDb = -20;
/** Short blips end soon after their loudest; they count where they end with a step (our choice). */
const shortSeconds = 0.5;
/** A last frame this near to silence, in parts of the greatest step before it, speaks for a short fade (our choice). */
const fadedStep = 0.5;

/** Finds samples that end while they still sound, where regions play them to the end. */
export const tailCut: Rule = {
  code: 'tail-cut',
  severity: 'information',
  ofSample: true,
  finds:
    'A sample without a loop that stops while it still sounds, less than 20 dB softer than its loudest part.',
  check(context, report) {
    const found = samplesWhere(context, isCut);
    if (found.length === 0) return;
    const ends = new FileEnds(context.instrument);
    for (const { sample, survey } of found) {
      if (!ends.areHeard(sample)) continue;
      const below = Math.round(-survey.endLevelDb);
      const level = below === 0 ? 'as loud as' : `only ${below} dB softer than`;
      report(() =>
        sampleFinding(
          context,
          sample,
          `"${nameOf(sample.use.path)}" stops while it still sounds: its last 10 ms are ${level} its loudest part. Use a longer recording, fade out its end, or set a loop.`,
        ),
      );
    }
  },
};

/** Whether a sample ends while it still sounds, so far as a DC offset lets that be told. */
export function isCut(survey: SampleSurvey, { sampleRate }: Pick<SampleFacts, 'sampleRate'>): boolean {
  const { endLevelDb, endStep, greatestEndStep, frames } = survey;
  if (!(endLevelDb >= leastFallDb) || hasOffset(survey, sampleRate)) return false;
  return frames >= shortSeconds * sampleRate || endStep >= fadedStep * greatestEndStep;
}
