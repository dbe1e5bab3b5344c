import { describe, expect, it } from 'vitest';
import type { SampleFacts } from '../../../server/model/samples';
import { readSfz } from '../../../server/sfz/read';
import { soundOf } from '../../../server/sound/program/soundOf';
import { constant, db, play, sine } from './playing';

const rate = 48000;
const ramp = Float32Array.from({ length: 1000 }, (_, at) => at / 1000);
const samples = {
  'one.wav': constant(1),
  'ramp.wav': { channels: [ramp], rate },
  'both.wav': { channels: [new Float32Array(rate).fill(1), new Float32Array(rate).fill(0.5)], rate },
  'tone.wav': { channels: [sine(1000, 1)], rate },
};
const flat = 'pan=-100 amp_veltrack=0';

/** The frames of the ramp that sound, from one frame of output to another. */
function frames(opcodes: string, from: number, count: number): number[] {
  const { left } = play(`<region> sample=ramp.wav ${flat} ${opcodes}`, 0.1, { samples });
  return [...left.subarray(from, from + count)].map((value) => Math.round(value * 1000));
}

describe('what documents leave open', () => {
  it('pans a stereo sample by turning the far side down', () => {
    const { left, right } = play('<region> sample=both.wav amp_veltrack=0 pan=50', 0.01, { samples });
    expect([left[100], right[100]]).toEqual(
      [Math.cos(Math.PI / 4), 0.5].map((value) => expect.closeTo(value, 12)),
    );
  });

  it('takes width first, then position, then pan', () => {
    // Made mono by width, the sum of both sides stays at the side that pan leaves.
    const { left, right } = play('<region> sample=both.wav amp_veltrack=0 width=0 pan=100', 0.01, {
      samples,
    });
    expect([left[100], right[100]]).toEqual([expect.closeTo(0, 12), expect.closeTo(0.75, 12)]);
    const moved = play('<region> sample=both.wav amp_veltrack=0 position=100 pan=-100', 0.01, { samples });
    expect([moved.left[100], moved.right[100]]).toEqual([expect.closeTo(0, 12), expect.closeTo(0, 12)]);
  });

  it('takes 60 for a root key that the file does not name, and the fraction of one that it names', () => {
    const instrument = readSfz('<region> sample=a.wav pitch_keycenter=sample', { path: 'a.sfz' });
    const rootOf = (facts: Partial<SampleFacts>) =>
      soundOf(instrument, {
        samples: {
          state: () => ({
            kind: 'file',
            reading: { kind: 'facts', facts: { loops: [], ...facts } as unknown as SampleFacts },
          }),
        },
      }).rootKey[0];
    expect(rootOf({ rootKey: null, fineTuneCents: null })).toBe(60);
    expect(rootOf({ rootKey: 48, fineTuneCents: 25 })).toBe(48.25);
  });

  it('keeps cutoff frequencies where filters are what they are named', () => {
    // At the highest cutoff, 0.45 of the rate, a low pass lets 1 kHz through; at the lowest, 20 Hz, it falls by 12 dB an octave.
    const level = (opcodes: string) => {
      const { left } = play(`<region> sample=tone.wav ${flat} ${opcodes}`, 0.6, { samples });
      return db(Math.max(...left.subarray(rate * 0.5)));
    };
    expect(level('cutoff=90000')).toBeCloseTo(0, 1);
    expect(level('cutoff=1')).toBeCloseTo(level('cutoff=20'), 6);
  });

  it('plays counted loops of all types to their end', () => {
    const loop = 'loop_mode=loop_continuous loop_start=100 loop_end=104 loop_count=1';
    expect(frames(`${loop} loop_type=forward`, 103, 9)).toEqual([
      103, 104, 100, 101, 102, 103, 104, 105, 106,
    ]);
    // Turning points sound once; an alternating loop ends at its last frame.
    expect(frames(`${loop} loop_type=alternate`, 103, 12)).toEqual([
      103, 104, 103, 102, 101, 100, 101, 102, 103, 104, 105, 106,
    ]);
    expect(frames(`${loop} loop_type=backward`, 103, 9)).toEqual([
      103, 104, 103, 102, 101, 100, 105, 106, 107,
    ]);
    expect(frames(`${loop.replace('count=1', 'count=2')} loop_type=backward`, 103, 13)).toEqual([
      103, 104, 103, 102, 101, 100, 104, 103, 102, 101, 100, 105, 106,
    ]);
  });

  it('plays the stretch between offset and end backwards, its loop too', () => {
    expect(frames('direction=reverse offset=100 end=200', 0, 3)).toEqual([200, 199, 198]);
    expect(frames('direction=reverse offset=100 end=200', 99, 4)).toEqual([101, 100, 0, 0]);
    const loop = 'direction=reverse end=200 loop_mode=loop_continuous loop_start=190 loop_end=194';
    expect(frames(loop, 8, 8)).toEqual([192, 191, 190, 194, 193, 192, 191, 190]);
  });

  it('mixes no more than there is before the loop', () => {
    const text = 'loop_mode=loop_continuous loop_start=50 loop_end=249 loop_crossfade=10';
    // 50 frames before the loop: in the last one the frame before its start alone sounds.
    expect(frames(text, 198, 2)).toEqual([198, 199]);
    expect(frames(text, 249, 2)).toEqual([49, 50]);
  });

  it('numbers curves without an index on from 7', () => {
    const curves = '<curve> v000=0.5\n<curve> curve_index=20 v000=0.25\n<curve> v000=0.75\n';
    for (const [number, gain] of [
      [7, 0.5],
      [20, 0.25],
      [21, 0.75],
    ]) {
      const text = `${curves}<region> sample=one.wav ${flat} amplitude_oncc1=100 amplitude_curvecc1=${number}`;
      expect(play(text, 0.01, { samples }).left[100]).toBeCloseTo(gain, 12);
    }
  });

  it('starts and ends within a millisecond without a step, in live quality alone', () => {
    const text = `<region> sample=one.wav ${flat} ampeg_release=0`;
    const live = play(text, 0.1, { samples, hold: 0.05, quality: 'live' }).left;
    expect([live[0], live[24], live[48]]).toEqual([0, 0.5, 1].map((value) => expect.closeTo(value, 6)));
    expect(live[0.05 * rate + 1]).toBeGreaterThan(0.5);
    expect(live[0.051 * rate]).toBe(0);
    const reference = play(text, 0.1, { samples, hold: 0.05 }).left;
    expect([reference[0], reference[0.05 * rate - 1], reference[0.05 * rate]]).toEqual([1, 1, 0]);
  });

  it('moves what is moved in straight lines of 8 frames, of 32 in live quality', () => {
    for (const [quality, length] of [
      ['reference', 8],
      ['live', 32],
    ] as const) {
      const text = `<region> sample=one.wav ${flat} lfo1_freq=40 lfo1_volume=12`;
      const { left } = play(text, 0.02, { samples, quality });
      const bends = [...left.keys()].filter(
        (at) => at > 96 && at < 900 && Math.abs(left[at + 1] - 2 * left[at] + left[at - 1]) > 1e-9,
      );
      expect(bends.length).toBeGreaterThan(10);
      expect(bends.every((at) => at % length === 0)).toBe(true);
    }
  });
});
