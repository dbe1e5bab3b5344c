import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

/** A table in fixed columns with a mark before its second and its fourth row. */
function marked(second: string, fourth: string, legend: string): string {
  const row = (mark: string, rest: string) => `${mark.padEnd(4)}${rest}`;
  return [
    row('', 'File           Low   High  Root  Level'),
    row('', 'crwth_45.wav   40    47    45    -1'),
    row(second, 'crwth_50.wav   48    52    50    -2'),
    row('', 'crwth_55.wav   53    57    55    0'),
    row(fourth, 'crwth_60.wav   58    62    60    -4'),
    row('', 'crwth_65.wav   63    67    65    0'),
    '',
    legend,
  ].join('\n');
}

const samplesOf = (text: string) => regions(text).map(({ sample }) => sample);

describe('a column of marks without a heading', () => {
  it.each([
    ['x', 'x = muted, does not play.'],
    ['-', '- = not used'],
    ['#', '# = disabled'],
    ['x', 'x = stumm, spielt nicht mit'],
    ['x', 'x = ne joue pas'],
    ['*', '* = switched off'],
    ['x', 'x: leave out.'],
  ])('leaves rows out where its legend says so: %s, %s', (mark, legend) => {
    const text = marked(mark, mark, legend);
    expect(samplesOf(text)).toEqual(['crwth_45.wav', 'crwth_55.wav', 'crwth_65.wav']);
    expect(notesOf(text).filter((note) => note.includes('is not used, as the text says'))).toHaveLength(2);
  });

  it('gives rows what its legend says, each mark its own', () => {
    const text = marked('*', 'r', '* = 3 dB quieter\nr = release sample');
    expect(regions(text)).toMatchObject([
      { volume: '-1' },
      { sample: 'crwth_50.wav', volume: '-5' },
      { sample: 'crwth_55.wav' },
      { sample: 'crwth_60.wav', volume: '-4', trigger: 'release' },
      { sample: 'crwth_65.wav' },
    ]);
    expect(notesOf(text).join('\n')).toContain('"*" beside the name of the sample is read as volume=-3');
  });

  it('is told where nothing known is said of its marks, as strings that are muted play', () => {
    for (const legend of ['x = recorded in May', 'x = muted', '']) {
      const text = marked('x', 'x', legend);
      expect(regions(text)).toHaveLength(5);
      expect(notesOf(text).join('\n')).toContain('What stands in column 1 is not used');
    }
  });

  it('may stand under a heading, and behind the other columns', () => {
    const text =
      'File\tLow\tHigh\tMark\na.wav\t40\t44\t\nb.wav\t45\t49\tx\nc.wav\t50\t54\to\n\nx: leave out. o: release\n';
    expect(regions(text)).toMatchObject([{ sample: 'a.wav' }, { sample: 'c.wav', trigger: 'release' }]);
  });
});

describe('a mark before the name of a sample', () => {
  it('is no part of it where a legend explains it', () => {
    const text =
      'File          Low   High\ncrwth_45.wav  40    47\n*crwth_50.wav 48    52\nx crwth_55.wav 53    57\ncrwth_60.wav  58    62\n\n* = release sample\nx = not played\n';
    expect(regions(text)).toMatchObject([
      { sample: 'crwth_45.wav' },
      { sample: 'crwth_50.wav', trigger: 'release' },
      { sample: 'crwth_60.wav' },
    ]);
  });

  it('is part of it otherwise', () => {
    const text = 'File\tLow\tHigh\nx tom.wav\t40\t47\n#2 tom.wav\t48\t52\n-tom.wav\t53\t57\n';
    expect(samplesOf(text)).toEqual(['x tom.wav', '#2 tom.wav', '-tom.wav']);
  });
});
