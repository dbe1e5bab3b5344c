import { describe, expect, it } from 'vitest';
import { layerOrderIn } from '../../../../server/trade/statements/layers/layerOrder';

// Sentences as people write them (from memory).
describe('the order of numbered layers', () => {
  it.each([
    'layers: 1 = softest, 4 = loudest',
    'dynamics 1 = pp, 2 = mf, 3 = ff',
    'Schicht 1 ist die leiseste',
    'Capas numeradas de la más suave a la más fuerte',
    'softest = 1',
    'lagen van zacht naar hard genummerd',
    'layer 3 is the loudest',
  ])('is softest first in "%s"', (text) => {
    expect(layerOrderIn([text])).toEqual({ is: 'softestFirst', text });
  });

  it.each([
    'layer 1 is the loudest, layer 3 the softest',
    'Couche 1 : la plus forte ; couche 2 : la plus douce',
    'layers are numbered from loud to soft',
    'strato 3 = il più debole',
  ])('is loudest first in "%s"', (text) => {
    expect(layerOrderIn([text])).toEqual({ is: 'loudestFirst', text });
  });

  it.each([
    'soft and loud takes of every key',
    'recorded softly in room 2 on a cold day in May, with 24 bits and very loud neighbours',
    'layers 1 to 4',
  ])('is not said in "%s"', (text) => {
    expect(layerOrderIn([text])).toBeUndefined();
  });
});
