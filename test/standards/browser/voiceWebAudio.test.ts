import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { play, sine } from '../../unit/sound/playing';
import { hasBrowser } from '../../unit/webview/browser';
import type { Graph } from './offlineAudio';
import { OfflineAudio } from './offlineAudio';

const rate = 48000;
const seconds = 0.25;

/** White noise, evenly spread from −0.5 to 0.5 (linear congruence of Numerical Recipes). */
function noise(seed: number, frames = rate * seconds): Float32Array {
  let state = seed;
  return Float32Array.from({ length: frames }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return state / 2 ** 32;
  });
}

const mono = noise(1);
const stereo = [noise(2), noise(3)];

describe.skipIf(!hasBrowser)('the voice beside the Web Audio of Chromium', () => {
  let audio: OfflineAudio;
  beforeAll(async () => {
    audio = await OfflineAudio.start();
  });
  afterAll(async () => audio?.close());

  /** How far the two differ, to the energy of what Chromium gives, in dB. */
  async function differenceDb(
    opcodes: string,
    channels: readonly Float32Array[],
    graph: Partial<Graph>,
    key = 60,
  ): Promise<number> {
    const samples = { 'a.wav': { channels, rate } };
    const own = play(`<region> sample=a.wav amp_veltrack=0 ${opcodes}`, seconds, { samples, key });
    const theirs = await audio.render({
      channels,
      rate,
      seconds,
      outputRate: rate,
      ...graph,
    });
    let error = 0;
    let energy = 0;
    for (const [channel, values] of [own.left, own.right].entries()) {
      for (const [at, value] of values.entries()) {
        error += (value - theirs[channel][at]) ** 2;
        energy += theirs[channel][at] ** 2;
      }
    }
    expect(energy).toBeGreaterThan(1);
    return 10 * Math.log10(error / energy);
  }

  it('loops alike: no difference at all', async () => {
    const graph = { loop: { start: 1000, end: 1778 } };
    const opcodes = 'loop_mode=loop_continuous loop_start=1000 loop_end=1777';
    expect(await differenceDb(opcodes, stereo, graph)).toBe(Number.NEGATIVE_INFINITY);
  });

  it('has the same gain: within single precision', async () => {
    expect(await differenceDb('volume=-7.5', stereo, { gain: 10 ** (-7.5 / 20) })).toBeLessThan(-140);
  });

  it.each([-100, -60, -25, 0, 10, 75, 100])('pans a mono sample alike at %i', async (pan) => {
    expect(await differenceDb(`pan=${pan}`, [mono], { pan: pan / 100 })).toBeLessThan(-135);
  });

  it.each([-100, -60, 0, 10, 75, 100])('moves a stereo sample alike at position %i', async (position) => {
    expect(await differenceDb(`position=${position}`, stereo, { pan: position / 100 })).toBeLessThan(-135);
  });

  it.each([
    // W3C lets Q of these two be in dB; resonance 0 is −3.01 dB there.
    ['fil_type=lpf_2p cutoff=1200 resonance=0', { type: 'lowpass', hertz: 1200, quality: -3.0103 }],
    ['fil_type=lpf_2p cutoff=300 resonance=18', { type: 'lowpass', hertz: 300, quality: 14.9897 }],
    ['fil_type=lpf_2p cutoff=18000 resonance=6', { type: 'lowpass', hertz: 18000, quality: 2.9897 }],
    ['fil_type=hpf_2p cutoff=2500 resonance=9', { type: 'highpass', hertz: 2500, quality: 5.9897 }],
    ['fil_type=bpf_2p cutoff=2500 resonance=9', { type: 'bandpass', hertz: 2500, quality: 10 ** (9 / 20) }],
    ['fil_type=brf_2p cutoff=2500 resonance=3', { type: 'notch', hertz: 2500, quality: 10 ** (3 / 20) }],
    [
      'fil_type=peq cutoff=2500 resonance=3 fil_gain=9',
      { type: 'peaking', hertz: 2500, quality: 10 ** (3 / 20), gainDb: 9 },
    ],
    ['eq1_type=lshelf eq1_freq=400 eq1_gain=9', { type: 'lowshelf', hertz: 400, gainDb: 9 }],
    ['eq1_type=hshelf eq1_freq=4000 eq1_gain=-12', { type: 'highshelf', hertz: 4000, gainDb: -12 }],
    ['fil_type=lsh cutoff=400 fil_gain=-7', { type: 'lowshelf', hertz: 400, gainDb: -7 }],
    ['fil_type=hsh cutoff=4000 fil_gain=7', { type: 'highshelf', hertz: 4000, gainDb: 7 }],
  ] as const)('filters alike: %s', async (opcodes, biquad) => {
    expect(await differenceDb(`pan=-100 ${opcodes}`, [mono], { biquad, pan: -1 })).toBeLessThan(-100);
  });

  it('plays slower alike, as far as the straight lines of Chromium between frames go', async () => {
    // The error of straight lines at 100 Hz: (π·100/48000)² / 2 of the tone at the most, −93 dB.
    const tone = sine(100, 1, rate);
    const difference = await differenceDb('pan=-100', [tone], { playbackRate: 2 ** (-5 / 12), pan: -1 }, 55);
    expect(difference).toBeLessThan(-85);
  });
});
