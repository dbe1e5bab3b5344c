import type { Instrument } from '../../model/instrument';
import { counted } from '../../model/wording/counted';
import { keyText } from '../../model/wording/rangeWords';
import type { RecordedNote, RecordingComparison } from '../recording/compareRecording';
import type { RecordedDifference, RecordingTolerances } from '../recording/judgeNote';
import type { ShownLine } from './comparisonWords';
import { roundedTo } from './comparisonWords';

/** Where a region stands, with its sample where it has one. */
export interface ShownRegion extends ShownLine {
  sample: string | null;
}

/** A comparison with a recording, with what tells where regions and parameters stand. */
export interface WordedRecording {
  name: string;
  recording: string;
  instrument: Instrument;
  compared: RecordingComparison;
  tolerances: RecordingTolerances;
  regionPlace(region: number): ShownRegion;
  parameterPlace(parameter: number): ShownLine;
}

/** The headings of {@link recordingCells}. */
export const recordingColumns = ['note', 'in the recording', 'region', 'differences'] as const;
export const noRecordedDifference = 'No note differs by more than the tolerances.';
export const recordingMisfit = 'The notes are not compared one by one, because the recording does not fit.';

/** How a recording as a whole fits, in two sentences. */
export function alignmentText({ recording, compared }: WordedRecording): string {
  const { notes, found, regions, shared } = compared;
  return `${found} of ${counted(notes, 'note')}, for ${counted(regions, 'region')}, found in ${recording}. The first begins at ${roundedTo(compared.startSeconds, 3)} s, and the clock is ${roundedTo(compared.clockPpm, 0)} millionths off. The whole is ${signed(shared.levelDb, 1)} dB and ${signed(shared.pitchCents, 1)} cents from the instrument, which is taken away before notes are compared.`;
}

/** A note that differs in words, column by column. */
export function recordingCells(told: WordedRecording, one: RecordedNote): string[] {
  const { key, velocity, regions } = one.note;
  const places = regions.map((region) => told.regionPlace(region));
  const differences = one.differences.map((difference) => {
    const said = saidParameter(told.instrument, one, difference);
    const line = said === undefined ? places[0]?.line : told.parameterPlace(said.parameter).line;
    const where = line === places[0]?.line ? '' : ` (line ${line})`;
    return `${recordedText(difference)}${where}`;
  });
  return [
    `key ${keyText(key)}, velocity ${velocity}`,
    `${roundedTo(one.seconds, 2)} s`,
    places.map(placeText).join(', '),
    differences.join(' '),
  ];
}

function placeText({ line, file, sample }: ShownRegion): string {
  return `line ${line}${file === undefined ? '' : ` of ${file}`}${sample === null ? '' : `, ${sample}`}`;
}

/** A difference of a note: its size, where it has one, and what it is. */
export function recordedText({ measure, size, unit, message }: RecordedDifference): string {
  const digits = unit === 'ms' ? 0 : 1;
  return unit === '' ? message : `${measure} ${signed(size, digits)} ${unit}: ${message}`;
}

/** Opcodes in which a difference of a measure is to be looked for, the likeliest first. */
const opcodes: Readonly<Record<RecordedDifference['measure'], readonly string[]>> = {
  pitch: ['tune', 'pitch_keycenter', 'transpose', 'key'],
  level: ['volume', 'amplitude', 'amp_veltrack'],
  sides: ['pan', 'position', 'width'],
  start: ['delay', 'offset'],
  length: ['end', 'loop_mode'],
  loop: ['loop_end', 'loop_start', 'loop_mode', 'end'],
  attack: ['ampeg_attack', 'ampeg_delay'],
  release: ['ampeg_release'],
  brightness: ['cutoff', 'fil_veltrack'],
  missing: [],
};

/**
 * The parameter that says what a difference is about: in the first region of the note, what it says itself first;
 * `undefined` where nothing does.
 */
export function saidParameter(
  instrument: Instrument,
  { note }: RecordedNote,
  { measure, kind }: RecordedDifference,
): { opcode: string; parameter: number } | undefined {
  const header = instrument.regions[note.regions[0]];
  const names = kind === 'root' ? opcodes.pitch.slice(1) : opcodes[measure];
  const inForce = names.flatMap((opcode) => {
    const parameter = instrument.effective(header, instrument.names.idOf(opcode));
    return parameter < 0 ? [] : [{ opcode, parameter }];
  });
  return inForce.find(({ parameter }) => parameter >= instrument.firstParameter(header)) ?? inForce[0];
}

/** What counts as a difference, in one sentence. */
export function tolerancesText(tolerances: RecordingTolerances): string {
  const { levelDb, pitchCents, startMs, timeShare, timeMs, brightnessDb, sidesDb } = tolerances;
  return `Tolerances: level ${levelDb} dB, pitch ${pitchCents} cents, start ${startMs} ms, sides ${sidesDb} dB, third octaves ${brightnessDb} dB in the mean, attack, length and release ${timeMs} ms or ${100 * timeShare} %.`;
}

function signed(value: number, digits: number): string {
  const number = roundedTo(value, digits);
  return `${number < 0 ? '−' : '+'}${Math.abs(number)}`;
}
