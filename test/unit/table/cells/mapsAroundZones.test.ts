import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const names = ['sample', 'lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel'];

/** Velocities that may be left out. */
const every: Readonly<Record<string, string>> = { lovel: '1', hivel: '127' };

function values(text: string): string[] {
  return regions(text).map((region) => names.map((name) => region[name] ?? every[name] ?? '-').join(' '));
}

const expected = ['ivy.wav 36 41 38 1 79', 'ivy hard.wav 36 41 38 80 127', 'oak.wav 42 47 44 1 127'];

describe('values beside a map that names the file of a zone', () => {
  it.each([
    [
      'a pair under a name that is not known',
      `{"parts": [
{"tag": "q1", "recording": {"file": "ivy.wav"}, "keys": [36, 41], "root": 38, "vigour": [1, 79]},
{"tag": "q2", "recording": {"file": "ivy hard.wav"}, "keys": [36, 41], "root": 38, "vigour": [80, 127]},
{"tag": "q3", "recording": {"file": "oak.wav"}, "keys": [42, 47], "root": 44, "vigour": [1, 127]}]}`,
    ],
    [
      'two numbers in a map, two maps further out',
      `[{"vigour": {"a": 1, "b": 79}, "one": {"keys": [36, 41], "root": 38, "recording": {"file": "ivy.wav"}}},
{"vigour": {"a": 80, "b": 127}, "one": {"keys": [36, 41], "root": 38, "recording": {"file": "ivy hard.wav"}}},
{"vigour": {"a": 1, "b": 127}, "one": {"keys": [42, 47], "root": 44, "recording": {"file": "oak.wav"}}}]`,
    ],
    [
      'a pair of a layer with its zones',
      `{"layers": [
{"vigour": [1, 79], "zones": [{"file": "ivy.wav", "keys": [36, 41], "root": 38}]},
{"vigour": [80, 127], "zones": [{"file": "ivy hard.wav", "keys": [36, 41], "root": 38}]},
{"vigour": [1, 127], "zones": [{"file": "oak.wav", "keys": [42, 47], "root": 44}]}]}`,
    ],
  ])('are those of the zone: %s', (_, text) => {
    expect(values(text)).toEqual(expected);
  });

  it('are told of where nothing says what they are', () => {
    const text =
      '[{"swirl": 3, "recording": {"file": "ivy.wav"}, "keys": [36, 41], "root": 38}, {"swirl": 9, "recording": {"file": "oak.wav"}, "keys": [42, 47], "root": 44}]';
    expect(notesOf(text).join('\n')).toMatch(/"swirl" is not used/);
  });
});
