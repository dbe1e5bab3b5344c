import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const notes = (first: string, second: string) =>
  `<box><note root="60" low="58" high="62">${first}</note><note root="65" low="63" high="67">${second}</note></box>`;

describe('elements of a note that are called after microphones', () => {
  it.each([
    [
      'attributes',
      '<close wav="a.wav" db="-1"/><room wav="b.wav" db="-8"/>',
      '<close wav="c.wav" db="-2"/><room wav="d.wav" db="-9"/>',
    ],
    ['texts', '<near>a.wav</near><far>b.wav</far>', '<near>c.wav</near><far>d.wav</far>'],
    [
      'other languages',
      '<nah datei="a.wav"/><fern datei="b.wav"/>',
      '<nah datei="c.wav"/><fern datei="d.wav"/>',
    ],
  ])('are a region each, by %s', (_, first, second) => {
    expect(valuesIn(notes(first, second), 'sample', 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      'a.wav 58 62 60',
      'b.wav 58 62 60',
      'c.wav 63 67 65',
      'd.wav 63 67 65',
    ]);
  });

  it('have levels of their own', () => {
    const text = notes(
      '<close wav="a.wav" db="-1"/><room wav="b.wav" db="-8"/>',
      '<close wav="c.wav" db="-2"/>',
    );
    expect(valuesIn(text, 'sample', 'volume')).toEqual(['a.wav -1', 'b.wav -8', 'c.wav -2']);
  });

  it('are told of and not read where another file beside the sample is called otherwise', () => {
    const text = notes(
      '<wave file="a.wav"/><backup file="b.wav"/>',
      '<wave file="c.wav"/><backup file="d.wav"/>',
    );
    const { regions, decisions } = readInferred(text);
    expect(regions).toHaveLength(2);
    expect(decisions.some(({ isLost }) => isLost)).toBe(true);
  });
});
