import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const volumes = (heading: string, ...levels: string[]) =>
  regions(
    table(`Sample | Key | ${heading}`, ...levels.map((level, at) => `s${at}.wav | ${50 + at} | ${level}`)),
  ).map(({ volume }) => volume ?? '0');

describe('headings that say that samples are quieter', () => {
  it.each(['Level (-dB)', 'Level in -dB', 'minus dB', 'Level dB down', 'Reduction (dB)'])(
    'count down: "%s"',
    (heading) => {
      expect(volumes(heading, '0', '3', '5.5')).toEqual(['0', '-3', '-5.5']);
    },
  );

  it.each(['Level (-dB)', 'Attenuation (dB)', 'Gain reduction (dB)', 'Reduction (dB)'])(
    'raise nothing where the numbers have their signs: "%s"',
    (heading) => {
      expect(volumes(heading, '0', '-3', '-5.5')).toEqual(['0', '-3', '-5.5']);
    },
  );

  it('are advised as they are heard', () => {
    const rows = ['a.wav | 50 | 0', 'b.wav | 51 | 4'];
    const [, advised] = /as in "([^"]+)"/.exec(notesOf(table('Sample | Key | Level', ...rows)).join()) ?? [];
    expect(advised).toBeDefined();
    expect(regions(table(`Sample | Key | ${advised}`, ...rows))[1].volume).toBe('4');
  });
});
