import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { detect } from '../../../server/workspace/notations/detect';
import { regions, table } from './tableRegions';

const zones = table('Sample | Low | High | Root', 'oud1.wav | D2 | G2 | F2', 'oud2.wav | G#2 | C3 | A2');

describe('a line that gives one value beside a table', () => {
  it.each(['C3=60', 'C3=middle C', 'middleC=C3', 'middle C=C3', 'Exported 2021-02-03, C3=middle C'])(
    'is a statement: %s',
    (said) => {
      for (const text of [`${said}\n${zones}`, `${zones}\n${said}`]) {
        expect(detect('oud.txt', text).kind).toBe('table');
        expect(regions(text).map(({ lokey }) => lokey)).toEqual(['50', '56']);
      }
    },
  );

  it.each(['Rate=44100', 'SR=48000', 'Rate=44100\nC3=60'])('leaves the text a table: %s', (said) => {
    expect(detect('oud.txt', `${said}\n${zones}`).kind).toBe('table');
  });

  it('makes no table of opcodes and of source text', () => {
    expect(detect('a.txt', 'volume=-3\nsample=a.wav\nkey=60').kind).toBe('notation');
    expect(detect('a.txt', '<region>\nsample=a.wav lokey=36 hikey=47\nC3=60').kind).toBe('notation');
    expect(looksLikeZoneTable('low=36\nhigh=47\nname=one\nother=2\nrate=44100')).toBe(false);
  });
});
