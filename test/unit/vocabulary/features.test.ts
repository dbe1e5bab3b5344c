import { describe, expect, it } from 'vitest';
import { headerSymbols } from '../../../server/features/navigation/symbols';
import { semanticTokens, tokenKinds } from '../../../server/features/semanticTokens';
import { buildMapScene } from '../../../server/map/scene';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { examples } from './examples';

const all = Object.entries(examples).map(([name, { vocabulary, text, samples, regions }]) => {
  const instrument = vocabularyNotation(vocabulary).read(text, {
    path: `/w/${name}.xml`,
    sampleFacts: (path) => samples.get(path),
  });
  return { name, text, instrument, regions };
});

describe.each(all)('features on instruments in a vocabulary: $name', ({ text, instrument, regions }) => {
  it('give tokens that follow one another and hold something', () => {
    let end = 0;
    const tokens = semanticTokens(instrument);
    expect(tokens.length).toBeGreaterThan(regions.length);
    const wrong = tokens.filter((token) => {
      const follows = token.start >= end && token.end > token.start;
      end = token.end;
      const isWord = tokenKinds[token.kind] === 'comment' || !/[<>]/.test(text.slice(token.start, token.end));
      return !follows || !isWord;
    });
    expect(wrong).toEqual([]);
  });

  it('show every region on the map with its keys', () => {
    const { shapes } = buildMapScene(instrument);
    expect(shapes.length).toBeGreaterThan(0);
    const keys = shapes.map(({ lowKey, highKey }) => [lowKey, highKey]);
    for (const { lokey, hikey, key } of regions) {
      expect(keys).toContainEqual([lokey ?? key, hikey ?? key]);
    }
  });

  it('list every region', () => {
    const count = (list: ReturnType<typeof headerSymbols>): number =>
      list.reduce((sum, { children }) => sum + 1 + count(children as never), 0);
    expect(count(headerSymbols(instrument))).toBeGreaterThanOrEqual(regions.length);
  });
});
