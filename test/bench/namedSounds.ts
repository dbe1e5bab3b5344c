import type { MeasuredPitch, SampleSurvey } from '../../server/model/samples';
import type { MeasureRequest, MeasureResult } from '../../server/workspace/measuring/measureRequest';
import type { Measurer } from '../../server/workspace/measuring/measurer';
import { sampleFrames } from './largeInstrument';

const semitones: Record<string, number> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const layers = ['pp', 'p', 'mf', 'f', 'ff'];

/**
 * Says of samples of the large instrument what measuring good recordings would give, by their names: the files themselves are
 * silent, of which checks have little to say.
 */
export const namedSounds: Measurer = {
  width: 1,
  async measure(path, requests) {
    return { kind: 'measured', results: requests.map((request) => resultOf(path, request)) };
  },
  async close() {},
};

function resultOf(path: string, { what }: MeasureRequest): MeasureResult {
  switch (what) {
    case 'pitch':
      return pitchOf(path);
    case 'survey':
      return surveyOf(path);
    case 'loopSeam':
      return null;
  }
}

function pitchOf(path: string): MeasuredPitch {
  const [, letter = '', sharp, octave] = /\/([A-G])(#?)(-?\d) take /.exec(path) ?? [];
  const key = 12 * (Number(octave) + 1) + semitones[letter] + (sharp ? 1 : 0);
  const cents = (path.length % 7) - 3;
  return { hertz: 440 * 2 ** ((key - 69 + cents / 100) / 12), key, cents, confidence: 0.95 };
}

function surveyOf(path: string): SampleSurvey {
  const [, layer = ''] = /\/(\w+)\/[^/]+$/.exec(path) ?? [];
  const loudness = -34 + 4 * layers.indexOf(layer);
  return {
    frames: sampleFrames,
    peak: 10 ** ((loudness + 12) / 20),
    dcOffset: [0.0001],
    leadingSilenceFrames: 40,
    trailingSilenceFrames: 100,
    endLevelDb: -50,
    endStep: 0.0001,
    greatestEndStep: 0.001,
    clipping: null,
    channelCorrelation: null,
    isWhole: true,
    hasEqualChannels: false,
    loudness,
    momentaryLoudness: loudness + 1,
  };
}
