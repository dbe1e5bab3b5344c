import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LoopMode } from '../../../server/playing/playable/playableInstrument';
import { SamplePath } from '../../../server/sound/voice/samplePath';
import { constant, db, play, sine } from './playing';

const noise = Float32Array.from({ length: 2000 }, (_, at) => Math.sin(at * at * 0.37) * 0.9);

describe('reading samples', () => {
  it('gives the frames of the file bit for bit at its own pitch', () => {
    const text = '<region> sample=a.wav pan=-100';
    const { left } = play(text, 0.05, { samples: { 'a.wav': { channels: [noise], rate: 48000 } } });
    expect([...left.subarray(0, 2000)]).toEqual([...noise]);
    expect(left.subarray(2000).every((value) => value === 0)).toBe(true);
  });

  it('keeps a sine a fifth down within −100 dB', () => {
    const text = '<region> sample=a.wav pan=-100';
    const { left } = play(text, 0.5, {
      key: 53,
      samples: { 'a.wav': { channels: [sine(10000, 1)], rate: 48000 } },
    });
    const hertz = 10000 * 2 ** (-7 / 12);
    const errors = [...left.subarray(1000, 20000)].map(
      (value, at) => value - Math.sin((2 * Math.PI * hertz * (at + 1000)) / 48000),
    );
    const rms = Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length);
    expect(db(rms * Math.SQRT2)).toBeLessThan(-100);
  });

  it('has the level that velocity, volume and pan say', () => {
    const text = '<region> sample=a.wav volume=-6';
    const { left, right } = play(text, 0.01, { velocity: 64, samples: { 'a.wav': constant() } });
    expect(db(left[100])).toBeCloseTo(-6 + 40 * Math.log10(64 / 127) - 3.0103, 3);
    expect(right[100]).toBeCloseTo(left[100], 12);
  });
});

describe('the path through a sample', () => {
  const settings = fc.record({
    offset: fc.integer({ min: 0, max: 20 }),
    end: fc.integer({ min: 40, max: 99 }),
    loopMode: fc.constantFrom(LoopMode.noLoop, LoopMode.loopContinuous, LoopMode.loopSustain),
    loopType: fc.integer({ min: 0, max: 2 }),
    loopStart: fc.integer({ min: 10, max: 30 }),
    loopEnd: fc.integer({ min: 25, max: 60 }),
    loopCount: fc.integer({ min: -1, max: 3 }),
    crossfadeFrames: fc.constantFrom(0, 0, 4),
    sampleCount: fc.constantFrom(0, 0, 2),
    isReverse: fc.boolean(),
  });

  it('is straight just as far as it says, frame by frame', () => {
    let stretches = 0;
    fc.assert(
      fc.property(settings, fc.integer({ min: -10, max: 150 }), (made, first) => {
        const path = new SamplePath();
        path.begin(made);
        const at = (played: number) => {
          path.locate(played);
          return { frame: path.frame, isMixed: path.partner >= 0 };
        };
        const until = path.straightUntil(first);
        if (until > first) stretches++;
        const start = at(first).frame;
        for (let played = first; played <= Math.min(until, first + 300); played++)
          expect(at(played)).toEqual({ frame: start + played - first, isMixed: false });
        // And no nearer than where a loop forward closes.
        if (until >= first && until < path.length - 1 && made.crossfadeFrames === 0)
          expect(at(until + 1).frame).not.toBe(start + until + 1 - first);
      }),
    );
    expect(stretches).toBeGreaterThan(20);
  });
});
