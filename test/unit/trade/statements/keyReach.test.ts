import { describe, expect, it } from 'vitest';
import { keyReachIn } from '../../../../server/trade/statements/keys/keyReach';
import { notesOf, regions, table } from '../../table/tableRegions';

describe('how far samples reach beyond their own keys', () => {
  it.each([
    ['every sample is played one semitone down and two semitones up from its own key', 1, 2],
    ['each sample reaches 2 keys below and 5 above its root', 2, 5],
    ['All samples are stretched ±2 semitones', 2, 2],
    ['each take covers 3 keys either side of its root', 3, 3],
    ['Every note is stretched a whole tone below and a semitone above', 2, 1],
    ['Jede Aufnahme reicht zwei Halbtöne nach oben und unten.', 2, 2],
    ['Chaque échantillon est joué un demi-ton plus bas et deux demi-tons plus haut.', 1, 2],
    ['Cada muestra suena dos semitonos hacia abajo y un semitono hacia arriba', 2, 1],
    ['Varje prov spelas en halvton ner och två halvtoner upp', 1, 2],
  ])('%s', (text, down, up) => {
    expect(keyReachIn([text])).toMatchObject({ is: 'around', down, up });
  });

  it.each([
    'all samples are tuned two semitones up and down',
    'Every sample is pitched one semitone down and one semitone up',
    'The first sample plays two semitones down and up',
    'each sample plays two semitones up',
    'Every sample plays up and down the keyboard',
    'Each sample fades over 2 keys on either side',
    'Every sample plays two semitones up, the lower ones are flutes',
  ])('is not said by: %s', (text) => {
    expect(keyReachIn([text])).toBeUndefined();
  });

  it('gives zones their keys where the table has roots alone, with a note', () => {
    const text = `Every sample plays two semitones down and three up.\n\n${table('File | Root', 'a.wav | 60', 'b.wav | 66', 'c.wav | 126')}`;
    expect(regions(text).map(({ lokey, hikey }) => [lokey, hikey])).toEqual([
      ['58', '63'],
      ['64', '69'],
      ['124', '127'],
    ]);
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(/Each zone reaches 2 below its root and 3 above it, as ".*" says/);
    expect(notes).not.toMatch(/whole keyboard/);
  });

  it('leaves keys alone that the table gives', () => {
    const text = `Every sample plays two semitones down and up.\n\n${table('File | Low | High | Root', 'a.wav | 57 | 61 | 60', 'b.wav | 62 | 66 | 65')}`;
    expect(regions(text).map(({ lokey, hikey }) => [lokey, hikey])).toEqual([
      ['57', '61'],
      ['62', '66'],
    ]);
  });
});
