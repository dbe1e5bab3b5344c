import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const roots = (text: string) => regions(text).map(({ key, pitch_keycenter: root }) => Number(root ?? key));
const rows = (heading: string, first: string, second: string) =>
  table(
    `File | Low | High | Root | ${heading}`,
    `oud one.wav | A2 | D3 | C3 | ${first}`,
    `oud two.wav | D#3 | A3 | F3 | ${second}`,
  );

describe('remarks that say which C is middle C', () => {
  it.each([
    ['Remark', 'C3 is middle C here', 'buzzes'],
    ['Comments', '', 'note: C3 = MIDI 60'],
    ['Bemerkung', 'C3 ist das mittlere C', ''],
    ['Observaciones', 'C3 es el do central (MIDI 60)', ''],
    ['Notes', 'middle C!', 'a bit late'],
  ])('count under the heading %s: %s %s', (heading, first, second) => {
    const text = rows(heading, first, second);
    expect(roots(text)).toEqual([60, 65]);
    expect(notesOf(text).join()).toMatch(/Key 60 is read as C3, because the text says/);
  });

  it.each([
    ['an octave above middle C', ''],
    ['retake, C3 : 60 takes', ''],
    ['C3 is middle C', 'C4 is middle C'],
  ])('count for nothing otherwise: %s %s', (first, second) => {
    expect(roots(rows('Remark', first, second))).toEqual([48, 53]);
  });
});
