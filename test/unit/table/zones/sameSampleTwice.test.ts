import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const notes = (heading: string, ...rows: string[]) =>
  notesOf(table(`Sample | Low | High | Root | ${heading}`, ...rows)).join('\n');
const others = ['lur_C3.wav | 46 | 49 | 48 | 0', 'lur_G3.wav | 54 | 57 | 55 | 0'];

describe('one sample twice on the same keys and velocities', () => {
  it('with other roots is told with both lines and the root in the name, and kept', () => {
    const rows = [...others, 'lur_E3.wav | 50 | 53 | 52 | 0', 'lur_E3.wav | 50 | 53 | 51 | 0'];
    expect(notes('Tune', ...rows)).toContain(
      'Line 4 and line 5 give "lur_E3.wav" the same keys and velocities, but the root keys 52 and 51: both sound at once. The name says 52. Take the wrong row out.',
    );
    expect(regions(table('Sample | Low | High | Root | Tune', ...rows))).toHaveLength(4);
  });

  it.each([
    ['Tune', '-7', '12', /the tunings -7 and 12/],
    ['Volume (dB)', '-7', '-2', /the levels -7 and -2/],
    ['Volume (dB)', '-7', '', /the levels -7 and none/],
  ])('with another %s is told', (heading, one, other, expected) => {
    const rows = [...others, `lur.wav | 50 | 53 | 52 | ${one}`, `lur.wav | 50 | 53 | 52 | ${other}`];
    expect(notes(heading, ...rows)).toMatch(expected);
  });

  it.each([
    ['Pan', '-100', '100'],
    ['Key switch', '24', '25'],
    ['Round robin', '1', '2'],
  ])('is no contradiction where the %s tells them apart', (heading, one, other) => {
    const rows = [`lur.wav | 50 | 53 | 52 | ${one}`, `lur.wav | 50 | 53 | 51 | ${other}`];
    expect(notes(heading, ...rows)).not.toMatch(/sound at once|sound together/);
  });

  it('is found among others on the same keys, which are told as before', () => {
    const text = notes(
      'Tune',
      'a.wav | 50 | 53 | 52 | 0',
      'b.wav | 50 | 53 | 52 | 0',
      'b.wav | 50 | 53 | 52 | 5',
    );
    expect(text).toMatch(/Line 3 and line 4 give "b.wav"/);
    expect(text).toMatch(/Line 2 and line 3 have the same keys and velocities\. Such rows/);
  });
});
