import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeMidi } from 'midi-file';

/** The General MIDI font of Debian's package fluid-soundfont-gm. */
export const debianFont = '/usr/share/sounds/sf2/FluidR3_GM.sf2';
export const hasDebianFont = existsSync(debianFont);

/** A note to be played: seconds from the start, MIDI numbers. */
export interface TestNote {
  at: number;
  seconds: number;
  key: number;
  velocity: number;
  /** What is sent just before it. */
  before?: ({ bank: number; program: number } | { controller: number; value: number })[];
}

/** Two channels of a rendering. */
export interface Rendering {
  left: Float32Array;
  right: Float32Array;
}

/** Frames a second of all renderings. */
export const rate = 44100;

const ticksPerSecond = 4410;

/** A MIDI file that plays notes on the first channel, bank 128 on the one that players keep for drums. */
export function midiOf(notes: readonly TestNote[]): Uint8Array {
  const events: { tick: number; order: number; event: Record<string, unknown> }[] = [];
  const add = (seconds: number, order: number, event: Record<string, unknown>) =>
    events.push({ tick: Math.round(seconds * ticksPerSecond), order, event });
  let channel = 0;
  add(0, 0, { type: 'setTempo', microsecondsPerBeat: 1_000_000 });
  for (const one of [0, 9]) add(0, 1, { type: 'controller', channel: one, controllerType: 7, value: 127 });
  for (const { at, seconds, key, velocity, before = [] } of notes) {
    for (const change of before) {
      if ('bank' in change) {
        channel = change.bank === 128 ? 9 : 0;
        add(at, 2, { type: 'controller', channel, controllerType: 0, value: change.bank & 127 });
        add(at, 3, { type: 'programChange', channel, programNumber: change.program });
      } else
        add(at, 4, { type: 'controller', channel, controllerType: change.controller, value: change.value });
    }
    add(at, 5, { type: 'noteOn', channel, noteNumber: key, velocity });
    add(at + seconds, 1, { type: 'noteOff', channel, noteNumber: key, velocity: 0 });
  }
  events.sort((a, b) => a.tick - b.tick || a.order - b.order);
  let before = 0;
  const track: Record<string, unknown>[] = events.map(({ tick, event }) => {
    const deltaTime = tick - before;
    before = tick;
    return { deltaTime, ...event };
  });
  track.push({ deltaTime: ticksPerSecond / 2, type: 'endOfTrack' });
  const file = { header: { format: 0, numTracks: 1, ticksPerBeat: ticksPerSecond }, tracks: [track] };
  return new Uint8Array(writeMidi(file as unknown as Parameters<typeof writeMidi>[0]));
}

/** Frames by which a free player starts late: one of its blocks. */
const startsLate = 64;

/**
 * What fluidsynth makes of a font and a MIDI file, without effects, from where the music starts. Fails where it refuses the font: it would play another
 * one in its place and answer that all went well.
 */
export function renderByFluidsynth(folder: string, font: string, midi: Uint8Array): Rendering {
  const [midiFile, raw] = [join(folder, 'notes.mid'), join(folder, 'out.raw')];
  writeFileSync(midiFile, midi);
  const args = ['-niq', '-R', '0', '-C', '0', '-g', '1', '-r', String(rate), '-T', 'raw', '-O', 'float'];
  const options = ['-o', 'synth.default-soundfont=/nonexistent', '-o', 'synth.polyphony=1024'];
  const { stderr, status } = spawnSync('fluidsynth', [...args, ...options, '-F', raw, font, midiFile], {
    encoding: 'utf8',
  });
  if (status !== 0 || /error:/.test(stderr)) throw new Error(`fluidsynth refused ${font}: ${stderr}`);
  const bytes = readFileSync(raw);
  return sides(new Float32Array(bytes.buffer, bytes.byteOffset, bytes.length / 4), startsLate);
}

/** The two channels of frames of floating-point numbers. */
export function sides(frames: Float32Array, skip = 0): Rendering {
  const count = Math.max(0, frames.length / 2 - skip);
  const left = new Float32Array(count);
  const right = new Float32Array(count);
  for (let at = 0; at < count; at++) {
    left[at] = frames[2 * (at + skip)] as number;
    right[at] = frames[2 * (at + skip) + 1] as number;
  }
  return { left, right };
}

/** The presets that fluidsynth finds in a font, as `bank-program name`. */
export function presetsByFluidsynth(font: string): string[] {
  const { stdout } = spawnSync(
    'fluidsynth',
    [
      '-nq',
      '-a',
      'file',
      '-o',
      'audio.file.name=/dev/null',
      '-o',
      'synth.default-soundfont=/nonexistent',
      font,
    ],
    {
      input: 'inst 1\nquit\n',
      encoding: 'utf8',
    },
  );
  return stdout
    .split('\n')
    .map((line) => line.replace(/^(> )*/, '').trimEnd())
    .filter((line) => /^\d{3}-\d{3} /.test(line));
}

/** The level of a stretch in dB, full scale 1. */
export function levelDb(channel: Float32Array, fromSeconds: number, toSeconds: number): number {
  const part = channel.subarray(Math.round(fromSeconds * rate), Math.round(toSeconds * rate));
  let sum = 0;
  for (const value of part) sum += value * value;
  return 10 * Math.log10(sum / part.length + 1e-30);
}

/** Level of both channels together, in dB. */
export function powerDb({ left, right }: Rendering, from: number, to: number): number {
  return 10 * Math.log10(10 ** (levelDb(left, from, to) / 10) + 10 ** (levelDb(right, from, to) / 10));
}

/**
 * The frequency of a tone near `expected`: how far its phase against that of the expected one moves between the halves of a
 * stretch. Good to a hundredth of a cent for a steady tone.
 */
export function frequencyOf(channel: Float32Array, from: number, to: number, expected: number): number {
  const phase = (start: number, end: number) => {
    let [real, imaginary] = [0, 0];
    for (let at = start; at < end; at++) {
      const window = 1 - Math.cos((2 * Math.PI * (at - start)) / (end - start));
      const angle = (2 * Math.PI * expected * at) / rate;
      real += window * (channel[at] as number) * Math.cos(angle);
      imaginary -= window * (channel[at] as number) * Math.sin(angle);
    }
    return Math.atan2(imaginary, real);
  };
  const [first, last] = [Math.round(from * rate), Math.round(to * rate)];
  const middle = Math.floor((first + last) / 2);
  let turn = phase(middle, last) - phase(first, middle);
  turn -= 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  return expected + (turn * rate) / (2 * Math.PI * (middle - first));
}

/** The distance from one frequency to another in cents. */
export function cents(hertz: number, from: number): number {
  return 1200 * Math.log2(hertz / from);
}
