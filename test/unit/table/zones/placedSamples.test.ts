import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const samples = (text: string, options?: Parameters<typeof regions>[1]) =>
  regions(text, options).map(({ sample }) => sample);
const list = (...names: string[]) =>
  table('File | Root', ...names.map((name, at) => `${name} | ${40 + at * 5}`));

// RFC 3986: `%20` is a blank, `%28` and `%29` brackets.
describe('sample names written as in addresses of the web', () => {
  const text = list('horn%20low%20%28a%29.wav', 'horn%20mid.wav', 'horn top.wav');

  it('are read as they sound where several are, and told once', () => {
    expect(samples(text)).toEqual(['horn low (a).wav', 'horn mid.wav', 'horn top.wav']);
    expect(notesOf(text).filter((note) => note.includes('%20'))).toHaveLength(1);
  });

  it('stay where one alone is, where their files are so called, or where the signs name no character', () => {
    expect(samples(list('a%20b.wav', 'c.wav'))).toEqual(['a%20b.wav', 'c.wav']);
    expect(samples(text, { resolveSample: (name) => name })[0]).toBe('horn%20low%20%28a%29.wav');
    expect(samples(list('a%20b%E9.wav', 'c%20d.wav', 'e%20f.wav'))).toEqual([
      'a%20b%E9.wav',
      'c d.wav',
      'e f.wav',
    ]);
    expect(samples(list('mix 50%.wav', 'mix 100%.wav'))).toEqual(['mix 50%.wav', 'mix 100%.wav']);
  });
});

describe('absolute paths of samples', () => {
  it.each(['E:\\Work\\Rec\\Horn\\b.wav', '\\\\nas\\rec\\Horn\\b.wav', '/home/eva/Rec/horn/b.wav'])(
    'such as %s are written as the others where they end in the same folder',
    (path) => {
      const text = list('Rec/Horn/a.wav', path, 'Rec/Horn/c.wav').replaceAll(
        '\\\\nas\\rec',
        '\\\\nas\\x\\rec',
      );
      expect(samples(text)).toEqual(['Rec/Horn/a.wav', 'Rec/Horn/b.wav', 'Rec/Horn/c.wav']);
      expect(notesOf(text).join('\n')).toMatch(
        /Line 3: .* is a path of another computer; "Rec\/Horn\/b.wav" is written/,
      );
    },
  );

  it('are kept and told once where nothing says where they belong', () => {
    const text = list('E:\\Rec\\a.wav', 'E:\\Rec\\b.wav', 'c.wav');
    expect(samples(text)).toEqual(['E:\\Rec\\a.wav', 'E:\\Rec\\b.wav', 'c.wav']);
    const told = notesOf(text).filter((note) => note.includes('another computer'));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(
      /The same holds for 1 more place\. Put the file beside the text, or correct the path\./,
    );
  });

  it('are not told where the file is found', () => {
    const text = list('E:\\Rec\\a.wav', 'E:\\Rec\\b.wav');
    expect(notesOf(text, { resolveSample: (name) => name.slice(7) }).join()).not.toMatch(/another computer/);
  });
});
