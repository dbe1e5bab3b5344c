import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const table = (...rows: string[]) =>
  `File\tLow\tHigh\tRoot\n${rows.map((row) => `${row.replaceAll(' ', '\t')}\n`).join('')}`;
const zones = (text: string) =>
  regions(text).map(({ lokey, hikey, pitch_keycenter }) => [lokey, hikey, pitch_keycenter].join(' '));
const rows = ['a.wav 24 35 30', 'b.wav 36 47 42', 'c.wav 48 59 54'];

// MIDI 1.0 has the keys 0 to 127; C4 and C3 are the two usual names of key 60.
describe('one name of a note among numbers of keys', () => {
  it.each([
    ['outside of all keys', 'H9'],
    ['outside of all keys, with a sharp', 'G#10'],
    ['far from the keys of its row', 'G8'],
  ])('says nothing of octaves and is left out where it lies %s', (_, root) => {
    const text = table(...rows, `d.wav 60 71 ${root}`);
    expect(zones(text)).toEqual(['24 35 30', '36 47 42', '48 59 54', '60 71 ']);
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(new RegExp(`dropped: Line 5, column "Root": "${root}" lies (?:far )?outside`));
    expect(notes).not.toMatch(/otherwise some note names/);
  });

  it('tells the octaves where it fits its row in one way alone', () => {
    expect(zones(table(...rows, 'd.wav 60 71 F3')).at(-1)).toBe('60 71 65');
  });

  it('tells them where all keys are names', () => {
    const named = table('a.wav C8 E8 D8', 'b.wav F8 A8 G8', 'c.wav C10 E10 D10');
    expect(notesOf(named).join('\n')).toMatch(/read as C5, because otherwise some note names/);
  });
});

describe('keys below 0 and above 127', () => {
  it('are left out, and the zone plays up to the end of the keyboard', () => {
    const text = table('a.wav -3 35 30', ...rows.slice(1), 'd.wav 60 130 66');
    expect(zones(text)).toEqual([' 35 30', '36 47 42', '48 59 54', '60  66']);
    expect(notesOf(text).filter((note) => note.includes('lies outside the keys'))).toHaveLength(2);
  });

  it('leave a zone out that no key can play', () => {
    const text = table(...rows, 'd.wav 131 140 135', 'e.wav -9 -2 -5');
    expect(zones(text)).toEqual(['24 35 30', '36 47 42', '48 59 54']);
    expect(notesOf(text).join('\n')).toMatch(/Line 6: all keys of "e.wav" lie outside 0..127/);
  });

  it('are no frequencies and no tuning where the other roots lie within their ranges', () => {
    expect(zones(table(...rows, 'd.wav 60 71 190'))).toEqual(['24 35 30', '36 47 42', '48 59 54', '60 71 ']);
    expect(zones(table(...rows, 'd.wav 60 71 -5'))).toEqual(['24 35 30', '36 47 42', '48 59 54', '60 71 ']);
  });
});
