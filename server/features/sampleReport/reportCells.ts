import type { SampleState, SampleSurvey } from '../../model/samples';
import { keysText, keyText } from '../../model/wording/rangeWords';
import { pitchDistance } from './pitchDistance';
import type { SampleRow } from './reportRows';
import type { TuningRow } from './tuningRows';

/** A cell of a report; `undefined` for what is not known. */
export type ReportCell = string | number | undefined;

/** The table of samples: headings with units, a row a sample. */
export const sampleHeadings = [
  'File',
  'Regions',
  'Keys',
  'Container',
  'Encoding',
  'Rate (Hz)',
  'Bits',
  'Channels',
  'Frames',
  'Length (s)',
  'Loops',
  'Root key',
  'Pitch (Hz)',
  'Sounds at key',
  'Cents off',
  'Loudness (LUFS)',
  'Peak (dB)',
  'Silence at start (s)',
  'Silence at end (s)',
  'Notes',
] as const;

/** The cells of a sample, as {@link sampleHeadings} names them. */
export function sampleCells(row: SampleRow): ReportCell[] {
  const { facts, pitch, survey } = row;
  return [
    row.path,
    row.regions,
    row.keys && keysText(row.keys.low, row.keys.high),
    facts?.container,
    facts?.encoding,
    facts?.sampleRate,
    facts && facts.bitsPerSample > 0 ? facts.bitsPerSample : undefined,
    facts?.channels,
    facts?.frames,
    facts && rounded(facts.lengthSeconds, 3),
    row.loops.map(({ start, end }) => `${start} to ${end}`).join('; '),
    row.rootKeys.map(keyText).join('; '),
    pitch ? rounded(pitch.hertz, 2) : undefined,
    pitch
      ? `${keyText(pitch.key)} ${signed(pitch.cents)}${pitch.confidence < surely ? ' (not sure)' : ''}`
      : undefined,
    row.centsOff === undefined ? undefined : rounded(row.centsOff, 1),
    survey?.loudness == null ? undefined : rounded(survey.loudness, 1),
    survey && survey.peak > 0 ? rounded(20 * Math.log10(survey.peak), 1) : undefined,
    silence(row, survey?.leadingSilenceFrames),
    silence(row, survey?.isWhole ? survey.trailingSilenceFrames : undefined),
    sampleNotes(row).join('; '),
  ];
}

/** A pitch measured with less confidence is not sure. */
const surely = 0.8;

/** The table of tuning: a row for each key that is the root of samples. */
export const tuningHeadings = [
  'Key',
  'Samples',
  'Claimed (Hz)',
  'Measured (Hz)',
  'Cents off',
  'Remark',
] as const;

/** The cells of a key, as {@link tuningHeadings} names them. */
export function tuningCells(row: TuningRow): ReportCell[] {
  const unsure = row.samples - row.sure;
  const remarks = [row.remark, unsure > 0 ? `${unsure} without a sure pitch` : ''].filter(Boolean);
  return [
    keyText(row.key),
    row.samples,
    rounded(row.claimedHertz, 2),
    row.measuredHertz === undefined ? undefined : rounded(row.measuredHertz, 2),
    row.cents === undefined ? undefined : rounded(row.cents, 1),
    remarks.join('; '),
  ];
}

function silence({ facts }: SampleRow, frames: number | undefined): number | undefined {
  return facts && frames !== undefined ? rounded(frames / facts.sampleRate, 3) : undefined;
}

/** With no more decimals than are told; never minus zero. */
function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

function signed(cents: number): string {
  const whole = Math.round(cents);
  return `${whole < 0 ? '-' : '+'}${Math.abs(whole)} cents`;
}

/** What is odd about a sample, in words. */
function sampleNotes({ state, facts, loops, centsOff, pitch, survey }: SampleRow): string[] {
  const notes: string[] = stateNotes(state);
  for (const { message } of facts?.problems ?? []) notes.push(message);
  const distance = centsOff === undefined ? undefined : pitchDistance(centsOff);
  if (distance !== undefined) {
    const sure = pitch && pitch.confidence >= surely ? '' : ', though the pitch is not sure';
    notes.push(`sounds ${distance} its root key${sure}`);
  }
  for (const { start, end, seam } of loops) {
    if (seam?.isAudible) notes.push(`the loop ${start} to ${end} jumps where it closes`);
  }
  if (survey) notes.push(...surveyNotes(survey));
  return notes;
}

function stateNotes(state: SampleState): string[] {
  switch (state.kind) {
    case 'pending':
      return ['not looked at'];
    case 'missing':
      return ['there is no such file'];
    case 'folder':
      return ['this is a folder'];
    case 'otherCase':
      return [`the file is spelt ${state.actual}`, ...unreadableNotes(state.reading)];
    case 'file':
      return unreadableNotes(state.reading);
  }
}

function unreadableNotes(reading: { kind: string; reason?: string } | undefined): string[] {
  return reading?.kind === 'unreadable' && reading.reason !== undefined ? [reading.reason] : [];
}

function surveyNotes(survey: SampleSurvey): string[] {
  const { peak, clipping, channelCorrelation, hasEqualChannels, isWhole } = survey;
  const notes: string[] = [];
  if (!isWhole) notes.push(`so long that only its first ${survey.frames} frames were measured`);
  if (peak === 0) notes.push(isWhole ? 'silent from start to end' : 'silent as far as it was measured');
  if (clipping) {
    const { runs, firstFrame } = clipping;
    notes.push(
      `${runs === 1 ? '1 stretch' : `${runs} stretches`} at the limit of full scale, first at frame ${firstFrame}`,
    );
  }
  if (hasEqualChannels && channelCorrelation !== null) notes.push('all channels hold the same');
  if (channelCorrelation !== null && channelCorrelation < -0.9) notes.push('channels in opposite phase');
  return notes;
}
