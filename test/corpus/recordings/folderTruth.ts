import { effectiveValues } from '../../../server/model/effectiveValues';
import type { RecordedInstrument } from '../../../server/recordings/recordedInstrument';
import type { Heard } from './recordingWave';

/** One value, or several that are all right. */
type Truth = number | readonly number[];

/** A recording with what has to become of it. */
export interface TrueRecording extends Heard {
  root?: Truth;
  lowKey?: number;
  highKey?: number;
  velocities?: readonly [low: number, high: number];
  layer?: Truth;
  turns?: Truth;
  turn?: number;
  release?: true;
  group?: string;
  voice?: string;
  tune?: number;
  pan?: number;
  leftOut?: true;
}

/** A folder of recordings and the truth of it, as the README beside tells. */
export interface TrueFolder {
  about: string;
  noted?: readonly string[];
  recordings: readonly TrueRecording[];
}

/** Cents by which a tune may differ from the true one: what a short tone lets measure (our choice). */
const tuneTolerance = 3;

/** A region, with the recording that it plays. */
interface Played {
  recording: TrueRecording;
  /** Numbers in force. */
  number(opcode: string, otherwise: number): number;
  trigger: string;
  label: string;
}

/** What is not as it has to be, as sentences; none where all is right. */
export function faultsOf(
  { recordings, noted = [] }: TrueFolder,
  { instrument, notes }: RecordedInstrument,
): string[] {
  const byPath = new Map(recordings.map((one) => [one.path, one]));
  const faults: string[] = [];
  const played = [...instrument.regions].flatMap((region): Played[] => {
    const values = effectiveValues(instrument, region);
    const recording = byPath.get(String(values.sample));
    if (!recording) {
      faults.push(`plays ${values.sample}`);
      return [];
    }
    const number = (opcode: string, otherwise: number) => Number(values[opcode] ?? otherwise);
    const label = instrument.groupLabel(region) ?? '';
    return [{ recording, number, trigger: String(values.trigger ?? 'attack'), label }];
  });
  const told = notes.map(({ message }) => message).join('\n');
  for (const recording of recordings) {
    const regions = played.filter((one) => one.recording === recording);
    if (recording.leftOut && !told.includes(`"${recording.path}" is left out`))
      faults.push(`${recording.path} is not named`);
    if (regions.length !== (recording.leftOut ? 0 : 1))
      faults.push(`${recording.path} is in ${regions.length} regions`);
    else faults.push(...regions.flatMap(faultsOfRegion).map((fault) => `${recording.path}: ${fault}`));
  }
  faults.push(
    ...noted.filter((note) => !new RegExp(note, 'i').test(told)).map((note) => `not told: ${note}`),
  );
  return [...faults, ...faultsBetween(played)];
}

function isAmong(truth: Truth | undefined, value: number): boolean {
  return truth === undefined || (typeof truth === 'number' ? truth === value : truth.includes(value));
}

function faultsOfRegion({ recording, number, trigger }: Played): string[] {
  const root = number('pitch_keycenter', 60);
  const [low, high] = [number('lokey', 0), number('hikey', 127)];
  const [position, length] = [number('seq_position', 1), number('seq_length', 1)];
  const [lowVelocity, highVelocity] = recording.velocities ?? [number('lovel', 1), number('hivel', 127)];
  const { loop } = recording;
  const wrong: [isRight: boolean, what: string][] = [
    [isAmong(recording.root, root), `root ${root}`],
    [low <= root && root <= high, `root ${root} outside ${low} to ${high}`],
    [isAmong(recording.lowKey, low) && isAmong(recording.highKey, high), `keys ${low} to ${high}`],
    [
      number('lovel', 1) === lowVelocity && number('hivel', 127) === highVelocity,
      `velocities ${number('lovel', 1)} to ${number('hivel', 127)}`,
    ],
    [isAmong(recording.turns, length), `${length} turns`],
    [length === 1 || isAmong(recording.turn, position), `turn ${position}`],
    [trigger === (recording.release ? 'release' : 'attack'), `sounds on ${trigger}`],
    [
      Math.abs(number('tune', 0) - (recording.tune ?? number('tune', 0))) <= tuneTolerance,
      `tune ${number('tune', 0)}`,
    ],
    [number('pan', 0) === (recording.pan ?? 0), `pan ${number('pan', 0)}`],
    [!loop || (number('loop_start', -1) === loop[0] && number('loop_end', -1) === loop[1]), 'another loop'],
  ];
  return wrong.flatMap(([isRight, what]) => (isRight ? [] : [what]));
}

/** What is wrong between two recordings: layers that overlap, groups and voices that are not kept apart. */
function faultsBetween(played: readonly Played[]): string[] {
  const faults: string[] = [];
  for (const [at, one] of played.entries())
    for (const other of played.slice(at + 1)) {
      const [a, b] = [one.recording, other.recording];
      const between = `${a.path} and ${b.path}`;
      if (a.group !== b.group && one.label === other.label) faults.push(`${between} are of one group`);
      if (a.group === b.group && one.trigger === other.trigger && one.label !== other.label)
        faults.push(`${between} are of two groups`);
      if (a.voice !== undefined && (a.voice === b.voice) !== (keysOf(one) === keysOf(other)))
        faults.push(`${between}: keys ${keysOf(one)} and ${keysOf(other)}`);
      const areLayers =
        a.root !== undefined || a.voice === b.voice
          ? String(a.root) === String(b.root) && a.group === b.group && a.release === b.release
          : false;
      if (areLayers && !areInOrder(one, other)) faults.push(`${between} are not layered`);
    }
  return faults;
}

function keysOf({ number }: Played): string {
  return `${number('lokey', 0)}-${number('hikey', 127)}`;
}

/** Whether two recordings of a key have the velocities that their layers give them; with several readings, of any one of them. */
function areInOrder(one: Played, other: Played): boolean {
  const [a, b] = [one, other].map(({ recording: { layer } }) =>
    layer === undefined || typeof layer === 'number' ? [layer] : layer,
  );
  return a.some((layer, reading) => {
    const second = b[reading] ?? b[0];
    if (layer === undefined || second === undefined) return true;
    const [softer, louder] = layer <= second ? [one, other] : [other, one];
    return layer === second
      ? one.number('lovel', 1) === other.number('lovel', 1)
      : softer.number('hivel', 127) < louder.number('lovel', 1);
  });
}
