import { describe, expect, it } from 'vitest';
import { withoutLeaders } from '../../../server/table/cells/markup/dotLeaders';
import { notesOf, regions } from './tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
const lines = (...all: string[]) => all.join('\n');
const keys = ['sample', 'lokey', 'hikey', 'pitch_keycenter'];

// Printed lists lead the eye with dots from a name to its values (common practice).
describe('dots that lead to values', () => {
  it('belong to no name, and ditto marks below them have the value above', () => {
    const text = lines(
      'FILE                    KEYS         ROOT        FINE (cents)',
      'reed low 1.wav ........ E2 - G2      F2          +7',
      'reed low 2.wav ........ Ab2 - B2     Bb2         "',
      'reed3.wav ............. C3 - Eb3     D3          -3',
    );
    expect(values(text, ...keys, 'tune')).toEqual([
      'reed low 1.wav 40 43 41 7',
      'reed low 2.wav 44 47 46 7',
      'reed3.wav 48 51 50 -3',
    ]);
    expect(notesOf(text).join()).not.toContain('....');
  });

  it('may have blanks between, stand between all columns, and lead from headings too', () => {
    const text = lines(
      'NAME . . . . . . . . LOW . . . HIGH . . . ROOT',
      'tuba_a . . . . . . . 30 . . . . 35 . . . . 33',
      'tuba_b . . . . . . . 36 . . . . 41 . . . . 39',
    );
    expect(values(text, ...keys)).toEqual(['tuba_a 30 35 33', 'tuba_b 36 41 39']);
  });

  it('may be the signs for three dots, above values that stand below nothing', () => {
    const text = lines(
      'MUESTRA                TECLAS        ORIGINAL   FINO (cents)',
      'corno 1.wav \u2026\u2026\u2026\u2026\u2026 do3 - mi3     re3        +7',
      'corno 2.wav \u2026\u2026\u2026\u2026 fa3 - la3     sol3       "',
    );
    expect(values(text, ...keys, 'tune')).toEqual(['corno 1.wav 48 52 50 7', 'corno 2.wav 53 57 55 7']);
  });

  it('are none between the ends of a range, or in the place of a value', () => {
    const text = lines(
      'Sample      Keys        Root  Gain',
      'a1.wav      C2 ... E2   D2    .....',
      'a2.wav      F2 ... A2   G2    -3',
    );
    expect(values(text, ...keys, 'volume')).toEqual(['a1.wav 36 40 38 -', 'a2.wav 41 45 43 -3']);
  });

  it.each([
    'a.wav .... 60',
    'C2 ... E2\nF2 ... A2',
    'Wait ....\nand see ....',
    'a.wav | .... | 60\nb.wav | .... | 62',
  ])('leave %j as it is', (text) => {
    expect(withoutLeaders(text)).toBe(text);
  });

  it('become blanks, so that all else stays in its place', () => {
    expect(withoutLeaders('a.wav ... 60\r\nb.wav ... 61 ..... 7')).toBe(
      'a.wav     60\r\nb.wav     61 ..... 7',
    );
  });
});
