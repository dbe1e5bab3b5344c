import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';

const shelf = (rows: readonly string[]) =>
  inferVocabulary(`<shelf>${rows.join('\n')}</shelf>`, { path: 'shelf.xml' })?.vocabulary;

describe('ranges called by single letters', () => {
  it('are keys and velocities where each has its root key within', () => {
    const vocabulary = shelf([
      '<jug k="40-49" r="44" v="0-127">deep.wav</jug>',
      '<jug k="50-60" r="55" v="0-127">bright.wav</jug>',
    ]);
    const places = vocabulary?.levels.at(-1)?.parameters.map(({ parameter, at }) => `${parameter} ${at}`);
    expect(places).toEqual([
      'lokey @k',
      'hikey @k',
      'pitch_keycenter @r',
      'lovel @v',
      'hivel @v',
      'sample .',
    ]);
  });

  it.each([
    ['a number lies outside', '40-49', '70'],
    ['all have the same number', '50-60', '44'],
    ['the numbers are too low for keys', '1-9', '4'],
  ])('are none where %s', (_, keys, root) => {
    expect(
      shelf([`<jug k="${keys}" r="${root}">deep.wav</jug>`, '<jug k="40-60" r="44">bright.wav</jug>']),
    ).toBeUndefined();
  });
});
