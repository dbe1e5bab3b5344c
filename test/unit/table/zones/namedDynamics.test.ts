import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const said = 'pp is velocity 1 to 40, ff everything above.';
const rows = ['hrn_C3_pp.wav | 46 | 50 | 48', 'hrn_C3_ff.wav | 46 | 50 | 48'];
const velocities = (text: string) => regions(text).map(({ lovel = '-', hivel = '-' }) => `${lovel} ${hivel}`);

describe('dynamics in the names of samples', () => {
  it('have the velocities that a sentence gives', () => {
    const text = `${said}\n\n${table('File | Low | High | Root', ...rows)}`;
    expect(velocities(text)).toEqual(['1 40', '41 -']);
    expect(notesOf(text).join()).toMatch(/dynamics have the velocities that "pp is velocity 1 to 40/);
  });

  it('count in other languages, and a capital beside them is a note', () => {
    const text = `Leise: 1-64, laut: 65-127\n\n${table('Datei | von | bis | Grundton', 'F leise.wav | 51 | 54 | 53', 'F laut.wav | 51 | 54 | 53')}`;
    expect(velocities(text)).toEqual(['1 64', '65 -']);
  });

  it('leave a sample without any at all velocities, and say so', () => {
    const text = `${said}\n\n${table('File | Low | High | Root', ...rows, 'hrn_G3.wav | 51 | 57 | 55')}`;
    expect(velocities(text)).toEqual(['1 40', '41 -', '- -']);
    expect(notesOf(text).join()).toMatch(/1 sample give no dynamics/);
  });

  it.each([
    ['no sentence', table('File | Low | High | Root', ...rows)],
    [
      'velocities in the table',
      `${said}\n\n${table('File | Low | High | Root | Velocity', ...rows.map((row) => `${row} | 1-127`))}`,
    ],
  ])('count for nothing with %s', (_, text) => {
    expect(velocities(text)).not.toContain('41 -');
  });
});
