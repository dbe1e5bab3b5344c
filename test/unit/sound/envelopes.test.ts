import { describe, expect, it } from 'vitest';
import { constant, db, play } from './playing';

const rate = 48000;
const samples = { 'one.wav': constant(4) };
const base = '<region> sample=one.wav pan=-100 amp_veltrack=0';

/** The gain of each frame. */
function gains(opcodes: string, seconds = 1, hold?: number): Float64Array {
  return play(`${base} ${opcodes}`, seconds, { samples, ...(hold !== undefined && { hold }) }).left;
}

/** The first frame at which something holds. */
const first = (values: Float64Array, holds: (value: number) => boolean) => values.findIndex(holds);

// Public SFZ documentation: ampeg_attack, ampeg_decay_zero, ampeg_release_zero, envelope generators.
describe('the amplitude envelope, to the frame', () => {
  it('waits for its delay, attacks in a straight line, holds, falls and stays', () => {
    const all = gains('ampeg_delay=0.01 ampeg_attack=0.02 ampeg_hold=0.03 ampeg_decay=0.9 ampeg_sustain=50');
    expect(first(all, (value) => value > 0)).toBe(0.01 * rate + 1);
    expect(all[0.02 * rate]).toBeCloseTo(0.5, 12);
    expect(first(all, (value) => value >= 1 - 1e-12)).toBe(0.03 * rate);
    expect(first(all.subarray(0.03 * rate), (value) => value < 1 - 1e-12)).toBe(0.03 * rate + 1);
    // 90 dB in 0.9 s: the 6.02 dB down to 50 % take 60.2 ms.
    const down = Math.round((0.9 * 20 * Math.log10(2) * rate) / 90);
    const reached = first(all.subarray(0.06 * rate), (value) => value <= 0.5);
    expect(Math.abs(reached - down)).toBeLessThanOrEqual(1);
    expect(all[0.8 * rate]).toBe(0.5);
  });

  it('falls by 90 dB in the stated time, evenly in dB, and is then silent', () => {
    const all = gains('ampeg_decay=0.5 ampeg_sustain=0');
    for (const share of [0.1, 0.5, 0.9, 0.99]) {
      expect(db(all[Math.round(0.5 * share * rate)])).toBeCloseTo(-90 * share, 8);
    }
    expect(all[0.5 * rate - 1]).toBeGreaterThan(0);
    expect(all[0.5 * rate]).toBe(0);
  });

  it('takes the whole time to a sustain level where ampeg_decay_zero=0', () => {
    const all = gains('ampeg_decay=0.5 ampeg_sustain=30 ampeg_decay_zero=0');
    expect(first(all, (value) => value <= 0.3 + 1e-12)).toBe(0.5 * rate);
  });

  it('lets go from whatever level it has, over the whole time', () => {
    const all = gains('ampeg_attack=0.4 ampeg_release=0.3', 1, 0.1);
    expect(all[0.1 * rate]).toBeCloseTo(0.25, 3);
    expect(db(all[0.25 * rate] / all[0.1 * rate])).toBeCloseTo(-45, 8);
    expect(all[0.4 * rate - 1]).toBeGreaterThan(0);
    expect(all[0.4 * rate]).toBe(0);
  });

  it('falls at the rate of a whole fall where ampeg_release_zero=1', () => {
    const all = gains('ampeg_sustain=10 ampeg_release=0.9 ampeg_release_zero=1', 2, 0.1);
    // From −20 dB on, 70 dB are left of 90.
    const end = Math.round((0.1 + (0.9 * 70) / 90) * rate);
    expect(Math.abs(first(all, (value) => value === 0) - end)).toBeLessThanOrEqual(1);
  });

  it('is the same whatever blocks it is asked for in', () => {
    const acts = [0.0101, 0.0333, 0.0777].map((at) => [at, () => {}] as [number, () => void]);
    const text = `${base} ampeg_attack=0.02 ampeg_decay=0.3 ampeg_sustain=20 ampeg_release=0.2`;
    const whole = play(text, 0.5, { samples, hold: 0.2 }).left;
    expect(play(text, 0.5, { samples, hold: 0.2, acts }).left).toEqual(whole);
  });
});

describe('how a voice ends before its time', () => {
  const note = (at: number): [number, (engine: { noteOn(key: number, velocity: number): void }) => void] => [
    at,
    (engine) => engine.noteOn(60, 1),
  ];

  it.each([
    // 90 dB in 6 ms, or in the time of off_time.
    ['off_mode=fast', 0.006],
    ['off_mode=time off_time=0.05', 0.05],
    ['off_mode=normal ampeg_release=0.08', 0.08],
  ])('%s', (opcodes, seconds) => {
    const text = `<region> sample=one.wav pan=-100 amp_veltrack=0 group=1 off_by=2 hivel=127 lovel=2 ${opcodes}\n<region> sample=*silence group=2 lovel=1 hivel=1`;
    const { left } = play(text, 0.5, { samples, acts: [note(0.1)] });
    expect(left[0.1 * rate - 1]).toBe(1);
    expect(db(left[Math.round((0.1 + seconds / 2) * rate)])).toBeCloseTo(-45, 6);
    expect(left[Math.round((0.1 + seconds) * rate)]).toBe(0);
  });

  it('delays sample and envelopes alike by delay', () => {
    const { left } = play(`${base} delay=0.05 ampeg_attack=0.1`, 0.3, { samples });
    expect(first(left, (value) => value > 0)).toBe(0.05 * rate + 1);
    expect(left[0.1 * rate]).toBeCloseTo(0.5, 12);
  });

  it('takes rt_decay off a release region for each second of holding', () => {
    const text = '<region> sample=one.wav pan=-100 amp_veltrack=0 trigger=release rt_dead=on rt_decay=12';
    const { left } = play(text, 1, { samples, hold: 0.5 });
    expect(left[0.5 * rate - 1]).toBe(0);
    expect(db(left[0.6 * rate])).toBeCloseTo(-6, 2);
  });
});
