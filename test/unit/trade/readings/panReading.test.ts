import { describe, expect, it } from 'vitest';
import { hasSide, readPan } from '../../../../server/trade/readings/panReading';

/** How people write pan positions (common practice), as -100 to 100 (sfzformat.com, pan). */
describe('a pan position', () => {
  it.each([
    ['-30', -30],
    [' 30 ', 30],
    ['30 %', 30],
    ['L50', -50],
    ['L 50', -50],
    ['L:50', -50],
    ['R50', 50],
    ['50R', 50],
    ['20 R', 20],
    ['50 % L', -50],
    ['left 30 %', -30],
    ['links 30', -30],
    ['C', 0],
    ['C0', 0],
    ['0 centre', 0],
    ['Mitte', 0],
    ['left', -100],
    ['right', 100],
    ['<', undefined],
    ['<L', -100],
    ['R>', 100],
    ['<C>', 0],
    ['◀50', -50],
    ['← 50', -50],
    ['<50 %', -50],
    ['50→', 50],
    ['50 ▶', 50],
    ['50>', 50],
    ['hard left', -100],
    ['ganz rechts', 100],
    ['half right', 50],
    ['halb links', -50],
  ])('of "%s"', (text, pan) => {
    expect(readPan(text)).toBe(pan);
  });

  it.each([
    '',
    'wide',
    'C5',
    '5C',
    '5 centre',
    '3 dB',
    'L3 dB',
    'Lx',
    '3 dB L',
    '<3 dB',
    '3 dB>',
    'X50',
    '50X',
    'xL50',
    'hard 50 left',
    'L50!',
    '!50R',
    'left-ish 50',
  ])('is none in "%s"', (text) => {
    expect(readPan(text)).toBeUndefined();
  });

  it('is not looked for in a long text', () => {
    expect(readPan(`half${' '.repeat(23)}right`)).toBe(50);
    expect(readPan(`half${' '.repeat(24)}right`)).toBeUndefined();
  });
});

describe('a side', () => {
  it('is named by letters, words and arrows, not by numbers', () => {
    for (const text of ['L50', '50R', 'left', '◀50']) expect(hasSide(text)).toBe(true);
    for (const text of ['-50', ' 30 ', '30 %']) expect(hasSide(text)).toBe(false);
  });
});
