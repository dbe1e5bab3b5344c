import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';

function looked(text: string) {
  const inferred = inferVocabulary(text, { path: 'a.xml' });
  if (!inferred) throw new Error('taken for no instrument');
  const instrument = readVocabularyXml(inferred.vocabulary)(text, { path: 'a.xml' });
  return {
    samples: [...instrument.regions].map((region) => instrument.samplePath(region)),
    lost: inferred.decisions.filter(({ isLost }) => isLost).map(({ message }) => message),
  };
}

const keyed = '<peal file="a.wav" lo="50" hi="55" root="52"/><peal file="b.wav" lo="56" hi="61" root="58"/>';

describe('a file in an element that is called as regions are, apart from them', () => {
  it.each([
    ['beside them', `<tower>${keyed}<visit><peal file="greeting.wav"/></visit></tower>`],
    ['before a section', `<tower><intro><peal file="greeting.wav"/></intro><bells>${keyed}</bells></tower>`],
    [
      'of which groups have the keys',
      '<tower><bell lo="50" hi="55"><peal file="a.wav"/></bell><bell lo="56" hi="61"><peal file="b.wav"/></bell><visit><peal file="greeting.wav"/></visit></tower>',
    ],
  ])('is left out and told of, %s', (_, text) => {
    const { samples, lost } = looked(text);
    expect(samples).toEqual(['a.wav', 'b.wav']);
    expect(lost.filter((message) => message.includes('"greeting.wav" is left out'))).toHaveLength(1);
  });

  it('is a region where it is told of as a release', () => {
    const { samples } = looked(`<tower>${keyed}<release><peal file="thud.wav"/></release></tower>`);
    expect(samples).toContain('thud.wav');
  });
});
