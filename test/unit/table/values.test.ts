import { describe, expect, it } from 'vitest';
import { isAudioFileName } from '../../../server/model/fileNames';
import { notesInFileName, readKey, readKeyRange } from '../../../server/trade/readings/keyReading';
import { readLevel } from '../../../server/trade/readings/levelReading';
import { readLoop } from '../../../server/trade/readings/loopReading';
import { readNumber, readSequence } from '../../../server/trade/readings/numberReading';
import { readPan } from '../../../server/trade/readings/panReading';

const name = (key: number) => ({ number: undefined, named: key });
const number = (key: number) => ({ number: key, named: undefined });

describe('keys', () => {
  it.each([
    ['C4', 60],
    ['c4', 60],
    ['C#4', 61],
    ['C♯4', 61],
    ['Cs4', 61],
    ['Db4', 61],
    ['D♭4', 61],
    ['bb3', 58],
    ['b3', 59],
    ['Cb4', 59],
    ['C-1', 0],
    ['C−1', 0],
    ['C–1', 0],
    ['G9', 127],
    ['F# 3', 54],
    ['C-2', -12],
  ])('reads %s', (text, key) => {
    expect(readKey(text)).toEqual(name(key));
  });

  it.each([
    ['60', 60],
    ['0', 0],
    ['60.0', 60],
    ['60,00', 60],
    [' 127 ', 127],
  ])('reads %s', (text, key) => {
    expect(readKey(text)).toEqual(number(key));
  });

  it('reads a key given in both ways', () => {
    for (const text of ['60 (C4)', 'C4 (60)', 'C4 60', '60/C4', 'C4 [60]'])
      expect(readKey(text), text).toEqual({ number: 60, named: 60 });
  });

  it.each(['', 'C', 'C11', 'A440', '60.5', '1000', '-1', 'C4x', 'soft', '=C4', 'C3-B3'])(
    'refuses %s',
    (text) => {
      expect(readKey(text)).toBeUndefined();
    },
  );

  it.each([
    ['C3-B3', name(48), name(59)],
    ['C-1–G#2', name(0), name(44)],
    ['C-1-C-1', name(0), name(0)],
    ['A0 – C#1', name(21), name(25)],
    ['C3 to B3', name(48), name(59)],
    ['C3..B3', name(48), name(59)],
    ['1..63', number(1), number(63)],
    ['1-63', number(1), number(63)],
    ['36 (C2) - 48 (C3)', { number: 36, named: 36 }, { number: 48, named: 48 }],
  ])('reads the range %s', (text, low, high) => {
    expect(readKeyRange(text)).toEqual({ low, high, single: false });
  });

  it.each(['C3-', '-B3', 'C3-60', '1..', 'C3-B3-C4', '10-20-30'])('refuses the range %s', (text) => {
    expect(readKeyRange(text)).toBeUndefined();
  });

  it('finds note names in file names', () => {
    expect(notesInFileName('Soft C#3 (take 2).wav')).toEqual([49]);
    expect(notesInFileName('felt-soft-C4-1.wav')).toEqual([60]);
    expect(notesInFileName('Bb2.wav')).toEqual([46]);
    expect(notesInFileName('Scale1.wav')).toEqual([]);
  });
});

describe('numbers', () => {
  it.each([
    ['12', 12, undefined],
    ['-3.5', -3.5, undefined],
    ['−3,5', -3.5, undefined],
    ['+4', 4, undefined],
    ['-3.5 dB', -3.5, 'dB'],
    ['-3,5dB', -3.5, 'dB'],
    ['12 ct', 12, 'cents'],
    ['50 %', 50, 'percent'],
    ['-inf', Number.NEGATIVE_INFINITY, undefined],
    ['−∞ dB', Number.NEGATIVE_INFINITY, 'dB'],
    ['.5', 0.5, undefined],
    ['1,234.5', 1234.5, undefined],
    ['1.234,5', 1234.5, undefined],
    ['120 ms', 120, 'ms'],
  ])('reads %s', (text, value, unit) => {
    expect(readNumber(text)).toEqual({ number: value, unit });
  });

  it('takes marks between groups of three digits for thousands in whole numbers', () => {
    expect(readNumber('44,100', 'frames')?.number).toBe(44100);
    expect(readNumber('1.234.567', 'frames')?.number).toBe(1234567);
    expect(readNumber('44 100', 'frames')?.number).toBe(44100);
    expect(readNumber('44,100')?.number).toBe(44.1);
  });

  it.each(['', 'abc', '1 2x', '1-2', '=1+1', '1e5', '12 apples', '1,2,3', '--1'])('refuses %s', (text) => {
    expect(readNumber(text)).toBeUndefined();
  });

  it.each([
    ['L50', -50],
    ['R20', 20],
    ['50L', -50],
    ['20 R', 20],
    ['C', 0],
    ['centre', 0],
    ['-100', -100],
    ['30 %', 30],
    ['left', -100],
  ])('reads the pan position %s', (text, pan) => {
    expect(readPan(text)).toBe(pan);
  });

  it('reads levels', () => {
    expect(readLevel('-6', 'dB', false)).toEqual({ decibels: -6, how: undefined });
    expect(readLevel('6', 'dB', true)).toEqual({ decibels: -6, how: undefined });
    expect(readLevel('-inf', 'dB', false)).toMatchObject({ decibels: -144, how: expect.any(String) });
    expect(readLevel('12 dB', 'dB', false)).toMatchObject({ decibels: 6, how: expect.any(String) });
    // Half of the amplitude is 20 · log10(0.5) = −6.02 dB (the definition of the decibel for field quantities).
    expect(readLevel('50 %', 'dB', false)).toMatchObject({ decibels: -6.02 });
    expect(readLevel('loud', 'dB', false)).toHaveProperty('fault');
  });

  it('reads loops', () => {
    for (const text of ['on', 'Yes', '1', '✓', 'x', 'Forward', 'loop_continuous'])
      expect(readLoop(text)?.mode, text).toBe('loop_continuous');
    for (const text of ['off', 'No', '0', 'none', '-', 'no_loop'])
      expect(readLoop(text)?.mode, text).toBe('no_loop');
    expect(readLoop('one-shot')?.mode).toBe('one_shot');
    expect(readLoop('sustain')?.mode).toBe('loop_sustain');
    expect(readLoop('alternating')).toMatchObject({ mode: 'loop_continuous', type: 'alternate' });
    expect(readLoop('1000-44099')).toMatchObject({
      mode: undefined,
      start: { number: 1000 },
      second: { number: 44099 },
      secondIs: 'end',
    });
    expect(readLoop('maybe')).toBeUndefined();
  });

  it('reads round robin positions', () => {
    expect(readSequence('2')).toEqual({ position: 2, length: undefined });
    expect(readSequence('2/4')).toEqual({ position: 2, length: 4 });
    expect(readSequence('RR3')).toEqual({ position: 3, length: undefined });
    expect(readSequence('two')).toBeUndefined();
  });

  it('knows audio files by their endings', () => {
    expect(['a.wav', 'b.AIFF', 'c d.flac', 'x.y.ogg'].every(isAudioFileName)).toBe(true);
    expect(['a', '.wav', 'a.txt', 'a.wav.bak', 'wav'].some(isAudioFileName)).toBe(false);
  });
});
