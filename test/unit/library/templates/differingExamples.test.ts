import { describe, expect, it } from 'vitest';
import { converted } from './dialect';

const shells = (own: readonly string[], says = '') =>
  `<shells>${says}\n${own
    .map((one, at) => `<shell clip="${at}.wav" lo="${40 + at}" hi="${40 + at}" root="${40 + at}" ${one}/>\n`)
    .join('')}</shells>`;
const region = (values = '') => `<region> sample=new.wav lokey=50 hikey=52 pitch_keycenter=51 ${values}\n`;

describe('what the examples of a template say and nobody understands', () => {
  it.each([
    ['is left out where they differ', ['sheen="100"', 'sheen="50"'], 'root="51"/>', 'so it is left out'],
    ['becomes 0 where one of them has that', ['sheen="0.2"', 'sheen="0"'], 'sheen="0"', 'so it becomes 0'],
    ['is no 0 where that may switch it off', ['sheen="1"', 'sheen="0"'], 'root="51"/>', 'so it is left out'],
    ['is left out where one has none', ['sheen="3"', ''], 'root="51"/>', 'so it is left out'],
    [
      'is left out where it is a word',
      ['sheen="dull"', "sheen = 'bright' "],
      'root="51"/>',
      'so it is left out',
    ],
    [
      'stays where all say the same',
      ['sheen="7"', 'sheen="7"'],
      'sheen="7"',
      'So it stays as in the example.',
    ],
    ['stays where there is one', ['sheen="7"'], 'sheen="7"', 'So it stays as in the example.'],
  ])('%s', async (_, own, written, told) => {
    const { text, notes } = await converted(shells(own), region());
    expect(text).toContain(written);
    expect(notes.filter((note) => note.includes('sheen='))).toEqual([expect.stringContaining(told)]);
  });

  it('goes with the element that holds nothing else', async () => {
    const shell = (at: number, own: string) =>
      `<shell clip="${at}.wav" lo="${at}" hi="${at}" root="${at}">\n  <sheen>${own}</sheen>\n  <skin>sand</skin>\n</shell>\n`;
    const { text } = await converted(`<shells>\n${shell(40, '8')}${shell(41, '9')}</shells>`, region());
    expect(text).toBe(
      '<shells>\n<shell clip="new.wav" lo="50" hi="52" root="51">\n  <skin>sand</skin>\n</shell>\n</shells>',
    );
  });

  it('is a place between left and right where a sentence with two dots says so', async () => {
    const says = '<!-- gain in dB, balance -1 (left) .. 1 (right) -->';
    const own = ['gain="0" balance="0"', 'gain="-2" balance="0.4"'];
    const { text } = await converted(shells(own, says), region('pan=-40') + region());
    expect(Array.from(text.matchAll(/balance="([^"]*)"/g), ([, value]) => value)).toEqual(['-0.4', '0']);
  });
});
