import type { LoopSeam, MeasuredPitch, SampleSurvey } from '../../model/samples';

/** Something to be measured in the audio of a sample file; frames of a loop count from 0, its end is played. */
export type MeasureRequest =
  | { what: 'pitch' }
  | { what: 'survey' }
  | { what: 'loopSeam'; start: number; end: number };

/** What came of a request; `null` where it cannot be measured. */
export type MeasureResult = MeasuredPitch | SampleSurvey | LoopSeam | null;

/**
 * Versions of what is remembered of files on the disk. One goes up when its measure, or what stands in its result, is
 * another, so that old results are measured again.
 */
export const measureVersions = { facts: 1, pitch: 1, survey: 2, loopSeam: 1 } as const;

/** The names of results; that of a loop goes on with its frames. */
export const pitchKey = `pitch${measureVersions.pitch}`;
export const surveyKey = `survey${measureVersions.survey}`;
export const seamKeyStart = `loopSeam${measureVersions.loopSeam}`;

/** A name that equal requests share and no others, the version of the measure included. */
export function measureKey(request: MeasureRequest): string {
  switch (request.what) {
    case 'pitch':
      return pitchKey;
    case 'survey':
      return surveyKey;
    case 'loopSeam':
      return `${seamKeyStart} ${request.start} ${request.end}`;
  }
}
