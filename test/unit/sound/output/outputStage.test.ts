import { describe, expect, it } from 'vitest';
import { OutputStage } from '../../../../server/sound/output/outputStage';
import { db, engineOf, sine } from '../playing';

const rate = 48000;

/** White noise of full scale, by a linear congruence (Numerical Recipes). */
function noise(frames: number): Float32Array {
  let state = 1;
  return Float32Array.from({ length: frames }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return state < 0 ? -1 : 1;
  });
}

/** Sends a signal through in blocks, both sides alike. */
function through(stage: OutputStage, signal: ArrayLike<number>, block = 128): Float64Array {
  const out = new Float64Array(signal.length);
  for (let from = 0; from < signal.length; from += block) {
    const left = Float64Array.from(Array.prototype.slice.call(signal, from, from + block));
    const right = left.slice();
    stage.process(left, right);
    out.set(left, from);
  }
  return out;
}

/** The greatest magnitude with 16 values a frame, by long windowed sincs: finer than what the limiter looks at. */
function truePeakDb(signal: Float64Array): number {
  let peak = 0;
  for (let at = 32; at < signal.length - 32; at++) {
    for (let part = 0; part < 16; part++) {
      let sum = 0;
      for (let tap = -31; tap <= 32; tap++) {
        const x = tap - part / 16;
        const window = 0.5 + 0.5 * Math.cos((Math.PI * x) / 33);
        sum += signal[at + tap] * (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x)) * window;
      }
      peak = Math.max(peak, Math.abs(sum));
    }
  }
  return db(peak);
}

describe('the way to the ear', () => {
  it('keeps volume=60 on a noise of full scale below −1 dB true peak', () => {
    const engine = engineOf('<region> sample=a.wav volume=60', {
      quality: 'live',
      samples: { 'a.wav': { channels: [noise(rate)], rate } },
    });
    const stage = new OutputStage(rate);
    stage.setGainDb(0);
    engine.noteOn(60, 127);
    const all = new Float64Array(12800);
    for (let from = 0; from < all.length; from += 128) {
      const left = new Float32Array(128);
      const right = new Float32Array(128);
      engine.process(left, right);
      stage.process(left, right);
      all.set(left, from);
    }
    expect(Math.max(...all)).toBeGreaterThan(0.3);
    expect(truePeakDb(all)).toBeLessThan(-1);
  });

  it.each([
    ['a noise', noise(12800)],
    ['a jump', Float64Array.from({ length: 12800 }, (_, at) => (at < 6000 ? 0.01 : 1000))],
    ['a sine whose peaks lie between frames', sine(12000, 0.25, rate, Math.PI / 4).map((value) => value * 2)],
    ['single frames', Float64Array.from({ length: 12800 }, (_, at) => (at % 1500 === 0 ? 40 : 0))],
  ])('keeps %s below −1 dB true peak', (_name, signal) => {
    const stage = new OutputStage(rate);
    stage.setGainDb(0);
    expect(truePeakDb(through(stage, signal))).toBeLessThan(-1);
  });

  it('starts at −12 dB, fades in over 20 ms and leaves what is quiet as it is', () => {
    const stage = new OutputStage(rate);
    const late = stage.delayFrames / rate;
    const out = through(stage, sine(1000, 0.5));
    const peak = (from: number, to: number) => Math.max(...out.subarray(from * rate, to * rate));
    expect(db(peak(0.1, 0.5))).toBeCloseTo(-12, 1);
    // Halfway through the ramp, over one period.
    expect(db(peak(late + 0.0095, late + 0.0105))).toBeCloseTo(-12 + 20 * Math.log10(0.5), 0);
    expect(peak(0, 0.002)).toBe(0);
  });

  it('goes no higher than 0 dB, and there without a jump', () => {
    const stage = new OutputStage(rate);
    stage.setGainDb(40);
    const out = through(
      stage,
      sine(1000, 0.3).map((value) => value * 0.5),
    );
    expect(db(Math.max(...out.subarray(9600)))).toBeCloseTo(20 * Math.log10(0.5), 1);
    const steps = out.subarray(1).map((value, at) => Math.abs(value - out[at]));
    // The steepest step of a sine of 1 kHz at half of full scale.
    expect(Math.max(...steps)).toBeLessThanOrEqual(0.5 * 2 * Math.sin((Math.PI * 1000) / rate) + 1e-3);
  });

  it('falls silent where something is no number, and begins again by fading in', () => {
    const stage = new OutputStage(rate);
    const signal = Float64Array.from(sine(1000, 0.1));
    signal[2000] = Number.NaN;
    const out = through(stage, signal);
    expect(stage.isMuted).toBe(true);
    expect(out.every(Number.isFinite)).toBe(true);
    expect(out.subarray(2000 + stage.delayFrames).every((value) => value === 0)).toBe(true);
    stage.fadeIn();
    expect(Math.max(...through(stage, sine(1000, 0.1)))).toBeGreaterThan(0.2);
  });

  it('comes back within a second from a text that asks for 600 dB', () => {
    const stage = new OutputStage(rate);
    const signal = Float64Array.from({ length: rate * 2 }, (_, at) =>
      at < 1000 ? 1e30 : 0.5 * Math.sin((2 * Math.PI * 1000 * at) / rate),
    );
    const out = through(stage, signal);
    expect(db(Math.max(...out.subarray(rate * 1.5)))).toBeCloseTo(-12 + db(0.5), 0);
  });

  it('takes a constant away', () => {
    const out = through(new OutputStage(rate), new Float64Array(rate * 2).fill(0.5));
    expect(Math.abs(out[rate * 2 - 1])).toBeLessThan(1e-3);
  });
});
