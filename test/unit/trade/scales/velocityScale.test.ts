import { describe, expect, it } from 'vitest';
import { numbersOf } from '../../../../server/trade/scales/numbers';
import { velocityScale } from '../../../../server/trade/scales/velocityScale';

const judged = (numbers: number[], areLayered = true, inPercent = false) =>
  velocityScale({ all: numbersOf(numbers), areLayered, inPercent });

/** MIDI 1.0 counts velocities from 0 to 127; what other ends tell is common practice, the rest our choice, told as open. */
describe('velocities', () => {
  it.each([
    [127, [1, 63, 64, 127], false],
    [127, [1, 101], false],
    [127, [0, 90], false],
    [127, [2, 90], false],
    [127, [0, 45.5, 90], true],
    [127, [1, 40, 41, 100], true],
    [1, [0, 0.5, 1], true],
    [1, [0, 1], true],
    [1, [1, 1], true],
    [128, [1, 64, 65, 128], true],
    [255, [0, 127, 128, 255], true],
    [255, [0, 129], true],
    [256, [1, 256], true],
    [100, [0, 49.5, 100], true],
    [100, [1, 49.5, 100], true],
    [100, [0, 40, 41, 100], true],
  ])('count to %d in %j', (scale, numbers, isOpen) => {
    expect(judged(numbers)).toMatchObject({ scale, isOpen });
  });

  it('count to 100 from 0 only where layers say so', () => {
    expect(judged([0, 100], true)).toMatchObject({ scale: 100, others: [127] });
    expect(judged([0, 100], false)).toMatchObject({ scale: 127, others: [100], isOpen: true });
  });

  it('count to 100 as percentages, however low they are', () => {
    expect(judged([0, 1], true, true)).toMatchObject({ scale: 100, isOpen: true, others: [127, 1] });
    expect(judged([0, 100], false, true).reason).toMatch(/percent/);
  });

  it('are surer of 0 and 1 where both occur', () => {
    expect(judged([0, 1]).confidence).toBeGreaterThan(judged([1, 1]).confidence);
    expect(judged([0, 1]).confidence).toBeGreaterThan(judged([0, 0]).confidence);
    expect(judged([0, 0.5]).confidence).toBeGreaterThan(judged([0, 1]).confidence);
  });

  it.each([
    [[0, 0.5], [127], /0 to 1/],
    [[0, 1], [127, 100], /Only 0 and 1.*lowest of 127/],
    [[0, 200], [127], /greatest is 200/],
    [[0, 128], [127], /greatest is 128/],
    [[0, 120], [100], /greatest is 120/],
    [[0, 90], [100], /greatest is 90, and MIDI counts velocities up to 127/],
    [[0, 49.5, 100], [127], /greatest is 100, and there are fractions/],
    [[0, 100], [127], /from 0 to 100 in layers, which could be percentages/],
    [[1, 100], [100], /from 1 to 100, and MIDI counts velocities up to 127/],
  ])('of %j could be %j too', (numbers, others, reason) => {
    const reading = judged(numbers);
    expect(reading.others).toEqual(others);
    expect(reading.reason).toMatch(reason);
  });

  it('speak of layers only where there are some', () => {
    expect(judged([0, 100], false).reason).toMatch(/from 0 to 100, which could be/);
  });
});
