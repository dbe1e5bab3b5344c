import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const triggers = (heading: string, ...cells: string[]) =>
  regions(
    table(
      `File | Low | High | Root | ${heading}`,
      ...cells.map(
        (cell, at) => `cimb_${at}.wav | ${30 + at * 5} | ${34 + at * 5} | ${32 + at * 5} | ${cell}`,
      ),
    ),
  ).map(({ trigger }) => trigger ?? '-');

describe('what starts zones, in a column by any heading', () => {
  it.each([
    ['heard as the key goes', 'down', 'down', 'up'],
    ['Key motion', 'down', 'down', 'up'],
    ['Sounds on', 'press', 'press', 'lift'],
    ['Whatever', 'struck', 'struck', 'lifted'],
    ['Klingt wenn die Taste geht', 'runter', 'runter', 'hoch'],
    ['Mouvement de la touche', 'bas', 'bas', 'haut'],
    ['Mode', 'enfoncée', 'enfoncée', 'relâchée'],
    ['Suena cuando la tecla va', 'abajo', 'abajo', 'arriba'],
  ])('is read under "%s"', (heading, ...cells) => {
    expect(triggers(heading, ...cells)).toEqual(['-', '-', 'release']);
  });

  it.each([
    ['Bow', 'down', 'down', 'up'],
    ['Strum', 'down', 'up', 'down'],
    ['Key tracking', 'on', 'on', 'off'],
  ])('is not read under "%s"', (heading, ...cells) => {
    expect(triggers(heading, ...cells)).toEqual(['-', '-', '-']);
  });
});

const layers = (heading: string, ...words: string[]) =>
  regions(
    table(
      `File | Low | High | Root | ${heading}`,
      ...[40, 47].flatMap((low) =>
        words.map((word) => `fag_${low}_${word.at(0)}.wav | ${low} | ${low + 6} | ${low + 3} | ${word}`),
      ),
    ),
  ).map(({ lovel = '1', hivel = '127' }) => `${lovel}-${hivel}`);

describe('dynamics in a column by any heading', () => {
  const three = ['1-42', '43-84', '85-127'];

  it.each([
    ['Remarques', 'p', 'mf', 'f'],
    ['Couleur', 'doux', 'moyen', 'fort'],
    ['Comment', 'soft', 'medium', 'loud'],
    ['Bemerkung', 'leise', 'mittel', 'laut'],
    ['Farbe', 'pp', 'mf', 'ff'],
  ])('are read under "%s", as they tell rows of the same keys apart', (heading, ...words) => {
    expect(layers(heading, ...words)).toEqual([...three, ...three]);
  });

  it('are remarks where they tell no rows apart', () => {
    const text = table(
      'File | Low | High | Root | Comment',
      'a.wav | 40 | 44 | 42 | loud',
      'b.wav | 45 | 49 | 47 | soft',
      'c.wav | 50 | 54 | 52 | loud',
    );
    expect(regions(text).map(({ lovel }) => lovel)).toEqual([undefined, undefined, undefined]);
    expect(notesOf(text).join()).toMatch(/comments in column "Comment" are not carried over/);
  });
});

describe('numbers of takes', () => {
  const rows = (...takes: number[]) =>
    table(
      'Take | Root | Dynamic | File',
      ...takes.map((take, at) => {
        const root = 50 + 7 * Math.floor(at / 2);
        return `${take} | ${root} | ${at % 2 === 0 ? 'soft' : 'loud'} | kora_${at}.wav`;
      }),
    );

  it('are no turns where they go on from key to key', () => {
    const text = rows(1, 2, 3, 4, 5, 6);
    expect(regions(text).map(({ seq_position, seq_length }) => seq_position ?? seq_length)).toEqual(
      Array.from({ length: 6 }),
    );
    expect(notesOf(text).join()).toMatch(/go on from one key to the next/);
  });

  it('are turns where they start again for each key', () => {
    const text = table(
      'Take | Low | High | File',
      '1 | 50 | 54 | a.wav',
      '2 | 50 | 54 | b.wav',
      '1 | 55 | 59 | c.wav',
      '2 | 55 | 59 | d.wav',
    );
    expect(regions(text).map(({ seq_length }) => seq_length)).toEqual(['2', '2', '2', '2']);
  });

  it('leave the keys to roots with as many layers each, as far as half way to the next', () => {
    const text = rows(1, 2, 3, 4, 5, 6);
    expect(regions(text).map(({ lokey, hikey }) => `${lokey}-${hikey}`)).toEqual([
      '0-53',
      '0-53',
      '54-60',
      '54-60',
      '61-127',
      '61-127',
    ]);
    expect(notesOf(text).join()).toMatch(/each key to the nearest root/);
    expect(notesOf(text).join()).not.toMatch(/whole keyboard/);
  });
});
