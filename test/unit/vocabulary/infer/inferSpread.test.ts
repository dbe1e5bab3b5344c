import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const plates = (says: string) =>
  `<box><!-- ${says} --><plate wav="a.wav" key="60"/><plate wav="b.wav" key="65"/><plate wav="c.wav" key="72"/></box>`;

describe('keys that the text says are shared out', () => {
  it.each([
    'Each plate serves from its own key up to the key below the next; the last one goes up to 96.',
    'Jede Aufnahme gilt von ihrer Taste bis unter die nächste, die letzte bis 96.',
  ])('reach up to the next: %s', (says) => {
    expect(valuesIn(plates(says), 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '60 64 60',
      '65 71 65',
      '72 96 72',
    ]);
  });

  it('reach down to the one before', () => {
    const says = 'Every plate also serves the keys below it down to just above the previous plate.';
    expect(valuesIn(plates(says), 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '- 60 60',
      '61 65 65',
      '66 72 72',
    ]);
  });

  it('reach half way', () => {
    const says = 'Each key goes to the nearest plate; the lowest one reaches down to 55.';
    expect(valuesIn(plates(says), 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '55 62 60',
      '63 68 65',
      '69 127 72',
    ]);
    expect(readInferred(plates(says)).decisions.find(({ id }) => id === 'keysByRoots')?.isGuess).toBe(true);
  });

  it('stay as they are where nothing is said', () => {
    expect(valuesIn(plates('brass'), 'lokey', 'hikey')).toEqual(['60 60', '65 65', '72 72']);
  });
});
