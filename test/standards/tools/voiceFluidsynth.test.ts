import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import type { Rendered } from '../../unit/sound/playing';
import { play } from '../../unit/sound/playing';
import { hasTools } from './soundFiles';
import type { Generators } from './soundFontFile';
import { absoluteCents, fluidsynth, Generator, soundFont, timecents } from './soundFontFile';

const rate = 48000;
/** A sine of 1 kHz, 48 frames a period, of a quarter of full scale; the loop takes whole periods. */
const frames = Array.from({ length: 4816 }, (_, at) =>
  Math.round(8000 * Math.sin((2 * Math.PI * (at - 8)) / 48)),
);
const sample = { channels: [Float32Array.from(frames, (value) => value / 32768)], rate };
const looped = 'sample=a.wav loop_mode=loop_continuous loop_start=8 loop_end=4807';

/** The level of a stretch of 2 ms, two periods at 1 kHz, around a time in dB. */
function levelDb(values: ArrayLike<number>, seconds: number, window = 0.002): number {
  const start = Math.round((seconds - window / 2) * rate);
  let energy = 0;
  for (let at = start; at < start + window * rate; at++) energy += values[at] ** 2;
  return 10 * Math.log10((2 * energy) / (window * rate));
}

// SoundFont Technical Specification 2.01 and, where it leaves something open, what fluidsynth was measured to do.
describe.skipIf(!hasTools('fluidsynth'))('the voice beside fluidsynth', () => {
  let folder: string;
  beforeAll(() => {
    folder = temporaryFolder('voice');
  });

  interface Note {
    key?: number;
    velocity?: number;
    hold?: number;
    seconds?: number;
  }

  function both(opcodes: string, generators: Generators, note: Note = {}): [own: Rendered, theirs: Rendered] {
    const { key = 60, velocity = 127, hold = 10, seconds = 1 } = note;
    const text = `<region> ${looped} ${opcodes}`;
    const own = play(text, seconds, { samples: { 'a.wav': sample }, key, velocity, hold });
    const font = soundFont(frames, rate, generators);
    const [left, right] = fluidsynth(
      folder,
      font,
      { key, velocity, holdSeconds: Math.min(hold, seconds), seconds },
      rate,
    );
    return [own, { left: Float64Array.from(left), right: Float64Array.from(right) }];
  }

  /** What the plain sample sounds like in both, so that levels are compared within each. */
  let plain: [Rendered, Rendered];
  beforeAll(() => {
    plain = both('', []);
  });

  /** How far the levels differ at times, in dB, each to that of its own plain sample. */
  function differences([own, theirs]: [Rendered, Rendered], times: readonly number[]): number[] {
    return times.map((time) => {
      const ownDb = levelDb(own.left, time) - levelDb(plain[0].left, 0.5);
      const theirDb = levelDb(theirs.left, time) - levelDb(plain[1].left, 0.5);
      return ownDb - theirDb;
    });
  }

  const worst = (values: readonly number[]) => Math.max(...values.map(Math.abs));

  it('plays the sample that the test wrote', () => {
    expect(levelDb(plain[1].left, 0.5)).toBeGreaterThan(-30);
  });

  it('follows velocity alike: 40·log10(v / 127) dB', () => {
    // Its levels go in steps of a tenth of a dB.
    for (const velocity of [1, 20, 64, 100, 126]) {
      expect(worst(differences(both('', [], { velocity }), [0.3]))).toBeLessThan(0.06);
    }
  });

  it('attacks alike: straight in amplitude', () => {
    const times = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3];
    const pair = both('ampeg_attack=0.25', [[Generator.attack, timecents(0.25)]]);
    expect(worst(differences(pair, times))).toBeLessThan(0.1);
  });

  it('decays alike: straight in dB, down to the sustain level', () => {
    // Its decay takes 96 dB in the stated time (measured), this one 90.
    const pair = both(`ampeg_decay=${(1 * 90) / 96} ampeg_sustain=${100 * 10 ** (-20 / 20)}`, [
      [Generator.decay, timecents(1)],
      [Generator.sustain, 200],
    ]);
    // It moves on in blocks of 64 frames, an eighth of a dB each.
    expect(worst(differences(pair, [0.05, 0.1, 0.15]))).toBeLessThan(0.35);
    // Its sustain comes out at −19.1 dB.
    expect(worst(differences(pair, [0.5]))).toBeLessThan(1);
  });

  it('releases alike: straight in dB from wherever it is', () => {
    const pair = both(`ampeg_release=${(1 * 90) / 96}`, [[Generator.release, timecents(1)]], { hold: 0.2 });
    expect(worst(differences(pair, [0.3, 0.5, 0.7, 0.9]))).toBeLessThan(0.3);
  });

  it('turns attenuation into level, at the 0.4 of the first hardware', () => {
    expect(worst(differences(both('volume=-8', [[Generator.attenuation, 200]]), [0.3]))).toBeLessThan(0.05);
  });

  it.each([0, 60, 100])('filters alike at the cutoff and away from it, Q %i cB', (q) => {
    // Its filter lowers what passes by half of Q; the level at 50 Hz tells by how much.
    const shape = (opcodes: string, generators: Generators, hertz: number): [number, number] => {
      const key = 60 + 12 * Math.log2(hertz / 1000);
      const [own, theirs] = both(opcodes, generators, { key: Math.round(key) });
      return [levelDb(own.left, 0.5, 0.1), levelDb(theirs.left, 0.5, 0.1)];
    };
    const opcodes = `cutoff=1000 resonance=${q / 10}`;
    const generators: Generators = [
      [Generator.filterCutoff, absoluteCents(1000)],
      [Generator.filterQ, q],
    ];
    const [ownLow, theirLow] = shape(opcodes, generators, 62.5);
    for (const hertz of [500, 1000, 2000, 4000]) {
      const [own, theirs] = shape(opcodes, generators, hertz);
      // Far above the cutoff its interpolation of the sample takes away a little.
      expect(Math.abs(own - ownLow - (theirs - theirLow))).toBeLessThan(hertz < 4000 ? 0.15 : 0.4);
    }
  });

  it.each([-500, -200, 0, 350, 500])('pans alike at %i', (pan) => {
    const [own, theirs] = both(`pan=${pan / 5}`, [[Generator.pan, pan]]);
    const ratio = ({ left, right }: Rendered) =>
      Math.atan2(10 ** (levelDb(right, 0.5) / 20), 10 ** (levelDb(left, 0.5) / 20));
    expect(Math.abs(ratio(own) - ratio(theirs))).toBeLessThan(0.01);
  });

  it('tunes alike: a key, semitones and cents', () => {
    const generators: Generators = [
      [Generator.coarseTune, -2],
      [Generator.fineTune, 37],
    ];
    const [own, theirs] = both('transpose=-2 tune=37', generators, { key: 65 });
    const hertz = ({ left }: Rendered) => {
      let product = 0;
      let energy = 0;
      for (let at = 9600; at < 38400; at++) {
        product += left[at] * (left[at - 1] + left[at + 1]);
        energy += 2 * left[at] ** 2;
      }
      return (Math.acos(product / energy) * rate) / (2 * Math.PI);
    };
    expect(Math.abs(1200 * Math.log2(hertz(own) / hertz(theirs)))).toBeLessThan(0.05);
  });
});
