import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

/** Three zones with two pitches each. */
const pitches = (
  first: string,
  second: string,
  rows: readonly string[],
  before = 'Root',
  roots = ['45 | ', '52 | ', '59 | '],
) =>
  table(
    `File | Low | High | ${before}${before === '' ? '' : ' | '}${first} | ${second}`,
    ...rows.map((row, at) => `saw_${at}.wav | ${40 + 7 * at} | ${46 + 7 * at} | ${roots[at] ?? ''}${row}`),
  );
const tunes = (text: string) =>
  regions(text).map(
    ({ tune, transpose }) => `${transpose ?? ''}/${tune === undefined ? '' : Math.round(Number(tune))}`,
  );

// 110 · 2^(-6/1200) = 109.619, 164.814 · 2^(4/1200) = 165.195: 6 cents flat and 4 sharp.
const hertz = ['110 | 109.619', '164.814 | 165.195', '246.942 | 246.942'];
const turned = ['109.619 | 110', '165.195 | 164.814', '246.942 | 246.942'];
const cents = ['0 | -6', '2 | 6', '0 | 0'];

describe('pitches as they are meant beside those that were found', () => {
  it.each([
    ['Nominal Hz', 'Measured Hz', hertz],
    ['Measured (Hz)', 'Target (Hz)', turned],
    ['should be (Hz)', 'is (Hz)', hertz],
    ['Soll Hz', 'Ist Hz', hertz],
    ['Sollfrequenz (Hz)', 'gemessen (Hz)', hertz],
    ['Hz théorique', 'Hz mesuré', hertz],
    ['Hz previsto', 'Hz misurato', hertz],
    ['Hz teórico', 'Hz medido', hertz],
    ['Doel (Hz)', 'Gemeten (Hz)', hertz],
    ['Soll (Cent)', 'Ist (Cent)', cents],
    ['Target cents', 'Actual cents', cents],
  ])('say what mends each sample: %s, %s', (first, second, rows) => {
    const text = pitches(first, second, rows);
    expect(tunes(text)).toEqual(['/6', '/-4', '/']);
    expect(regions(text).map((region) => region.pitch_keycenter)).toEqual(['45', '52', '59']);
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(/how far the samples are off pitch: the opposite is written as tuning/);
    expect(notes).not.toMatch(/is not used/);
  });

  it('give the roots too where no column does', () => {
    const text = pitches('Nominal Hz', 'Measured Hz', hertz, '', []);
    expect(tunes(text)).toEqual(['/6', '/-4', '/']);
    expect(regions(text).map((region) => region.pitch_keycenter)).toEqual(['45', '52', '59']);
  });

  it('are left where a column gives the tuning, with a note', () => {
    const text = pitches('Nominal Hz', 'Measured Hz', hertz, 'Tune (cents)', ['7 | ', '-3 | ', '0 | ']);
    expect(tunes(text)).toEqual(['/7', '/-3', '/']);
    expect(notesOf(text).join('\n')).toMatch(/is not written, as column "Tune \(cents\)" gives the tuning/);
  });

  it.each([
    ['Target level (dB)', 'Measured level (dB)', ['-20 | -21', '-20 | -19', '-20 | -20']],
    ['Soll', 'Ist', ['12 | 11', '12 | 12', '9 | 9']],
    ['Nominal Hz', 'Measured Hz', ['110 | 220', '164.814 | 170', '246.942 | 12']],
  ])('are none where they are something else or far apart: %s, %s', (first, second, rows) => {
    expect(tunes(pitches(first, second, rows))).toEqual(['/', '/', '/']);
  });
});

describe('pitches found before the samples were tuned', () => {
  const rows =
    'File\tLow\tHigh\tRoot\tNominal Hz\tMeasured Hz\na.wav\t40\t45\t42\t92.50\t93.00\nb.wav\t46\t50\t48\t130.81\t130.00\n';

  it.each([
    ['The samples were already retuned.', 'are written no more', false],
    ['Die Aufnahmen sind bereits gestimmt.', 'are written no more', false],
    ['The samples are not yet tuned.', 'are written', true],
  ])('%s: %s', (text, _, isWritten) => {
    const tunes = regions(`${rows}\n${text}\n`).map(({ tune }) => tune !== undefined);
    expect(tunes).toEqual([isWritten, isWritten]);
    expect(notesOf(`${rows}\n${text}\n`).join('\n')).toMatch(
      isWritten ? /the opposite is written/ : /tuned before/,
    );
  });
});
