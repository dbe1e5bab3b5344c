import { nameOf } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { sampleFinding, samplesWhere } from '../facts/samples/playedSamples';
import type { Rule } from '../rule';

/** The least mean that is reported: of full scale, about −54 dB, and of the peak (common practice). */
const leastOfFullScale = 0.002;
const leastOfPeak = 0.02;
/** The lowest tone that is heard, in hertz (ISO 226 begins there). */
const lowestHertz = 20;

/** Finds samples that swing around another value than silence. */
export const dcOffset: Rule = {
  code: 'dc-offset',
  severity: 'information',
  ofSample: true,
  finds: 'A sample whose waveform is off centre (DC offset) by 2 % of its peak or more.',
  check(context, report) {
    for (const { sample, survey } of samplesWhere(context, swingsAside)) {
      const offset = greatestOffset(survey);
      report(() =>
        sampleFinding(
          context,
          sample,
          `The waveform of "${nameOf(sample.use.path)}" is centred at ${percentText(offset)} of full scale instead of 0 (DC offset), so it can click where it starts and stops. Remove the offset in an audio editor.`,
        ),
      );
    }
  },
};

function swingsAside(survey: SampleSurvey, { sampleRate }: SampleFacts): boolean {
  return hasOffset(survey, sampleRate);
}

/**
 * Whether a sample is off silence by more than a sound of its length can be by itself: the mean of a tone that breaks off
 * is at most half a period of it, spread over the whole, 2 · amplitude / (2π · frequency · seconds); twice that is asked for.
 */
export function hasOffset(survey: SampleSurvey, sampleRate: number): boolean {
  const { peak, frames } = survey;
  const offset = Math.abs(greatestOffset(survey));
  const halfWave = (2 * peak * sampleRate) / (2 * Math.PI * lowestHertz * frames);
  return offset >= leastOfFullScale && offset >= leastOfPeak * peak && offset >= 2 * halfWave;
}

function greatestOffset({ dcOffset }: SampleSurvey): number {
  return dcOffset.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
}

function percentText(part: number): string {
  return `${part < 0 ? '−' : ''}${(100 * Math.abs(part)).toFixed(1)} %`;
}
