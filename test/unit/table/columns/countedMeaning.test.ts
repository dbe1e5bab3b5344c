import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

// A level is never raised on a guess (our choice).
describe('a heading with a unit of which nothing else is known', () => {
  it.each([
    ['Cut dB', '-3'],
    ['dB softer', '-3'],
    ['Atten.dB', '-3'],
    ['Dämpfg. (dB)', '-3'],
    ['dB leiser', '-3'],
    ['dB zachter', '-3'],
    ['Boost/cut dB', '3'],
  ])('%s', (heading, volume) => {
    const text = table(
      `File | Low | High | Root | ${heading}`,
      'a.wav | 40 | 45 | 43 | 3',
      'b.wav | 46 | 49 | 48 | 0',
    );
    expect(regions(text)[0]?.volume).toBe(volume);
  });
});
