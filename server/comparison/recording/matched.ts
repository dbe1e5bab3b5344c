import type { Alignment } from './alignment';
import { recordedTime } from './alignment';
import type { ExpectedNote } from './expectedNotes';
import type { NoteMeasures } from './noteMeasures';
import type { RecordedSound, RecordingSurvey } from './recordingSound';

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
  recording: RecordedSound;
  survey: RecordingSurvey;
  alignment: Alignment | undefined;
}

/** How many notes would begin behind the end of the recording. */
export function notesBeyond({ starts, survey, recording, alignment }: Matched): number {
  if (!alignment) return 0;
  const end = survey.frames / recording.sampleRate;
  return starts.filter((seconds) => recordedTime(alignment.map, seconds) >= end).length;
}

/** Of the notes for which a recording is long enough this share has to be found in it, and of all of them that one (our choice). */
const leastShare = 1 / 2;
const leastShareOfAll = 1 / 4;

/** Whether so much of a piece is in a recording that it is one of it. */
export function isEnoughFound(matched: Matched): boolean {
  const { notes, heard } = matched;
  const found = heard.filter((one) => one !== undefined).length;
  const within = notes.length - notesBeyond(matched);
  return found > 0 && found >= leastShare * within && found >= leastShareOfAll * notes.length;
}
