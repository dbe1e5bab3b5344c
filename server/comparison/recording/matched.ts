import type { Alignment } from './alignment';
import type { ExpectedNote } from './expectedNotes';
import type { NoteMeasures } from './noteMeasures';
import type { Recording, RecordingSurvey } from './recordingSound';

/** A note as it was heard in the recording: its measures, and where it begins there. */
export interface HeardNote {
  measures: NoteMeasures;
  seconds: number;
}

/** All that is known of a piece and its recording. */
export interface Matched {
  notes: readonly ExpectedNote[];
  own: readonly NoteMeasures[];
  heard: readonly (HeardNote | undefined)[];
  /** Where the notes begin in what the instrument plays. */
  starts: readonly number[];
  recording: Recording;
  survey: RecordingSurvey;
  alignment: Alignment | undefined;
}
