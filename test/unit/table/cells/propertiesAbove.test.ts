import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const zones = (text: string) =>
  regions(text).map(({ sample, lokey, hikey }) => [sample, lokey, hikey].join(' '));

const rows = (sign: string) =>
  ['Sample|Low key|High key|Root', 'lute1|C2|E2|D2', 'lute2|F2|A2|G2', 'lute3|A#2|D3|C3']
    .join('\n')
    .replaceAll('|', sign);

describe('properties above a table in its own columns', () => {
  it.each([
    ['commas', ','],
    ['semicolons', ';'],
    ['tabs', '\t'],
  ])('are no headings, and say what goes for all zones: %s', (_, sign) => {
    const above = ['Extension|.aif||', 'Folder|plucked/lute||', 'Bits|16||', 'Middle C|C3||', '|||', '']
      .join('\n')
      .replaceAll('|', sign);
    expect(zones(above + rows(sign))).toEqual([
      'plucked/lute/lute1.aif 48 52',
      'plucked/lute/lute2.aif 53 57',
      'plucked/lute/lute3.aif 58 62',
    ]);
  });

  it('may be in other languages', () => {
    const above = 'Titel;Laute;;\nEndung;.aif;;\nOrdner;zupf/laute;;\n;;;\n';
    expect(zones(above + rows(';'))[0]).toBe('zupf/laute/lute1.aif 36 40');
  });

  it('leave zones with headings of their own to their own table', () => {
    const text =
      'File,Key,,\nbell.wav,60,,\nFile,Low key,High key,Root\nlute.wav,40,44,42\nlute2.wav,45,49,47';
    expect(zones(text)).toEqual(['bell.wav  ', 'lute.wav 40 44', 'lute2.wav 45 49']);
  });
});
