import type { MeasuredPitch, SampleFacts, SampleSurvey } from '../../model/samples';

/** How many numbers a record takes. */
export const factsWidth = 11;
export const pitchWidth = 4;
export const surveyWidth = 16;

/** Raise it when a record is laid out in another way. */
export const columnsVersion = 3;

/** Where what numbers cannot hold is kept: words by their positions in a list, other values by field. */
export interface BesideNumbers {
  wordNumber(word: string): number;
  word(number: number): string;
  keep(field: string, value: unknown): void;
  kept(field: string): unknown;
}

// A record is written and read field by field, so that one that gets a new field does not compile before it is kept
// here, and so that all records that are read have one shape, which those who use them by the thousand notice.

export function writeFacts(facts: SampleFacts, to: Float64Array, at: number, beside: BesideNumbers): void {
  to[at] = beside.wordNumber(facts.container);
  to[at + 1] = beside.wordNumber(facts.encoding);
  to[at + 2] = facts.sampleRate;
  to[at + 3] = facts.channels;
  to[at + 4] = facts.bitsPerSample;
  to[at + 5] = facts.frames;
  to[at + 6] = facts.lengthSeconds;
  to[at + 7] = keepList('loops', facts.loops, beside);
  to[at + 8] = facts.rootKey ?? Number.NaN;
  to[at + 9] = facts.fineTuneCents ?? Number.NaN;
  to[at + 10] = keepList('problems', facts.problems, beside);
}

export function readFacts(from: Float64Array, at: number, beside: BesideNumbers): SampleFacts {
  return {
    container: beside.word(from[at]) as SampleFacts['container'],
    encoding: beside.word(from[at + 1]),
    sampleRate: from[at + 2],
    channels: from[at + 3],
    bitsPerSample: from[at + 4],
    frames: from[at + 5],
    lengthSeconds: from[at + 6],
    loops: from[at + 7] === 1 ? (beside.kept('loops') as SampleFacts['loops']) : [],
    rootKey: numberOrNull(from[at + 8]),
    fineTuneCents: numberOrNull(from[at + 9]),
    problems: from[at + 10] === 1 ? (beside.kept('problems') as SampleFacts['problems']) : [],
  };
}

export function writePitch(pitch: MeasuredPitch, to: Float64Array, at: number): void {
  to[at] = pitch.hertz;
  to[at + 1] = pitch.key;
  to[at + 2] = pitch.cents;
  to[at + 3] = pitch.confidence;
}

export function readPitch(from: Float64Array, at: number): MeasuredPitch {
  return { hertz: from[at], key: from[at + 1], cents: from[at + 2], confidence: from[at + 3] };
}

export function writeSurvey(survey: SampleSurvey, to: Float64Array, at: number, beside: BesideNumbers): void {
  const { dcOffset } = survey;
  to[at] = survey.frames;
  to[at + 1] = survey.peak;
  to[at + 2] = dcOffset.length;
  to[at + 3] = dcOffset[0] ?? 0;
  to[at + 4] = dcOffset[1] ?? 0;
  if (dcOffset.length > 2) beside.keep('dcOffset', dcOffset);
  to[at + 5] = survey.leadingSilenceFrames;
  to[at + 6] = survey.trailingSilenceFrames;
  to[at + 7] = survey.endLevelDb;
  to[at + 8] = survey.endStep;
  to[at + 9] = survey.greatestEndStep;
  to[at + 10] = survey.clipping ? 1 : 0;
  if (survey.clipping) beside.keep('clipping', survey.clipping);
  to[at + 11] = survey.channelCorrelation ?? Number.NaN;
  to[at + 12] = survey.hasEqualChannels ? 1 : 0;
  to[at + 13] = survey.loudness ?? Number.NaN;
  to[at + 14] = survey.momentaryLoudness ?? Number.NaN;
  to[at + 15] = survey.isWhole ? 1 : 0;
}

export function readSurvey(from: Float64Array, at: number, beside: BesideNumbers): SampleSurvey {
  return {
    frames: from[at],
    isWhole: from[at + 15] === 1,
    peak: from[at + 1],
    dcOffset: readOffsets(from, at + 2, beside),
    leadingSilenceFrames: from[at + 5],
    trailingSilenceFrames: from[at + 6],
    endLevelDb: from[at + 7],
    endStep: from[at + 8],
    greatestEndStep: from[at + 9],
    clipping: from[at + 10] === 1 ? (beside.kept('clipping') as SampleSurvey['clipping']) : null,
    channelCorrelation: numberOrNull(from[at + 11]),
    hasEqualChannels: from[at + 12] === 1,
    loudness: numberOrNull(from[at + 13]),
    momentaryLoudness: numberOrNull(from[at + 14]),
  };
}

function readOffsets(from: Float64Array, at: number, beside: BesideNumbers): readonly number[] {
  switch (from[at]) {
    case 0:
      return [];
    case 1:
      return [from[at + 1]];
    case 2:
      return [from[at + 1], from[at + 2]];
    default:
      return beside.kept('dcOffset') as number[];
  }
}

/** 1 for a list that is kept, 0 for an empty one. */
function keepList(field: string, list: readonly unknown[], beside: BesideNumbers): number {
  if (list.length === 0) return 0;
  beside.keep(field, list);
  return 1;
}

function numberOrNull(number: number): number | null {
  return Number.isNaN(number) ? null : number;
}
