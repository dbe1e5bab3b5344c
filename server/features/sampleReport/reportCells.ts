import { keysText, keyText } from '../../model/wording/rangeWords';
import type { SampleRow } from './reportRows';
import { sampleNotes, surely } from './sampleNotes';
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
    sampleNotes(row)
      .map(({ text }) => text)
      .join('; '),
  ];
}

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
