import { median } from '../../model/median';
import { counted } from '../../model/wording/counted';
import type { CauseKind } from '../cause';
import type { ThirdOctave } from '../thirdOctaves';
import type { NoteMeasures } from './noteMeasures';

/** How far a recorded note may be from the instrument's (our choice, by what a careful listener hears and a recording blurs). */
export interface RecordingTolerances {
  levelDb: number;
  pitchCents: number;
  startMs: number;
  /** Of lengths, attacks and releases: as a share of them, and what is never too much. */
  timeShare: number;
  timeMs: number;
  /** The mean difference of third octaves. */
  brightnessDb: number;
  /** How much more one of them dies away while the key is held. */
  decayDb: number;
  sidesDb: number;
}

/** The tolerances where none are asked for. */
export const usualTolerances: RecordingTolerances = {
  levelDb: 1,
  pitchCents: 5,
  startMs: 15,
  timeShare: 0.25,
  timeMs: 60,
  brightnessDb: 2,
  decayDb: 3,
  sidesDb: 1.5,
};

/** What all notes of a recording share, which is taken from each before it is judged. */
export interface Shared {
  levelDb: number;
  pitchCents: number;
  sidesDb: number;
}

/** A way in which a recorded note differs from the instrument's: the recording's less the instrument's. */
export interface RecordedDifference {
  kind: CauseKind;
  measure:
    | 'pitch'
    | 'level'
    | 'start'
    | 'length'
    | 'brightness'
    | 'loop'
    | 'attack'
    | 'release'
    | 'sides'
    | 'missing';
  size: number;
  unit: 'cents' | 'dB' | 'ms' | '';
  message: string;
}

/** A key held whose sound has fallen so far counts as silent. */
const fadedDb = 30;

/** What differs in a note beyond the tolerances. `startMs` is how late it is by the line through all notes. */
export function judgeNote(
  own: NoteMeasures,
  recorded: NoteMeasures,
  shared: Shared,
  startMs: number,
  tolerances: RecordingTolerances,
): RecordedDifference[] {
  const found: RecordedDifference[] = [];
  const add = (
    kind: CauseKind,
    measure: RecordedDifference['measure'],
    size: number,
    unit: RecordedDifference['unit'],
    message: string,
  ) => found.push({ kind, measure, size, unit, message });
  const cents = centsBetween(own, recorded);
  const pitch = cents === undefined ? 0 : cents - shared.pitchCents;
  if (Math.abs(pitch) > tolerances.pitchCents) {
    const semitones = Math.round(pitch / 100);
    const isWhole = semitones !== 0 && Math.abs(pitch - 100 * semitones) < 10;
    if (isWhole)
      add(
        'root',
        'pitch',
        pitch,
        'cents',
        `The root key is ${steps(semitones)} off, or it is another sample.`,
      );
    else add('tuning', 'pitch', pitch, 'cents', 'The tuning differs.');
  }
  const level = recorded.levelDb - own.levelDb - shared.levelDb;
  if (Math.abs(level) > tolerances.levelDb) add('level', 'level', level, 'dB', 'The level differs.');
  const sides = recorded.sidesDb - own.sidesDb - shared.sidesDb;
  if (hasSides(own, recorded) && Math.abs(sides) > tolerances.sidesDb)
    add('pan', 'sides', sides, 'dB', 'The balance of left and right differs.');
  if (Math.abs(startMs) > tolerances.startMs)
    add('offset', 'start', startMs, 'ms', `It starts ${startMs > 0 ? 'later' : 'earlier'} in the recording.`);
  judgeTimes(own, recorded, level, tolerances, add);
  return found;
}

function judgeTimes(
  own: NoteMeasures,
  recorded: NoteMeasures,
  level: number,
  tolerances: RecordingTolerances,
  add: (
    ...difference: [CauseKind, RecordedDifference['measure'], number, RecordedDifference['unit'], string]
  ) => void,
): void {
  const attack = 1000 * (recorded.attackSeconds - own.attackSeconds);
  if (isTooFar(attack, 1000 * own.attackSeconds, tolerances))
    add(
      'envelope',
      'attack',
      attack,
      'ms',
      `The attack takes ${attack > 0 ? 'longer' : 'less time'} in the recording.`,
    );
  const bands = bandDifference(own.bands, recorded.bands);
  if (bands.meanDb > tolerances.brightnessDb)
    add('filter', 'brightness', bands.tiltDb, 'dB', brightnessWords(bands.tiltDb));
  const decay = recorded.heldDb - recorded.levelDb - (own.heldDb - own.levelDb);
  if (Math.abs(decay) > tolerances.decayDb) {
    const isGone = Math.abs(decay) > fadedDb;
    const words = isGone
      ? `Only ${decay > 0 ? 'the recording' : 'the instrument'} still sounds while the key is held. Check the loop and the end of the sample.`
      : `It dies away ${decay > 0 ? 'more slowly' : 'faster'} in the recording while the key is held.`;
    add(isGone ? 'loop' : 'envelope', 'loop', decay, 'dB', words);
  } else {
    const late = bandDifference(own.lateBands, recorded.lateBands);
    if (bands.meanDb <= tolerances.brightnessDb && late.meanDb > 2 * tolerances.brightnessDb)
      add('loop', 'loop', late.meanDb, 'dB', 'It starts alike but sounds different later. Check the loop.');
  }
  if (own.releaseSeconds !== null && recorded.releaseSeconds !== null) {
    const release = 1000 * (recorded.releaseSeconds - own.releaseSeconds);
    if (isTooFar(release, 1000 * own.releaseSeconds, tolerances))
      add(
        'envelope',
        'release',
        release,
        'ms',
        `The release takes ${release > 0 ? 'longer' : 'less time'} in the recording.`,
      );
  } else if (
    Math.abs(level) < fadedDb &&
    isTooFar(1000 * (recorded.lengthSeconds - own.lengthSeconds), 1000 * own.lengthSeconds, tolerances)
  ) {
    const longer = recorded.lengthSeconds > own.lengthSeconds;
    add(
      'length',
      'length',
      1000 * (recorded.lengthSeconds - own.lengthSeconds),
      'ms',
      `It is ${longer ? 'longer' : 'shorter'} in the recording.`,
    );
  }
}

function isTooFar(ms: number, of: number, { timeMs, timeShare }: RecordingTolerances): boolean {
  return Math.abs(ms) > Math.max(timeMs, timeShare * of);
}

/** How far two notes are apart in pitch; `undefined` where one has none. */
export function centsBetween(own: NoteMeasures, recorded: NoteMeasures): number | undefined {
  if (own.hertz === null || recorded.hertz === null) return undefined;
  return 1200 * Math.log2(recorded.hertz / own.hertz);
}

/** Sides are told apart only where neither channel is silent. */
export function hasSides(own: NoteMeasures, recorded: NoteMeasures): boolean {
  return Math.abs(own.sidesDb) < 40 && Math.abs(recorded.sidesDb) < 40;
}

/** Bands so far below the loudest are those of noise (our choice). */
const faintDb = 30;

/** By how much bands differ once both are equally loud: in the mean, weighted by level, and high ones against low ones. */
function bandDifference(
  own: readonly ThirdOctave[],
  recorded: readonly ThirdOctave[],
): { meanDb: number; tiltDb: number } {
  const loudest = (bands: readonly ThirdOctave[]) => Math.max(...bands.map(({ power }) => power));
  const [one, other] = [loudest(own), loudest(recorded)];
  if (!(one > 0 && other > 0)) return { meanDb: 0, tiltDb: 0 };
  const share = 10 ** (-faintDb / 10);
  const differences = own.flatMap(({ power }, at) => {
    const theirs = recorded[at]?.power ?? 0;
    if (power < one * share && theirs < other * share) return [];
    return [10 * Math.log10(Math.max(theirs / other, share / 10) / Math.max(power / one, share / 10))];
  });
  const middle = median(differences);
  const meanDb =
    differences.reduce((sum, one) => sum + Math.abs(one - middle), 0) / Math.max(1, differences.length);
  const half = differences.length >> 1;
  const mean = (values: readonly number[]) =>
    values.reduce((sum, one) => sum + one, 0) / Math.max(1, values.length);
  return { meanDb, tiltDb: mean(differences.slice(half)) - mean(differences.slice(0, half)) };
}

function brightnessWords(tiltDb: number): string {
  const words = tiltDb > 0 ? 'brighter' : 'duller';
  return `The recording is ${words}. Check the filter, the velocity layer and the sample.`;
}

function steps(semitones: number): string {
  return counted(Math.abs(semitones), 'semitone');
}
