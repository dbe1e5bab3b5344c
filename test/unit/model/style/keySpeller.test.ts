import { describe, expect, it } from 'vitest';
import { KeySpeller, keyWritingOf } from '../../../../server/model/style/keySpeller';
import { readSfz } from '../../../../server/sfz/read';

const read = (text: string) => readSfz(text, { path: 'a.sfz' });
const written = (text: string, key: number) => keyWritingOf(read(text))(key);

/** Note names with middle C = C4 = 60 (sfzformat.com, key); a text goes on in the way it is written (our choice). */
describe('keys of a document', () => {
  it.each([
    ['', '61'],
    ['<region> key=60', '61'],
    ['<region> key=c4', 'c#4'],
    ['<region> key=C4', 'C#4'],
    ['<region> key=d4 <region> key=D4', 'C#4'],
    ['<region> key=d4 <region> key=d5 <region> key=D4', 'c#4'],
    ['<region> key=C4 <region> key=60', '61'],
    ['<region> key=C4 <region> key=D4 <region> key=60', 'C#4'],
    ['<region> key=Eb4', 'Db4'],
    ['<region> key=E♭4', 'Db4'],
    ['<region> key=D#4', 'C#4'],
    ['<region> key=D♯4 <region> key=Eb4', 'C#4'],
    ['<region> key=Eb4 <region> key=Bb4 <region> key=D#4', 'Db4'],
    ['<region> key=eb4', 'db4'],
    ['<region> lokey=C4 hikey=D4 pitch_keycenter=C4 sw_last=C1', 'C#4'],
    // What is no key says nothing of keys, even where it looks like one.
    ['<region> key=C4 tune=60 volume=3 pan=4', 'C#4'],
    ['<region> region_label=C4 sample=D4', '61'],
    ['<region> key=x key=y key=C4', 'C#4'],
    ['<region> key=x <region> key=y <region> key=60', '61'],
  ])('%s', (text, expected) => {
    expect(written(text, 61)).toBe(expected);
  });

  it('are numbers past the keyboard', () => {
    expect(written('<region> key=C4', 128)).toBe('128');
    expect(written('<region> key=C4', -1)).toBe('-1');
    expect(written('<region> key=C4', 127)).toBe('G9');
    expect(written('<region> key=C4', 0)).toBe('C-1');
  });

  it('have flats for each of the five raised keys', () => {
    expect([61, 63, 66, 68, 70].map((key) => written('<region> key=Eb4', key))).toEqual([
      'Db4',
      'Eb4',
      'Gb4',
      'Ab4',
      'Bb4',
    ]);
    expect([60, 62, 64, 65, 67, 69, 71].map((key) => written('<region> key=Eb4', key))).toEqual([
      'C4',
      'D4',
      'E4',
      'F4',
      'G4',
      'A4',
      'B4',
    ]);
  });

  it('are looked at as far as is of use', () => {
    const many = (count: number) => `${'<region> key=60\n'.repeat(count)}${'<region> key=C4\n'.repeat(4000)}`;
    expect(written(many(900), 61)).toBe('C#4');
    expect(written(many(1500), 61)).toBe('61');
  });
});

describe('a key like another', () => {
  it.each([
    ['c#4', 'c#4', 'd4'],
    ['C#4', 'C#4', 'D4'],
    ['Eb3', 'Db4', 'D4'],
    ['eb3', 'db4', 'd4'],
    ['E♭3', 'D♭4', 'D4'],
    ['C♯4', 'C♯4', 'D4'],
    ['EB3', 'Db4', 'D4'],
    ['60', '61', '62'],
    ['x', '61', '62'],
    ['c4', 'c#4', 'd4'],
  ])('%s is spelled %s and %s', (text, raised, plain) => {
    const speller = new KeySpeller(read(`<region> key=${text}`));
    expect([speller.like(0, 61), speller.like(0, 62)]).toEqual([raised, plain]);
  });
});

describe('a key in a header', () => {
  it('is spelled as those of the header, else as most', () => {
    const instrument = read(
      '<region> key=C4 <region> key=D4 <region> lokey=60 <region> tune=5 <region> volume=1 hikey=e4',
    );
    const speller = new KeySpeller(instrument);
    const [first, , numbers, none, small] = instrument.regions;
    expect([first, numbers, none, small].map((header) => speller.in(header, 61))).toEqual([
      'C#4',
      '61',
      'C#4',
      'c#4',
    ]);
    expect(speller.in(none, 63)).toBe('D#4');
  });

  it('is a number where the document has no names', () => {
    const instrument = read('<region> tune=5');
    expect(new KeySpeller(instrument).in(instrument.regions[0], 61)).toBe('61');
  });
});
