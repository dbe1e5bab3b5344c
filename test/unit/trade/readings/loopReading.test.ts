import { describe, expect, it } from 'vitest';
import { readLoop } from '../../../../server/trade/readings/loopReading';

const number = (value: number, unit?: string) => ({ number: value, unit });

/** Loop modes and types as the open format names them (sfzformat.com: loop_mode, loop_type); words are common practice. */
describe('a loop that is switched', () => {
  it.each([
    ['on', 'loop_continuous', undefined],
    ['yes', 'loop_continuous', undefined],
    ['1', 'loop_continuous', undefined],
    ['✓', 'loop_continuous', undefined],
    [' on ', 'loop_continuous', undefined],
    ['off', 'no_loop', undefined],
    ['0', 'no_loop', undefined],
    ['one shot', 'one_shot', undefined],
    ['sustain', 'loop_sustain', undefined],
    ['↔', 'loop_continuous', 'alternate'],
    ['←', 'loop_continuous', 'backward'],
  ])('by "%s"', (text, mode, type) => {
    expect(readLoop(text)).toEqual({ mode, type, start: undefined, second: undefined, secondIs: 'end' });
  });
});

describe('a loop of two points', () => {
  it.each([
    ['1000-2000', 'end', 1000, 2000],
    ['1000 - 2000', 'end', 1000, 2000],
    ['1000–2000', 'end', 1000, 2000],
    ['1000—2000', 'end', 1000, 2000],
    ['1000\u22122000', 'end', 1000, 2000],
    ['1000..2000', 'end', 1000, 2000],
    ['1000...2000', 'end', 1000, 2000],
    ['1000…2000', 'end', 1000, 2000],
    ['1000→2000', 'end', 1000, 2000],
    ['1000~2000', 'end', 1000, 2000],
    ['1000 to 2000', 'end', 1000, 2000],
    ['1000 bis 2000', 'end', 1000, 2000],
    ['1000+2000', 'length', 1000, 2000],
    ['1000 + 2000', 'length', 1000, 2000],
    ['1000 len 2000', 'length', 1000, 2000],
    ['1000 len. 2000', 'length', 1000, 2000],
    ['1000 length 2000', 'length', 1000, 2000],
    ['1000 for 2000', 'length', 1000, 2000],
    ['1000/2000', 'open', 1000, 2000],
    ['1000 / 2000', 'open', 1000, 2000],
    ['1000;2000', 'open', 1000, 2000],
    ['1000 | 2000', 'open', 1000, 2000],
    ['1000, 2000', 'open', 1000, 2000],
    ['0-5', 'end', 0, 5],
    ['44,100-88,200', 'end', 44_100, 88_200],
    ['0/5', 'open', 0, 5],
  ])('%s', (text, secondIs, start, second) => {
    expect(readLoop(text)).toEqual({
      mode: undefined,
      type: undefined,
      start: number(start),
      second: number(second),
      secondIs,
    });
  });

  it.each([
    ['0.5 s-1.25 s', 's', 0.5, 's', 1.25],
    ['0.5-1.25 s', 's', 0.5, 's', 1.25],
    ['500 ms - 1 s', 'ms', 500, 's', 1],
    ['500 ms-900', 'ms', 500, undefined, 900],
    ['5-9 samples', 'frames', 5, 'frames', 9],
  ])('in units: %s', (text, unit, start, secondUnit, second) => {
    expect(readLoop(text)).toMatchObject({ start: number(start, unit), second: number(second, secondUnit) });
  });

  it('is none from 0 to 0', () => {
    expect(readLoop('0-0')).toMatchObject({ mode: 'no_loop', start: undefined });
    expect(readLoop('0/0')).toMatchObject({ mode: 'no_loop', start: undefined });
    expect(readLoop('5-0')).toMatchObject({ mode: undefined, start: number(5), second: number(0) });
  });

  it.each([
    ['sustain 1000-2000', 'loop_sustain', undefined],
    ['sustain: 1000-2000', 'loop_sustain', undefined],
    ['sustain (1000-2000)', 'loop_sustain', undefined],
    ['sustain [1000-2000]', 'loop_sustain', undefined],
    ['1000-2000 sustain', 'loop_sustain', undefined],
    ['1000-2000, sustain', 'loop_sustain', undefined],
    ['1000-2000 (sustain)', 'loop_sustain', undefined],
    ['1000-2000 [sustain]', 'loop_sustain', undefined],
    ['one shot 1000-2000', 'one_shot', undefined],
    ['↔ 1000-2000', 'loop_continuous', 'alternate'],
    ['1000-2000 ←', 'loop_continuous', 'backward'],
  ])('with its mode: %s', (text, mode, type) => {
    expect(readLoop(text)).toEqual({
      mode,
      type,
      start: number(1000),
      second: number(2000),
      secondIs: 'end',
    });
  });
});

describe('no loop', () => {
  it.each([
    '',
    ' ',
    'perhaps',
    '1000',
    '1000-',
    '-1000',
    '-1000-2000',
    '1000-x',
    'x-2000',
    '1000 dB-2000 dB',
    '1000-2000 dB',
    '1000-inf',
    'perhaps 1000-2000',
    '1000-2000 perhaps',
    'sustain 1000',
    '1000 sustain',
  ])('is read from "%s"', (text) => {
    expect(readLoop(text)).toBeUndefined();
  });

  it('is looked for in a text that is too long', () => {
    expect(readLoop(`1000${' '.repeat(28)}-${' '.repeat(23)}2000`)?.secondIs).toBe('end');
    expect(readLoop(`1000${' '.repeat(28)}-${' '.repeat(24)}2000`)).toBeUndefined();
  });
});
