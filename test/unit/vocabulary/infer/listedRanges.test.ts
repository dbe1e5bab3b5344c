import { describe, expect, it } from 'vitest';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { readInferred, valuesIn } from './inferred';

const instrument = (entries: string, regions: string) =>
  `<set><pool>${entries}</pool><map>${regions}</map></set>`;
const regions =
  '<zone clip="a1" velocities="1-80"/><zone clip="a1" velocities="81-127"/><zone clip="b2" velocities="1-127"/>';

// What entries of a list say counts for each region that refers to them (common practice of pools of samples).
describe('two values in one text of an entry', () => {
  it('are those of the regions that refer to it', () => {
    const text = instrument(
      '<clip id="a1" file="a.wav" keys="40-51" loop="100-5000"/><clip id="b2" file="b.wav" keys="52-60" loop="80-4000"/>',
      regions,
    );
    expect(valuesIn(text, 'lokey', 'hikey', 'loop_start', 'loop_end', 'hivel')).toEqual([
      '40 51 100 5000 80',
      '40 51 100 5000 127',
      '52 60 80 4000 127',
    ]);
  });

  it('may have a word between them', () => {
    const text = instrument(
      '<clip id="a1" file="a.wav" keys="C2 to D#3"/><clip id="b2" file="b.wav" keys="E3 to C4"/>',
      regions,
    );
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['36 51', '36 51', '52 60']);
  });

  it('are told of where they make no sense', () => {
    const text = instrument(
      '<clip id="a1" file="a.wav" keys="40-51" loop="100-5000"/><clip id="b2" file="b.wav" keys="52-60" loop="soon"/>',
      regions,
    );
    const { vocabulary } = readInferred(text);
    const read = vocabulary && readVocabularyXml(vocabulary)(text, { path: 'a.xml' });
    expect(read?.findings.map(({ message }) => message)).toContainEqual(
      expect.stringContaining('"soon" sets no loop_start'),
    );
  });
});

describe('a root key of an entry', () => {
  it('is no folder, though folders are called so too', () => {
    const text = instrument(
      '<clip id="a1" file="a.wav" root="C3"/><clip id="b2" file="b.wav" root="G3"/>',
      '<zone clip="a1" keys="40-51"/><zone clip="b2" keys="52-60"/>',
    );
    expect(valuesIn(text, 'sample', 'pitch_keycenter')).toEqual(['a.wav 48', 'b.wav 55']);
  });
});
