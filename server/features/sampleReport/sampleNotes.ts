import type { SampleState, SampleSurvey } from '../../model/samples';
import { byCount, counted } from '../../model/wording/counted';
import { pitchDistance } from './pitchDistance';
import type { SampleRow } from './reportRows';

/** A pitch measured with less confidence is not sure. */
export const surely = 0.8;

/** Something odd about a sample. */
export interface SampleNote {
  text: string;
  /** How much it weighs (our choice): 3 the sample does not sound, or not as it should; 2 it is heard; 1 good to know. */
  weight: 1 | 2 | 3;
}

/** What is odd about a sample, in words. */
export function sampleNotes({ state, facts, loops, centsOff, pitch, survey }: SampleRow): SampleNote[] {
  const notes: SampleNote[] = stateNotes(state);
  for (const { message } of facts?.problems ?? []) notes.push({ text: message, weight: 2 });
  const distance = centsOff === undefined ? undefined : pitchDistance(centsOff);
  if (distance !== undefined) {
    const isSure = pitch !== null && pitch.confidence >= surely;
    const doubt = isSure ? '' : ', though the pitch is not sure';
    notes.push({ text: `sounds ${distance} its root key${doubt}`, weight: isSure ? 3 : 1 });
  }
  for (const { start, end, seam } of loops) {
    if (seam?.isAudible) notes.push({ text: `the loop ${start} to ${end} jumps where it closes`, weight: 2 });
  }
  if (survey) notes.push(...surveyNotes(survey));
  return notes;
}

/** How bad all notes of a sample are together: by the worst, then by how many. */
export function weightOf(notes: readonly SampleNote[]): number {
  return Math.max(0, ...notes.map(({ weight }) => weight)) * 1000 + notes.length;
}

function stateNotes(state: SampleState): SampleNote[] {
  switch (state.kind) {
    case 'pending':
      return [{ text: 'not looked at', weight: 1 }];
    case 'missing':
      return [{ text: 'there is no such file', weight: 3 }];
    case 'folder':
      return [{ text: 'this is a folder', weight: 3 }];
    case 'otherCase':
      return [{ text: `the file is named ${state.actual}`, weight: 2 }, ...unreadableNotes(state.reading)];
    case 'file':
      return unreadableNotes(state.reading);
  }
}

function unreadableNotes(reading: { kind: string; reason?: string } | undefined): SampleNote[] {
  return reading?.kind === 'unreadable' && reading.reason !== undefined
    ? [{ text: reading.reason, weight: 3 }]
    : [];
}

function surveyNotes(survey: SampleSurvey): SampleNote[] {
  const { peak, clipping, channelCorrelation, hasEqualChannels, isWhole } = survey;
  const notes: SampleNote[] = [];
  if (!isWhole)
    notes.push({ text: `so long that only its first ${survey.frames} frames were measured`, weight: 1 });
  if (peak === 0)
    notes.push({
      text: isWhole ? 'silent from start to end' : 'silent as far as it was measured',
      weight: isWhole ? 3 : 2,
    });
  if (clipping) {
    const { runs, firstFrame } = clipping;
    notes.push({
      text: `clipped in ${counted(runs, 'place')}, ${byCount(runs, 'at', 'first at')} frame ${firstFrame}`,
      weight: 2,
    });
  }
  if (hasEqualChannels && channelCorrelation !== null)
    notes.push({ text: 'all channels hold the same sound', weight: 1 });
  if (channelCorrelation !== null && channelCorrelation < -0.9)
    notes.push({ text: 'channels in opposite phase', weight: 2 });
  return notes;
}
