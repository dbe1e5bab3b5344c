import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { filterRows, nearestPhases } from '../../../../server/sound/interpolation/windowedSinc';
import { InputWindow, inputFrames, windowFrames } from '../../../../server/sound/kernel/inputWindows';
import { blockFrames, fractions, type Kernel } from '../../../../server/sound/kernel/kernel';
import { kernelWith } from '../../../../server/sound/kernel/kernels';
import { db } from '../playing';

const tables = [8, 16].map((taps) => filterRows(taps, 5, 1, nearestPhases));
const plain = kernelWith(tables, false);
const compiled = kernelWith(tables, true);
const both: readonly Kernel[] = [plain, compiled];

/** Noise up to full scale, the same each time. */
const noise = (at: number) => Math.sin(at * at * 0.37 + at);

for (const { input } of both) {
  for (let at = 0; at < inputFrames; at++) {
    input.left[at] = noise(at);
    input.right[at] = noise(at + 0.5);
  }
}

function fillSound({ sound, mix }: Kernel): void {
  for (let at = 0; at < blockFrames; at++) {
    sound.left[at] = noise(at);
    sound.right[at] = noise(at + 0.5);
    mix.left[at] = at;
    mix.right[at] = -at;
  }
}

const count = fc.integer({ min: 1, max: blockFrames });

/** The greatest difference of two arrays, in dB of full scale. */
function difference(one: Float64Array, other: Float64Array, length = one.length): number {
  let worst = 0;
  for (let at = 0; at < length; at++) worst = Math.max(worst, Math.abs(one[at] - other[at]));
  return db(worst);
}

describe('the compiled kernel', () => {
  it('is compiled here, and the plain one is not', () => {
    expect(compiled.windows).toBeDefined();
    expect(plain.windows).toBeUndefined();
  });

  it('reads what the plain one reads, within −130 dB of full scale', () => {
    const place = fc.record({
      table: fc.constantFrom(0, 1),
      isMono: fc.boolean(),
      first: fc.integer({ min: 0, max: 4000 }),
      fraction: fc.integer({ min: 0, max: fractions - 1 }),
      step: fc.integer({ min: 0, max: 15 * fractions }),
      slope: fc.integer({ min: 0, max: 1000 }),
      count,
    });
    let loudest = 0;
    fc.assert(
      fc.property(place, (made) => {
        for (const kernel of both) {
          const { left, right } = kernel.input;
          const input = { left, right: made.isMono ? left : right };
          const table = kernel.tables[made.table];
          const { first, fraction, step, slope } = made;
          kernel.readTaps(table, input, first, fraction, step, slope, kernel.sound, 0, made.count);
        }
        expect(difference(plain.sound.left, compiled.sound.left, made.count)).toBeLessThan(-130);
        if (!made.isMono)
          expect(difference(plain.sound.right, compiled.sound.right, made.count)).toBeLessThan(-130);
        loudest = Math.max(loudest, ...plain.sound.left.subarray(0, made.count));
      }),
    );
    expect(loudest).toBeGreaterThan(0.9);
  });

  it('mixes what the plain one mixes, and nothing beyond', () => {
    const gain = fc.double({ min: -2, max: 2, noNaN: true });
    const four = fc.tuple(gain, gain, gain, gain);
    fc.assert(
      fc.property(fc.boolean(), four, four, count, fc.nat(), (isMono, now, ends, frames, place) => {
        const from = place % (blockFrames - frames + 1);
        const slopes = ends.map((end, at) => (end - now[at]) / frames);
        const gains = { now: Float64Array.from(now), slopes: Float64Array.from(slopes) };
        for (const kernel of both) {
          fillSound(kernel);
          expect(kernel.mixSound(isMono, gains, from, frames)).toBe(true);
        }
        expect(difference(plain.mix.left, compiled.mix.left)).toBeLessThan(-240);
        expect(difference(plain.mix.right, compiled.mix.right)).toBeLessThan(-240);
        expect(plain.mix.left[from]).not.toBe(from + 0.5);
      }),
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    'does not mix a sound with %d in it, wherever that stands',
    (value) => {
      const gains = { now: Float64Array.of(1, 0, 0, 1), slopes: new Float64Array(4) };
      for (const kernel of both) {
        for (const isMono of [true, false]) {
          for (const at of [0, 1, 2, 3, 4, 62, 124]) {
            fillSound(kernel);
            (isMono ? kernel.sound.left : kernel.sound.right)[at] = value;
            expect(kernel.mixSound(isMono, gains, 0, 125)).toBe(false);
            expect([...kernel.mix.left]).toEqual([...Array(blockFrames).keys()]);
            // Behind the end it is not looked at.
            expect(kernel.mixSound(isMono, gains, 0, Math.max(1, at))).toBe(at > 0);
          }
        }
      }
    },
  );
});

describe('where compiled code is refused', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  // W3C CSP Level 3, section 4.4: a policy without 'wasm-unsafe-eval' has compiling throw.
  it('is in JavaScript', () => {
    class Memory {
      buffer = new ArrayBuffer(1 << 24);
    }
    class Module {
      constructor() {
        throw new Error('Refused to compile or instantiate WebAssembly module');
      }
    }
    vi.stubGlobal('WebAssembly', { Memory, Module });
    expect(kernelWith(tables, true).windows).toBeUndefined();
    vi.stubGlobal('WebAssembly', undefined);
    expect(kernelWith(tables, true).windows).toBeUndefined();
  });
});

describe('windows of the input', () => {
  it('belong to one voice each, and the one taken longest ago is taken next', () => {
    const windows = kernelWith([], true).windows!;
    const places = (compiled.input.left.length - inputFrames) / windowFrames;
    const all = Array.from({ length: places }, () => new InputWindow());
    for (const window of all) {
      windows.claim(window);
      window.end = window.first + windowFrames;
    }
    expect(new Set(all.map(({ place }) => place)).size).toBe(places);
    expect(Math.max(...all.map(({ place }) => place))).toBe(compiled.input.left.length - windowFrames);
    const one = new InputWindow();
    windows.claim(one);
    windows.claim(one);
    expect(one.place).toBe(all[0].place);
    expect(all[0].end).toBe(all[0].first);
    expect(all[1].end).toBe(windowFrames);
    windows.claim(all[0]);
    expect(all[0].place).toBe(all[1].place);
  });
});
