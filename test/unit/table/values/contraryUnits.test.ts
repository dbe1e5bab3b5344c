import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const column = (heading: string, ...cells: string[]) =>
  table(`File | Root | ${heading}`, ...cells.map((cell, at) => `viol ${at}.wav | ${50 + at} | ${cell}`));
const contrary = (text: string) => notesOf(text).filter((note) => /units in cells/.test(note));

describe('units in cells that are others than the one in the heading', () => {
  it.each([
    ['Tune (semitones)', ['-9 ct', '+4 ct'], 'tune', ['-9', '4']],
    ['Stimmung (Cent)', ['0,5 Halbtöne', '-0,1 Halbtöne'], 'tune', ['50', '-10']],
    ['Volume (%)', ['-4 dB', '-1.5 dB'], 'volume', ['-4', '-1.5']],
    ['Gain (0-127)', ['-4 dB', '-1.5 dB'], 'volume', ['-4', '-1.5']],
    ['Pegel (dB)', ['-2', '50 %'], 'volume', ['-2', '-6.02']],
    ['Attenuation (dB)', ['70 cB', '5 cB'], 'volume', ['-7', '-0.5']],
    ['Attack (ms)', ['0.2 s', '0.1 s'], 'ampeg_attack', ['0.2', '0.1']],
  ])('count, which is noted once: %s', (heading, cells, name, expected) => {
    const text = column(heading, ...cells);
    expect(regions(text).map((region) => region[name])).toEqual(expected);
    const [note, ...others] = contrary(text);
    expect(note).toContain(`column "${heading}"`);
    expect(note).toContain(`"${cells.find((cell) => /\p{L}|%/u.test(cell))}"`);
    expect(others).toEqual([]);
  });

  it.each([
    ['Tune (semitones)', '1 st', '-2 st'],
    ['Tune (semitones)', '1 st 20 ct', '0 st 5 ct'],
    ['Volume (%)', '80 %', '90'],
    ['Pan (0-100)', '40 %', '50 %'],
    ['Pan (-50..50)', 'L20', 'R10'],
    ['Volume', '-2 dB', '50 %'],
    ['Tune (Cent)', '3 Cents', '-4 ct'],
  ])('are not noted where they are the same: %s', (heading, ...cells) => {
    expect(contrary(column(heading, ...cells))).toEqual([]);
  });

  it('are noted once where samples side by side share the column', () => {
    const text = table(
      'Root | Near file | Near dB | Far file | Far dB | Tune (semitones)',
      '50 | n1.wav | -2 | f1.wav | -3 | 5 ct',
      '52 | n2.wav | -2 | f2.wav | -4 | 6 ct',
    );
    expect(contrary(text)).toHaveLength(1);
  });
});
