import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const zones = [
  { sample: 'takes/saz 1.wav', lokey: '41', hikey: '46', pitch_keycenter: '43', tune: '-3' },
  { sample: 'takes/saz 2.wav', lokey: '47', hikey: '52', pitch_keycenter: '49', tune: '4' },
];

describe('names of files that a script joins', () => {
  it.each([
    [
      'tuples of Python',
      'DIR = "takes/"\n# (file, low key, high key, root key, cents)\nZONES = [\n  (DIR + "saz 1.wav", 41, 46, 43, -3),\n  (DIR+"saz 2.wav", 47, 52, 49, 4),\n]\n',
    ],
    [
      'paths',
      'DIR = "takes"\n# (file, low key, high key, root key, cents)\nZONES = [\n  (DIR / "saz 1.wav", 41, 46, 43, -3),\n  (DIR / "saz 2.wav", 47, 52, 49, 4),\n]\n',
    ],
    [
      'records of Lua',
      'local dir = "takes/"\nzones = {\n  { file = dir .. "saz 1.wav", low = 41, high = 46, root = 43, cents = -3 },\n  { file = dir.."saz 2.wav", low = 47, high = 52, root = 49, cents = 4 },\n}\n',
    ],
  ])('%s', (_, text) => {
    expect(regions(text)).toEqual(zones);
  });
});
