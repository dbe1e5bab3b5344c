import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const rows = table(
  'Sample | Root | Low | High | Loop start',
  'reed_53.wav | 53 | 50 | 54 | 22050',
  'reed_57.wav | 57 | 55 | 58 | 17640',
);
/** Frames of the files; the last one counts from 0. */
const framesOf = (name: string) => (name.includes('53') ? 80_000 : 75_000);
const loops = (text: string, options = { framesOf }) =>
  regions(text, options).map(({ loop_mode, loop_start, loop_end }) =>
    [loop_mode ?? '', loop_start ?? '', loop_end ?? ''].join(' '),
  );
const toEnd = ['loop_continuous 22050 79999', 'loop_continuous 17640 74999'];

describe('loops that end with their files', () => {
  it.each([
    'All loops run to the very end of the file.',
    'Every loop ends with the sample.',
    'Loop end = end of file.',
    'Die Schleife läuft immer bis zum Dateiende.',
    'Toutes les boucles vont jusqu’à la fin du fichier.',
    'El bucle llega siempre hasta el final del archivo.',
    'Il loop arriva sempre fino alla fine del file.',
    'O loop vai sempre até ao fim do ficheiro.',
    'De lus loopt altijd tot het einde van het bestand.',
    'Loopen går alltid till slutet av filen.',
    'Pętla zawsze trwa do końca pliku.',
    'Smyčka jde vždy až do konce souboru.',
    'Петля у всех идёт до самого конца файла.',
    'ループはすべてファイルの最後まで。',
    '循环一直到文件末尾。',
  ])('as a sentence says: %s', (said) => {
    expect(loops(`${said}\n\n${rows}`)).toEqual(toEnd);
    expect(notesOf(`${said}\n\n${rows}`, { framesOf }).join()).toMatch(
      /end with the last frames of their files/,
    );
  });

  it.each([
    'Not all loops run to the end of the file.',
    'The loops stop 100 frames before the end of the file.',
    'Die Schleifen enden kurz vor dem Dateiende.',
  ])('are none where it says otherwise: %s', (said) => {
    expect(loops(`${said}\n\n${rows}`)).toEqual(['  ', '  ']);
    expect(notesOf(`${said}\n\n${rows}`, { framesOf }).join()).toMatch(/a loop start without a loop end/);
  });

  it('keep their starts where nobody knows how long the files are', () => {
    const text = `All loops run to the end of the file.\n\n${rows}`;
    expect(regions(text).map(({ loop_start, loop_end }) => [loop_start, loop_end])).toEqual([
      ['22050', undefined],
      ['17640', undefined],
    ]);
    expect(notesOf(text).join()).toMatch(/no loop end is written/);
  });

  it('may be named so in cells', () => {
    const ends = table(
      'Sample | Root | Low | High | Loop start | Loop end',
      'reed_53.wav | 53 | 50 | 54 | 22050 | end',
      'reed_57.wav | 57 | 55 | 58 | 17640 | EOF',
    );
    expect(loops(ends)).toEqual(toEnd);
    const pairs = table(
      'Sample | Root | Low | High | Loop',
      'reed_53.wav | 53 | 50 | 54 | 22050-end',
      'reed_57.wav | 57 | 55 | 58 | 17640 to end of file',
    );
    expect(loops(pairs)).toEqual(toEnd);
  });

  it('leave other loops and one-shots as they are', () => {
    const text = table(
      'Sample | Root | Low | High | Loop start | Loop end',
      'reed_53.wav | 53 | 50 | 54 | 22050 | ',
      'reed_57.wav | 57 | 55 | 58 | 17640 | 60000',
    );
    expect(loops(`Where empty, the loop runs to the end of the sample.\n\n${text}`)).toEqual([
      'loop_continuous 22050 79999',
      'loop_continuous 17640 60000',
    ]);
    const plain = table('Sample | Key', 'pot.wav | 36', 'tin.wav | 38');
    expect(loops(`All samples play to the end.\n\n${plain}`)).toEqual(['one_shot  ', 'one_shot  ']);
  });
});
