import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../../server/table/looksLikeZoneTable';
import { regions } from '../../tableRegions';

const samples = (text: string) => regions(text).map(({ sample }) => sample);

describe('a list of keys with titles before its files', () => {
  it.each([
    ['36 - Old pail - dairy/pail.wav\n38 - Sieve - dairy/sieve.wav\n'],
    ['36 - Old pail - pail_1.wav\n38 - Sieve \u2013 sieve_1.wav\n'],
  ])('leaves the titles out of the names: %j', (text) => {
    expect(samples(text).every((name) => !name?.includes(' '))).toBe(true);
  });

  it('keeps what all names begin with, and words that may be of the names', () => {
    expect(samples('36 - Dairy - pail_1.wav\n38 - Dairy - sieve_1.wav\n')).toEqual([
      'Dairy - pail_1.wav',
      'Dairy - sieve_1.wav',
    ]);
    expect(samples('36 - Pail - hard.wav\n38 - Sieve - soft.wav\n')).toEqual([
      'Pail - hard.wav',
      'Sieve - soft.wav',
    ]);
  });
});

describe('lines that a script wrote', () => {
  it('are zones with a word before them, and remarks around', () => {
    const text =
      '# written by the barn script\nzone file="ice/bar 1.wav" keys=60-62 root=61\nzone file="ice/bar 2.wav" keys=63-65 root=64\n# done\n';
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(samples(text)).toEqual(['ice/bar 1.wav', 'ice/bar 2.wav']);
  });
});
