import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../server/table/readTable';
import { table } from './tableRegions';

const problem = (...lines: string[]) => readZoneTable(table(...lines)).problem;

// Common practice: `Em` is E minor, which no single key of a keyboard is.
describe('a list of pieces that gives the keys they are in', () => {
  it.each([
    ['Key', ['G', 'Em', 'D', 'F#m']],
    ['Key', ['G', 'D', 'C']],
    ['Tonart', ['G-Dur', 'e-Moll', 'D-Dur', 'fis-Moll']],
    ['Tonalité', ['sol majeur', 'mi mineur', 'ré majeur', 'la mineur']],
    ['調', ['ト長調', 'ホ短調', 'ニ長調', 'ハ長調']],
  ])('under %s is refused', (heading, keys) => {
    const rows = keys.map((key, at) => `piece${at}.wav | ${key} | ${at - 3}`);
    expect(problem(`File | ${heading} | Level dB`, ...rows)).toMatch(
      /^This is no zone table: column ".*" gives the keys that pieces of music are in/,
    );
  });

  it('is a zone table where something gives keys of a keyboard', () => {
    expect(problem('File | Root | Scale', 'a.wav | 60 | Em', 'b.wav | 62 | G')).toBeUndefined();
    expect(problem('File | Scale', 'pad_C3.wav | Em', 'pad_D3.wav | G')).toBeUndefined();
  });

  it('is not seen in notes that have octaves', () => {
    expect(problem('File | Key', 'a.wav | E4', 'b.wav | G4')).toBeUndefined();
  });
});
