import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const regions = (tuning: (root: number) => string | number, own = 'root') =>
  `<harp>${[40, 45, 51, 56, 60]
    .map((root) => `<string ${own}="${root}" tuning="${tuning(root)}" file="s${root}.wav"/>`)
    .join('')}</harp>`;

// A key range ends where its keys do; a tuning in cents has nothing to do with the number of the key (MIDI 1.0: keys are 0 to 127).
describe('numbers that go along with the keys', () => {
  it('are no tuning, and are told', () => {
    const text = regions((root) => root + 2);
    expect(valuesIn(text, 'tune')).toEqual(['-', '-', '-', '-', '-']);
    expect(readInferred(text).decisions.map(({ message }) => message)).toContainEqual(
      expect.stringMatching(/"tuning" of <string> is not read\. .*go along with the keys/),
    );
  });

  it('are the root keys where they lie between the ends of the ranges', () => {
    const text = `<harp>${[40, 44, 48, 52]
      .map((low) => `<string low="${low}" high="${low + 3}" tuning="${low + 1}" file="s${low}.wav"/>`)
      .join('')}</harp>`;
    expect(valuesIn(text, 'pitch_keycenter', 'tune')).toEqual(['41 -', '45 -', '49 -', '53 -']);
  });

  it('are a tuning where they do not, or have its unit', () => {
    expect(
      valuesIn(
        regions((root) => 130 - root),
        'tune',
      ),
    ).toEqual(['90', '85', '79', '74', '70']);
    expect(
      valuesIn(
        regions((root) => `${root} cents`),
        'tune',
      ),
    ).toEqual(['40', '45', '51', '56', '60']);
  });
});
