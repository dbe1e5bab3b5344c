import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MidiEvent } from 'midi-file';
import { writeMidi } from 'midi-file';

/** Generators of a SoundFont by number, with their amounts (SoundFont Technical Specification 2.01, section 8.1). */
export type Generators = readonly (readonly [generator: number, amount: number])[];

/** Numbers of the generators that the tests write. */
export const Generator = {
  vibratoToPitch: 6,
  filterCutoff: 8,
  filterQ: 9,
  pan: 17,
  vibratoFrequency: 24,
  attack: 34,
  decay: 36,
  sustain: 37,
  release: 38,
  attenuation: 48,
  coarseTune: 51,
  fineTune: 52,
  sampleModes: 54,
} as const;

/** Seconds as timecents, hertz as absolute cents (section 9.3). */
export const timecents = (seconds: number) => Math.round(1200 * Math.log2(seconds));
export const absoluteCents = (hertz: number) => Math.round(1200 * Math.log2(hertz / 8.176));

/** Zero frames behind each sample (section 6.1). */
const guardFrames = 46;

/** A SoundFont with one looped sample of 16 bits, root key 60, and one preset that plays it. */
export function soundFont(sample: readonly number[], rate: number, generators: Generators): Uint8Array {
  return soundFontOfZones(sample, rate, [generators]);
}

/** As {@link soundFont} with several zones, which all sound at each key. */
export function soundFontOfZones(
  sample: readonly number[],
  rate: number,
  zones: readonly Generators[],
): Uint8Array {
  const info = list('INFO', [
    chunk('ifil', u16(2, 1)),
    chunk('isng', text('EMU8000', 8)),
    chunk('INAM', text('test', 6)),
  ]);
  const frames = [...sample, ...new Array<number>(guardFrames).fill(0)];
  const data = list('sdta', [chunk('smpl', u16(...frames.map((value) => value & 0xffff)))]);
  const end = sample.length;
  // Velocity to filter is switched off, as its default differs between readings of the specification.
  const modulators = [0x0102, 8, 0, 0, 0];
  const generators: number[] = [];
  const bags: number[] = [];
  for (const zone of zones) {
    bags.push(...u16(generators.length / 4, 0));
    for (const [number, amount] of [...zone, [Generator.sampleModes, 1], [53, 0]])
      generators.push(...u16(number, amount & 0xffff));
  }
  const presets = list('pdta', [
    chunk('phdr', [
      ...text('test', 20),
      ...u16(0, 0, 0),
      ...zeros(12),
      ...text('EOP', 20),
      ...u16(0, 0, 1),
      ...zeros(12),
    ]),
    chunk('pbag', u16(0, 0, 1, 0)),
    chunk('pmod', zeros(10)),
    chunk('pgen', [...u16(41, 0), ...zeros(4)]),
    chunk('inst', [...text('test', 20), ...u16(0), ...text('EOI', 20), ...u16(zones.length)]),
    chunk('ibag', [...bags, ...u16(generators.length / 4, 1)]),
    chunk('imod', [...u16(...modulators), ...zeros(10)]),
    chunk('igen', [...generators, ...zeros(4)]),
    chunk('shdr', [
      ...text('test', 20),
      ...u32(0, end, 8, end - 8, rate),
      ...[60, 0],
      ...u16(0, 1),
      ...text('EOS', 20),
      ...zeros(26),
    ]),
  ]);
  return Uint8Array.from(chunk('RIFF', [...text('sfbk', 4), ...info, ...data, ...presets]));
}

function u16(...values: number[]): number[] {
  return values.flatMap((value) => [value & 255, (value >>> 8) & 255]);
}

function u32(...values: number[]): number[] {
  return values.flatMap((value) => [...u16(value), ...u16(value >>> 16)]);
}

function text(characters: string, length: number): number[] {
  return Array.from({ length }, (_, at) => (at < characters.length ? characters.charCodeAt(at) : 0));
}

function zeros(count: number): number[] {
  return new Array<number>(count).fill(0);
}

function chunk(name: string, body: readonly number[]): number[] {
  return text(name, 4).concat(u32(body.length), body);
}

function list(name: string, chunks: readonly number[][]): number[] {
  return chunk('LIST', text(name, 4).concat(...chunks));
}

/** A note: when it starts and ends in seconds. */
export interface FontNote {
  key: number;
  velocity: number;
  holdSeconds: number;
  seconds: number;
}

/** Frames that fluidsynth's output starts late: one of its blocks. */
const lateFrames = 64;

/** Has fluidsynth play a note on a SoundFont in a folder; left and right at a rate. */
export function fluidsynth(
  folder: string,
  font: Uint8Array,
  note: FontNote,
  rate: number,
): [Float32Array, Float32Array] {
  const [fontPath, midiPath, outPath] = ['a.sf2', 'a.mid', 'a.raw'].map((name) => join(folder, name));
  writeFileSync(fontPath, font);
  const ticks = (seconds: number) => Math.round(seconds * 1000);
  const events: MidiEvent[] = [
    { deltaTime: 0, type: 'setTempo', microsecondsPerBeat: 1_000_000, meta: true },
    // Volume is 100 where nothing says otherwise.
    { deltaTime: 0, type: 'controller', channel: 0, controllerType: 7, value: 127 },
    { deltaTime: 0, type: 'noteOn', channel: 0, noteNumber: note.key, velocity: note.velocity },
    { deltaTime: ticks(note.holdSeconds), type: 'noteOff', channel: 0, noteNumber: note.key, velocity: 0 },
    { deltaTime: ticks(note.seconds - note.holdSeconds + 0.5), type: 'endOfTrack', meta: true },
  ];
  const header = { format: 0, numTracks: 1, ticksPerBeat: 1000 } as const;
  writeFileSync(midiPath, Uint8Array.from(writeMidi({ header, tracks: [events] })));
  const options = '-niq -R 0 -C 0 -g 1 -T raw -O float -o synth.default-soundfont=/nonexistent'.split(' ');
  const run = spawnSync('fluidsynth', [...options, '-r', String(rate), '-F', outPath, fontPath, midiPath], {
    encoding: 'utf8',
  });
  // A font that it refuses is no fault to it: another one would play.
  if (/error/i.test(run.stderr)) throw new Error(run.stderr);
  const bytes = readFileSync(outPath);
  const values = new Float32Array(bytes.buffer, bytes.byteOffset, Math.floor(bytes.length / 4));
  const frames = Math.round(note.seconds * rate);
  return [0, 1].map((channel) =>
    Float32Array.from({ length: frames }, (_, at) => values[2 * (at + lateFrames) + channel] ?? 0),
  ) as [Float32Array, Float32Array];
}
