import type { SampleLookup } from '../../../server/model/samples';
import { samplesInMemory, wav } from '../checks/markedText';
import { survey } from '../checks/measuredStub';

/** Samples for which all rules about audio have something to say. */
export const talkativeSamples: SampleLookup = {
  ...samplesInMemory(
    {
      'a.wav': wav({ frames: 100 }),
      'b.wav': wav({ frames: 5001 }),
      'A.WAV': { kind: 'otherCase', actual: 'a.wav' },
    },
    ['a.wav', 'b.wav'],
  ),
  measures: {
    pitch: (path) => ({ hertz: 250, key: path === 'a.wav' ? 59 : 70, cents: 20, confidence: 1 }),
    loopSeam: () => ({
      isAudible: true,
      step: 1,
      greatestStep: 0.01,
      bend: 1,
      greatestBend: 0.01,
      spectrumChange: 0,
      greatestSpectrumChange: 0,
      better: { start: 5, end: 50 },
      crossfadeFrames: 20,
    }),
    survey: (path) =>
      survey({
        leadingSilenceFrames: path === 'a.wav' ? 20_000 : 0,
        momentaryLoudness: path === 'a.wav' ? -30 : -5,
      }),
  },
};
