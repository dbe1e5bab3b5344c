import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../../server/table/readTable';
import { regions } from '../tableRegions';

const zones = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter: root, lovel, hivel }) =>
    [sample, lokey, hikey, root, lovel ?? '-', hivel ?? '-'].join(' '),
  );
const named = ['drone-1.ogg 40 44 42 1 80', 'drone-2.ogg 45 50 47 1 80'];

describe('values of a script by their places, whose names have no endings', () => {
  it.each([
    [
      'tuples of Python below a comment, with the ending in a constant',
      'EXT = ".ogg"\n# (sample without extension, low, high, root, vel_lo, vel_hi)\nZONES = [\n  ("drone-1", 40, 44, 42, 1, 80),\n  ("drone-2", 45, 50, 47, 1, 80),  # hums\n]\n\nif __name__ == "__main__":\n    for z in ZONES:\n        print(z[0] + EXT)\n',
    ],
    [
      'arrays of JavaScript with the comment inside',
      "const suffix = 'ogg';\nconst zones = [\n  // name, low key, high key, root, vel low, vel high\n  ['drone-1', 40, 44, 42, 1, 80],\n  ['drone-2', 45, 50, 47, 1, 80],\n];\n",
    ],
    [
      'tables of Lua',
      '-- file (no ending), low, high, root, lovel, hivel\nlocal ext = ".ogg"\nlocal map = {\n  {"drone-1", 40, 44, 42, 1, 80},\n  {"drone-2", 45, 50, 47, 1, 80},\n}\nreturn map\n',
    ],
  ])('are read by the comment: %s', (_, text) => {
    expect(zones(text)).toEqual(named);
    const told = readZoneTable(text).notes.filter(({ message }) => message.includes('The ending .ogg'));
    expect(told).toHaveLength(1);
  });

  it('keep their names where no ending is given, and leave out what is commented out', () => {
    const text =
      '# sample, low, high, root\nZONES = [\n  ("drone-1", 40, 44, 42),\n  ("drone-2", 45, 50, 47),\n  # ("drone-3", 51, 55, 53),\n]\n';
    expect(zones(text)).toEqual(['drone-1 40 44 42 - -', 'drone-2 45 50 47 - -']);
  });

  it('leave a table in brackets below a comment to its lines', () => {
    const text = '# sample low high root\n[Soft]\ndrone-1.ogg 40 44 42\ndrone-2.ogg 45 50 47\n';
    expect(regions(text).map(({ sample, lokey }) => `${sample} ${lokey}`)).toEqual([
      'drone-1.ogg 40',
      'drone-2.ogg 45',
    ]);
  });
});
