import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../../server/table/readTable';
import { regions } from '../tableRegions';

const seen = (...lines: string[]) =>
  regions(lines.join('\n')).map(
    ({ sample, lokey, hikey, pitch_keycenter }) => `${sample} ${lokey}-${hikey} ${pitch_keycenter}`,
  );
const zones = ['gong_a.wav 40-45 42', 'gong_b.wav 46-51 48'];

describe('words that lead up to a file in a sentence', () => {
  it('say that a file follows, whose name may have blanks', () => {
    expect(
      seen(
        'The first file is big gong 1.wav, it goes from key 40 up to key 45 and its root is 42.',
        'And the last one is big gong 2.wav, it goes from key 46 up to key 51 and its root is 48.',
      ),
    ).toEqual(['big gong 1.wav 40-45 42', 'big gong 2.wav 46-51 48']);
    expect(
      seen(
        'Die erste Datei ist gong_a.wav, sie reicht von Taste 40 bis Taste 45, Grundton 42.',
        'Die letzte ist gong_b.wav, sie reicht von Taste 46 bis Taste 51, Grundton 48.',
      ),
    ).toEqual(zones);
  });

  it.each([
    ['Put gong_a.wav on keys 40 to 45, root 42.', 'Then use gong_b.wav from key 46 to key 51, root 48.'],
    ['On keys 40 to 45 play the sample gong_a.wav, root 42.', 'On keys 46 to 51 load gong_b.wav, root 48.'],
    ['Use gong_a.wav from 40 to 45, root 42.', 'Use gong_b.wav from 46 to 51, root 48.'],
    [
      'Nimm gong_a.wav für die Tasten 40 bis 45, Grundton 42.',
      'Dann nimm die Datei gong_b.wav von 46 bis 51, Grundton 48.',
    ],
    [
      'Utilisez le fichier gong_a.wav de 40 à 45, fondamentale 42.',
      'Mettez gong_b.wav de 46 à 51, fondamentale 48.',
    ],
    ['Usa gong_a.wav desde 40 hasta 45, nota base 42.', 'Usa gong_b.wav desde 46 hasta 51, nota base 48.'],
    ['Metti gong_a.wav da 40 a 45, nota base 42.', 'Usa il file gong_b.wav da 46 a 51, nota base 48.'],
    ['Gebruik gong_a.wav van 40 tot 45, grondtoon 42.', 'Zet gong_b.wav op toetsen 46 tot 51, grondtoon 48.'],
    [
      'Użyj gong_a.wav od 40 do 45, dźwięk podstawowy 42.',
      'Używaj gong_b.wav od 46 do 51, dźwięk podstawowy 48.',
    ],
  ])('are no part of its name: %s', (...lines) => {
    expect(seen(...lines)).toEqual(zones);
  });

  it('stay in a name that they may be part of', () => {
    expect(
      seen('Take 1.wav covers keys 40 to 45, root 42.', 'Take 2.wav covers keys 46 to 51, root 48.'),
    ).toEqual(['Take 1.wav 40-45 42', 'Take 2.wav 46-51 48']);
    expect(
      seen('Soft gong.wav covers keys 40 to 45, root 42.', 'Hard gong.wav covers keys 46 to 51, root 48.'),
    ).toEqual(['Soft gong.wav 40-45 42', 'Hard gong.wav 46-51 48']);
  });
});

describe('a range in the column of one end', () => {
  const ends = (text: string) =>
    regions(text).map(({ lokey, hikey, lovel, hivel }) =>
      [lokey, hikey, lovel, hivel].map((one) => one ?? '').join(' '),
    );

  it('gives the other end too, where that is empty', () => {
    expect(ends('File;Low;High;Root\na.wav;40-45;;42\nb.wav;46;51;48')).toEqual(['40 45  ', '46 51  ']);
    expect(ends('File;Keys;Low;Root\na.wav;40-45;;42\nb.wav;;46-51;48')).toEqual(['40 45  ', '46 51  ']);
    expect(ends('File;Root;Vel low;Vel high\na.wav;42;1-60;\nb.wav;48;61;127')).toEqual([
      '  1 60',
      '  61 127',
    ]);
  });
});

describe('numbers under a heading for zones', () => {
  it.each([
    'Zone;Taste von;Taste bis;Anschlag von;Anschlag bis',
    'Region;Low key;High key;Low vel;High vel',
    'Zona;Nota baja;Nota alta;Vel. mín;Vel. máx',
  ])('count them and name no samples: %s', (headings) => {
    const text = `${headings}\n1;36;47;1;127\n2;48;59;1;127\n3;60;71;1;127\n`;
    expect(readZoneTable(text).problem).toMatch(/^No sample names were found/);
  });

  it('name them where they are words', () => {
    expect(
      regions('Zone;Low;High;Root\nbell_low;36;47;40\nbell_high;48;59;50').map(({ sample }) => sample),
    ).toEqual(['bell_low', 'bell_high']);
  });
});
