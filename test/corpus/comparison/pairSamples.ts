import { chunk, format, sampler, u16, wave } from '../../unit/audio/byteFiles';

const rate = 44100;
const seconds = 1.5;
const frames = rate * seconds;

/** A tone of some partials that dies away slowly, full scale 1. */
function tone(key: number, level: number, partials: readonly number[], phase = 0): Float64Array {
  const hertz = 440 * 2 ** ((key - 69) / 12);
  return Float64Array.from({ length: frames }, (_, at) => {
    const time = at / rate;
    let value = 0;
    for (const [number, share] of partials.entries())
      value += share * Math.sin(2 * Math.PI * hertz * (number + 1) * time + phase * (number + 1));
    return level * value * Math.min(1, time / 0.003) * Math.exp(-time / 2);
  });
}

/** Noise that is the same each time (a linear congruential generator, Numerical Recipes' constants). */
function noise(level: number): Float64Array {
  let state = 1;
  return Float64Array.from({ length: frames / 10 }, (_, at) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return level * (state / 2 ** 31 - 1) * (1 - at / (frames / 10));
  });
}

/** A WAV file of 16 bits. */
function waveBytes(channels: readonly Float64Array[], loop?: [start: number, end: number]): Uint8Array {
  const [first] = channels;
  const data: number[] = [];
  for (let frame = 0; frame < first.length; frame++)
    for (const channel of channels) data.push(...u16(Math.round(channel[frame] * 32767) & 0xffff));
  const loops = loop ? [chunk('smpl', sampler(60, 0, [[0, ...loop]]))] : [];
  return wave(chunk('fmt ', format(1, channels.length, rate, 16)), ...loops, chunk('data', data));
}

const soft = [0.6, 0.25, 0.1, 0.05];
const bright = [0.4, 0.3, 0.2, 0.15, 0.1];
const [left, right] = [tone(60, 0.3, soft), tone(67, 0.25, bright, 1)];
const c4 = tone(60, 0.3, soft);

/** The samples of the pairs by name. */
export const pairSamples: Readonly<Record<string, Uint8Array>> = {
  'c4.wav': waveBytes([c4]),
  'c4loud.wav': waveBytes([tone(60, 0.5, bright)]),
  'c4other.wav': waveBytes([tone(60, 0.3, [0.5, 0.3, 0.15], 0.7)]),
  'e4.wav': waveBytes([tone(64, 0.3, soft)]),
  'e4other.wav': waveBytes([tone(64, 0.3, [0.5, 0.1, 0.3], 0.4)]),
  'g4.wav': waveBytes([tone(67, 0.3, soft)]),
  'g4other.wav': waveBytes([tone(67, 0.3, [0.3, 0.4, 0.2], 0.9)]),
  'wide.wav': waveBytes([left, right]),
  'wideSwapped.wav': waveBytes([right, left]),
  'noise.wav': waveBytes([noise(0.2)]),
  'looped.wav': waveBytes([c4], [10000, 20000]),
  'loopedOne.wav': waveBytes([c4], [10000, 20001]),
};
