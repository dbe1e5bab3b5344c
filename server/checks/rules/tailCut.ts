import { nameOf } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { FileEnds } from '../facts/samples/fileEnds';
import type { SurveyedSample } from '../facts/samples/playedSamples';
import { playedSamplesOf, sampleFinding, samplesWhere } from '../facts/samples/playedSamples';
import { sampleSpan } from '../facts/samples/samplePaths';
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

/** A last frame below this part of the peak ends a fade to silence, however short (our choice). */
const silentPart = 0.002;
/** Shorter sounds are hits and blips, which end as they please (our choice). */
const shortestSeconds = 0.1;
/** From so many samples on one finding tells of all (our choice), with these many of them beside. */
const fewestTogether = 3;
const mostRelated = 10;

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
    const cut = found.filter(({ sample }) => ends.areHeard(sample));
    const [first, ...others] = cut;
    if (first && cut.length >= fewestTogether) {
      const all = playedSamplesOf(context).samples.length;
      const finding = sampleFinding(
        context,
        first.sample,
        `${cut.length === all ? `All ${all}` : `${cut.length} of ${all}`} samples stop while they still sound. ${lastPartText(first)} in "${nameOf(first.sample.use.path)}", the first. ${advice}`,
      );
      const related = others.slice(0, mostRelated).map(({ sample }) => ({
        ...sampleSpan(context.instrument, sample.use),
        message: `"${nameOf(sample.use.path)}" stops so too.`,
      }));
      report({ ...finding, related });
      return;
    }
    for (const one of cut) {
      const { sample } = one;
      report(() =>
        sampleFinding(
          context,
          sample,
          `"${nameOf(sample.use.path)}" stops while it still sounds. ${lastPartText(one)}. ${advice}`,
        ),
      );
    }
  },
};

const advice = 'Use a longer recording, fade out its end, or set a loop.';

function lastPartText({ survey }: SurveyedSample): string {
  const below = Math.round(-survey.endLevelDb);
  return `The last 10 ms are ${below === 0 ? 'as loud as' : `only ${below} dB softer than`} the loudest part`;
}

/** Whether a sample ends while it still sounds, so far as a DC offset lets that be told. */
export function isCut(survey: SampleSurvey, { sampleRate }: Pick<SampleFacts, 'sampleRate'>): boolean {
  const { endLevelDb, endStep, greatestEndStep, frames, peak } = survey;
  if (!(endLevelDb >= leastFallDb) || hasOffset(survey, sampleRate)) return false;
  if (endStep <= silentPart * peak || frames < shortestSeconds * sampleRate) return false;
  return frames >= shortSeconds * sampleRate || endStep >= fadedStep * greatestEndStep;
}
