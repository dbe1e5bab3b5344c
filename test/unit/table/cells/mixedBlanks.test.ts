import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const zones = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter }) =>
    [sample, lokey, hikey, pitch_keycenter].join(' '),
  );

describe('tabs, blanks and signs that show nothing, mixed between values', () => {
  const expected = ['oud1.wav 40 44 42', 'oud2.wav 45 49 47', 'oud3.wav 50 55 52'];

  it.each([
    'File\t low note \thigh note\troot\noud1.wav\t40  44\t42\noud2.wav   45\t 49   47\noud3.wav\t50\t55\t52\n',
    '\ufeffFile\tlow note\thigh note\troot\noud1.wav\t40\t44\u200b\t42\n\u200boud2.wav\u00a0 45 49\t\u200b47\nou\u200bd3.wav 50\t\t55\u00a052\n',
  ])('part values where all rows have as many as there are headings: %j', (text) => {
    expect(zones(text)).toEqual(expected);
  });

  it('stay in cells where tabs alone part them', () => {
    expect(
      zones('File\tlow\thigh\troot\nmy oud.wav\t40\t\t42\nan oud.wav\t45\t49\t47\nno oud.wav\t50\t55\n')[0],
    ).toMatch(/^my oud\.wav 40/);
  });
});

describe('a sign that shows nothing within a name', () => {
  it('is no part of it but between letters of scripts that need it', () => {
    const names = regions('File\tRoot\nza\u200brb.wav\t40\nمی\u200cخواهم.wav\t45\n').map(
      ({ sample }) => sample,
    );
    expect(names).toEqual(['zarb.wav', 'می\u200cخواهم.wav']);
  });
});
