import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { createPlayer } from '../../../server/playing/player/createPlayer';
import { readSfz } from '../../../server/sfz/read';
import type { Quality } from '../../../server/sound/interpolation/interpolator';
import { soundOf } from '../../../server/sound/program/soundOf';
import type { VoiceEngine } from '../../../server/sound/voiceEngine';
import { createVoiceEngine } from '../../../server/sound/voiceEngine';

/** A sample of a test: its channels and its rate. */
export interface TestSample {
  channels: readonly Float32Array[];
  rate: number;
}

/** Something that is played at a time. */
export type Act = [seconds: number, act: (engine: VoiceEngine) => void];

/** What was rendered. */
export interface Rendered {
  left: Float64Array;
  right: Float64Array;
}

export interface PlayOptions {
  samples?: Readonly<Record<string, TestSample>>;
  rate?: number;
  quality?: Quality;
  /** Whether live quality compiles its loops; where not said it does. */
  mayCompile?: boolean;
  key?: number;
  velocity?: number;
  /** When the key is let go; never where not said. */
  hold?: number;
  /** Controllers, set before the note. */
  controllers?: Readonly<Record<number, number>>;
  acts?: readonly Act[];
  seed?: number;
}

/** An engine that plays SFZ text with the samples of a test. */
export function engineOf(text: string, options: PlayOptions = {}): VoiceEngine {
  const { samples = {}, rate = 48000, quality = 'reference', mayCompile, seed = 1 } = options;
  const instrument = readSfz(text, { path: 'a.sfz' });
  const program = structuredClone(soundOf(instrument));
  const player = createPlayer(structuredClone(playableInstrument(instrument)), { seed });
  const engine = createVoiceEngine(program, player, { sampleRate: rate, quality, mayCompile });
  for (const [id, path] of program.samples.entries()) {
    const sample = samples[path];
    if (sample) engine.addSample(id, sample.channels, sample.rate);
  }
  return engine;
}

/** Plays one note (key 60, velocity 127) and what else is done, to the frame, for some seconds. */
export function play(text: string, seconds: number, options: PlayOptions = {}): Rendered {
  const { rate = 48000, key = 60, velocity = 127, hold, controllers = {}, acts = [] } = options;
  const engine = engineOf(text, options);
  for (const [number, value] of Object.entries(controllers)) engine.controller(Number(number), value);
  const all: Act[] = [[0, (one) => one.noteOn(key, velocity)], ...acts];
  if (hold !== undefined) all.push([hold, (one) => one.noteOff(key)]);
  const sorted = all.sort(([a], [b]) => a - b);
  const frames = Math.round(seconds * rate);
  const left = new Float64Array(frames);
  const right = new Float64Array(frames);
  let at = 0;
  for (let next = 0; at < frames; ) {
    while (next < sorted.length && Math.round(sorted[next][0] * rate) <= at) sorted[next++][1](engine);
    const until = next < sorted.length ? Math.round(sorted[next][0] * rate) : frames;
    const end = Math.min(frames, until);
    engine.process(left.subarray(at, end), right.subarray(at, end));
    at = end;
  }
  return { left, right };
}

/** A sine of full scale. */
export function sine(hertz: number, seconds: number, rate = 48000, phase = 0): Float32Array {
  return Float32Array.from({ length: Math.round(seconds * rate) }, (_, at) =>
    Math.sin((2 * Math.PI * hertz * at) / rate + phase),
  );
}

/** A sample of one channel in which all frames are 1: its sound is the gain. */
export function constant(seconds = 4, rate = 48000): TestSample {
  return { channels: [new Float32Array(Math.round(seconds * rate)).fill(1)], rate };
}

/** Gain in dB. */
export function db(gain: number): number {
  return 20 * Math.log10(Math.abs(gain));
}
