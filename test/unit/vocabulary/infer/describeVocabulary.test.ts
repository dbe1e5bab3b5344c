import { describe, expect, it } from 'vitest';
import { describeVocabulary } from '../../../../server/vocabulary/infer/describeVocabulary';
import { matchesVocabulary } from '../../../../server/vocabulary/infer/matchesVocabulary';
import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import { examples } from '../examples';

describe('a vocabulary in words', () => {
  it('names elements, places and how values are written', () => {
    const vocabulary: Vocabulary = {
      name: 'Kiln',
      levels: [
        { element: 'kiln', is: 'instrument', parameters: [] },
        {
          element: 'pot',
          is: 'region',
          inside: ['shelf'],
          parameters: [
            { parameter: 'sample', at: '.', form: { kind: 'path', ending: '.wav' } },
            {
              parameter: 'lokey',
              at: '@keys',
              part: 1,
              form: { kind: 'key', written: 'name', middleC: 'C3' },
            },
            { parameter: 'volume', at: 'mix/@level', form: { kind: 'level', unit: 'dB', unitText: ' dB' } },
          ],
        },
      ],
      unsettled: ['middleC'],
    };
    expect(describeVocabulary(vocabulary)).toBe(
      [
        'Vocabulary "Kiln"',
        '<kiln> is the instrument',
        '<pot> is a region (inside <shelf>)',
        '  sample  its text: path of the audio file, without its ending ".wav"',
        '  lokey   first part of @keys: key by note name, key 60 is C3',
        '  volume  mix/@level: level in dB, followed by " dB"',
        'Not settled: middleC',
        '',
      ].join('\n'),
    );
  });

  it('says something of every parameter of the examples', () => {
    for (const { vocabulary } of Object.values(examples)) {
      const text = describeVocabulary(vocabulary);
      for (const { at } of vocabulary.levels.flatMap(({ parameters }) => parameters)) {
        if (at !== '.') expect(text).toContain(at);
      }
      expect(text).not.toMatch(/undefined|NaN/);
    }
  });
});

describe('whether a text is written in a vocabulary', () => {
  const all = Object.entries(examples);

  it.each(all)('%s is in its own and in no other', (name, { text }) => {
    const matching = all
      .filter(([, { vocabulary }]) => matchesVocabulary(vocabulary, text))
      .map(([one]) => one);
    expect(matching).toEqual([name]);
  });

  it('looks further where a long text starts with something else', () => {
    const { vocabulary, text } = examples.foundry;
    const long = text.replace('<bell', `<!-- ${'x'.repeat(100_000)} --><bell`);
    expect(matchesVocabulary(vocabulary, long)).toBe(true);
  });

  it('holds for an outermost element that is still empty, and not for other XML', () => {
    const { vocabulary } = examples.foundry;
    expect(matchesVocabulary(vocabulary, '<foundry/>')).toBe(true);
    expect(matchesVocabulary(vocabulary, '<foundry><tree/></foundry>')).toBe(false);
    expect(matchesVocabulary(vocabulary, '<orchard><bell/></orchard>')).toBe(false);
    expect(matchesVocabulary(vocabulary, '')).toBe(false);
  });
});
