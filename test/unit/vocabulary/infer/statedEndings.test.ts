import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const ranks = (name: string) =>
  [
    ['Low', 24],
    ['High', 48],
  ]
    .map(
      ([title, first]) =>
        `<stop label="${title}" folder="${title}">${[0, 5, 10]
          .map((step) => `<bell ${name}="${title}_${Number(first) + step}" note="${Number(first) + step}"/>`)
          .join('')}</stop>`,
    )
    .join('');

describe('files without endings', () => {
  it.each([
    ['base', 'suffix=".flac"', 'name'],
    ['base', 'extension="flac"', 'name'],
    ['root', 'endung="flac"', 'name'],
    ['base', 'suffix=".flac"', 'file'],
  ])('have the ending and the folders that elements around them name: %s %s %s', (base, ending, name) => {
    const text = `<bells ${base}="Takes/Tower" ${ending}>${ranks(name)}</bells>`;
    expect(valuesIn(text, 'sample', 'pitch_keycenter')).toEqual(
      ['Low_24', 'Low_29', 'Low_34', 'High_48', 'High_53', 'High_58'].map((file) => {
        const [folder, key] = file.split('_');
        return `Takes/Tower/${folder}/${file}.flac ${key}`;
      }),
    );
  });
});

describe('keys that reach as far as the text says', () => {
  it.each([
    ['Every bell sounds from its own note up to four keys above.', ['24 28', '29 33']],
    ['Each bell is used from its key down to two keys below.', ['22 24', '27 29']],
    ['Jede Glocke klingt ab ihrer Taste bis vier Tasten darüber.', ['24 28', '29 33']],
    ['Every bell is stretched two keys down and one key up.', ['22 25', '27 30']],
  ])('have that range: %s', (said, ranges) => {
    const text = `<bells><!-- ${said} --><bell file="a.wav" note="24"/><bell file="b.wav" note="29"/></bells>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      `${ranges[0]} 24`,
      `${ranges[1]} 29`,
    ]);
  });
});
