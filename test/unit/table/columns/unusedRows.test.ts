import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const rows = table(
  'File | Low | High | Root',
  'lira_1.wav | 40 | 44 | 42',
  'lira_2.wav | 45 | 49 | 47',
  'lira_3.wav | 50 | 54 | 52',
  'lira_4.wav | 55 | 59 | 57',
);
const samples = (text: string) => regions(text).map(({ sample = '' }) => /\d/.exec(sample)?.[0]);

describe('a row that a sentence around the table says not to use', () => {
  it.each([
    'lira_4.wav is not used.',
    'Please ignore lira_4.wav.',
    'The last row (lira_4.wav) is one too many.',
    'Do not use lira_4.wav!',
    '- lira_1.wav has a click at its start\n- lira_4: leave out',
    'Die letzte Zeile (lira_4.wav) bitte weglassen.',
    'lira_4.wav: nicht verwenden',
    'La ligne lira_4.wav est à ignorer.',
    'La última fila (lira_4.wav) sobra, no usar.',
    'lira_4.wav è di troppo, da scartare',
    'Lira_4.wav não usar.',
    'lira_4.wav niet gebruiken',
    'lira_4.wav ska inte användas.',
    'lira_4.wav — лишняя строка, не использовать.',
    'lira_4.wavは使わないでください。',
  ])('is left out and told: "%s"', (said) => {
    for (const text of [`${rows}\n\n${said}`, `${said}\n\n${rows}`]) {
      expect(samples(text)).toEqual(['1', '2', '3']);
      expect(notesOf(text).join('\n')).toMatch(/not used, as the text says/);
    }
  });

  it('may be one of several', () => {
    expect(samples(`${rows}\n\nlira_2.wav and lira_4.wav are not used.`)).toEqual(['1', '3']);
  });

  it.each([
    'lira_4.wav is not used below C3.',
    'lira_4.wav replaces lira_2.wav, which is not used.',
    'Remove the click at the start of lira_4.wav.',
    'lira_4.wav is loud, the rest is not used.',
    'lira_1.wav, lira_2.wav, lira_3.wav, lira_4.wav are not used',
    'Nothing of lira_4.wav needs to be skipped.',
  ])('stays where the sentence says something else: "%s"', (said) => {
    expect(samples(`${rows}\n\n${said}`)).toEqual(['1', '2', '3', '4']);
  });
});
