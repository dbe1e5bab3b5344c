import { median } from '../../model/median';
import type { TimedMessage } from '../../playing/player/playMessage';
import type { RenderSource } from '../../sound/render/renderParts';
import type { Alignment, TimeMap } from './alignment';
import { align, fitted, recordedTime } from './alignment';
import type { ExpectedNote } from './expectedNotes';
import { expectedNotes } from './expectedNotes';
import type { RecordedDifference, RecordingTolerances, Shared } from './judgeNote';
import { centsBetween, hasSides, judgeNote } from './judgeNote';
import type { HeardNote, Matched } from './matched';
import { isEnoughFound } from './matched';
import type { NoteMeasures } from './noteMeasures';
import { beforeSeconds, measureNote } from './noteMeasures';
import { onsetsOf } from './onsets';
import { ownNotes, stretchEnd } from './ownNotes';
import type { RecordingDoubt } from './recordingDoubts';
import { recordingDoubts, seemsReordered } from './recordingDoubts';
import type { RecordedSound } from './recordingSound';
import { recordedFrames, surveyRecording } from './recordingSound';

/** A note of a recording that differs from what the instrument plays. */
export interface RecordedNote {
  note: ExpectedNote;
  /** Where it is in the recording. */
  seconds: number;
  differences: RecordedDifference[];
}

/** What a recording of an original tells of an instrument. */
export interface RecordingComparison {
  /** Notes that the instrument plays, those of them that are in the recording, and those that were judged. */
  notes: number;
  found: number;
  /** Regions that these notes start, of all. */
  regions: number;
  /** The greatest magnitude of the recording. */
  peak: number;
  /** Where the piece starts in the recording, and how much faster its clock runs, in millionths. */
  startSeconds: number;
  clockPpm: number;
  /** What all notes share: the recording's less the instrument's. */
  shared: Shared;
  /** Notes with differences beyond the tolerances, in the order of time. */
  differing: RecordedNote[];
  doubts: RecordingDoubt[];
  /** Whether enough of the piece was found to judge the notes. */
  fits: boolean;
}

export interface RecordingOptions {
  tolerances: RecordingTolerances;
  /** Is told how far it is, in seconds of the piece, and waited for. */
  progress?: (seconds: number) => void | Promise<void>;
  signal?: AbortSignal;
}

/** A note is in the recording where it is so far above what is before it. */
const heardDb = 6;

/** Compares what an instrument plays with a recording of the original playing the same piece. */
export async function compareRecording(
  source: RenderSource,
  part: readonly TimedMessage[],
  recording: RecordedSound,
  options: RecordingOptions,
): Promise<RecordingComparison> {
  const { sampleRate } = recording;
  const notes = expectedNotes(source.playable, part);
  const survey = await surveyRecording(recording, options.signal);
  const own = await ownNotes(source, part, notes, { ...options, sampleRate });
  const onsets = onsetsOf(survey.track);
  const pitches = await pitchesAt(recording, onsets);
  const starts = own.measures.map(({ onsetSeconds }, at) => notes[at].seconds + onsetSeconds - beforeSeconds);
  const coarse = align(
    own.measures.map(({ hertz }, at) => ({ seconds: starts[at], hertz })),
    onsets,
    (onset) => pitches.get(onset) ?? null,
  );
  const heard = coarse ? await heardNotes(notes, starts, coarse, recording, options) : [];
  const alignment = coarse && { ...coarse, map: refined(starts, heard, coarse.map) };
  const found = heard.filter((one) => one !== undefined).length;
  const all = { notes, own: own.measures, heard, starts, recording, survey, alignment };
  const isReordered = seemsReordered(all);
  const fits = isEnoughFound(all) && !isReordered;
  const shared = sharedBy(own.measures, heard);
  return {
    notes: notes.length,
    found,
    regions: new Set(notes.flatMap(({ regions }) => regions)).size,
    peak: survey.peak,
    startSeconds: alignment?.map.startSeconds ?? 0,
    clockPpm: alignment ? 1e6 * (alignment.map.scale - 1) : 0,
    shared,
    differing: fits ? differingNotes(all, shared, options.tolerances) : [],
    doubts: recordingDoubts(all, shared, isReordered),
    fits,
  };
}

/** Onsets whose pitch is looked at, to find the place of a piece. */
const firstOnsets = 60;
const pitchSeconds = 0.5;

async function pitchesAt(
  recording: RecordedSound,
  onsets: readonly number[],
): Promise<Map<number, number | null>> {
  const pitches = new Map<number, number | null>();
  for (const onset of onsets.slice(0, firstOnsets)) {
    const sound = await soundAt(recording, onset, pitchSeconds, pitchSeconds);
    pitches.set(onset, measureNote(sound).hertz);
  }
  return pitches;
}

/** The stretch of a note that begins at a time of the recording. */
async function soundAt(
  recording: RecordedSound,
  seconds: number,
  lengthSeconds: number,
  holdSeconds: number,
) {
  const { sampleRate } = recording;
  const from = Math.round((seconds - beforeSeconds) * sampleRate);
  const stretch = await recordedFrames(
    recording,
    from,
    Math.round((beforeSeconds + lengthSeconds) * sampleRate),
  );
  return { ...stretch, sampleRate, holdSeconds };
}

/** What is in the recording at the places of the notes; `undefined` where nothing is heard. */
async function heardNotes(
  notes: readonly ExpectedNote[],
  starts: readonly number[],
  { map, found }: Alignment,
  recording: RecordedSound,
  { progress, signal }: RecordingOptions,
): Promise<(HeardNote | undefined)[]> {
  const heard: (HeardNote | undefined)[] = [];
  for (const [at, note] of notes.entries()) {
    signal?.throwIfAborted();
    await progress?.(note.seconds);
    const place = found[at] ?? recordedTime(map, starts[at]);
    // A slow attack is measured from where the key is struck.
    const struck = place - (starts[at] - note.seconds) * map.scale;
    const length = stretchEnd(note) * map.scale;
    const hold = (note.endSeconds - note.seconds) * map.scale;
    const sound = await soundAt(recording, struck, length, hold);
    if (sound.left.length < (beforeSeconds + Math.min(hold, 0.1)) * sound.sampleRate) {
      heard.push(undefined);
      continue;
    }
    const measures = measureNote(sound);
    if (recording.channels === 1) measures.sidesDb = Number.NaN;
    const isThere = found[at] !== undefined || measures.levelDb > measures.beforeDb + heardDb;
    heard.push(isThere ? { measures, seconds: struck + measures.onsetSeconds - beforeSeconds } : undefined);
  }
  return heard;
}

/** The line through the places at which notes begin to the frame. */
function refined(
  starts: readonly number[],
  heard: readonly (HeardNote | undefined)[],
  map: TimeMap,
): TimeMap {
  const pairs = heard.flatMap((one, at) => (one ? [[starts[at], one.seconds] as const] : []));
  return fitted(pairs, map);
}

function sharedBy(own: readonly NoteMeasures[], heard: readonly (HeardNote | undefined)[]): Shared {
  const pairs = heard.flatMap((one, at) => (one ? [[own[at], one.measures] as const] : []));
  return {
    levelDb: median(pairs.map(([one, other]) => other.levelDb - one.levelDb)),
    pitchCents: median(
      pairs.map(([one, other]) => centsBetween(one, other)).filter((cents) => cents !== undefined),
    ),
    sidesDb: median(
      pairs.filter(([one, other]) => hasSides(one, other)).map(([one, other]) => other.sidesDb - one.sidesDb),
    ),
  };
}

function differingNotes(matched: Matched, shared: Shared, tolerances: RecordingTolerances): RecordedNote[] {
  const { notes, own, heard, starts, alignment, recording, survey } = matched;
  if (!alignment) return [];
  const { map } = alignment;
  const lengthSeconds = survey.frames / recording.sampleRate;
  const found: RecordedNote[] = [];
  for (const [at, note] of notes.entries()) {
    const one = heard[at];
    const place = recordedTime(map, starts[at]);
    if (!one) {
      // What the recording is too short for is a doubt of its own.
      if (place < lengthSeconds) found.push({ note, seconds: place, differences: [missing] });
      continue;
    }
    const startMs = 1000 * (one.seconds - place);
    const differences = judgeNote(own[at], one.measures, shared, startMs, tolerances);
    if (differences.length > 0) found.push({ note, seconds: one.seconds, differences });
  }
  return found;
}

const missing: RecordedDifference = {
  kind: 'missing',
  measure: 'missing',
  size: 0,
  unit: '',
  message: 'Nothing is heard in the recording where it should be.',
};
