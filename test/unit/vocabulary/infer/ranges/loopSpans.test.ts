import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const zones = (said: string, name: string, loops: readonly string[]) =>
  `<set>${said}${loops
    .map(
      (loop, at) => `<zone file="${at}.wav" low="${40 + at * 4}" high="${43 + at * 4}" ${name}="${loop}"/>`,
    )
    .join('')}</set>`;
const rangesOf = (text: string) => valuesIn(text, 'loop_start', 'loop_end');

// A loop ends with the last frame that is played (open SFZ format, loop_end): start 1000, 500 frames long ends at 1499.
describe('a loop as start and length in one text', () => {
  const both = ['1000 20000', '900 15000'];
  const read = ['1000 20999', '900 15899'];

  it.each([
    ['<!-- loop: start and length in frames -->', 'loop'],
    ['<info>A loop is the first frame and the number of frames that it lasts.</info>', 'loop'],
    ['<info>Schleifen sind Anfang und Länge.</info>', 'schleife'],
    ['<info>Boucle = début, longueur</info>', 'boucle'],
    ['', 'loop-start-length'],
  ])('is told by words: %s, %s', (said, name) => {
    expect(rangesOf(zones(said, name, both))).toEqual(read);
  });

  it('is seen by lengths below the starts, with a question', () => {
    const text = zones('', 'loop', ['12000+3000', '900+15000']);
    expect(rangesOf(text)).toEqual(['12000 14999', '900 15899']);
    expect(readInferred(text).decisions).toContainEqual(
      expect.objectContaining({ message: expect.stringContaining('is the length of the loop') as string }),
    );
  });

  it('is not one where words speak of an end, or of the least length', () => {
    const said = '<info>loop: first and last frame; a loop has a length of at least 500 frames</info>';
    expect(rangesOf(zones(said, 'loop', both))).toEqual(['1000 20000', '900 15000']);
  });
});

describe('a loop that ends before it starts', () => {
  it('is told of where others make sense', () => {
    const text = zones('', 'loop', ['1000 20000', '900 15000', '19000 15000', '1900 15000']);
    expect(readInferred(text).decisions.map(({ message }) => message)).toContain(
      '1 loop ends before it starts, such as 19000 to 15000.',
    );
  });
});

// Ranges that share the keyboard out say that 40 and 8 keys reach up to 47, where the next one starts.
describe('keys and velocities as the first and how many', () => {
  it('are seen where none could be a high end', () => {
    const text = `<set><zone file="a.wav" keys="40 8" velocities="1 64"/><zone file="b.wav" keys="40 8" velocities="65 63"/>
      <zone file="c.wav" keys="48 8" velocities="1 64"/><zone file="d.wav" keys="48 8" velocities="65 63"/></set>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'lovel', 'hivel')).toEqual([
      '40 47 1 64',
      '40 47 65 127',
      '48 55 1 64',
      '48 55 65 127',
    ]);
  });
});

describe('ranges of which all are written backwards', () => {
  it('are read the other way round, with a question', () => {
    const text = '<set><zone file="a.wav" keys="47-40"/><zone file="b.wav" keys="55-48"/></set>';
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['40 47', '48 55']);
    expect(readInferred(text).decisions.map(({ message }) => message)).toContain(
      '2 key ranges, such as 47 to 40, are written backwards and read the other way round.',
    );
  });
});
