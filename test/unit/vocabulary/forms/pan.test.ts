import { describe, expect, it } from 'vitest';
import { readNumberForm } from '../../../../server/vocabulary/forms/numberForm';
import { panForm } from '../../../../server/vocabulary/forms/pan';

const around = { parameter: 'pan', sampleRate: undefined, frames: undefined, frameOf: () => 0 };
type Form = Omit<Parameters<typeof panForm>[0], 'kind'>;

function both(form: Form) {
  const made = panForm({ kind: 'pan', ...form });
  return {
    made,
    read: (text: string) => made.read(readNumberForm(made, undefined, text), around),
    write: (value: number) => made.write(value, around),
  };
}

const sides = { left: 'L', centre: 'C', right: 'R' };

/** sfzformat.com: pan goes from -100 (left) to 100 (right). */
describe('pan', () => {
  it.each<[string, Form, string, number]>([
    ['seven bits', { left: 0, centre: 64, right: 127 }, '0', -100],
    ['seven bits', { left: 0, centre: 64, right: 127 }, '32', -50],
    ['seven bits', { left: 0, centre: 64, right: 127 }, '64', 0],
    ['seven bits', { left: 0, centre: 64, right: 127 }, '127', 100],
    ['a share', { left: 0, centre: 0.5, right: 1 }, '0.75', 50],
    ['turned round', { left: 1, centre: 0, right: -1 }, '0.25', -25],
    ['turned round', { left: 1, centre: 0, right: -1 }, '-0.5', 50],
    // To a millionth: a third of the way.
    ['thirds', { left: -3, centre: 0, right: 3 }, '1', 33.333_333],
    ['percent', { left: -100, centre: 0, right: 100 }, '50 %', 50],
  ])('of %s: %j, %s is %d', (_, form, text, value) => {
    const { read, write } = both(form);
    expect(read(text)).toBe(value);
    expect(write(value)).toBeCloseTo(Number.parseFloat(text), 5);
  });

  it('does not go past its ends', () => {
    const { read, write } = both({ left: 0, centre: 64, right: 127 });
    expect(read('128')).toBeNaN();
    expect(read('-1')).toBeNaN();
    expect(write(101)).toBeNaN();
    expect(write(-101)).toBeNaN();
    expect(write(100)).toBe(127);
    expect(write(-100)).toBe(0);
  });

  it.each([
    ['L', -100],
    ['l', -100],
    ['R', 100],
    ['C', 0],
    [' c ', 0],
    ['C0', 0],
    ['C5', Number.NaN],
    ['50L', -50],
    ['50 L', -50],
    ['L50', -50],
    ['R 25', 25],
    ['R2,5', 2.5],
    ['50 % R', 50],
    ['R50%', 50],
    ['-30', -30],
    ['X', Number.NaN],
    ['50X', Number.NaN],
    ['L50R', Number.NaN],
  ])('with letters for the sides, "%s" is %d', (text, value) => {
    expect(both({ left: -100, centre: 0, right: 100, sides }).read(text)).toBe(value);
  });

  it('counts beside letters from its centre, whichever end is the lower', () => {
    const plain = both({ left: 0, centre: 64, right: 127, sides });
    expect(plain.read('32L')).toBe(-50);
    expect(plain.read('63R')).toBe(100);
    expect(plain.read('L')).toBe(-100);
    expect(plain.read('C')).toBe(0);
    const turned = both({ left: 1, centre: 0, right: -1, sides });
    expect(turned.read('0.5L')).toBe(-50);
    expect(turned.read('0.5R')).toBe(50);
  });

  it('is written with the letter behind or before the number', () => {
    const behind = both({ left: -100, centre: 0, right: 100, sides }).made;
    expect(behind.writeText?.('-50')).toBe('50L');
    expect(behind.writeText?.('50')).toBe('50R');
    expect(behind.writeText?.('0')).toBe('C');
    expect(behind.writeText?.('-50 %')).toBe('50 %L');
    const before = both({ left: 0, centre: 64, right: 127, sides, sidesStand: 'before' }).made;
    expect(before.writeText?.('32')).toBe('L32');
    expect(before.writeText?.('127')).toBe('R63');
    const turned = both({ left: 1, centre: 0, right: -1, sides }).made;
    expect(turned.writeText?.('0.5')).toBe('0.5L');
    expect(turned.writeText?.('-0.5')).toBe('0.5R');
  });

  it('says its unit in the format, and reads letters only where it has some', () => {
    const { made } = both({ left: -1, centre: 0, right: 1 });
    expect(made).toMatchObject({ unit: '%', needsSurroundings: false });
    expect(made.readText).toBeUndefined();
  });
});
