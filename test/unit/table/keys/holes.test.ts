import { describe, expect, it } from 'vitest';
import { notesOf, table } from '../tableRegions';

const heading = 'Sample | Low | High | Root';
/** Rows of five keys each, at places from 0 on. */
const rows = (places: readonly number[], name: (place: number) => string) =>
  places.map((at) => `${name(at)}.wav | ${30 + at * 5} | ${34 + at * 5} | ${32 + at * 5}`);
const numbered = (at: number) => `saw${at + 1}`;
const lettered = (at: number) => `saw ${'kqzmxvwh'.charAt(at)}`;
const notes = (...lines: string[]) => notesOf(table(heading, ...lines)).join('\n');
const isHole = /No zone plays/;

describe('a hole in a keyboard', () => {
  it('is told where all other ranges adjoin', () => {
    expect(notes(...rows([0, 1, 2, 4, 5, 6], lettered))).toContain(
      'No zone plays keys 45–49, between saw z.wav and saw x.wav; a row may be missing. Check the table.',
    );
  });

  it('is told with the running numbers that leap there', () => {
    expect(notes(...rows([0, 1, 2, 4, 5, 7], numbered))).toContain(
      'No zone plays keys 45–49, between saw3.wav and saw5.wav, nor keys 60–64, between saw6.wav and saw8.wav; the running numbers leap there too, so rows may be missing.',
    );
    const lines = [1, 2, 3, 5, 6, 7].map(
      (at) => `${at} | ${lettered(at)}.wav | ${30 + at * 5} | ${34 + at * 5}`,
    );
    expect(notesOf(table('No. | Sample | Low | High', ...lines)).join('\n')).toMatch(
      /running numbers leap there/,
    );
  });

  it('is told by names where keys are named', () => {
    const keys = ['C3 - D3', 'D#3 - F3', 'F#3 - G#3', 'C4 - D4', 'D#4 - F4', 'F#4 - G#4'];
    const lines = keys.map((range, at) => `saw ${'kqzmxv'.charAt(at)}.wav | ${range}`);
    expect(notesOf(table('Sample | Keys', ...lines)).join('\n')).toContain(
      'No zone plays keys A3–B3 (57–59), between saw z.wav and saw m.wav',
    );
  });

  it('is told once for layers', () => {
    const layers = [0, 1, 2, 4, 5, 6].flatMap((at) => [
      `p${at}.wav | ${30 + at * 5} | ${34 + at * 5} | 1 | 63`,
      `f${at}.wav | ${30 + at * 5} | ${34 + at * 5} | 64 | 127`,
    ]);
    const told = notesOf(table('Sample | Low | High | Low velocity | High velocity', ...layers));
    expect(told.filter((note) => isHole.test(note))).toHaveLength(1);
  });

  it.each([
    ['few ranges', rows([0, 1, 3, 4, 5], numbered)],
    ['many gaps', rows([0, 2, 4, 5, 7, 8], lettered)],
    ['ranges that overlap', [...rows([0, 1, 2, 4, 5, 6], numbered), 'all.wav | 30 | 40 | 35']],
    ['two parts far apart', rows([0, 1, 2, 6, 7, 8], (at) => `saw ${'abcdefghi'.charAt(at)}`)],
    ['a blank line between', [...rows([0, 1, 2], lettered), '', ...rows([4, 5, 6], lettered)]],
    ['titles over parts', ['Left', ...rows([0, 1, 2], lettered), 'Right', ...rows([4, 5, 6], lettered)]],
    [
      'drums',
      [36, 37, 38, 40, 41, 42].map((key) => `hit ${'kqzmxv'.charAt(key % 6)}.wav | ${key} | ${key} | 60`),
    ],
    [
      'key numbers in names',
      [36, 37, 38, 40, 41, 42].map((key) => `hit${key}.wav | ${key} | ${key} | ${key}`),
    ],
  ])('is what is meant with %s', (_, lines) => {
    expect(notes(...lines)).not.toMatch(isHole);
  });

  it('is what is meant between two key switches', () => {
    const lines = rows([0, 1, 2, 4, 5, 6], lettered).map((row, at) => `${row} | ${at < 3 ? 'C0' : 'D0'}`);
    expect(notesOf(table(`${heading} | Keyswitch`, ...lines)).join('\n')).not.toMatch(isHole);
  });

  it('is told as the row that is not used alone', () => {
    const lines = rows([0, 1, 2, 3, 4, 5, 6], numbered).map(
      (row, at) => `${row} | ${at === 3 ? 'no' : 'yes'}`,
    );
    expect(notesOf(table(`${heading} | Used`, ...lines)).join('\n')).not.toMatch(isHole);
  });
});
