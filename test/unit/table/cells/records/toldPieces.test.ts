import { describe, expect, it } from 'vitest';
import { toldPieces } from '../../../../../server/table/cells/records/toldPieces';
import { regions } from '../../tableRegions';

describe('a text that tells of several files in one paragraph', () => {
  const cut = (text: string) => toldPieces(text)?.map(({ start, end }) => text.slice(start, end).trim());

  it('is cut before the clause of the next file, or behind the file where its keys stand before it', () => {
    expect(cut('low.wav on 30 to 35, root 33, and high.wav on 36 to 42, root 39')).toEqual([
      'low.wav on 30 to 35, root 33,',
      'and high.wav on 36 to 42, root 39',
    ]);
    expect(cut('Keys 30 to 35 play low.wav at root 33, keys 36 to 42 play high.wav at root 39.')).toEqual([
      'Keys 30 to 35 play low.wav at root 33,',
      'keys 36 to 42 play high.wav at root 39.',
    ]);
  });

  it('is none with one file a line', () => {
    expect(toldPieces('low.wav: 30 to 35\n\nhigh.wav: 36 to 42\n')).toBeUndefined();
    expect(toldPieces('- low.wav: 30 to 35\n- high.wav: 36 to 42\n')).toBeUndefined();
  });

  it.each([
    ['semicolons', 'low.wav: 30-35, root 33; mid.wav: 36-41, root 38; high.wav: 42-50, root 45'],
    [
      'sentences over lines',
      'Hello! Put low.wav on 30 to 35 with root 33, mid.wav on 36 to 41\n(root 38), and high.wav goes on 42 to\n50, root 45. More next week.',
    ],
    [
      'keys before files',
      'I used keys 30-35 for low.wav (root 33), then keys 36-41 for mid.wav (root 38) and finally keys 42-50 for high.wav (root 45).',
    ],
    [
      'bare numbers around a root',
      'The map: low.wav goes from 30 to 35 with root 33, mid.wav from 36 to 41 (root 38), and high.wav covers the rest, 42 to 50, root 45.',
    ],
    [
      'German',
      'low.wav liegt auf 30 bis 35 mit Grundton 33, mid.wav auf 36 bis 41 mit Grundton 38, high.wav auf 42 bis 50 (Grundton 45).',
    ],
  ])('gives a zone to each file: %s', (_, text) => {
    const found = regions(text).map(({ sample, lokey, hikey, pitch_keycenter }) => [
      sample,
      Number(lokey),
      Number(hikey),
      Number(pitch_keycenter),
    ]);
    expect(found).toEqual([
      ['low.wav', 30, 35, 33],
      ['mid.wav', 36, 41, 38],
      ['high.wav', 42, 50, 45],
    ]);
  });
});
