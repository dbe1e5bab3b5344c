import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { measureSamplePitch } from '../../../server/audio/measure/measureSample';
import { pitchOf } from '../../../server/audio/measure/pitch/pitch';
import { temporaryFolder } from '../../temporaryFolder';
import { readerOf } from '../../unit/audio/byteFiles';
import type { ToneKind } from '../../unit/audio/measure/tones';
import { centsAbove, toneAt } from '../../unit/audio/measure/tones';
import { waveBytes } from '../../unit/server/host/waveBytes';

// The same files are measured by a general audio library (aubio, Debian's aubio-tools) and by this project; the truth
// is the frequency that the test computed them with. aubio runs with its default method and a window that holds some
// periods of the lowest key; the median of its frames is its answer.

const hasAubio = spawnSync('aubiopitch', ['--help']).error === undefined;
const folder = temporaryFolder('pitch-tools');

/** Nine keys of each kind of tone, from 28 or 32 in steps of eight: eighteen keys in all. */
const keysOf = (kind: number) => Array.from({ length: 9 }, (_, number) => 28 + 4 * (kind % 2) + 8 * number);
const kinds: [name: string, kind: ToneKind][] = [
  ['harmonic', {}],
  ['dying away', { decays: true }],
  ['of a stiff string', { inharmonicity: 0.0004, decays: true }],
  ['with vibrato', { vibratoCents: 20 }],
  ['under noise', { noiseDb: 20 }],
  ['without their fundamental', { amplitude: (number) => (number === 1 ? 0 : 1 / number) }],
  ['after an attack of noise', { hasAttackNoise: true, decays: true }],
  ['of a stiffer string under noise', { inharmonicity: 0.001, decays: true, noiseDb: 30 }],
];

/** Frames that aubio looks at at a time, and by how many it goes on. */
const [windowFrames, hopFrames] = [4096, 1024];

/** A WAV file of a tone from −1 to 1. */
const wavOf = (samples: Float32Array) => waveBytes(samples.length, (frame) => samples[frame] * 32767);

/** What aubio finds in tones of some seconds each, one behind the other in a file: it takes longer to start than to measure them. */
function byAubio(path: string, count: number, seconds: number, rate: number): number[] {
  const settings = ['-B', String(windowFrames), '-H', String(hopFrames), '-u', 'hertz'];
  const frames = execFileSync('aubiopitch', ['-i', path, ...settings], { encoding: 'utf8' })
    .trim()
    .split('\n')
    .map((line) => line.split(/\s+/).map(Number));
  return Array.from({ length: count }, (_, number) => {
    // Where the window still holds some of the tone before, or already some of the next, the frame is of neither.
    const [from, to] = [number * seconds + windowFrames / rate, (number + 1) * seconds - hopFrames / rate];
    const found = frames
      .flatMap(([at = 0, hertz = 0]) => (at >= from && at <= to && hertz > 0 ? [hertz] : []))
      .sort((a, b) => a - b);
    return found[found.length >> 1] ?? Number.NaN;
  });
}

/** Median and 95th percentile of errors in cents. */
function summary(errors: readonly number[]): { median: number; most: number } {
  const sorted = errors.map((error) => (Number.isNaN(error) ? 9999 : Math.abs(error))).sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))];
  return { median: at(0.5), most: at(0.95) };
}

describe.skipIf(!hasAubio)('pitch against aubio', () => {
  it.each(kinds.map(([name, kind], at) => [name, kind, keysOf(at)] as const))(
    'tones %s: the errors are no greater, and no octave is wrong',
    async (name, kind, keys) => {
      const seconds = 1.5;
      const tones = keys.map((key) => toneAt(key + 0.3, { seconds, ...kind }));
      const rate = tones[0].sampleRate;
      const all = new Float32Array(tones.length * seconds * rate);
      for (const [at, { samples }] of tones.entries()) all.set(samples, at * seconds * rate);
      const path = join(folder, `${name.replaceAll(' ', '-')}.wav`);
      writeFileSync(path, wavOf(all));
      const theirs = byAubio(path, tones.length, seconds, rate).map((found, at) =>
        centsAbove(found, tones[at].hertz),
      );
      const ours: number[] = [];
      for (const { samples, hertz } of tones) {
        const pitch = await measureSamplePitch(readerOf(wavOf(samples)));
        ours.push(centsAbove(pitch?.hertz ?? Number.NaN, hertz));
      }
      const [us, them] = [summary(ours), summary(theirs)];
      if (process.env.ZONEWRIGHT_SHOW_ERRORS) console.log(name, { us, them });
      expect(us.median).toBeLessThanOrEqual(them.median);
      expect(us.most).toBeLessThanOrEqual(them.most);
      expect(Math.max(...ours.map(Math.abs))).toBeLessThan(50);
    },
  );
});

describe('keys of frequencies (ISO 16:1975: A above middle C is 440 Hz; MIDI 1.0: key 69)', () => {
  it('A4 is key 69', () => expect(pitchOf(440, 1)).toMatchObject({ hertz: 440, key: 69, cents: 0 }));

  // Frequencies of equal temperament as they stand in tables of acoustics, rounded to a hundredth of a hertz.
  it.each([
    [27.5, 21],
    [261.63, 60],
    [4186.01, 108],
  ])('%f Hz is key %i', (hertz, key) => {
    const pitch = pitchOf(hertz, 1);
    expect(pitch.key).toBe(key);
    expect(Math.abs(pitch.cents)).toBeLessThan(0.05);
  });
});
