import { describe, expect, it } from 'vitest';
import { readNumberForm } from '../../../../server/vocabulary/forms/numberForm';
import { velocityForm } from '../../../../server/vocabulary/forms/velocity';

const around = { parameter: '', sampleRate: undefined, frames: undefined, frameOf: () => 0 };
type Form = Omit<Parameters<typeof velocityForm>[0], 'kind'>;

function both(form: Form, parameter: string) {
  const made = velocityForm({ kind: 'velocity', ...form }, parameter);
  return {
    read: (text: string) => made.read(readNumberForm(made, undefined, text), around),
    write: (value: number) => made.write(value, around),
  };
}

/** MIDI 1.0: velocities are 0 to 127; what lies half way belongs to the upper layer (our choice). */
describe('velocities', () => {
  it.each([
    [127, 'lovel', '90', 90],
    [127, 'hivel', '90', 90],
    [127, 'lovel', '0', 0],
    [100, 'lovel', '0', 0],
    [100, 'lovel', '50', 64],
    [100, 'hivel', '50', 63],
    [100, 'hivel', '100', 127],
    [1, 'lovel', '0.25', 32],
    [1, 'hivel', '0.25', 32],
    [1, 'hivel', '0', 0],
    [1, 'lovel', '50 %', 64],
    [100, 'lovel', '50%', 64],
    [255, 'lovel', '255', 127],
  ])('of %d, %s %s is %d', (most, parameter, text, value) => {
    expect(both({ most }, parameter).read(text)).toBe(value);
  });

  it('are none past the ends, and no percentages of other scales', () => {
    for (const parameter of ['lovel', 'hivel']) {
      expect(both({ most: 100 }, parameter).read('101')).toBeNaN();
      expect(both({ most: 100 }, parameter).read('-1')).toBeNaN();
      expect(both({ most: 100 }, parameter).write(-1)).toBeNaN();
      expect(both({ most: 100 }, parameter).write(128)).toBeNaN();
    }
    expect(both({ most: 127 }, 'lovel').read('50%')).toBeNaN();
  });

  it.each([
    [127, 'lovel', 90, 90],
    [100, 'lovel', 127, 100],
    [100, 'hivel', 127, 100],
    [254, 'lovel', 64, 128],
    [1, 'lovel', 0, 0],
  ])('of %d, %s %d is written as %d', (most, parameter, value, written) => {
    expect(both({ most }, parameter).write(value)).toBeCloseTo(written, 12);
  });
});

/** A bound that two layers share is where the next one begins. */
describe('velocities of layers that touch', () => {
  it.each([
    [127, 'lovel', '64', 64],
    [127, 'hivel', '64', 63],
    [127, 'hivel', '127', 127],
    [127, 'hivel', '0', 0],
    [1, 'lovel', '0.5', 64],
    [1, 'hivel', '0.5', 63],
    [1, 'lovel', '0.25', 32],
    [1, 'hivel', '0.25', 31],
    [1, 'hivel', '1', 127],
    [1, 'lovel', '1', 127],
    [1, 'lovel', '0', 0],
    [128, 'lovel', '64', 64],
  ])('of %d, %s %s is %d', (most, parameter, text, value) => {
    expect(both({ most, touching: true }, parameter).read(text)).toBe(value);
  });

  it('are written so that they are read again, and both ends with one number', () => {
    for (const most of [1, 100, 128, 255])
      for (let low = 1; low <= 127; low++) {
        const lower = both({ most, touching: true }, 'hivel');
        const upper = both({ most, touching: true }, 'lovel');
        expect(upper.read(String(upper.write(low)))).toBe(low);
        expect(lower.read(String(lower.write(low - 1)))).toBe(low - 1);
        expect(lower.write(low - 1)).toBeCloseTo(upper.write(low), 9);
      }
  });

  it('reach to the ends', () => {
    expect(both({ most: 100, touching: true }, 'hivel').write(127)).toBe(100);
    expect(both({ most: 100, touching: true }, 'lovel').write(0)).toBe(0);
    expect(both({ most: 127, touching: true }, 'hivel').write(0)).toBe(0.5);
  });
});

/** With a step, a layer begins so much above the end of the one below, as 50 follows 49 of 100. */
describe('velocities of layers a step apart', () => {
  it.each([
    [100, 1, 'lovel', '50', 64],
    [100, 1, 'hivel', '49', 63],
    [100, 1, 'hivel', '100', 127],
    [100, 1, 'lovel', '0', 0],
    [100, 1, 'hivel', '0', 0],
    [1, 0.01, 'lovel', '0.26', 33],
    [1, 0.01, 'hivel', '0.25', 32],
    [100, 1, 'hivel', '99.9', 127],
    [100, 1, 'lovel', '99.9', 127],
  ])('of %d by %d, %s %s is %d', (most, step, parameter, text, value) => {
    expect(both({ most, step }, parameter).read(text)).toBe(value);
  });

  it('are written so that they meet', () => {
    for (let low = 1; low <= 127; low++) {
      const lower = both({ most: 100, step: 1 }, 'hivel');
      const upper = both({ most: 100, step: 1 }, 'lovel');
      expect(upper.read(String(upper.write(low)))).toBe(low);
      const end = lower.write(low - 1);
      // Below the first step there is no lower layer to end.
      if (end > 0) expect(lower.read(String(end))).toBe(low - 1);
      expect(end).toBeCloseTo(Math.max(0, upper.write(low) - 1), 9);
    }
  });

  it('reach to the ends', () => {
    expect(both({ most: 100, step: 1 }, 'hivel').write(127)).toBe(100);
    expect(both({ most: 100, step: 1 }, 'lovel').write(0)).toBe(0);
    expect(both({ most: 100, step: 1 }, 'hivel').write(0)).toBe(0);
  });
});
