import type { MeasuredPitch, SampleFacts, SampleLookup, SampleSurvey } from '../../../server/model/samples';
import { samplesInMemory, wav } from './markedText';

/** A survey of a test; what is left out is that of a good recording of one second that dies away. */
export function survey(found: Partial<SampleSurvey> = {}): SampleSurvey {
  return {
    frames: 44100,
    peak: 0.5,
    dcOffset: [0],
    leadingSilenceFrames: 0,
    trailingSilenceFrames: 4410,
    endLevelDb: -80,
    endStep: 0,
    greatestEndStep: 0.0001,
    clipping: null,
    channelCorrelation: null,
    isWhole: true,
    hasEqualChannels: false,
    loudness: -20,
    momentaryLoudness: -18,
    ...found,
  };
}

/** What a test says of one sample: `undefined` for a survey that is not known yet, `null` for none. */
export interface StubbedSample {
  survey?: SampleSurvey | null | undefined;
  pitch?: MeasuredPitch | null;
  facts?: Partial<SampleFacts>;
}

/** Samples in memory with what was measured in them. */
export function measuredSamples(samples: Readonly<Record<string, StubbedSample>>): SampleLookup {
  const states = Object.fromEntries(
    Object.entries(samples).map(([path, { facts }]) => [path, wav(facts ?? {})]),
  );
  return {
    ...samplesInMemory(states),
    measures: {
      pitch: (path) => samples[path]?.pitch ?? null,
      loopSeam: () => null,
      survey: (path) => samples[path]?.survey,
    },
  };
}
