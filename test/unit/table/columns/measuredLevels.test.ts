import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const rows = (heading: string, ...cells: string[]) =>
  table(
    `File | Low | High | Root | ${heading}`,
    ...cells.map((cell, at) => `lute_${at}.wav | ${40 + 6 * at} | ${45 + 6 * at} | ${43 + 6 * at} | ${cell}`),
  );
const volumes = (text: string) => regions(text).map(({ volume = '0' }) => Number(volume));

// LUFS and LKFS: ITU-R BS.1770-5; dBTP: the same, Annex 2; dBFS: AES17. What is measured in a sample is no level to be set.
describe('a column of how loud samples are', () => {
  it.each([
    'Loudness (LUFS)',
    'Gain (dBFS)',
    'Level (LKFS)',
    'Volume (dBTP)',
    'Level (dB SPL)',
    'LRA (LU)',
    'level_lufs',
    'Crest (dB)',
    'Dynamic range (dB)',
    'Average level (dB)',
    'Pegel (dBFS)',
    'Rauschabstand (dB)',
    'Niveau moyen (dB)',
    'Ljudstyrka (LUFS)',
    'Пик (дБ)',
    '响度 (LUFS)',
  ])('is left out, with a note: %s', (heading) => {
    const text = rows(heading, '-22.4', '-17.9', '-19');
    expect(volumes(text)).toEqual([0, 0, 0]);
    expect(notesOf(text)).toContainEqual(
      expect.stringMatching(/^ignored: .*is not used.*how loud the samples are.*"Level \(dB\)"/),
    );
  });

  it.each(['Loudness (dB)', 'Gain (dB)', 'Pegel (dB)', 'Level dB', 'Gain (dB, peak -1 dBFS)'])(
    'but not %s',
    (heading) => {
      expect(volumes(rows(heading, '-2', '-1.5'))).toEqual([-2, -1.5]);
    },
  );

  it('may be one whose heading gives no unit, which is noted', () => {
    const note = (text: string) => notesOf(text).find((one) => /"Loudness \(LUFS\)"/.test(one));
    expect(note(rows('Loudness', '-22.4', '-17.9'))).toMatch(/^assumed: Column "Loudness" gives no unit/);
    expect(note(rows('Loudness', '-3', '0'))).toBeUndefined();
  });

  it('leaves the column of levels to another one', () => {
    const text = table(
      'File | Root | Level (LUFS) | Gain (dB)',
      'a.wav | 50 | -24 | -3',
      'b.wav | 55 | -19 | -1',
    );
    expect(volumes(text)).toEqual([-3, -1]);
  });

  it('may be told by a line of units and by the text around', () => {
    const units = table(
      'File | Root | Level | Tuning',
      ' | MIDI | LUFS | cents',
      'a.wav | 50 | -24 | 3',
      'b.wav | 55 | -19 | -4',
    );
    expect(regions(units).map(({ volume, tune }) => [volume, tune])).toEqual([
      [undefined, '3'],
      [undefined, '-4'],
    ]);
    for (const said of [
      'The level is in LUFS.',
      'Alle Level in dBFS gemessen.',
      '"Level" is the peak in dBFS.',
    ])
      expect(volumes(`${said}\n\n${rows('Level', '-24', '-19')}`), said).toEqual([0, 0]);
    expect(volumes(`Normalised to -23 LUFS.\n\n${rows('Level', '-2', '-1')}`)).toEqual([-2, -1]);
  });

  it('may be one cell among levels', () => {
    const text = rows('Level', '-3 dB', '-19 LUFS');
    expect(volumes(text)).toEqual([-3, 0]);
    expect(notesOf(text).join()).toMatch(/"-19 LUFS" is not a level/);
  });

  it('belongs to no samples side by side, unless its word names one of them', () => {
    const beside = (near: string, far: string) =>
      volumes(
        table(
          `Near file | ${near} | Noise file | ${far} | Root`,
          'n1.wav | -7 | f1.wav | -9 | 60',
          'n2.wav | -8 | f2.wav | -9.5 | 62',
        ),
      );
    expect(beside('Near peak dB', 'Noise peak dB')).toEqual([0, 0, 0, 0]);
    expect(beside('Near dB', 'Noise dB')).toEqual([-7, -8, -9, -9.5]);
  });
});
