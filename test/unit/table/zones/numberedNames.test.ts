import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const roots = (text: string) => regions(text).map(({ pitch_keycenter: root }) => root);

describe('numbers in the names of files', () => {
  it.each([
    [
      ['Organ_38.wav 36-40', 'Organ_43.wav 41-45', 'Organ_48.wav 46-52'],
      ['38', '43', '48'],
    ],
    [
      ['38 organ 24bit.wav 36-40', '43 organ 24bit.wav 41-45', '48 organ 24bit.wav 46-52'],
      ['38', '43', '48'],
    ],
    [
      ['Organ 1.wav 36-40', 'Organ 2.wav 41-45', 'Organ 3.wav 46-52'],
      [undefined, undefined, undefined],
    ],
    [
      ['Organ_60.wav 36-72', 'Organ_64.wav 36-72', 'Organ_70.wav 36-72'],
      [undefined, undefined, undefined],
    ],
  ])('are roots where all lie within their keys: %s', (rows, expected) => {
    expect(roots(rows.join('\n'))).toEqual(expected);
  });

  it.each([
    'The number in the file name is the root.',
    'Die Zahl im Dateinamen ist der Grundton.',
    'Le nombre dans le nom du fichier est la fondamentale.',
    'El número del nombre es la nota raíz.',
    'Het getal in de bestandsnaam is de grondtoon.',
  ])('are roots where the text says so: %s', (said) => {
    const rows = table('File | Low | High', 'Organ_62.wav | 36 | 40', 'Organ_65.wav | 41 | 45');
    const text = `${said}\n\n${rows}`;
    expect(roots(text)).toEqual(['62', '65']);
    expect(notesOf(text).join()).toMatch(/numbers in the names of the files, as ".*" says, are taken/);
  });
});

describe('the name of a file that starts with a word for a heading', () => {
  it('is no heading', () => {
    const text = 'Lead 1.wav 24-40\nLead 2.wav 41-46\nLead 3.wav 47-53';
    expect(regions(text).map(({ sample, lokey }) => `${sample} ${lokey}`)).toEqual([
      'Lead 1.wav 24',
      'Lead 2.wav 41',
      'Lead 3.wav 47',
    ]);
  });
});
