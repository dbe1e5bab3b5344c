import { describe, expect, it } from 'vitest';
import { keyOfNumber, readKeyForm, writeKeyForm } from '../../../../server/vocabulary/forms/keys';

type Form = Omit<Parameters<typeof readKeyForm>[0], 'kind'>;
const read = (form: Form, text: string) => readKeyForm({ kind: 'key', ...form }, text);
const write = (form: Form, key: number) => writeKeyForm({ kind: 'key', ...form }, key);

/** Keys are 0 to 127 (MIDI 1.0); names of key 60 in use are C3, C4 and C5 (common practice), C4 in the open format. */
describe('keys by number', () => {
  it.each<[Form, string, number | undefined]>([
    [{ written: 'number' }, '60', 60],
    [{ written: 'number' }, '0', 0],
    [{ written: 'number' }, '127', 127],
    [{ written: 'number' }, '128', undefined],
    [{ written: 'number' }, '-1', -1],
    [{ written: 'number' }, '-2', undefined],
    [{ written: 'number' }, '60.5', undefined],
    [{ written: 'number' }, '60 dB', undefined],
    [{ written: 'name' }, '0x3C', 60],
    [{ written: 'number', offset: -21 }, '0', 21],
    [{ written: 'number', offset: -21 }, '87', 108],
    [{ written: 'number', offset: 1 }, '61', 60],
  ])('%j: %s', (form, text, key) => {
    expect(read(form, text)).toBe(key);
  });

  it('of -1 are none, and less is not one', () => {
    expect(keyOfNumber(-1, 0)).toBe(-1);
    expect(keyOfNumber(-2, 0)).toBeUndefined();
    expect(keyOfNumber(127, 0)).toBe(127);
    expect(keyOfNumber(128, 0)).toBeUndefined();
    expect(keyOfNumber(0.5, 0)).toBeUndefined();
    expect(keyOfNumber(10, 20)).toBeUndefined();
  });

  it('are written with what is added', () => {
    expect(write({ written: 'number' }, 60)).toBe('60');
    expect(write({ written: 'number', offset: -21 }, 60)).toBe('39');
    expect(write({ written: 'name' }, -1)).toBe('-1');
    expect(write({ written: 'hexadecimal' }, 60)).toBe('0x3C');
    expect(write({ written: 'hexadecimal' }, 5)).toBe('0x05');
    expect(write({ written: 'hexadecimal', offset: 1 }, 60)).toBe('0x3D');
    expect(write({ written: 'hexadecimal', offset: -21 }, 21)).toBe('0x00');
    expect(write({ written: 'hexadecimal' }, -1)).toBe('-1');
    expect(write({ written: 'hexadecimal', offset: 1 }, -1)).toBe('0');
  });
});

describe('keys by note name', () => {
  it.each<[Form, string, number]>([
    [{ written: 'name' }, 'C4', 60],
    [{ written: 'name', middleC: 'C3' }, 'C3', 60],
    [{ written: 'name', middleC: 'C5' }, 'C5', 60],
    [{ written: 'name', middleC: 'C3' }, 'C-2', 0],
    [{ written: 'name', middleC: 'C4' }, 'G9', 127],
    [{ written: 'name', middleC: 'C5' }, 'G10', 127],
    [{ written: 'name' }, 'A4', 69],
    [{ written: 'name' }, 'B4', 71],
    [{ written: 'name' }, 'D#4', 63],
    [{ written: 'name' }, 'F#4', 66],
    [{ written: 'name', naming: 'german' }, 'H4', 71],
    [{ written: 'name', naming: 'german' }, 'B4', 70],
    [{ written: 'name', naming: 'german', middleC: 'C3' }, 'C3', 60],
    [{ written: 'name', naming: 'syllables' }, 'sol4', 67],
    [{ written: 'name', naming: 'syllables', middleC: 'C3' }, 'do3', 60],
    [{ written: 'name', naming: 'lines' }, 'c1', 60],
    [{ written: 'name', naming: 'lines' }, 'b1', 71],
    [{ written: 'name', naming: 'german lines' }, 'h1', 71],
    [{ written: 'name', naming: 'german lines' }, 'b1', 70],
    [{ written: 'name', naming: 'german lines' }, 'C', 36],
  ])('%j: %s is key %d, and back', (form, text, key) => {
    expect(read(form, text)).toBe(key);
    expect(write(form, key)).toBe(text);
  });

  it.each([
    ['c#4', 61],
    ['C♯4', 61],
    ['Db4', 61],
    ['D♭4', 61],
    ['C# 4', 61],
    [' C #4 ', 61],
    ['Cb4', 59],
    ['B#3', 60],
    ['C##4', 62],
    ['Dbb4', 60],
    ['C\u22121', 0],
    ['C1 (36)', 36],
  ])('%s is %d too', (text, key) => {
    expect(read({ written: 'name' }, text)).toBe(key);
  });

  it('with German endings, and beside numbers that are counted from elsewhere', () => {
    expect(read({ written: 'name', naming: 'german' }, 'Cis4')).toBe(61);
    expect(read({ written: 'name', naming: 'german', offset: 1 }, 'C4 (61)')).toBe(60);
    expect(read({ written: 'name', naming: 'german lines', offset: 1 }, 'c1')).toBe(60);
    expect(read({ written: 'name', offset: 1 }, 'C4 (61)')).toBe(60);
  });

  it.each(['', 'H4', 'x', 'C10', 'G#9', 'Cb-1', 'C', 'xC4', 'C4x', 'C###4', 'C123'])(
    'are none in "%s"',
    (text) => {
      expect(read({ written: 'name' }, text)).toBeUndefined();
    },
  );

  it('are none in other texts where names are of other kinds', () => {
    for (const naming of ['german', 'syllables', 'lines', 'german lines'] as const)
      expect(read({ written: 'name', naming }, 'sixty')).toBeUndefined();
  });
});
