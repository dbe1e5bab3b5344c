import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../server/table/looksLikeZoneTable';
import { notesOf, regions, table } from '../tableRegions';

const roots = (text: string) => regions(text).map(({ pitch_keycenter: root, key }) => Number(root ?? key));

describe('roots without octaves beside names that have them', () => {
  it.each([
    [
      'English names',
      table('File | Root', 'Vib_G#3.wav | G#', 'Vib_B3.wav | B', 'Vib_D4.wav | D'),
      [56, 59, 62],
    ],
    [
      'the other name of the same key',
      table('Archivo | Fundamental', 'fl-Gs4.wav | Ab', 'fl-C5.wav | C', 'fl-Ds5.wav | Eb'),
      [68, 72, 75],
    ],
    [
      'German names',
      table('Datei | Grundton', 'Marimba_Fis2.wav | Fis', 'Marimba_A2.wav | A', 'Marimba_C3.wav | C'),
      [42, 45, 48],
    ],
    ['syllables', table('fichier | note de base', 'orgue_do3.wav | do', 'orgue_sib3.wav | sib'), [48, 58]],
    [
      'a word for the octave',
      table('Sample | Root note', 'bell oct3 C.wav | C', 'bell oct4 Bb.wav | Bb'),
      [48, 70],
    ],
    ['folders', table('File | Key', 'Pno/Eb1/p.wav | Eb', 'Pno/A1/p.wav | A'), [27, 33]],
  ])('%s', (_what, text, expected) => {
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(roots(text)).toEqual(expected);
    expect(notesOf(text).join('\n')).toMatch(/have no octaves; those in the names of the samples are taken/);
  });

  it('are not taken where a name says another note', () => {
    const text = table('File | Root', 'x_C3.wav | C', 'x_F3.wav | G', 'x_A3.wav | A');
    expect(roots(text).every(Number.isNaN)).toBe(true);
    expect(notesOf(text).join('\n')).toMatch(/"Root" is not used|is no key|no low and high keys/);
  });

  it('are not taken where the names say no octave', () => {
    expect(roots(table('File | Root', 'x_C.wav | C', 'x_F.wav | F')).every(Number.isNaN)).toBe(true);
  });
});
