import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const strings = (name: string, ...keys: (readonly [end: number | string, root: number | string])[]) =>
  `<zither>${keys.map(([end, root], at) => `<string wav="s${at}.wav" ${name}="${end}" root="${root}"/>`).join('')}</zither>`;

describe('one end of key ranges beside root keys', () => {
  it.each(['start', 'zib'])('is told by where it lies: %s', (name) => {
    const text = strings(name, [34, 37], [42, 44], [50, 53]);
    expect(valuesIn(text, 'lokey', 'hikey', 'offset')).toEqual(['34 41 -', '42 49 -', '50 - -']);
  });

  it('may be the high one, and a note name', () => {
    expect(valuesIn(strings('zib', [40, 37], [46, 44], [60, 53]), 'lokey', 'hikey')).toEqual([
      '- 40',
      '41 46',
      '47 60',
    ]);
    const named = strings('zib', ['A#2', 'C3'], ['F3', 'G3'], ['B3', 'D4']);
    expect(valuesIn(named, 'lokey', 'hikey')).toEqual(['46 52', '53 58', '59 -']);
  });

  it('is none where it lies elsewhere', () => {
    const text = strings('start', [34, 37], [30, 44], [50, 53]);
    expect(valuesIn(text, 'lokey', 'offset')).toEqual(['0 34', '41 30', '49 50']);
  });
});
