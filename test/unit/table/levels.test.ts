import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../server/table/readTable';
import { notesOf, regions, table } from './tableRegions';

const column = (heading: string, cells: readonly (string | number)[]) =>
  table(`File | Key | ${heading}`, ...cells.map((cell, at) => `pot ${at}.wav | ${40 + at} | ${cell}`));
const volumes = (heading: string, cells: readonly (string | number)[]) =>
  regions(column(heading, cells)).map(({ volume = '0' }) => Number(volume));

// A share a of the amplitude is 20 · log10(a) dB (IEC 60027-3).
describe('a column of levels without a unit', () => {
  it.each([
    ['percent', [100, 50, 70], [0, -6.02, -3.1]],
    ['numbers of seven bits', [127, 64, 32], [0, -5.95, -11.97]],
    ['a factor', ['1.0', '0.5', '0.1'], [0, -6.02, -20]],
    ['dB, where one lies below 0', [0, -6, -2.5], [0, -6, -2.5]],
    ['nothing that is written, where it could be dB above 0', [0, 3, 6], [0, 0, 0]],
    ['nothing that is written, where it could be marks out of ten', [10, 8, 9], [0, 0, 0]],
    ['nothing that is written, where factors lie above 1', ['1.2', '0.8', '1.0'], [0, 0, 0]],
  ])('is %s', (_, cells, expected) => {
    for (const heading of ['Volume', 'Level', 'Gain', 'Lautstärke']) {
      expect(volumes(heading, cells), heading).toEqual(expected);
    }
  });

  it('of bits is said not to tell how loud each is, unless its heading speaks of the amplitude', () => {
    for (const heading of ['Niveau (0-127)', 'Loudness 0..127', 'Lautstärke (0-127)', 'Gain 0-127']) {
      expect(notesOf(column(heading, [127, 100, 64])).join(), heading).toMatch(
        /gives levels from 0 to 127, but not how loud each is\..*64 is written as -5\.95 dB/,
      );
      expect(volumes(heading, [127, 64])).toEqual([0, -5.95]);
    }
    expect(notesOf(column('Amplitude 0-127', [127, 100, 64])).join()).not.toMatch(/how loud/);
  });

  it('says what it is taken for, and what to do if it is something else', () => {
    const notes = notesOf(column('Level', [100, 50, 70]));
    expect(notes).toContainEqual(
      expect.stringMatching(
        /^assumed: Column "Level" gives no unit: percent is assumed.*50 is written as -6\.02 dB.*"Level \(dB\)"/,
      ),
    );
    expect(notesOf(column('Level', [0, 3, 6]))).toContainEqual(
      expect.stringMatching(/all levels are left at 0 dB/),
    );
    expect(notesOf(column('Level', [0, -3, -6])).join()).not.toMatch(/assumed: Column "Level"/);
  });

  it('is what its heading, its cells or the text around it say', () => {
    expect(volumes('Volume (dB)', [0, 3, 6])).toEqual([0, 3, 6]);
    expect(volumes('Volume (0..127)', [100, 64])).toEqual([-2.08, -5.95]);
    expect(volumes('Volume', ['3 dB', '2 dB', '1'])).toEqual([3, 2, 1]);
    expect(volumes('Volume', ['+3', '0', '+1.5'])).toEqual([3, 0, 1.5]);
    const around = (sentence: string) =>
      regions(`${sentence}\n\n${column('Volume', [100, 50])}`).map(({ volume }) => volume);
    expect(around('Volumes are in percent.')).toEqual([undefined, '-6.02']);
    expect(around('Volume 127 = full.')).toEqual(['-2.08', '-8.1']);
  });

  it('follows the column of the same heading in another table of the text', () => {
    const one = column('Level', [127, 100]);
    const other = table('File | Key | Level', 'jar.wav | 70 | 64', 'mug.wav | 71 | 32');
    expect(regions(`${one}\n\n${other}`).map(({ volume }) => volume)).toEqual([
      undefined,
      '-2.08',
      '-5.95',
      '-11.97',
    ]);
  });

  it('is never raised and keeps its ratios, or is left at 0 dB', () => {
    const number = fc.oneof(fc.integer({ min: 0, max: 300 }), fc.double({ min: 0.01, max: 4, noNaN: true }));
    const plain = number.map((one) => String(Math.round(one * 100) / 100));
    fc.assert(
      fc.property(fc.array(plain, { minLength: 1, maxLength: 12 }), (cells) => {
        const levels = volumes('Level', cells);
        expect(Math.max(...levels)).toBeLessThanOrEqual(0);
        if (levels.every((level) => level === 0)) return;
        const [first] = cells.flatMap((cell, at) => (Number(cell) > 0.05 && levels[at] > -90 ? [at] : []));
        for (const [at, cell] of cells.entries()) {
          // What is far above all others is a slip, and left out with a note.
          if (first === undefined || Number(cell) <= 0.05 || levels[at] === 0 || levels[first] === 0)
            continue;
          const ratio = 20 * Math.log10(Number(cell) / Number(cells[first]));
          expect(levels[at] - levels[first]).toBeCloseTo(ratio, 1);
        }
      }),
    );
  });

  it('does not depend on one cell alone', () => {
    const rows = fc.array(fc.integer({ min: 30, max: 99 }), { minLength: 3, maxLength: 10 });
    const odd = fc.constantFrom('', '?', 'loud', '12000', '0', '99.5', '1');
    fc.assert(
      fc.property(rows, odd, (numbers, cell) => {
        const cells = [100, ...numbers, 100];
        const plain = volumes('Level', cells);
        expect(volumes('Level', [...cells, cell]).slice(0, cells.length)).toEqual(plain);
      }),
    );
  });

  it('can be set by hand', () => {
    const text = column('Level', [100, 50]);
    const set = (scale: string) =>
      regions(text, { scales: new Map([[2, scale]]) }).map(({ volume }) => volume);
    expect(set('sevenBits')).toEqual(['-2.08', '-8.1']);
    expect(set('none')).toEqual([undefined, undefined]);
    const { columns } = readZoneTable(text);
    expect(columns[2]?.scale).toMatchObject({ taken: 'percent' });
    expect(columns[2]?.scale?.options.map(({ id }) => id)).toContain('sevenBits');
  });
});

describe('attenuations', () => {
  it('make quieter whichever sign they carry', () => {
    expect(volumes('Attenuation', [0, 6, 12])).toEqual([0, -6, -12]);
    expect(volumes('Attenuation', [0, -6, -12])).toEqual([0, -6, -12]);
    expect(notesOf(column('Attenuation', [0, -6, -12])).join()).toMatch(
      /dB is assumed, as some numbers are below 0/,
    );
  });

  it('in percent say what is missing', () => {
    expect(volumes('Attenuation (%)', [0, 50])).toEqual([0, -6.02]);
  });

  it('in centibels are tenths of dB (SoundFont 2.04, 8.1.3)', () => {
    expect(volumes('Attenuation (cB)', [0, 60])).toEqual([0, -6]);
  });
});

describe('tunings', () => {
  const tunes = (heading: string, cells: readonly (string | number)[]) =>
    regions(column(heading, cells)).map(
      ({ tune = '0', transpose = '0' }) => 100 * Number(transpose) + Number(tune),
    );

  it('below one are semitones, with a note', () => {
    expect(tunes('Tune', ['0.25', '-0.1', '0.00'])).toEqual([25, -10, 0]);
    expect(notesOf(column('Tune', ['0.25', '-0.1', '0.00'])).join()).toMatch(
      /"Tune" gives no unit.*semitones are assumed/,
    );
  });

  it('are cents where nothing is said of small whole numbers, with a note', () => {
    expect(tunes('Tuning', [3, -7, 0])).toEqual([3, -7, 0]);
    expect(notesOf(column('Tuning', [3, -7, 0])).join()).toMatch(/cents are assumed/);
    expect(notesOf(column('Tuning (cents)', [3, -7, 0])).join()).not.toMatch(/are assumed/);
    expect(notesOf(column('Fine tune', [3, -7, 0])).join()).not.toMatch(/are assumed/);
  });

  it('in whole keys are cents where they are hundreds', () => {
    expect(tunes('Transpose', [100, -1200, 0])).toEqual([100, -1200, 0]);
    expect(tunes('Transpose', [1, -12, 0])).toEqual([100, -1200, 0]);
  });

  it('near one are ratios (ISO 80000-8: 1200 cents to the octave)', () => {
    expect(tunes('Tune', ['1.0029', '0.9971', '1.000'])).toEqual([5.01, -5.03, 0]);
  });

  it('are what the text around says', () => {
    const text = `All tuning is in semitones.\n\n${column('Tune', [3, -7])}`;
    expect(regions(text).map(({ transpose }) => transpose)).toEqual(['3', '-7']);
  });
});

describe('pan positions', () => {
  const pans = (heading: string, cells: readonly (string | number)[]) =>
    regions(column(heading, cells)).map(({ pan = '0' }) => Number(pan));

  it.each([
    ['of seven bits with a sign', [-64, 0, 63], [-100, 0, 100]],
    ['of seven bits', [0, 64, 127], [-100, 0, 100]],
    ['from 0 to 1', ['0.0', '0.5', '1.0'], [-100, 0, 100]],
    ['from 0 to 100 around 50', [0, 50, 100], [-100, 0, 100]],
    ['with letters up to 64', ['L64', 'C', 'R32'], [-100, 0, 50]],
    ['as the format counts them', [-100, 0, 40], [-100, 0, 40]],
  ])('%s', (_, cells, expected) => {
    expect(pans('Pan', cells)).toEqual(expected);
  });

  it('have a note where their scale was found from the numbers', () => {
    expect(notesOf(column('Pan', [0, 64, 127])).join()).toMatch(
      /"Pan".*0 is read as left, 64 for the centre and 127/,
    );
    expect(notesOf(column('Pan', [-100, 0, 40])).join()).not.toMatch(/read as left/);
  });

  it('are what the text around says', () => {
    const text = `Pan: 0 = left, 127 = right.\n\n${column('Pan', [0, 64, 100])}`;
    expect(regions(text).map(({ pan }) => pan)).toEqual(['-100', undefined, '57.14']);
  });
});

describe('pan positions in percent', () => {
  it.each(['Pan [%, left neg.]', 'Pan (left negative; %)', 'Pan (%)', 'Pan %'])(
    'are what they say: %s',
    (heading) => {
      const text = table(
        `Sample | Key | ${heading}`,
        'a.wav | 60 | -50',
        'b.wav | 61 | 0',
        'c.wav | 62 | 50',
      );
      expect(regions(text).map(({ pan }) => pan ?? '0')).toEqual(['-50', '0', '50']);
    },
  );

  it('are scaled where they give no percent', () => {
    const text = table('Sample | Key | Pan', 'a.wav | 60 | -50', 'b.wav | 61 | 0', 'c.wav | 62 | 50');
    expect(regions(text).map(({ pan }) => pan ?? '0')).toEqual(['-100', '0', '100']);
  });
});

describe('velocities', () => {
  const layers = (text: string) => regions(text).map(({ lovel, hivel }) => `${lovel}-${hivel}`);
  const rows = ['a.wav | 60 | 62 | 1 | 40', 'b.wav | 60 | 62 | 41 | 100'];

  it('are scaled where the text around gives their scale, and the layers still meet', () => {
    const text = table('File | Low | High | LoVel | HiVel', ...rows);
    expect(layers(`Velocities run 1 to 100 in this list.\n\n${text}`)).toEqual(['1-51', '52-127']);
    expect(notesOf(`Velocities run 1 to 100.\n\n${text}`).join()).toMatch(/velocities in.*count up to 100/);
  });

  it('that end at 100 are written as they stand, with a note', () => {
    const text = table('File | Low | High | LoVel | HiVel', ...rows);
    expect(layers(text)).toEqual(['1-40', '41-100']);
    expect(notesOf(text).join()).toMatch(/end at 100 .*stay silent/);
  });

  it('from 0 to 1 meet where layers share their ends', () => {
    const text = table('File | Key | Velocity', 'a.wav | 60 | 0-0.5', 'b.wav | 60 | 0.5-1');
    expect(layers(text)).toEqual(['0-63', '64-127']);
  });

  it('up to 255 need more than one that is too great', () => {
    const of = (first: number, last: number) =>
      table('File | Key | LoVel | HiVel', `a.wav | 60 | 0 | ${first}`, `b.wav | 60 | ${first + 1} | ${last}`);
    expect(layers(of(127, 255))).toEqual(['0-63', '64-127']);
    const slip = table('File | Key | LoVel | HiVel', 'a.wav | 60 | 0 | 63', 'b.wav | 60 | 64 | 200');
    expect(layers(slip)).toEqual(['0-63', '64-undefined']);
    expect(notesOf(slip).join()).toMatch(/"200" is not a velocity/);
  });

  it('whose low is above their high are swapped, with a note; keys alike', () => {
    const text = table('File | Low | High | LoVel | HiVel', 'a.wav | 62 | 60 | 127 | 64', ...rows);
    expect(regions(text)[0]).toMatchObject({ lokey: '60', hikey: '62', lovel: '64', hivel: '127' });
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(/Line 2: the low key 62 is above the high key 60; the two are swapped/);
    expect(notes).toMatch(/Line 2: the low velocity 127 is above the high velocity 64/);
  });
});
