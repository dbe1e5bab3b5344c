import type { Fix } from '../model/finding';
import { nameOf } from '../model/paths';
import type { SampleFacts, SampleSurvey } from '../model/samples';
import { FewInForce } from './fewInForce';
import type { CheckContext, RuleFinding } from './rule';
import { placeOf } from './samplePaths';
import type { SampleUse } from './sampleUses';
import { sampleUsesOf, usableFactsOf } from './sampleUses';

/** A sample file that sounding regions play. */
export interface PlayedSample {
  /** Its position among the samples of the instrument. */
  number: number;
  /** The first use of the file in the text, and all others. */
  use: SampleUse;
  otherUses: SampleUse[];
  /** The regions that play it, in the order of the text. */
  regions: number[];
  facts: SampleFacts;
}

/** The sample files of an instrument. */
export interface PlayedSamples {
  samples: readonly PlayedSample[];
  /** By the position in `Instrument.regions`: the file that the region plays; `undefined` where it plays none. */
  ofRegion: readonly (PlayedSample | undefined)[];
  /** Whether something is not known yet of a file. */
  isPending: boolean;
}

/** What was measured in a sample file that has some sound in it. */
export interface SurveyedSample {
  sample: PlayedSample;
  survey: SampleSurvey;
}

/** Other uses that a finding points to; of more, none. */
const mostRelated = 5;

const knownSamples = new WeakMap<CheckContext, PlayedSamples>();
const knownSurveys = new WeakMap<CheckContext, readonly (SampleSurvey | null | undefined)[]>();

/**
 * The sample files that regions play, looked up once in a check. Files that are cut short or cannot be read have findings
 * of their own and are left out, as are regions that `end=-1` keeps silent.
 */
export function playedSamplesOf(context: CheckContext): PlayedSamples {
  let played = knownSamples.get(context);
  if (!played) {
    played = collect(context);
    knownSamples.set(context, played);
  }
  return played;
}

function collect(context: CheckContext): PlayedSamples {
  const { instrument } = context;
  const { uses, useOfRegion } = sampleUsesOf(context);
  const few = new FewInForce(instrument, ['end']);
  const samples: PlayedSample[] = [];
  const ofRegion = new Array<PlayedSample | undefined>(instrument.regions.length);
  /** By the position of a use; `null` before it was looked at. */
  const ofUse = new Array<PlayedSample | undefined | null>(uses.length).fill(null);
  const byPath = new Map<string, PlayedSample>();
  let isPending = false;
  const sampleOf = (use: SampleUse): PlayedSample | undefined => {
    const known = byPath.get(use.path);
    if (known) {
      known.otherUses.push(use);
      return known;
    }
    if (!use.isFile) return undefined;
    if (use.state.kind === 'pending') isPending = true;
    const facts = usableFactsOf(use.state);
    if (!facts) return undefined;
    const sample = { number: samples.length, use, otherUses: [], regions: [], facts };
    samples.push(sample);
    byPath.set(use.path, sample);
    return sample;
  };
  for (let number = 0; number < instrument.regions.length; number++) {
    const region = instrument.regions[number] as number;
    const useNumber = useOfRegion[number] as number;
    if (useNumber < 0) continue;
    const end = few.of(region, 'end');
    if (end >= 0 && instrument.number(end) < 0) continue;
    let sample = ofUse[useNumber];
    if (sample === null) {
      sample = sampleOf(uses[useNumber] as SampleUse);
      ofUse[useNumber] = sample;
    }
    if (!sample) continue;
    sample.regions.push(region);
    ofRegion[number] = sample;
  }
  return { samples, ofRegion, isPending };
}

/** By the number of a sample, what was measured in it: `undefined` while that is not known, `null` where it cannot be. */
export function surveysOf(context: CheckContext): readonly (SampleSurvey | null | undefined)[] {
  let surveys = knownSurveys.get(context);
  if (!surveys) {
    const { measures } = context.samples;
    surveys = measures?.survey
      ? playedSamplesOf(context).samples.map(({ use }) => measures.survey?.(use.path))
      : [];
    knownSurveys.set(context, surveys);
  }
  return surveys;
}

/** The samples with some sound that answer a question about what was measured in them with yes. */
export function samplesWhere(
  context: CheckContext,
  holds: (survey: SampleSurvey, facts: PlayedSample['facts']) => boolean,
): SurveyedSample[] {
  const found: SurveyedSample[] = [];
  const surveys = surveysOf(context);
  if (surveys.length === 0) return found;
  for (const sample of playedSamplesOf(context).samples) {
    const survey = surveys[sample.number];
    if (!survey || survey.leadingSilenceFrames >= survey.frames) continue;
    if (holds(survey, sample.facts)) found.push({ sample, survey });
  }
  return found;
}

/** A finding about a sample file: at its first use, with the others beside it where they are few. */
export function sampleFinding(
  { instrument }: CheckContext,
  { use, otherUses }: PlayedSample,
  message: string,
  fixes?: () => Fix[],
): RuleFinding {
  const related =
    otherUses.length > mostRelated
      ? []
      : otherUses.map((other) => ({
          ...placeOf(instrument, other),
          message: `"${nameOf(use.path)}" is used here too.`,
        }));
  return {
    ...placeOf(instrument, use),
    message,
    ...(related.length > 0 && { related }),
    ...(fixes && { fixes }),
  };
}
