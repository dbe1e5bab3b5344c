import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const rows = table(
  'File | Low | High | Root | Volume',
  'gong_40.wav | 38 | 41 | 40 | -2',
  'gong_43.wav | 42 | 45 | 43 | -1.5',
  'gong_47.wav | 46 | 50 | 47 | 0',
);
const levelsOf = (text: string) => regions(text).map(({ volume }) => Number(volume ?? 0));
const asWritten = [-2, -1.5, 0];

/** A table with another heading for its levels. */
const headed = (heading: string, said: string) => `${rows.replace('Volume', heading)}\n\n${said}`;

describe('a sentence that puts a value of one file right', () => {
  it.each([
    ['Volume', 'Correction: the volume of gong_43.wav should be -3, not -1.5.'],
    ['Volume', 'Correction: volume of gong_43.wav is -3.'],
    ['Volume', 'The volume of gong_43.wav should be -3 instead of -1.5.'],
    ['Volume', 'Erratum: gong_43 volume -3 dB'],
    ['Lautstärke', 'Korrektur: Die Lautstärke von gong_43.wav muss -3 sein, nicht -1,5.'],
    ['Lautstärke', 'Berichtigung: gong_43.wav hat Lautstärke -3'],
    ['Volume', 'Correction : le volume de gong_43.wav est -3 et non -1,5.'],
    ['Volumen', 'Corrección: el volumen de gong_43.wav es -3, no -1,5.'],
    ['Volume', 'Correzione: il volume di gong_43.wav è -3.'],
    ['Volume', 'Correção: o volume de gong_43.wav deve ser -3, não -1,5.'],
    ['Volume', 'Correctie: het volume van gong_43.wav is -3.'],
    ['Volym', 'Rättelse: volym för gong_43.wav ska vara -3, inte -1,5.'],
    ['Głośność', 'Korekta: głośność gong_43.wav to -3, nie -1,5.'],
    ['Hlasitost', 'Oprava: hlasitost gong_43.wav je -3.'],
    ['Громкость', 'Исправление: громкость gong_43.wav должна быть -3, а не -1,5.'],
    ['Гучність', 'Виправлення: гучність gong_43.wav має бути -3, а не -1,5.'],
    ['音量', '更正：gong_43.wav 的音量应该是 -3，而不是 -1.5。'],
    ['音量', '勘误:gong_43.wav的音量是-3。'],
    ['音量', '訂正：gong_43.wavの音量は-3です。'],
    ['볼륨', '정정: gong_43.wav의 볼륨은 -3입니다.'],
  ])('counts, under "%s": %s', (heading, said) => {
    const text = headed(heading, said);
    expect(levelsOf(text)).toEqual([-2, -3, 0]);
    expect(notesOf(text).join('\n')).toMatch(/the text counts, as it corrects the table/);
  });

  it('goes for other columns', () => {
    const found = regions(`${rows}\n\nCorrection: the root of gong_43.wav should be 44, not 43.`);
    expect(found.map((one) => one.pitch_keycenter)).toEqual(['40', '44', '47']);
  });

  it('goes for the table that has the file, wherever it stands', () => {
    const second = rows.replaceAll('gong', 'bell');
    const text = `Soft\n${rows}\n\nLoud\n${second}\n\nCorrection: the volume of gong_43.wav should be -3, not -1.5.`;
    expect(levelsOf(text)).toEqual([-2, -3, 0, ...asWritten]);
  });

  it('goes for the row with the wrong value, where a file has several', () => {
    const text = `${rows}\n${table('gong_43.wav | 51 | 52 | 43 | -5')}\n\nCorrection: the volume of gong_43.wav should be -3, not -1.5.`;
    expect(levelsOf(text)).toEqual([-2, -3, 0, -5]);
  });

  it.each([
    'Correction: gong_43.wav should be -3.',
    'Correction: the volume of gong_43.wav should be -3, not -1.',
    'Correction: the volume of gong_40.wav and gong_43.wav should be -3.',
    'Korrektur: gong_43.wav bekommt -3.',
  ])('is not done and told where it leaves open what is meant: %s', (said) => {
    const text = `${rows}\n\n${said}`;
    expect(levelsOf(text)).toEqual(asWritten);
    expect(notesOf(text).join('\n')).toMatch(/is not done, as it does not tell for certain which value/);
  });

  it('lets the table count where nothing says that it is wrong', () => {
    const text = `${rows}\n\nI think the volume of gong_43.wav is -3.`;
    expect(levelsOf(text)).toEqual(asWritten);
    expect(notesOf(text).join('\n')).toMatch(/the table counts\. Check which is right/);
  });
});
